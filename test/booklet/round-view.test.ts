import { expect, test } from 'vitest'
import { isometric, roundView } from '../../src/booklet/views/round/round-view.ts'
import { readDesign } from '../../src/design/read.ts'
import type { SolvedRamp } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'

test('lengths along all three axes are to one scale, 120° apart on paper (ISO 5456-3, from memory)', () => {
  const ends = [
    isometric({ x: 700, y: 0 }, 0, 1 / 20),
    isometric({ x: 0, y: 700 }, 0, 1 / 20),
    isometric({ x: 0, y: 0 }, 700, 1 / 20),
  ]
  for (const { x, y } of ends) assertNear(Math.hypot(x, y), 35, 1e-9)
  const turn = ends.map(({ x, y }) => (Math.atan2(y, x) * 180) / Math.PI)
  expect(turn.map(Math.round)).toEqual([30, 90, 150])
})

test('a ramp in the round is as wide and as high as its length, width and height make it', () => {
  let looked = 0
  for (const name of templates) {
    const reading = readDesign(templateText(name))
    if ('problems' in reading) throw new Error(name)
    for (const ramp of drawDesign(reading.design).ramps as readonly SolvedRamp[]) {
      const { box, parts } = roundView(ramp, reading.design.units, 1 / 10)
      const sides = (ramp.length + ramp.width) / 10
      // pipe, skin and deck board stand out by their own thickness
      const out = 0.1 * (ramp.skin.reduce((sum, { sheet }) => sum + sheet.thickness, 0) + 60)
      expect(box.x1 - box.x0).toBeGreaterThan(sides * Math.cos(Math.PI / 6) - 12)
      expect(box.x1 - box.x0).toBeLessThan(sides * Math.cos(Math.PI / 6) + out)
      const high = ramp.kind === 'flat' ? ramp.heights.frame : ramp.transition.heights.frame
      expect(box.y1 - box.y0).toBeLessThan(sides / 2 + high / 10 + out)
      expect(box.y1 - box.y0).toBeGreaterThan((ramp.width / 2 + high) / 10)
      expect(parts.find((part) => part.name === 'timbers')!.marks.length).toBeGreaterThanOrEqual(
        2 * ramp.studs.length,
      )
      looked++
    }
  }
  expect(looked).toBeGreaterThanOrEqual(8)
})
