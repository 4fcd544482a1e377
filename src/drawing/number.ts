/**
 * A number as the text formats take it: at most `decimals` decimals, trailing zeros dropped, no exponent, no `-0`.
 * Throws RangeError on NaN, infinity and 1e21 or more, naming the thing.
 */
export const formatNumber = (value: number, decimals: number, name: string): string => {
  if (!(Math.abs(value) < 1e21)) throw new RangeError(`${name} is ${value}, which cannot be written`)
  const fixed = value.toFixed(decimals)
  if (decimals === 0) return fixed === '-0' ? '0' : fixed
  let end = fixed.length
  while (fixed.charCodeAt(end - 1) === 48) end--
  if (fixed.charCodeAt(end - 1) === 46) end--
  const short = fixed.slice(0, end)
  return short === '-0' ? '0' : short
}
