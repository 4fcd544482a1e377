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
