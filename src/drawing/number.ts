export const tensOf = [1, 10, 100, 1e3, 1e4, 1e5, 1e6] as const

/** How many parts of 1 / `tens` a size is, rounded; -1 where only the slow way of `toFixed` tells. */
export const inParts = (size: number, tens: number): number => {
  const scaled = size * tens
  const whole = Math.floor(scaled)
  const rest = scaled - whole
  // the product's own rounding is far below what is kept off a half
  if (!(scaled < 2 ** 31) || (rest >= 0.49999 && rest <= 0.50001)) return -1
  return rest < 0.5 ? whole : whole + 1
}

/** So many parts of `tens`; the slow way of `toFixed` takes several times as long. */
const shortest = (parts: number, tens: number, decimals: number, negative: boolean): string => {
  const units = Math.floor(parts / tens)
  let rest = parts - units * tens
  const sign = negative && parts > 0 ? '-' : ''
  if (rest === 0) return `${sign}${units}`
  let digits = decimals
  while (rest % 10 === 0) {
    rest /= 10
    digits--
  }
  return `${sign}${units}.${`${rest}`.padStart(digits, '0')}`
}

/**
 * A number as the text formats take it: at most `decimals` decimals, trailing zeros dropped, no exponent, no `-0`.
 * Throws RangeError on NaN, infinity and 1e21 or more, naming the thing.
 */
export const formatNumber = (value: number, decimals: number, name: string): string => {
  if (!(Math.abs(value) < 1e21)) throw new RangeError(`${name} is ${value}, which cannot be written`)
  const tens = tensOf[decimals]
  if (tens !== undefined) {
    const parts = inParts(Math.abs(value), tens)
    if (parts >= 0) return shortest(parts, tens, decimals, value < 0)
  }
  const fixed = value.toFixed(decimals)
  if (decimals === 0) return fixed === '-0' ? '0' : fixed
  let end = fixed.length
  while (fixed.charCodeAt(end - 1) === 48) end--
  if (fixed.charCodeAt(end - 1) === 46) end--
  const short = fixed.slice(0, end)
  return short === '-0' ? '0' : short
}

/** A width or a height as it is; throws RangeError where it is none, naming the thing. */
export const above0 = (value: number, name: string): number => {
  if (!(value > 0)) throw new RangeError(`${name} is ${value}, it must be above 0`)
  return value
}
