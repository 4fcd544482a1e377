import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fill, group, stroke, text } from '../../src/drawing/drawing.ts'
import { textWidth } from '../../src/drawing/text-width.ts'
import {
  type Affine,
  affineApply,
  affineRotate,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../src/geometry/affine.ts'
import { segmentAt } from '../../src/geometry/at.ts'
import { arcSegment, circle, pathOf, rectangle, segmentsPath } from '../../src/geometry/path.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { writeSvg } from '../../src/write/svg.ts'
import { svgPathData } from '../../src/write/svg-path.ts'
import { assertNear } from '../support/near.ts'

interface P {
  readonly x: number
  readonly y: number
}

/** A point of an SVG arc at t, by the conversion from its ends (SVG 2, 9.5.1 and appendix B.2.4). */
const arcPoint = (from: P, [rx, ry, turn, large, sweep, x, y]: readonly number[], t: number): P => {
  const phi = (turn! * Math.PI) / 180
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)]
  const [dx, dy] = [(from.x - x!) / 2, (from.y - y!) / 2]
  const [x1, y1] = [cos * dx + sin * dy, -sin * dx + cos * dy]
  const [a2, b2] = [rx! * rx!, ry! * ry!]
  const k = Math.sqrt(Math.max(0, (a2 * b2 - a2 * y1 * y1 - b2 * x1 * x1) / (a2 * y1 * y1 + b2 * x1 * x1)))
  const s = large === sweep ? -1 : 1
  const [cx1, cy1] = [(s * k * rx! * y1) / ry!, (-s * k * ry! * x1) / rx!]
  const [cx, cy] = [cos * cx1 - sin * cy1 + (from.x + x!) / 2, sin * cx1 + cos * cy1 + (from.y + y!) / 2]
  const start = Math.atan2((y1 - cy1) / ry!, (x1 - cx1) / rx!)
  const end = Math.atan2((-y1 - cy1) / ry!, (-x1 - cx1) / rx!)
  let delta = end - start
  if (sweep === 0 && delta > 0) delta -= 2 * Math.PI
  if (sweep === 1 && delta < 0) delta += 2 * Math.PI
  const [u, v] = [rx! * Math.cos(start + t * delta), ry! * Math.sin(start + t * delta)]
  return { x: cx + cos * u - sin * v, y: cy + sin * u + cos * v }
}

const commands = (data: string) =>
  [...data.matchAll(/([MLCAZ])([^MLCAZ]*)/g)].map(([, letter, rest]) => ({
    letter: letter!,
    numbers: rest!.trim() === '' ? [] : rest!.trim().split(/[ ,]+/).map(Number),
  }))

const page: Affine = [1, 0, 0, -1, 0, 300]

describe('path data', () => {
  test('keeps an arc an arc, on the same points, under turns, mirrors and unequal scales', () => {
    let looked = 0
    fc.assert(
      fc.property(
        fc.record({
          radius: fc.double({ min: 5, max: 3000, noNaN: true }),
          from: fc.double({ min: -6, max: 6, noNaN: true }),
          sweep: fc.double({ min: 0.05, max: 6.2, noNaN: true }),
          way: fc.constantFrom(1, -1),
          turn: fc.double({ min: -3, max: 3, noNaN: true }),
          sx: fc.double({ min: 0.3, max: 2, noNaN: true }),
          sy: fc.constantFrom(1, -1, 1.3, -0.4),
        }),
        ({ radius, from, sweep, way, turn, sx, sy }) => {
          const segment = arcSegment({ x: 10, y: -20 }, radius, from, way * sweep)
          const map = affineThen(
            affineThen(affineRotate(turn), affineScale(sx, sy)),
            affineThen(affineRotate(0.4), page),
          )
          const [move, ...arcs] = commands(svgPathData(segmentsPath([segment]), map, 7, 'it'))
          let at = { x: move!.numbers[0]!, y: move!.numbers[1]! }
          arcs.forEach(({ letter, numbers }, i) => {
            expect(letter).toBe('A')
            for (const t of [0.25, 0.5, 0.8]) {
              const point = arcPoint(at, numbers, t)
              // the ellipse's own parameter is even along the circle that it was made of
              const expected = affineApply(map, segmentAt(segment, (i + t) / arcs.length))
              assertNear(pointDistance(point, expected), 0, 1e-3 * (1 + radius / 1000))
              looked++
            }
            at = { x: numbers[5]!, y: numbers[6]! }
          })
        },
      ),
      { numRuns: 300 },
    )
    expect(looked).toBeGreaterThan(800)
  })

  test('writes a full circle as arcs that close', () => {
    const [, ...rest] = commands(svgPathData(circle({ x: 0, y: 0 }, 10), page, 4, 'it'))
    expect(rest.map(({ letter }) => letter).join('')).toBe('AAZ')
  })

  test('refuses what is no number, naming it', () => {
    expect(() => svgPathData(pathOf({ x: 0, y: Number.NaN }, { x: 1, y: 1 }), page, 4, 'the line')).toThrow(
      /a point of the line is NaN/,
    )
  })
})

