import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dimension, dimensionParts } from '../../src/drafting/dimension/dimension.ts'
import { readableAngle } from '../../src/drafting/dimension/figure.ts'
import { groupDimensions, type Measure } from '../../src/drafting/dimension/group-dimensions.ts'
import { draftStyle } from '../../src/drafting/line-types.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { assertNear } from '../support/near.ts'
import { boxOf, opened, segmentInBox, segmentsCross } from '../support/strokes.ts'

const degrees = (n: number): number => (n * Math.PI) / 180

describe('a figure', () => {
  test.each([
    [0, 0],
    [45, 45],
    [90, 90],
    [-90, 90],
    [135, -45],
    [180, 0],
    [225, 45],
    [270, 90],
    [-45, -45],
    [359, -1],
    [450, 90],
  ])('on a line of %i° reads at %i°: from below or from the right', (line, read) => {
    assertNear(readableAngle(degrees(line)), degrees(read), 1e-9)
  })
})

describe('a dimension', () => {
  test('is as long on paper as what it measures, along its own direction, at every turn', () => {
    for (const turn of [0, 30, 90, 160, 270]) {
      const angle = degrees(turn)
      const at = (along: number, up: number) => ({
        x: 50 + along * Math.cos(angle) - up * Math.sin(angle),
        y: 20 + along * Math.sin(angle) + up * Math.cos(angle),
      })
      const facts = { from: at(0, 0), to: at(60, 8), angle, through: at(0, -12), figure: '60' }
      const { ends, extensions, figure } = dimensionParts(facts, draftStyle)
      assertNear(pointDistance(...ends), 60, 1e-9)
      // each extension begins off its point, on the straight line down to the dimension line, and runs past it
      assertNear(pointDistance(extensions[0]![0], at(0, -1)), 0, 1e-9)
      assertNear(pointDistance(extensions[0]![1], at(0, -12 - 0.7 * 2.5)), 0, 1e-9)
      assertNear(pointDistance(extensions[1]![0], at(60, 7)), 0, 1e-9)
      expect(Math.cos(figure.angle)).toBeGreaterThanOrEqual(-1e-9)
    }
  })

  test('has thin lines, a tick across each end, and its figure clear over the line', () => {
    const marks = dimension(
      { from: { x: 0, y: 0 }, to: { x: 40, y: 0 }, angle: 0, through: { x: 0, y: -9 }, figure: '1 234' },
      draftStyle,
    )
    const { lines, words } = opened(marks)
    expect(lines.filter(({ width }) => width === 0.25)).toHaveLength(3)
    const ticks = lines.filter(({ width }) => width === 0.5)
    expect(ticks).toHaveLength(2)
    for (const [i, x] of [0, 40].entries()) {
      const [a, b] = [ticks[i]!.points[0]!, ticks[i]!.points.at(-1)!]
      assertNear((a.x + b.x) / 2, x, 1e-9)
      assertNear((a.y + b.y) / 2, -9, 1e-9)
      assertNear(Math.atan2(b.y - a.y, b.x - a.x), Math.PI / 4, 1e-9)
    }
    const box = boxOf(words[0]!.corners)
    assertNear((box.x0 + box.x1) / 2, 20, 1e-9)
    expect(box.y0).toBeGreaterThan(-9)
    // nearer its own line than its own height
    expect(box.y0).toBeLessThan(-9 + 2.5)
  })

  test('puts a figure that is too long past its end, over the line that goes on under it', () => {
    const facts = {
      from: { x: 0, y: 0 },
      to: { x: 3, y: 0 },
      angle: 0,
      through: { x: 0, y: -9 },
      figure: '1000',
    }
    for (const [place, way] of [
      ['past-to', 1],
      ['past-from', -1],
    ] as const) {
      const { line, figure } = dimensionParts({ ...facts, place }, draftStyle)
      const box = boxOf(opened([figure]).words[0]!.corners)
      if (way > 0) expect(box.x0).toBeGreaterThan(3)
      else expect(box.x1).toBeLessThan(0)
      expect(Math.min(line[0].x, line[1].x)).toBeLessThanOrEqual(Math.min(0, box.x0))
      expect(Math.max(line[0].x, line[1].x)).toBeGreaterThanOrEqual(Math.max(3, box.x1))
    }
  })
})

const outline = { x0: 0, y0: 0, x1: 160, y1: 60 }

