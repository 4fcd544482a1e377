import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, QuarterDesign } from '../../../src/design/design.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { isSide } from '../../../src/stock/sheet-part.ts'
import { job } from '../../ramp/framed.ts'
import { designOf } from '../../support/design-of.ts'
import { templates, templateText } from '../../support/templates.ts'
import { panelFaults } from './panel-faults.ts'

const laid = (design: Design) => {
  const { sheets } = partsOf(design, drawDesign(design))
  return { sheets: layPanels(design, sheets), parts: sheets, design }
}

const base = designOf(templateText('quarter-mm'))

/** A pair of a ramp and a twin now and then, on panels of any size, with any saw. */
const generated: fc.Arbitrary<Design> = fc
  .record({
    job,
    twin: fc.boolean(),
    kerf: fc.constantFrom(1.6, 3, 3.2, 6),
    trim: fc.constantFrom(0, 5, 12),
    offcut: fc.option(
      fc.record({ width: fc.integer({ min: 100, max: 900 }), length: fc.integer({ min: 900, max: 2000 }) }),
    ),
    goodFace: fc.constantFrom('any' as const, 'out' as const),
    clamped: fc.constantFrom(1, 1, 1, 2),
  })
  .map(({ job: { design, panel, units }, twin, kerf, trim, offcut, goodFace, clamped }): Design => {
    const sheet = { thickness: 18, material: 'plywood' } as const
    const own: QuarterDesign = { ...design, name: 'own', deckBoard: sheet }
    return {
      ...base,
      units,
      ramps: twin ? [own, { ...own, name: 'twin', width: design.width - 60 }] : [own],
      stock: {
        ...base.stock,
        panel,
        kerf,
        trim,
        panels: [{ sheet, size: panel, clamped, goodFace }],
        offcuts: offcut ? [{ sheet, size: [offcut.width, offcut.length], count: 2 }] : [],
      },
    }
  })

describe('panels', () => {
  test.each([
    [1, [], 2],
    [2, [2], 0],
    [3, [2], 0],
  ] as const)('%d alike offcuts where two are clamped are sawn as couples', (count, clamped, bought) => {
    const sheet = { thickness: 18, material: 'plywood' } as const
    const offcuts = [{ sheet, size: [700, 1500], count }] as const
    const panels = [{ sheet, size: [1220, 2440], clamped: 2, goodFace: 'any' }] as const
    const { sheets } = laid({ ...base, stock: { ...base.stock, offcuts, panels } })
    const own = sheets.find(({ parts }) => parts.some(({ part }) => part === 'side'))!
    expect(own.lost).toEqual([])
    expect(own.panels.filter(({ there }) => there).map((panel) => panel.clamped)).toEqual(clamped)
    expect(own.panels.reduce((sum, panel) => sum + (panel.there ? 0 : panel.clamped), 0)).toBe(bought)
  })

  test('are numbered as they are sawn: clamped or single, what gives sides before skin and deck, and steel last', () => {
    const sheet = { thickness: 18, material: 'plywood' } as const
    const steel = { thickness: 1.5, material: 'steel' } as const
    const [own] = base.ramps as readonly QuarterDesign[]
    // two deck boards are sawn as one, the rib of the one alone
    const first = {
      ...own!,
      name: 'a',
      deckBoard: sheet,
      skin: [steel, own!.skin[0]!],
      sides: { ...own!.sides, count: 3 },
    }
    const ramps = [first, { ...first, name: 'b', sides: own!.sides }]
    const panels = [{ sheet, size: [700, 1500], clamped: 2, goodFace: 'any' }] as const
    const { sheets } = laid({ ...base, ramps, stock: { ...base.stock, panels } })
    const all = sheets.flatMap((one) => one.panels)
    expect(all.map(({ number }) => number)).toEqual(all.map((_, i) => i + 1))
    const turn = ({ sheet: of, pieces, clamped }: (typeof all)[number]): string =>
      `${pieces.some(({ part }) => isSide(part)) ? 'side' : of.material}${clamped > 1 ? 's clamped' : ''}`
    expect(all.map(turn).filter((name, i, list) => name !== list[i - 1])).toEqual([
      'sides clamped',
      'side',
      'plywoods clamped',
      'plywood',
      'steel',
    ])
  })

  test('of every template hold every piece once, a kerf apart, inside the trim, along the grain, where its numbers lead', () => {
    let couples = 0
    for (const name of templates) {
      const { sheets, parts, design } = laid(designOf(templateText(name)))
      const found = panelFaults(sheets, parts, design)
      expect(found.faults).toEqual([])
      couples += found.couples
    }
    expect(couples).toBeGreaterThan(10)
  })

  test('of every template have each corner on whole steps of a tape: from one end of a side to the other it is as long as it is said to be', () => {
    let [sides, found] = [0, 0]
    for (const name of templates) {
      const design = designOf(templateText(name))
      // what a rule has, and what a figure shows
      const [step, shown] = design.units === 'mm' ? [1, 1] : [25.4 / 16, 25.4 / 32]
      const told = (mm: number): number => Math.round(mm / shown)
      for (const { x, y, second, box, turn } of laid(design).sheets.flatMap(({ panels }) =>
        panels.flatMap(({ pieces }) => pieces),
      )) {
        if (!second || turn % 90 !== 0) continue
        sides++
        const off = [x, y].map((at) => Math.abs(at / step - Math.round(at / step)))
        expect(Math.max(...off), name).toBeLessThan(1e-6)
        expect(told(box.x1) - told(box.x0), name).toBe(told(box.x1 - box.x0))
        expect(told(box.y1) - told(box.y0), name).toBe(told(box.y1 - box.y0))
        found++
      }
    }
    expect(found).toBe(sides)
    expect(sides).toBeGreaterThan(14)
  })

  test('of made-up designs do so too', () => {
    let [couples, pieces, curved] = [0, 0, 0]
    fc.assert(
      fc.property(generated, (design) => {
        const own = laid(design)
        const found = panelFaults(own.sheets, own.parts, design)
        expect(found.faults).toEqual([])
        couples += found.couples
        pieces += found.pieces
        curved += own.sheets
          .flatMap(({ panels }) => panels.flatMap((panel) => panel.pieces))
          .filter(({ second }) => second).length
      }),
      { numRuns: 12 },
    )
    expect(couples).toBeGreaterThan(20)
    expect(pieces).toBeGreaterThan(60)
    expect(curved).toBeGreaterThan(8)
  })
})
