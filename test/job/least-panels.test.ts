import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { rectangle } from '../../src/geometry/path.ts'
import { leastByArea, leastInRows } from '../../src/job/near/least-panels.ts'
import { layPanels } from '../../src/stock/panel/panels.ts'
import type { SheetPart } from '../../src/stock/sheet-part.ts'
import { templateText } from '../support/templates.ts'

const reading = readDesign(templateText('quarter-mm'))
if ('problems' in reading) throw new Error('a template is faulty')
const { design } = reading
const sheet = { thickness: 9, material: 'plywood' } as const

const partOf = ([width, height]: readonly [number, number], grain: SheetPart['grain']): SheetPart => ({
  mark: '',
  ramp: '',
  part: 'skin',
  words: '',
  sheet,
  outline: rectangle(0, 0, width, height),
  grain,
  piece: null,
  faced: false,
})

/** Pieces of a skin, much the same; half a panel in width is 610. */
const jobs = fc
  .record({
    short: fc.integer({ min: 560, max: 1150 }),
    more: fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 60 })), {
      minLength: 1,
      maxLength: 9,
    }),
    grain: fc.constantFrom('x' as const, null),
    kerf: fc.constantFrom(1, 3, 6),
    trim: fc.constantFrom(0, 5),
  })
  .map(({ short, more, ...job }) => ({
    ...job,
    sizes: more.map(([long, wide]) => [short + wide + long, short + wide] as const),
  }))

test('no layout of rectangles takes fewer panels than rows of them do; most take as many', () => {
  const seen = { jobs: 0, met: 0, byAreaLess: 0 }
  fc.assert(
    fc.property(jobs, ({ sizes, grain, kerf, trim }) => {
      const own = { ...design, stock: { ...design.stock, kerf, trim, panels: [], offcuts: [] } }
      const parts = sizes.map((size) => partOf(size, grain))
      const [laid] = layPanels(own, parts)
      expect(laid!.lost).toEqual([])
      const rows = leastInRows(own, { sheet, parts })
      const area = leastByArea(own, { sheet, parts })
      expect(rows).toBeLessThanOrEqual(laid!.panels.length)
      expect(area).toBeLessThanOrEqual(laid!.panels.length)
      seen.jobs++
      if (Math.max(rows, area) === laid!.panels.length) seen.met++
      if (area < rows) seen.byAreaLess++
    }),
    { numRuns: 250, seed: 7 },
  )
  expect(seen.jobs).toBe(250)
  expect(seen.byAreaLess).toBeGreaterThan(25)
  expect(seen.met).toBeGreaterThan(100)
})

test('two of just more than half the width lie in a row, of half of it side by side', () => {
  const least = (width: number): number =>
    leastInRows(
      { ...design, stock: { ...design.stock, kerf: 3, panels: [], offcuts: [] } },
      { sheet, parts: Array.from({ length: 4 }, () => partOf([width, 1218], 'x')) },
    )
  // (1220 − 3) / 2 = 608.5; in the row (2440 + 3) / (608.6 + 3) = 3.99
  expect(least(608.5)).toBe(0)
  expect(least(608.6)).toBe(2)
})
