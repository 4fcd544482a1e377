import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/design/design.ts'
import { rectangle } from '../../../src/geometry/path.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { nestTrimmed } from '../../../src/stock/panel/nest.ts'
import type { PanelKind } from '../../../src/stock/panel/pack.ts'
import { type LaidSheet, layPanels, pieceOf, type SheetPanels } from '../../../src/stock/panel/panels.ts'
import { sawSheets } from '../../../src/stock/panel/sawn-panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import type { SheetPart } from '../../../src/stock/sheet-part.ts'
import { designOf } from '../../support/design-of.ts'
import { assertNear } from '../../support/near.ts'
import { templateText } from '../../support/templates.ts'
import { panelFaults } from './panel-faults.ts'

const read = (name: string): Design => {
  return designOf(templateText(name))
}

const base = read('quarter-and-flat-mm')
const sheet = { thickness: 9, material: 'plywood' } as const

const partOf = (width: number, height: number, grain: SheetPart['grain'], i: number): SheetPart => ({
  mark: `K${i + 1}`,
  ramp: 'flat',
  part: 'skin',
  words: 'layer 1',
  sheet,
  outline: rectangle(0, 0, width, height),
  grain,
  piece: null,
  faced: false,
})

const stockOf = (trim: number, kerf: number): Design => ({
  ...base,
  stock: {
    ...base.stock,
    trim,
    kerf,
    panel: [1220, 2440],
    panels: [{ sheet, size: [1220, 2440], clamped: 1, goodFace: 'any' }],
    offcuts: [],
  },
})

const lay = (parts: readonly SheetPart[], trim = 5, kerf = 3): SheetPanels =>
  sawSheets(layPanels(stockOf(trim, kerf), parts), { kerf })[0]!

/** `K1 5 1221` of each piece along the panel. */
const along = ({ panels }: LaidSheet): readonly (readonly string[])[] =>
  panels.map(({ pieces }) => pieces.map(({ part, box }) => `${part.mark} ${box.x0} ${box.x1}`))

const whole: PanelKind = { length: 2440, width: 1220, count: null }

interface Job {
  readonly parts: readonly SheetPart[]
  readonly trim: number
  readonly kerf: number
}

