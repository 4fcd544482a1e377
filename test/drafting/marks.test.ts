import { describe, expect, test } from 'vitest'
import { balloon } from '../../src/drafting/balloon.ts'
import { callout, calloutBox } from '../../src/drafting/callout.ts'
import { angleDimension } from '../../src/drafting/dimension/angle-dimension.ts'
import { radiusDimension } from '../../src/drafting/dimension/radius-dimension.ts'
import { runningDimension } from '../../src/drafting/dimension/running-dimension.ts'
import { spread } from '../../src/drafting/dimension/spread.ts'
import { leader } from '../../src/drafting/leader.ts'
import { levelMark } from '../../src/drafting/level-mark.ts'
import { draftStyle, lineTypes } from '../../src/drafting/line-types.ts'
import { chooseScale } from '../../src/drafting/scale.ts'
import { scaleBar } from '../../src/drafting/scale-bar.ts'
import { sectionLine } from '../../src/drafting/section-line.ts'
import { titleBlock } from '../../src/drafting/title-block.ts'
import { drawingBounds } from '../../src/drawing/drawing-bounds.ts'
import { pathBounds } from '../../src/geometry/bounds.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { assertNear } from '../support/near.ts'
import { overlaps } from '../support/overlaps.ts'
import { boxOf, opened, segmentInBox } from '../support/strokes.ts'

const style = draftStyle

describe('line types', () => {
  // ISO 128-2, from memory: widths 2 : 1 in steps of √2; dash 12 d, gap 3 d, long dash 24 d, dot at most half a d
  test('are two widths, 2 : 1, with dashes that follow from the narrow one', () => {
    for (const d of [0.13, 0.18, 0.25, 0.35]) {
      const lines = lineTypes(d)
      expect(lines.outline).toEqual({ width: 2 * d })
      expect(lines.thin).toEqual({ width: d })
      expect(lines.hidden.dash!.map((mm) => Math.round(mm / d))).toEqual([12, 3])
      for (const [i, times] of [24, 3, 0.5, 3].entries()) assertNear(lines.axis.dash![i]!, times * d, 1e-9)
    }
  })
})

describe('numbers spread apart', () => {
  test('stay where they are when there is room', () => {
    expect(spread([0, 5, 10], 4)).toEqual([0, 5, 10])
  })

  test('share their move about their own middle', () => {
    const places = spread([10, 10, 10], 4)
    for (const [i, at] of [6, 10, 14].entries()) assertNear(places[i]!, at, 1e-12)
  })

  test('come no farther than they may, nor nearer to each other for it', () => {
    const places = spread([7, 8, 9, 9.5], 2, 10)
    assertNear(places[3]!, 10, 1e-12)
    places.slice(1).forEach((at, i) => {
      expect(at - places[i]!).toBeGreaterThanOrEqual(2 - 1e-12)
    })
  })

  test('keep each pair as far apart as is said of it', () => {
    const places = spread([0, 1, 2], [3, 5])
    assertNear(places[1]! - places[0]!, 3, 1e-12)
    assertNear(places[2]! - places[1]!, 5, 1e-12)
  })

  // the least squares answer has no better neighbour: a slow look at small moves of runs of them
  test('move less, in squares, than any other that keeps the distance', () => {
    const wanted = [0, 1, 1.5, 7, 8, 8.2, 20]
    const apart = 2
    const cost = (places: readonly number[]): number =>
      places.reduce((sum, at, i) => sum + (at - wanted[i]!) ** 2, 0)
    const best = spread(wanted, apart)
    for (let i = 1; i < best.length; i++)
      expect(best[i]! - best[i - 1]!).toBeGreaterThanOrEqual(apart - 1e-12)
    for (let from = 0; from < best.length; from++)
      for (let to = from; to < best.length; to++)
        for (const by of [-0.01, 0.01]) {
          const moved = best.map((at, i) => (i >= from && i <= to ? at + by : at))
          if (moved.some((at, i) => i > 0 && at - moved[i - 1]! < apart - 1e-12)) continue
          expect(cost(moved)).toBeGreaterThanOrEqual(cost(best) - 1e-12)
        }
  })
})

