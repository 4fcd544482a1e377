import { describe, expect, test } from 'vitest'
import { rectangle } from '../../../src/geometry/path.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { nest } from '../../../src/stock/panel/nest.ts'
import type { PanelKind } from '../../../src/stock/panel/pack.ts'
import { isMirrored, layPanels } from '../../../src/stock/panel/panels.ts'
import { blankOf } from '../../../src/stock/panel/place/shape.ts'
import { shuffler } from '../../../src/stock/panel/shuffler.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { designOf } from '../../support/design-of.ts'

/** `18 plywood` to the number of its panels. */
const counts = (text: string): Readonly<Record<string, number>> => {
  const design = designOf(text)
  const solved = drawDesign(design)
  const sheets = layPanels(design, partsOf(design, solved).sheets)
  return Object.fromEntries(
    sheets.map(({ sheet, panels }) => [`${sheet.thickness.toFixed(1)} ${sheet.material}`, panels.length]),
  )
}

const rectangles = (sizes: string) =>
  sizes.split(' ').map((size) => {
    const [a, b] = size.split('x').map(Number)
    const piece = {
      blank: blankOf(rectangle(0, 0, a!, b!)),
      alike: size,
      grain: null,
      faced: false,
      mustFace: false,
    }
    return piece
  })

const saw = { kerf: 0, trim: 0, step: 1 }
const strip = (height: number): readonly PanelKind[] => [{ length: height, width: 20, count: null }]

