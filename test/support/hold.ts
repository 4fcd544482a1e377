/**
 * `expect` keeps a record of each call, which takes some five microseconds: too long for what a loop asks a hundred thousand times.
 * These throw, and no more. NaN is neither above nor below.
 */
export const hold = (good: boolean, what = 'it'): void => {
  if (!good) throw new Error(`${what} does not hold`)
}

const ordered = (good: boolean, value: number, word: string, limit: number, what: string): void => {
  if (!good) throw new Error(`${what}: ${value} is not ${word} ${limit}`)
}

export const above = (value: number, limit: number, what = 'value'): void =>
  ordered(value > limit, value, 'above', limit, what)

export const atLeast = (value: number, limit: number, what = 'value'): void =>
  ordered(value >= limit, value, 'at least', limit, what)

export const below = (value: number, limit: number, what = 'value'): void =>
  ordered(value < limit, value, 'below', limit, what)

export const atMost = (value: number, limit: number, what = 'value'): void =>
  ordered(value <= limit, value, 'at most', limit, what)
