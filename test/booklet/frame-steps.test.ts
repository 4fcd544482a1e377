import { expect, test } from 'vitest'
import { timberCorners } from '../../src/ramp/frame/timber.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'
import { withOffsets } from './solved.ts'

/** Half of what a whole millimetre is rounded by, and a hair. */
const rounded = 0.51
const base = templateText('quarter-mm')

test.each([
  ['inside it', 'leg: 120', '{ diameter: 75, height: 100 }'],
  ['flush with it', 'leg: 180', '{ diameter: 75, height: 90 }'],
])("the wheels' timber is set from the corners of the cut, its face %s", (face, leg, wheels) => {
  const text = base.replace(/leg: \d+/, leg).replace(/# wheels: \{[^}]*\}/, `wheels: ${wheels}`)
  const [ramp] = withOffsets(text).quarters
  const index = ramp!.deckTimbers.findIndex(({ role }) => role === 'wheels')
  const number = ramp!.studs.length + index + 1
  const said = new RegExp(
    `Screw timber ${number} \\(T\\d+\\), for the wheels, its broad face along the cut of the back corner, its middle (\\d+) from either corner of the cut, its face (?:(\\d+) )?${face}, one screw`,
  ).exec(bookletSaid(text, ['framing']))!
  // the corners of the cut, and the face between two corners of the wood, as they are drawn on the pattern
  const { chamfer } = ramp!.design
  const [low, high] = [
    { x: ramp!.length - chamfer, y: 0 },
    { x: ramp!.length, y: chamfer },
  ]
  const [a, b] = timberCorners(ramp!.deckTimbers[index]!)
  const middle = { x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2 }
  // by the circle about each corner: both are as far off, a² = along² + into²
  const into = Number(said[2] ?? 0)
  for (const corner of [low, high])
    assertNear(
      Math.hypot(Number(said[1]), into),
      Math.hypot(middle.x - corner.x, middle.y - corner.y),
      2 * rounded,
    )
  // by the line x − y = length − leg of the cut
  assertNear(into, (ramp!.length - chamfer - (middle.x - middle.y)) / Math.SQRT2, rounded)
})

test('timbers behind the lip are squared up from the edge that they are measured along, from the back edge where that has ended', () => {
  const said = bookletSaid(base, ['framing'])
  expect(said).toContain('the others along the bottom edge and squared up from there, both from the toe')
  const [ramp] = withOffsets(base).quarters
  const { chamfer, studs } = ramp!.design
  const behind =
    /Behind the end of the bottom edge, along the top from the back edge: timber (\d+) at (\d+)\./.exec(said)!
  // the last one alone lies there, flush with the back edge: half its thickness off it
  expect(ramp!.deckTimbers.filter(({ x }) => x > ramp!.length - chamfer)).toHaveLength(1)
  expect(ramp!.deckTimbers[Number(behind[1]) - ramp!.studs.length - 1]!.role).toBe('deck')
  assertNear(Number(behind[2]), Math.min(...studs.section) / 2, rounded)
  // with the corner whole the bottom edge reaches under all of them
  const whole = base.replace(/ {4}chamfer:.*\n {6}leg:.*\n/, '    chamfer: none\n')
  expect(withOffsets(whole).quarters[0]!.design.chamfer).toBe(0)
  expect(bookletSaid(whole, ['framing'])).not.toContain('Behind the end of the bottom edge')
})

/** Sides longer than a panel, of three walls or of two; joined on a stud, or with the deck so long on a timber under its board. */
const long = (sides: number, deck: number): string => `title: Long
units: mm
ramps:
  - kind: quarter
    width: 1800
    height: { deck: 900 }
    transition: { circle: { surface: 2100 } }
    toe: 40
    deck: ${deck}
    sides: { thickness: 18, count: ${sides} }
    skin: [9 plywood, 9 plywood]
    deck-board: 15 plywood
    coping: none
`

test.each([
  [2, 1200],
  [3, 1200],
  [2, 2400],
  [3, 2400],
])('with %d walls, a deck of %d, the steps ask for as many long screws as the list has', (sides, deck) => {
  const text = long(sides, deck)
  const [ramp] = withOffsets(text).quarters
  const said = bookletSaid(text, ['framing'])
  expect(
    /Where a plate lies on a rib, the rightmost bay as seen from the toe comes first, then/.test(said),
  ).toBe(sides > 2)
  expect(said).not.toMatch(/There the rightmost/)
  const asked = [
    ...said.matchAll(
      /(Studs?|Timbers?) ([\d, and]+): 2 screws of 5 × 80 \(\w\) in each end(, of 5 × 70 \(\w\) in each on the left of a rib, where no plate is)?\./g,
    ),
  ]
  const on = asked.flatMap(([, noun, numbers]) =>
    numbers!.match(/\d+/g)!.map((number) => ({ stud: noun!.startsWith('Stud'), index: Number(number) - 1 })),
  )
  expect(on.map(({ index }) => index)).toEqual(ramp!.splices.map(({ timber }) => timber))
  expect(on.length).toBeGreaterThan(0)
  for (const { stud, index } of on) expect(stud).toBe(index < ramp!.studs.length)
  for (const [, , , bare] of asked) expect(bare !== undefined).toBe(sides > 2)
  // both ends in each bay, less the left of each rib
  const ends = 2 * (sides - 1) - (sides - 2)
  const told = Number(/5 × 80, countersunk: (\d+), frame/.exec(said)![1])
  expect(told).toBe(2 * ends * on.length)
})
