import { describe, expect, test } from 'vitest'
import { lipSection } from '../../src/booklet/views/lip-section.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { drawingBounds } from '../../src/drawing/drawing-bounds.ts'
import type { SolvedQuarter } from '../../src/ramp/ramp.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const high = `title: No room under the pipe
units: mm
ramps:
  - width: 1216
    height: { deck: 1100 }
    transition: { circle: { surface: 2600 } }
    toe: 40
    deck: 900
    sides: { thickness: 18, count: 3 }
    studs: { section: 45 x 95, every: 180 }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 2 steel }
    deck-board: 18 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
`

/** Too far out for the last stud. */
const far = `title: Blocks under the pipe
units: in
ramps:
  - width: 96
    height: { deck: 36 }
    transition: { circle: { surface: 72 } }
    toe: 1 1/2
    deck: 20
    sides: { thickness: 23/32, count: 3 }
    skin: [3/8 plywood, 3/8 plywood]
    run-out: { sheet: 1/16 steel }
    deck-board: 5/8 plywood
    coping: { outside: 2 3/8, up: 5/16, out: 1/4 }
`

const solvedRamp = (text: string): SolvedQuarter => {
  const solved = solveDesign(designOf(text))
  if (solved.stopped) throw new Error('stopped')
  return curvedOf(solved.ramps)[0]!
}

describe('what is missing under the pipe', () => {
  test('is packed before the pipe is laid, as high as a plumb line from its middle finds air', () => {
    const ramp = solvedRamp(high)
    const { centre, outside } = ramp.coping!
    const stud = ramp.studs.findIndex(({ role }) => role === 'lip')
    const { x, y, angle, width } = ramp.studs[stud]!
    // from the upper corner of its face down along its end, square to the face
    const corner = { x: x + (width / 2) * Math.cos(angle), y: y + (width / 2) * Math.sin(angle) }
    const top = corner.y - (centre.x - corner.x) / Math.tan(angle)
    const said = bookletSaid(high, ['coping'])
    const [, pieces, on, thick] =
      /glue (\d+) pieces of offcut on stud (\d+), planed to its slope, ([\d.]+) high/.exec(said)!
    expect(Number(pieces)).toBe(ramp.pipe!.holes.length)
    expect(Number(on)).toBe(stud + 1)
    assertNear(Number(thick), centre.y - outside / 2 - top, 0.06)
    expect(said.indexOf('Before it is laid')).toBeLessThan(said.indexOf('Lay it in the notches'))
    expect(said).not.toContain('pack that')
  })

  test('is drawn from the stud up to the floor of the notch, and not where nothing is packed', () => {
    const ramp = solvedRamp(high)
    const { centre, outside } = ramp.coping!
    const packed = (of: SolvedQuarter) =>
      lipSection(of, 'mm', 1, 60).parts.find(({ name }) => name === 'packing')
    const { y1 } = drawingBounds(packed(ramp)!.marks)!
    assertNear(y1, centre.y - outside / 2, 0.2)
    expect(packed(solvedRamp(templateText('quarter-mm')))).toBeUndefined()
  })

  test('is filled with blocks before the pipe is laid, one for each screw', () => {
    const ramp = solvedRamp(far)
    const said = bookletSaid(far, ['coping'])
    expect(said).toContain(`cut ${ramp.pipe!.holes.length} blocks of offcut to fill what is free`)
    expect(said.indexOf('blocks of offcut')).toBeLessThan(said.indexOf('Lay it in the notches'))
    expect(said.split("free under the notch's floor")).toHaveLength(2)
  })

  test('is on the shopping list, a piece for each screw', () => {
    expect(bookletSaid(high, ['buying'])).toMatch(/waterproof wood glue for .*packing under the pipe/)
    // two in each block, through the 1 1/2 of a timber and an inch on
    expect(bookletSaid(far, ['buying'])).toMatch(/No\. 10 × 2 1\/2 in, countersunk \d+ needed: .*pipe blocks/)
    expect(bookletSaid(far, ['coping'])).toMatch(/2 screws of No\. 10 × 2 1\/2 \([A-Z]\) in each/)
    for (const text of [high, far])
      expect(bookletSaid(text, ['buying'])).toContain(
        `${solvedRamp(text).pipe!.holes.length} pieces offcuts of timber, packing under the pipe`,
      )
    expect(bookletSaid(templateText('quarter-mm'), ['buying'])).not.toContain('packing')
  })

  test('is nothing where the pipe has a timber of its own', () => {
    expect(bookletSaid(templateText('quarter-mm'), ['coping'])).not.toContain('offcut')
  })
})
