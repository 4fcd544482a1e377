import { expect, test } from 'vitest'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const quarter = templateText('quarter-mm')
const wide = quarter.replace('width: 1216', 'width: 3600').replace('count: 2 ', 'count: 4 ')

test('of a deck board in several sheets it is told which lies where, and the gap between them', () => {
  const solved = solveDesign(designOf(wide))
  if (solved.stopped) throw new Error('stopped')
  const { widths } = curvedOf(solved.ramps)[0]!.deckBoard!
  const [first, second] = widths
  const said = bookletSaid(wide, ['deck'])
  const [, left, right, gap] =
    /Lay (D\d) and (D\d), from left to right, .* a gap of ([\d.]+) between sheets/.exec(said)!
  expect([left, right]).toEqual(['D1', 'D2'])
  assertNear(Number(gap), second!.from - first!.from - first!.length, 0.05)
})

test('one in a single sheet is laid as it was', () => {
  expect(bookletSaid(quarter, ['deck'])).toContain(
    "Lay it with its back edge flush with the sides' back edge, and screw it down",
  )
})

test('of three courses each is said to lie before the one laid last', () => {
  const deep = quarter.replace(/deck: 500/, 'deck: 3000')
  expect(bookletSaid(deep, ['deck'])).toMatch(
    /Lay D3 with its back edge .* back edge, then D2 before it, and D1 before that, outer edges flush/,
  )
})
