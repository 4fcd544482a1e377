import { isDeepStrictEqual } from 'node:util'
import { expect } from 'vitest'

/** `toEqual` of whole pages, whose own way takes far longer: it is asked only to say what differs. */
export const assertEqual = (actual: unknown, expected: unknown, what?: string): void => {
  if (!isDeepStrictEqual(actual, expected)) expect(actual, what).toEqual(expected)
}