/** So many in a row on a panel, and so much of its trim that is missing: many go together on its own edges alone. */
const jobs: fc.Arbitrary<Job> = fc
  .record({
    trim: fc.constantFrom(3, 5, 12),
    kerf: fc.constantFrom(1.6, 3, 6),
    rows: fc.array(
      fc.record({
        row: fc.integer({ min: 2, max: 3 }),
        lost: fc.double({ min: 0, max: 2.2, noNaN: true }),
        high: fc.integer({ min: 250, max: 1150 }),
        count: fc.integer({ min: 1, max: 3 }),
        grain: fc.constantFrom<SheetPart['grain']>('x', 'x', null),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ trim, kerf, rows }) => ({
    trim,
    kerf,
    parts: rows
      .flatMap(({ row, lost, high, count, grain }) =>
        Array.from({ length: count }, () => {
          const wide = (2440 - (row - 1) * kerf - lost * trim) / row
          return [Math.floor(wide), high, grain] as const
        }),
      )
      .map(([wide, high, grain], i) => partOf(wide, high, grain, i)),
  }))

describe('a panel less is worth its own edges', () => {
  test('of the quarter and flat: two of 1216 and a kerf take 2435 of a panel that is 2430 trimmed', () => {
    const { sheets: parts } = partsOf(base, drawDesign(base))
    const sheets = sawSheets(layPanels(base, parts), base.stock)
    const own = sheets.find((one) => one.sheet.thickness === 9)!
    // by hand: 1216 + 3 + 1216 = 2435; 833 of 1220 across; the panel with K3 first
    expect(along(own)).toEqual([
      ['K6 0 1216', 'K3 1219 2435'],
      ['K4 0 1216', 'K5 1219 2435'],
    ])
    // beside the lower one of each couple, a kerf above it: what is called left is left
    own.panels.forEach(({ pieces, rest }) => {
      assertNear(rest!.x0, 1219, 1e-6)
      assertNear(rest!.y0, pieces[1]!.box.y1 + 3, 1e-6)
      assertNear(rest!.x1, 2440, 1e-6)
      assertNear(rest!.y1, 1220, 1e-6)
    })
    expect(panelFaults(sheets, parts, base).faults).toEqual([])
  })

  test.each([
    // 1215 + 3 + 1212 = 2430: a trim of 5 would fit on both ends, and the near one is a cut for nothing
    [5, [1215, 1212], ['K1 0 1215', 'K2 1218 2430'], 1],
    // 1216 + 3 + 1216 = 2435
    [5, [1216, 1216], ['K1 0 1216', 'K2 1219 2435'], 1],
    // 1219 + 3 + 1218 = 2440
    [5, [1219, 1218], ['K1 0 1219', 'K2 1222 2440'], 1],
    // 1219 + 3 + 1219 = 2441: each alone, in a corner
    [5, [1219, 1219], ['K1 0 1219'], 2],
    // who trims 10 does not trust the edges: 1207 + 3 + 1210 = 2420 keeps both ends off them
    [10, [1210, 1207], ['K1 10 1220', 'K2 1223 2430'], 1],
    // 1212 + 3 + 1215 = 2430: the far end is kept, for a panel less
    [10, [1215, 1212], ['K1 10 1225', 'K2 1228 2440'], 1],
    // 1212 + 3 + 1216 = 2431: both are
    [10, [1216, 1212], ['K1 0 1216', 'K2 1219 2431'], 1],
    // alone it is trimmed too
    [10, [1216], ['K1 10 1226'], 1],
  ])('trimmed by %d, %j of a panel 2440 long', (trim, wide, first, count) => {
    const own = lay(
      wide.map((width, i) => partOf(width, 800, 'x', i)),
      trim,
    )
    expect(own.panels).toHaveLength(count)
    expect(along(own)[0]).toEqual(first)
  })

  test('where the area allows no panel less a trim that is asked for stays', () => {
    // by hand: 5 of 1200 × 1216 want 2 to a panel on its own edges or trimmed, 3 panels
    const parts = Array.from({ length: 5 }, (_, i) => partOf(1200, 1180, 'x', i))
    const own = lay(parts, 10)
    expect(own.panels).toHaveLength(3)
    const couples = own.panels.filter(({ pieces }) => pieces.length > 1)
    expect(couples).toHaveLength(2)
    for (const { box } of couples.flatMap(({ pieces }) => pieces)) {
      expect(box.x0).toBeGreaterThanOrEqual(10)
      expect(box.x1).toBeLessThanOrEqual(2430)
    }
  })

  test.each([
    // alone: across at 1180, 1220 long, then along 1180; trimmed it were two cuts of 1220 and two of 1180
    [[[1180, 500]], ['K1 0 1180'], ['cross', 'rip']],
    // longer than the panel is wide by so much that along comes first: 2440 + 500 for 1220 + 2300
    [[[2300, 500]], ['K1 0 2300'], ['rip', 'cross']],
    // two in a row: along above both, then across behind each; trimmed it were five, each freed alone four
    [
      [
        [1180, 500],
        [1000, 500],
      ],
      ['K1 0 1180', 'K2 1183 2183'],
      ['rip', 'cross', 'cross'],
    ],
  ] as const)('%j on a panel of its own', (sizes, lies, kinds) => {
    const own = lay(sizes.map(([wide, high], i) => partOf(wide, high, 'x', i)))
    expect(along(own)).toEqual([lies])
    const [{ steps, pieces }] = own.panels as [SheetPanels['panels'][number]]
    expect(steps.map(({ kind }) => kind)).toEqual(kinds)
    expect(pieces[0]!.box.y0).toBe(0)
  })

  test('an offcut in the garage has edges of its own: it is trimmed', () => {
    const design = stockOf(5, 3)
    const offcuts = [{ sheet, size: [800, 1300] as const, count: 1 }]
    const own = layPanels({ ...design, stock: { ...design.stock, offcuts } }, [partOf(1180, 500, 'x', 0)])[0]!
    expect(own.panels[0]!.there).toBe(true)
    expect(along(own)).toEqual([['K1 5 1185']])
  })

  test("made-up jobs lie a kerf apart inside their panels, on no more than trimmed, in the panel's own corner unless more trim is asked for", () => {
    let [fewer, couples] = [0, 0]
    fc.assert(
      fc.property(jobs, ({ parts, trim, kerf }) => {
        const sheets = [lay(parts, trim, kerf)]
        const found = panelFaults(sheets, parts, stockOf(trim, kerf))
        expect(found.faults).toEqual([])
        couples += found.couples
        const pieces = parts.map((part) => pieceOf(part, false, 1))
        const saw = { kerf, trim, step: 1 }
        const before = nestTrimmed(pieces, [whole], saw)
        const [{ panels, lost }] = sheets as [SheetPanels]
        expect(lost).toHaveLength(before.lost.length)
        expect(panels.length).toBeLessThanOrEqual(before.filled.length)
        fewer += Number(panels.length < before.filled.length)
      }),
      { numRuns: 120, seed: 7 },
    )
    expect(couples).toBeGreaterThan(100)
    expect(fewer).toBeGreaterThan(10)
  })
})
