import { describe, expect, test } from 'vitest'
import { endGrain } from '../../src/drafting/hatch/end-grain.ts'
import { hatch } from '../../src/drafting/hatch/hatch.ts'
import { plies, plyCount } from '../../src/drafting/hatch/plies.ts'
import { draftStyle } from '../../src/drafting/line-types.ts'
import { convexContains } from '../../src/geometry/clip.ts'
import { circle, pathOf, rectangle } from '../../src/geometry/path.ts'
import { pointBetween, pointDistance } from '../../src/geometry/point.ts'
import { assertNear } from '../support/near.ts'
import { opened } from '../support/strokes.ts'

const style = { layer: 'note', pen: { width: 0.18 }, spacing: 0.5 } as const

const inked = (marks: Parameters<typeof opened>[0]): number =>
  opened(marks, undefined, 1e6).lines.reduce(
    (sum, { points }) => sum + pointDistance(points[0]!, points.at(-1)!),
    0,
  )

describe('hatch', () => {
  // lines s apart over a face have a length of its area / s
  test('covers a rectangle, a disc and a ring by their areas', () => {
    for (const angle of [0, 0.3, Math.PI / 4, Math.PI / 2, 2]) {
      assertNear(inked(hatch([rectangle(3, 4, 43, 34)], { ...style, angle })) * 0.5, 1200, 25)
      assertNear(inked(hatch([circle({ x: 2, y: 1 }, 20)], { ...style, angle })) * 0.5, Math.PI * 400, 10)
      assertNear(
        inked(hatch([circle({ x: 2, y: 1 }, 20), circle({ x: 2, y: 1 }, 10)], { ...style, angle })) * 0.5,
        Math.PI * 300,
        10,
      )
    }
  })

  test('keeps inside a face that is not convex', () => {
    const notched = {
      ...pathOf(
        { x: 0, y: 0 },
        { x: 30, y: 0 },
        { x: 30, y: 20 },
        { x: 20, y: 20 },
        { x: 20, y: 10 },
        { x: 0, y: 10 },
      ),
      closed: true,
    }
    const { lines } = opened(hatch([notched], style))
    let looked = 0
    for (const { points } of lines)
      for (let k = 0; k <= 20; k++) {
        const p = pointBetween(points[0]!, points.at(-1)!, k / 20)
        looked++
        const within = p.x > -1e-6 && p.x < 30 + 1e-6 && p.y > -1e-6 && p.y < (p.x < 20 ? 10 : 20) + 1e-6
        expect(within).toBe(true)
      }
    expect(looked).toBeGreaterThan(1000)
  })
})

describe('end grain', () => {
  const corners = (width: number, height: number) => [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ]

  test('is rings inside a section that is drawn large, and a cross in a small one', () => {
    const large = endGrain(corners(19, 44), draftStyle)
    const { lines } = opened(large)
    expect(lines.length).toBeGreaterThan(5)
    for (const { points } of lines)
      for (const p of points) expect(convexContains(corners(19, 44), p, 1e-6)).toBe(true)
    expect(endGrain(corners(1.9, 4.4), draftStyle)).toHaveLength(2)
  })
})

describe('plies', () => {
  test('are an odd number, and one glue line fewer', () => {
    expect([6, 9, 12, 15, 18, 23.8].map(plyCount)).toEqual([3, 3, 5, 5, 7, 7])
    const marks = plies((share) => pathOf({ x: 0, y: 12 * share }, { x: 50, y: 12 * share }), 5, draftStyle)
    const ys = opened(marks).lines.map(({ points }) => points[0]!.y)
    for (const [i, y] of [2.4, 4.8, 7.2, 9.6].entries()) assertNear(ys[i]!, y, 1e-9)
  })
})
