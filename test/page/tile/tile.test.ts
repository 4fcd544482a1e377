import { expect, it } from 'vitest'
import { rowLetters } from '../../../src/page/tile/tile.ts'

it('row letters go on after Z as in a ledger: every row its own', () => {
  const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
  // one letter, then all pairs, then all triples, in order
  const expected = [
    ...alphabet,
    ...alphabet.flatMap((a) => alphabet.map((b) => a + b)),
    ...alphabet.flatMap((a) => alphabet.flatMap((b) => alphabet.map((c) => a + b + c))),
  ]
  expect(Array.from({ length: 2000 }, (_, i) => rowLetters(i))).toEqual(expected.slice(0, 2000))
})
