/** Throws unless `actual` lies within `mm` of `expected` (any unit; NaN is never near). */
export const assertNear = (actual: number, expected: number, mm: number, what = 'value'): void => {
  const off = Math.abs(actual - expected)
  if (!(off <= mm)) throw new Error(`${what}: ${actual} is ${off} off ${expected}, allowed ${mm}`)
}