describe('running dimensions', () => {
  test('are read from below where that is asked and there is room, else along their strokes', () => {
    const angles = (count: number): readonly number[] => {
      const stops = Array.from({ length: count }, (_, i) => ({ at: (60 * (i + 1)) / count, figure: '1216' }))
      const marks = runningDimension(
        { zero: { x: 0, y: 0 }, angle: 0, stops, side: 1, upright: true },
        draftStyle,
      )
      expect(overlaps(marks).faults).toEqual([])
      return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.angle ?? 0] : []))
    }
    expect(angles(5)).toEqual(Array(6).fill(0))
    expect(angles(20).every((angle) => Math.abs(angle - Math.PI / 2) < 1e-9)).toBe(true)
  })

  const stops = [4, 20, 21, 22, 60].map((at) => ({ at, figure: `${at * 10}` }))

  test.each([
    [0, 1],
    [0, -1],
    [90, 1],
    [90, -1],
    [200, 1],
  ] as const)('at %i° and side %i keep their figures apart and off every line', (turn, side) => {
    const marks = runningDimension(
      { zero: { x: 5, y: 5 }, angle: (turn * Math.PI) / 180, stops, side, back: 3 },
      style,
    )
    // turned level, so that boxes are boxes
    const { lines, words } = opened(marks, [
      Math.cos((-turn * Math.PI) / 180),
      Math.sin((-turn * Math.PI) / 180),
      -Math.sin((-turn * Math.PI) / 180),
      Math.cos((-turn * Math.PI) / 180),
      0,
      0,
    ])
    expect(words).toHaveLength(6)
    const boxes = words.map(({ corners }) => boxOf(corners))
    boxes.forEach((box, i) => {
      for (const other of boxes.slice(i + 1))
        expect(box.x0 < other.x1 && other.x0 < box.x1 && box.y0 < other.y1 && other.y0 < box.y1).toBe(false)
      for (const { points } of lines)
        for (let k = 1; k < points.length; k++)
          expect(segmentInBox(points[k - 1]!, points[k]!, box)).toBe(false)
    })
  })

  test('point at each place from the zero, but where a head would lie on the last', () => {
    const { lines } = opened(runningDimension({ zero: { x: 0, y: 0 }, angle: 0, stops, side: 1 }, style))
    const heads = lines.filter(({ kind }) => kind === 'fill').map(({ points }) => points[0]!)
    // a head takes as much of the line as a figure is high
    const apart = stops.filter(({ at }, i) => at - (stops[i - 1]?.at ?? 0) >= style.size)
    expect(heads).toHaveLength(apart.length)
    expect(apart.length).toBeGreaterThan(2)
    for (const [i, { at }] of apart.entries()) assertNear(heads[i]!.x, at, 1e-9)
  })
})

describe('a radius', () => {
  test('points square at the curve from its centre and stays inside it', () => {
    const centre = { x: -20, y: 90 }
    const { lines } = opened(radiusDimension({ centre, radius: 85, angle: -1, figure: 'R 1715' }, style))
    const stroke = lines.find(({ kind }) => kind === 'stroke')!.points
    const [from, tip] = [stroke[0]!, stroke.at(-1)!]
    assertNear(pointDistance(centre, tip), 85, 1e-9)
    assertNear(Math.atan2(from.y - centre.y, from.x - centre.x), -1, 1e-9)
    expect(pointDistance(centre, from)).toBeLessThan(85)
  })
})

