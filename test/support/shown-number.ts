/** A number as the text formats take it, the slow way: `toFixed`, then without its last zeros. */
export const shownSlowly = (value: number, decimals: number): string => {
  const fixed = value.toFixed(decimals)
  const short = decimals === 0 ? fixed : fixed.replace(/\.?0+$/, '')
  return short === '-0' ? '0' : short
}