describe('panels in number', () => {
  test('sixteen rectangles of a strip 20 wide lie within 5 % of the optimum, 20 high', () => {
    // Hopper and Turton, C1-P1: the optimum fills the strip
    const pieces = rectangles('2x12 7x12 8x6 3x6 3x5 5x5 3x12 3x7 5x7 2x6 3x2 4x2 3x4 4x4 9x2 11x2')
    expect(pieces.reduce((sum, { blank: { fine } }) => sum + fine[2]!.x * fine[2]!.y, 0)).toBe(400)
    expect(nest(pieces, strip(21), saw).filled).toHaveLength(1)
    expect(nest(pieces, strip(19), saw).filled.length).toBeGreaterThan(1)
  })

  test('are as few as the area allows where pieces fill them: 12 quarters of a panel are three', () => {
    const pieces = rectangles(Array.from({ length: 12 }, () => '10x10').join(' '))
    expect(nest(pieces, [{ length: 20, width: 20, count: null }], saw).filled).toHaveLength(3)
  })

  test('what lies there is used before anything is bought, and counted', () => {
    const there: PanelKind = { length: 10, width: 10, count: 2 }
    const pieces = rectangles('10x10 10x10 10x10')
    const { filled } = nest(pieces, [{ length: 20, width: 20, count: null }, there], saw)
    expect(filled.filter(({ kind }) => kind === there)).toHaveLength(2)
    expect(filled).toHaveLength(3)
  })

  test('of two sizes are one of each where the larger is begun with', () => {
    // 243 of area is more than 20 × 12; of 7x8, 7x8 and 8x11 no two go side by side on 12 × 12, so that two of these hold too
    // few and three are 432: one of each, 384, is the least
    const pieces = rectangles('7x8 8x11 7x1 7x8 6x6')
    const kinds = [12, 20].map((length): PanelKind => ({ length, width: 12, count: null }))
    const lengths = nest(pieces, kinds, saw).filled.map(({ kind }) => kind.length)
    expect(lengths.sort()).toEqual([12, 20])
  })

  test('of two sizes take no more area than those of one size alone', () => {
    const next = shuffler()
    const sides = Array.from({ length: 60 }, (_, i) => 3 + (i % 14))
    let seen = 0
    for (let i = 0; i < 12; i++) {
      const mixed = next(sides)
      const pieces = rectangles(
        Array.from({ length: 4 + i }, (_, k) => `${mixed[2 * k]}x${mixed[2 * k + 1]}`).join(' '),
      )
      const sizes: readonly PanelKind[] = [
        { length: 30, width: 20, count: null },
        { length: 20 + (i % 5), width: 17 + (i % 3), count: null },
      ]
      const area = (kinds: readonly PanelKind[]): number => {
        const { filled, lost } = nest(pieces, kinds, saw)
        expect(lost).toEqual([])
        return filled.reduce((sum, { kind }) => sum + kind.length * kind.width, 0)
      }
      const alone = Math.min(...sizes.map((kind) => area([kind])))
      const both = area(sizes)
      expect(both).toBeLessThanOrEqual(alone)
      if (both < alone) seen++
    }
    // and both together often take less
    expect(seen).toBeGreaterThan(3)
  })

  test('of a layer that one panel of the larger size holds are that one, not two of the smaller', () => {
    const skin = (panels: string): string => `title: two sizes
units: mm
stock: { panels: [${panels}] }
ramps:
  - width: 1830
    height: { deck: 390 }
    transition: { circle: { surface: 1600 } }
    toe: 40
    deck: 400
    skin: [9 plywood, 9 plywood]
`
    const sizes = ['1250 x 2500', '1525 x 3050'].map((size) => `{ sheet: 9 plywood, size: ${size} }`)
    // both layers: 2.87 m², of 4.65 m² or of two of 3.125 m²
    expect(sizes.map((size) => counts(skin(size))['9.0 plywood'])).toEqual([2, 1])
    expect(counts(skin(sizes.join(', ')))['9.0 plywood']).toBe(1)
    expect(counts(skin(sizes.toReversed().join(', ')))['9.0 plywood']).toBe(1)
  })

  test('and in layout are the same where areas differ by the last bits of a sum, as they do from machine to machine', () => {
    const laid = (parts: readonly number[]) => {
      const pieces = rectangles('1100x1100 1100x1100 1100x1100').map((piece, i) => {
        const { blank } = piece
        const fine = blank.fine.map(({ x, y }) => ({ x: x * (1 + parts[i]! * 1e-12), y }))
        return { ...piece, alike: `${i}`, blank: { ...blank, fine } }
      })
      const { filled } = nest(pieces, [{ length: 2200, width: 2000, count: null }], saw)
      return filled.map(({ places }) =>
        places.map(({ piece, x, y }) => [piece, Math.round(x), Math.round(y)]),
      )
    }
    expect(laid([0, 0, 0])).toHaveLength(2)
    for (const parts of [
      [2, 1, 0],
      [0, 1, 2],
      [0, 2, 1],
    ])
      expect(laid(parts)).toEqual(laid([0, 0, 0]))
  })

  test('of one ramp as it is bought', () => {
    // common practice, no source: a ramp 96 wide, frame radius 66, frame height 23 1/4, toe 1 1/2, side 61 1/4 long takes one
    // panel of 5/8 for both sides, two of 3/8, one hardboard of 1/4
    expect(
      counts(`title: one
units: in
ramps:
  - width: 96
    height: { frame: 23 1/4 }
    transition: { circle: { frame: 66 }, tangent: { frame: 0 } }
    toe: 1 1/2
    length: 61 1/4
    sides: { thickness: 5/8 }
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
`),
    ).toEqual({ '15.9 plywood': 1, '9.5 plywood': 2, '6.3 hardboard': 1 })
  })

  test('a side as long as its panel keeps the ends of that, and a longer one is sawn in pieces; the same twice', () => {
    const long = (length: number) => {
      const design = designOf(`title: long
units: mm
ramps:
  - width: 1216
    height: { deck: 560 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    length: ${length}
    skin: [9 plywood]
`)
      const { sheets } = partsOf(design, drawDesign(design))
      return [layPanels(design, sheets), layPanels(design, sheets)] as const
    }
    const [[sides], again] = long(2440)
    expect(sides!.panels).toHaveLength(1)
    expect(sides!.panels[0]!.pieces.map(({ box }) => [box.x0, Math.round(box.x1)])).toEqual([
      [0, 2440],
      [0, 2440],
    ])
    expect(JSON.stringify(again[0])).toBe(JSON.stringify(sides))
    const longer = long(2441)[0][0]!
    expect(longer.lost).toEqual([])
    const marks = longer.panels.flatMap(({ pieces }) => pieces.map(({ part }) => part.mark))
    expect(marks.filter((mark) => mark.startsWith('S')).sort()).toEqual(['S1a', 'S1b', 'S2a', 'S2b'])
  })

  test('a panel with its better face out on both sides takes no turned one', () => {
    const pair = (face: string): string => `title: pair
units: mm
stock: { panels: [{ sheet: 18 plywood, size: 1220 x 2440, good-face: ${face} }] }
ramps:
  - width: 1216
    height: { deck: 1080 }
    transition: { circle: { surface: 2400 } }
    toe: 40
    deck: 600
    skin: [9 plywood]
`
    const overs = (text: string): readonly boolean[] => {
      const design = designOf(text)
      const [sides] = layPanels(design, partsOf(design, drawDesign(design)).sheets)
      return sides!.panels.flatMap(({ pieces }) => pieces.map(({ over }) => over))
    }
    expect(overs(pair('any')).filter(Boolean)).toHaveLength(1)
    expect(overs(pair('out'))).toEqual([false, false])
    // one each: the second is traced from the first, which lies as the pages do
    const design = designOf(pair('out'))
    const [sides] = layPanels(design, partsOf(design, drawDesign(design)).sheets)
    expect(sides!.panels.map(({ number, pieces }) => [number, ...pieces.map(isMirrored)])).toEqual([
      [1, false],
      [2, true],
    ])
  })
})