describe('an angle', () => {
  test('is an arc from leg to leg with its figure clear of it', () => {
    const vertex = { x: 10, y: 10 }
    const [from, to] = [0.2, 1.3]
    const { lines, words } = opened(angleDimension({ vertex, from, to, radius: 14, figure: '63°' }, style))
    const arc = lines.find(({ kind }) => kind === 'stroke')!.points
    for (const p of arc) assertNear(pointDistance(vertex, p), 14, 1e-9)
    assertNear(Math.atan2(arc[0]!.y - 10, arc[0]!.x - 10), from, 1e-9)
    assertNear(Math.atan2(arc.at(-1)!.y - 10, arc.at(-1)!.x - 10), to, 1e-9)
    const heads = lines.filter(({ kind }) => kind === 'fill')
    expect(heads).toHaveLength(2)
    for (const { points } of heads) assertNear(pointDistance(vertex, points[0]!), 14, 1e-9)
    const box = boxOf(words[0]!.corners)
    for (let i = 1; i < arc.length; i++) expect(segmentInBox(arc[i - 1]!, arc[i]!, box)).toBe(false)
  })
})

describe('a leader', () => {
  test('ends in a dot', () => {
    const { lines } = opened(leader({ x: 3, y: 4 }, [{ x: 20, y: 20 }], style))
    const dot = lines.find(({ kind }) => kind === 'fill')!
    for (const p of dot.points) assertNear(pointDistance(p, { x: 3, y: 4 }), 0.5, 1e-9)
    expect(lines.find(({ kind }) => kind === 'stroke')!.points[0]).toEqual({ x: 3, y: 4 })
  })
})

describe('a callout', () => {
  test.each(['left', 'right'] as const)('keeps its words to the %s and clear of its leader', (side) => {
    const facts = { on: { x: 0, y: 0 }, at: { x: 0, y: 20 }, lines: ['first words', 'more'], words: side }
    const { lines, words } = opened(callout(facts, style))
    const box = calloutBox(facts, style)
    for (const { corners } of words) {
      const own = boxOf(corners)
      expect(own.x0).toBeGreaterThanOrEqual(box.x0 - 1e-9)
      expect(own.x1).toBeLessThanOrEqual(box.x1 + 1e-9)
      expect(own.y0).toBeGreaterThanOrEqual(box.y0 - 1e-9)
      expect(own.y1).toBeLessThanOrEqual(box.y1 + 1e-9)
    }
    expect(side === 'right' ? box.x0 > 0 : box.x1 < 0).toBe(true)
    const leaderPoints = lines.find(({ kind }) => kind === 'stroke')!.points
    for (let i = 1; i < leaderPoints.length; i++)
      expect(segmentInBox(leaderPoints[i - 1]!, leaderPoints[i]!, box)).toBe(false)
  })
})

describe('a balloon', () => {
  test.each(['1', '12', 'W'])('holds %s whole in its ring', (name) => {
    const { lines, words } = opened(balloon({ x: 5, y: 5 }, name, style, { x: 30, y: 5 }))
    const ring = lines.find(({ kind, points }) => kind === 'stroke' && points.length > 4)!
    const radius = pointDistance(ring.points[0]!, { x: 5, y: 5 })
    const box = boxOf(words[0]!.corners)
    // capitals and figures have nothing below the line
    for (const x of [box.x0, box.x1])
      for (const y of [5 - 1.25, 5 + 1.25])
        expect(pointDistance({ x, y }, { x: 5, y: 5 })).toBeLessThan(radius)
  })
})

describe('a level mark', () => {
  test('has its tip on the level, and the figure over the level line', () => {
    for (const words of ['left', 'right'] as const) {
      const { lines, words: texts } = opened(levelMark({ at: { x: 7, y: 9 }, figure: '640', words }, style))
      const [level, triangle] = lines
      expect(level!.points.every((p) => p.y === 9)).toBe(true)
      expect(Math.min(...triangle!.points.map((p) => p.y))).toBe(9)
      expect(triangle!.points[0]).toEqual({ x: 7, y: 9 })
      const box = boxOf(texts[0]!.corners)
      expect(box.y0).toBeGreaterThan(9)
      expect(words === 'right' ? box.x0 > 7 : box.x1 < 7).toBe(true)
      const xs = level!.points.map((p) => p.x)
      expect(Math.min(...xs) <= box.x0 + 1e-9 && Math.max(...xs) >= box.x1 - 1e-9).toBe(true)
    }
  })
})

