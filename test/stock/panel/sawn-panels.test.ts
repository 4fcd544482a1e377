import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/design/design.ts'
import { inch } from '../../../src/geometry/inch.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { sawSheets } from '../../../src/stock/panel/sawn-panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { designOf } from '../../support/design-of.ts'
import { templateText } from '../../support/templates.ts'
import { sawnBy } from './sawn-by.ts'

const read = (name: string): Design => {
  return designOf(templateText(name))
}

/** Tenths of a mm from 1.6 to 4, and 64ths of an inch from 1/16 to 5/32; the whole ones have no rounding. */
const tenths = Array.from({ length: 25 }, (_, i) => (16 + i) / 10)
const parts64 = Array.from({ length: 7 }, (_, i) => ((4 + i) * inch) / 64)

describe('panels as they are sawn', () => {
  test.each([
    ['quarter-mm', tenths],
    ['quarter-in', parts64],
  ])('of %s part two pieces of skin by one cut, whatever the kerf', (name, kerfs) => {
    const design = read(name)
    const { sheets: parts } = partsOf(design, drawDesign(design))
    const skins = parts.filter(({ mark }) => mark.startsWith('K'))
    for (const kerf of kerfs) {
      const stock = { ...design.stock, kerf }
      const panels = sawSheets(layPanels({ ...design, stock }, skins), stock).flatMap((own) => own.panels)
      expect(Math.max(...panels.map(({ pieces }) => pieces.length))).toBe(2)
      for (const { pieces, steps, size } of panels) {
        const own = pieces.map(({ part, box }) => ({ mark: part.mark, box }))
        const { faults, thin } = sawnBy(steps, own, { x0: 0, y0: 0, x1: size[1], y1: size[0] }, kerf)
        expect([faults, thin], `${kerf}`).toEqual([[], []])
        // the panel's corner: two cuts free one, two more the other
        expect(steps, `${kerf}`).toHaveLength(2 * pieces.length)
      }
    }
  })
})
