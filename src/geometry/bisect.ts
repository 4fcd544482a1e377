/**
 * Where f changes sign between `low` and `high`, to the last bit that halving can tell (200 halvings at the most).
 * Throws RangeError where both ends have the same sign.
 */
export const bisect = (f: (x: number) => number, low: number, high: number): number => {
  const [atLow, atHigh] = [f(low), f(high)]
  if (atLow === 0) return low
  if (atHigh === 0) return high
  if (atLow > 0 === atHigh > 0) throw new RangeError(`no change of sign between ${low} and ${high}`)
  let [a, b] = [low, high]
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2
    if (middle === a || middle === b) break
    if (f(middle) > 0 === atLow > 0) a = middle
    else b = middle
  }
  return (a + b) / 2
}