describe('a section line', () => {
  test('has an arrow the way one looks and the letter at both ends, clear of its lines', () => {
    for (const looks of [1, -1] as const) {
      const { lines, words } = opened(
        sectionLine({ from: { x: 0, y: 0 }, to: { x: 0, y: 60 }, looks, letter: 'A' }, style),
      )
      expect(words.map(({ text }) => text)).toEqual(['A', 'A'])
      const heads = lines.filter(({ kind }) => kind === 'fill')
      // left of the way up is towards negative x
      for (const { points } of heads) expect(Math.sign(points[0]!.x)).toBe(-looks)
      for (const { corners } of words)
        for (const { points } of lines)
          for (let i = 1; i < points.length; i++)
            expect(segmentInBox(points[i - 1]!, points[i]!, boxOf(corners))).toBe(false)
    }
  })
})

describe('a scale', () => {
  test('is the largest usual one that fits', () => {
    expect(chooseScale('mm', { width: 2000, height: 600 }, { width: 180, height: 120 }).words).toBe('1 : 15')
    expect(chooseScale('mm', { width: 1800, height: 600 }, { width: 180, height: 120 }).words).toBe('1 : 10')
    // 96 in on 7 in is 1 : 13.7: the next inch scale is 1 : 16
    expect(chooseScale('in', { width: 96 * 25.4, height: 600 }, { width: 7 * 25.4, height: 200 }).words).toBe(
      '3/4 in = 1 ft',
    )
  })

  test('bar is as long as its figures say, and no longer than its room', () => {
    for (const [units, per] of [
      ['mm', 1],
      ['in', 25.4],
    ] as const)
      for (const width of [30, 45, 80]) {
        const scale = chooseScale(units, { width: 2000, height: 600 }, { width: 180, height: 120 })
        const { marks, box } = scaleBar({ x: 10, y: 10 }, scale, units, width, style)
        const { words } = opened(marks)
        const last = words.map(({ text }) => /^(\d+) (?:mm|in)$/.exec(text)?.[1]).find(Boolean)
        const frame = marks.find((mark) => mark.kind === 'stroke')!
        const { x0, x1 } = pathBounds((frame as Extract<typeof frame, { kind: 'stroke' }>).path)
        assertNear(x1 - x0, Number(last) * per * scale.ratio, 1e-9)
        expect(x1 - x0).toBeLessThanOrEqual(width)
        const all = drawingBounds(marks)!
        expect(all.x0 >= box.x0 - 1e-9 && all.x1 <= box.x1 + 1e-9 && all.y1 <= box.y1 + 1e-9).toBe(true)
      }
  })
})

describe('a title block', () => {
  const fields = [
    { name: 'title', value: 'A very long title of a pair of ramps for the boathouse, that goes on and on' },
    { name: 'drawing', value: 'side' },
    { name: 'scale', value: '1 : 10' },
    { name: 'page', value: '3 of 12' },
  ]

  test('stays in its box, and shortens nothing but the title', () => {
    const box = { x0: 10, y0: 10, x1: 150, y1: 20 }
    const marks = titleBlock(box, fields, style)
    const all = drawingBounds(marks)!
    expect(all.x0 >= 10 - 1e-9 && all.x1 <= 150 + 1e-9 && all.y0 >= 10 - 1e-9 && all.y1 <= 20 + 1e-9).toBe(
      true,
    )
    const { words } = opened(marks)
    const values = words.map(({ text }) => text)
    for (const { value } of fields.slice(1)) expect(values).toContain(value)
    expect(values.some((text) => text.startsWith('A very') && text.endsWith('…'))).toBe(true)
    words.forEach((a, i) => {
      for (const b of words.slice(i + 1)) {
        const [p, q] = [boxOf(a.corners), boxOf(b.corners)]
        expect(p.x0 < q.x1 && q.x0 < p.x1 && p.y0 < q.y1 && q.y0 < p.y1).toBe(false)
      }
    })
  })
})