describe('a picture', () => {
  const drawing = [
    stroke('cut', pathOf({ x: 0, y: 0 }, { x: 100, y: 50 }), { width: 0.5 }),
    group(affineThen(affineScale(2), affineTranslate(5, 5)), [
      stroke('note', rectangle(0, 0, 10.123456, 10), { width: 0.25, dash: [3, 0.75], grey: 0.4 }),
    ]),
    fill('note', circle({ x: 50, y: 50 }, 5), 0),
    text('note', { x: 20, y: 30 }, 2.5, 'Toe < lip & "so on"', {
      angle: Math.PI / 2,
      face: 'bold',
      align: 'middle',
    }),
  ]

  test('has its size in mm, a group for each layer in drawing order, and y down', () => {
    const svg = writeSvg({ drawing, width: 200, height: 100, title: 'A & B' })
    expect(svg).toMatch(/^<svg [^>]*width="200mm" height="100mm" viewBox="0 0 200 100"/)
    expect([...svg.matchAll(/data-layer="(\w+)"/g)].map((found) => found[1])).toEqual(['note', 'cut'])
    expect(svg).toContain('d="M0 100L100 50"')
    expect(svg).toContain('<title>A &amp; B</title>')
    expect(svg).toBe(writeSvg({ drawing, width: 200, height: 100, title: 'A & B' }))
  })

  test('keeps widths and dashes as they are on paper, whatever the map', () => {
    const svg = writeSvg({ drawing, width: 200, height: 100 })
    expect(svg).toContain('stroke-width="0.25" stroke-dasharray="3 0.75"')
    expect(svg).toContain('stroke="#666666"')
  })

  test('writes no more decimals than said', () => {
    for (const decimals of [1, 3]) {
      const svg = writeSvg({ drawing, width: 200, height: 100 }, { decimals })
      const data = [...svg.matchAll(/ d="([^"]*)"/g)].map((found) => found[1]!).join(' ')
      const longest = Math.max(...[...data.matchAll(/\.(\d+)/g)].map((found) => found[1]!.length))
      expect(longest).toBeLessThanOrEqual(decimals)
    }
  })

  test('sets words as high, as wide and as turned as they were laid out', () => {
    const svg = writeSvg({ drawing, width: 200, height: 100 })
    const words = /<text transform="matrix\(([^)]*)\)" font-size="([^"]*)"([^>]*)>([^<]*)</.exec(svg)!
    // 90° up: the baseline runs up the page, letters lean to the left of it
    expect(words[1]!.split(' ').map(Number)).toEqual([0, -1, 1, 0, 20, 70])
    assertNear(Number(words[2]) * 0.718, 2.5, 1e-3)
    const length = Number(/textLength="([^"]*)"/.exec(words[3]!)![1])
    assertNear(length, textWidth('Toe < lip & "so on"', 2.5, 'bold'), 1e-3)
    expect(words[3]).toContain('font-weight="bold"')
    expect(words[3]).toContain('text-anchor="middle"')
    expect(words[4]).toBe('Toe &lt; lip &amp; &quot;so on&quot;')
  })

  test('takes the paints of the page that it stands in', () => {
    const svg = writeSvg(
      { drawing, width: 200, height: 100 },
      { paint: (grey) => (grey < 0.2 ? 'currentColor' : 'var(--pale)') },
    )
    expect(svg).toContain('stroke="currentColor"')
    expect(svg).toContain('stroke="var(--pale)"')
  })

  test.each([
    ['a pen of no width', stroke('note', pathOf({ x: 0, y: 0 }, { x: 1, y: 1 }), { width: 0 }), /pen width/],
    ['a grey past white', fill('note', rectangle(0, 0, 1, 1), 1.5), /0 … 1/],
    ['words of no height', text('note', { x: 0, y: 0 }, 0, 'x'), /size/],
  ])('refuses %s', (_, mark, message) => {
    expect(() => writeSvg({ drawing: [mark], width: 10, height: 10 })).toThrow(message)
  })
})
