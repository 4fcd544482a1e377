import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/design/design.ts'
import { inch } from '../../../src/geometry/inch.ts'
import { rectangle } from '../../../src/geometry/path.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { closedUp } from '../../../src/stock/panel/close-up.ts'
import { nestTrimmed } from '../../../src/stock/panel/nest.ts'
import type { Filled, PanelKind, Place } from '../../../src/stock/panel/pack.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import type { Piece } from '../../../src/stock/panel/piece.ts'
import { blankOf, shapeOf } from '../../../src/stock/panel/place/shape.ts'
import { sawPanel } from '../../../src/stock/panel/saw-order.ts'
import { sawSheets } from '../../../src/stock/panel/sawn-panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { designOf } from '../../support/design-of.ts'
import { assertNear } from '../../support/near.ts'
import { templateText } from '../../support/templates.ts'

const read = (name: string): Design => {
  return designOf(templateText(name))
}

const sidesOf = (name: string) => {
  const design = read(name)
  return partsOf(design, drawDesign(design)).sheets.filter(({ faced }) => faced)
}

const pieceOf = (outline: Parameters<typeof blankOf>[0], i: number, grain: Piece['grain']): Piece => ({
  blank: blankOf(outline),
  alike: `${i}`,
  grain,
  faced: false,
  mustFace: false,
})

const whole: PanelKind = { length: 2440, width: 1220, count: null }
const curved = sidesOf('quarter-mm').map(({ outline }, i) => pieceOf(outline, i, null))

/** Both sides of a ramp, and strips and smaller rectangles that may lie beyond them. */
const jobs = fc.record({
  kerf: fc.constantFrom(1.6, 3, inch / 8, 6),
  step: fc.constantFrom(1, inch / 16),
  rectangles: fc.array(
    fc.record({ long: fc.integer({ min: 300, max: 2430 }), high: fc.integer({ min: 50, max: 160 }) }),
    { minLength: 1, maxLength: 5 },
  ),
})

const boxOf = ({ x, y, shape }: Place) => ({ x0: x, y0: y, x1: x + shape.width, y1: y + shape.height })

const stepsOf = ({ places }: Filled, { kerf, step }: { kerf: number; step: number }): number =>
  sawPanel(
    places.map((place) => ({ mark: `${place.piece}`, box: boxOf(place), square: place.shape.square })),
    { x0: 0, y0: 0, x1: whole.length, y1: whole.width },
    kerf,
    step,
  ).steps.length

const apartBy = (a: Place, b: Place): number => {
  const [p, q] = [boxOf(a), boxOf(b)]
  return Math.max(p.x0 - q.x1, q.x0 - p.x1, p.y0 - q.y1, q.y0 - p.y1)
}

describe('rectangles beyond what is curved', () => {
  test.each([
    ['quarter-and-flat-mm', 3, 1],
    ['quarter-and-flat-in', inch / 8, inch / 32],
  ])('of %s lie one saw cut apart, and one cut frees two edges', (name, kerf, told) => {
    const design = read(name)
    const { sheets } = partsOf(design, drawDesign(design))
    const [own] = sawSheets(layPanels(design, sheets), design.stock)
    const { pieces, steps } = own!.panels[0]!
    const flats = pieces.filter(({ second }) => second === null).sort((a, b) => a.box.y0 - b.box.y0)
    const sides = pieces.filter(({ second }) => second !== null)
    expect([flats.length, sides.length]).toEqual([2, 2])
    let taken = Math.max(...sides.map(({ box }) => box.y1))
    for (const { box } of flats) {
      expect(box.y0 - taken - kerf).toBeGreaterThanOrEqual(-1e-6)
      expect(box.y0 - taken - kerf).toBeLessThan(told)
      taken = box.y1
    }
    // one over the sides, one between the flat's two, one over these
    expect(steps.filter(({ kind }) => kind === 'rip')).toHaveLength(3)
    assertNear(own!.panels[0]!.size[0], name.endsWith('mm') ? 1220 : 48 * inch, 1e-6)
  })

  test('of made-up jobs lie nowhere nearer than the kerf and never take a cut more, often fewer', () => {
    let [fewer, moved] = [0, 0]
    fc.assert(
      fc.property(jobs, ({ kerf, step, rectangles }) => {
        const pieces = [
          ...curved,
          ...rectangles.map(({ long, high }, i) => pieceOf(rectangle(0, 0, long, high), i + 2, 'x')),
        ]
        const saw = { kerf, trim: 5, step }
        const before = nestTrimmed(pieces, [whole], saw)
        for (const old of before.filled) {
          const own = { ...old, places: closedUp(old.places, saw) }
          expect(own.places.map(({ piece }) => piece)).toEqual(old.places.map(({ piece }) => piece))
          own.places.forEach((place, k) => {
            const was = old.places[k]!
            if (place.x === was.x && place.y === was.y) return
            moved++
            expect(place.shape.square && place.x <= was.x && place.y <= was.y).toBe(true)
            for (const other of own.places)
              if (other !== place) expect(apartBy(place, other)).toBeGreaterThanOrEqual(kerf - 1e-5)
          })
          const [now, then] = [stepsOf(own, saw), stepsOf(old, saw)]
          expect(now).toBeLessThanOrEqual(then)
          if (now < then) fewer++
        }
      }),
      { numRuns: 60 },
    )
    expect(moved).toBeGreaterThan(30)
    expect(fewer).toBeGreaterThan(10)
  })

  test('on a panel of their own lie one saw cut apart too, the first row where it was', () => {
    const at = (x: number, y: number, wide: number, high: number, piece: number): Place => ({
      shape: shapeOf(blankOf(rectangle(0, 0, wide, high)), 0, false, 3),
      x,
      y,
      piece,
    })
    const loose = [at(10, 10, 2000, 800, 0), at(10, 820, 2000, 83, 1), at(10, 913, 900, 83, 2)]
    const own = closedUp([...loose, at(920, 913, 900, 83, 3)], { kerf: 3, step: 1 })
    expect(own.map(({ x, y }) => [x, y])).toEqual([
      [10, 10],
      [10, 813],
      [10, 899],
      [920, 899],
    ])
    const steps = (places: readonly Place[]) => stepsOf({ kind: whole, places }, { kerf: 3, step: 1 })
    expect(steps(own)).toBeLessThan(steps([...loose, at(920, 913, 900, 83, 3)]))
  })
})