/** Lines and words of each, in turn; the lines of a dimension are its first strokes. */
const faults = (
  measures: readonly Measure[],
): { readonly found: readonly string[]; readonly placed: number } => {
  const { placed } = groupDimensions(measures, outline, draftStyle)
  const drawn = placed.flatMap((one) => (one ? [{ one, ...opened(one.marks, undefined, 1e6) }] : []))
  const found: string[] = []
  drawn.forEach((a, i) => {
    const box = boxOf(a.words[0]!.corners)
    // below the letters' line only brackets hang; a figure's own line runs there
    const bare = { ...box, y0: box.y0 + 0.01, y1: box.y1 - 0.01 }
    drawn.forEach((b, k) => {
      for (const { points } of b.lines)
        if (i !== k && segmentInBox(points[0]!, points.at(-1)!, bare))
          found.push(`a line of ${b.one.measure.figure} in the figure ${a.one.measure.figure}`)
      if (k <= i) return
      const other = boxOf(b.words[0]!.corners)
      if (box.x0 < other.x1 && other.x0 < box.x1 && box.y0 < other.y1 && other.y0 < box.y1)
        found.push(`figures ${a.one.measure.figure} and ${b.one.measure.figure}`)
      // thin lines of each: a dimension line is never crossed; extension lines may cross each other
      const thin = (of: typeof a) => of.lines.filter(({ width }) => width === 0.25)
      const [la, lb] = [thin(a), thin(b)]
      for (const [m, p] of la.entries())
        for (const [n, q] of lb.entries()) {
          if (m < la.length - 1 && n < lb.length - 1) continue
          if (segmentsCross(p.points[0]!, p.points.at(-1)!, q.points[0]!, q.points.at(-1)!))
            found.push(`${a.one.measure.figure} crosses ${b.one.measure.figure}`)
        }
    })
    const { side } = a.one
    const beyond = { below: -box.y1, above: box.y0 - 60, left: -box.x1, right: box.x0 - 160 }[side]
    if (!(beyond > 0)) found.push(`${a.one.measure.figure} lies within the outline`)
  })
  return { found, placed: drawn.length }
}

const level = (x0: number, x1: number, sides: Measure['sides'] = ['below', 'above']): Measure => ({
  from: { x: x0, y: 0 },
  to: { x: x1, y: 0 },
  figure: `${Math.round((x1 - x0) * 10)}`,
  sides,
})

describe('grouped dimensions', () => {
  test('stand in rows, the shorter nearer the outline, and a chain shares one row', () => {
    const { placed } = groupDimensions(
      [level(0, 160), level(0, 100), level(0, 50), level(50, 100)],
      outline,
      draftStyle,
    )
    expect(placed.map((one) => [one?.side, one?.row])).toEqual([
      ['below', 3],
      ['below', 2],
      ['below', 1],
      ['below', 1],
    ])
  })

  test('lie on the other side where one would be crossed', () => {
    const { placed } = groupDimensions([level(0, 80), level(40, 130)], outline, draftStyle)
    expect(placed.map((one) => one?.side)).toEqual(['below', 'above'])
  })

  test('that cannot be kept apart are said, not drawn', () => {
    const { placed } = groupDimensions(
      [level(0, 80, ['below']), level(40, 130, ['below'])],
      outline,
      draftStyle,
    )
    expect(placed.filter((one) => one === null)).toHaveLength(1)
  })

  test('never cross, never lie on words, and stand outside the outline, whatever is measured', () => {
    let [looked, wanted] = [0, 0]
    const end = fc.integer({ min: 0, max: 160 })
    const rise = fc.integer({ min: 0, max: 60 })
    const measure: fc.Arbitrary<Measure> = fc.oneof(
      fc.tuple(end, end, rise).map(
        ([a, b, y]): Measure => ({
          from: { x: Math.min(a, b), y },
          to: { x: Math.max(a, b) + 1, y },
          figure: `${Math.abs(b - a)} 7/16`,
          sides: ['below', 'above'],
        }),
      ),
      fc.tuple(rise, rise, end).map(
        ([a, b, x]): Measure => ({
          from: { x, y: Math.min(a, b) },
          to: { x, y: Math.max(a, b) + 1 },
          figure: `${Math.abs(b - a)}`,
          sides: ['left', 'right'],
        }),
      ),
    )
    fc.assert(
      fc.property(fc.array(measure, { minLength: 2, maxLength: 9 }), (measures) => {
        const { found, placed } = faults(measures)
        looked += placed
        wanted += measures.length
        expect(found).toEqual([])
      }),
      { numRuns: 150 },
    )
    // most find a place, else nothing was shown
    expect(looked).toBeGreaterThan(0.75 * wanted)
  })
})
