import { isCurved } from '../../design/kind-traits.ts'
import { boxCorners } from '../../geometry/clip.ts'
import { type Point, pointCross, pointSubtract } from '../../geometry/point.ts'
import { convexHull } from '../../geometry/polygon/hull.ts'
import type { Ramp } from '../ramp.ts'
import type { Part } from '../stored.ts'
import { bodyFlanks, isWhole } from './body.ts'

/** Length, width and height, mm. */
export type Size = readonly [number, number, number]

export interface RampSize {
  /** as it stands: skin, board and pipe in it */
  readonly standing: Size
  /** how far of that length the skin stands before the toe corner, mm */
  readonly before: number
  /** on one of its sides, as it goes through a narrow door */
  readonly carried: Size
  /** width and height of the least door it passes pushed straight through, on its feet and on edge */
  readonly doors: { readonly flat: readonly [number, number]; readonly edge: readonly [number, number] }
}

/** Pipe and wheels count as polygons of so many corners around them; a transition bends inward: of it only the ends can stand out. */
const roundCorners = 32

/** Null where the ramp could not be solved. */
export const rampSize = (ramp: Ramp): RampSize | null => {
  const points = profilePoints(ramp)
  if (!points) return null
  const xs = points.map(({ x }) => x)
  const ys = points.map(({ y }) => y)
  const before = -Math.min(...xs)
  const long = Math.max(...xs) + before
  const high = Math.max(...ys)
  return {
    standing: [long, ramp.width, high],
    before,
    carried: [long, high, ramp.width],
    doors: { flat: [ramp.width, high], edge: [leastWidth(convexHull(points)), ramp.width] },
  }
}

const profilePoints = (ramp: Ramp): readonly Point[] | null => {
  if (!isCurved(ramp)) return boxCorners({ x0: 0, x1: ramp.length, y0: 0, y1: ramp.heights.surface })
  if (!isWhole(ramp)) return null
  const { length, design, coping, wheels } = ramp
  return [
    { x: 0, y: 0 },
    { x: length - design.chamfer, y: 0 },
    ...bodyFlanks(ramp).flatMap(({ flank: { low, high, at }, of }) =>
      isRound(of)
        ? []
        : [
            { x: at(low), y: low },
            { x: at(high), y: high },
          ],
    ),
    ...(coping ? around(coping.centre, coping.outside / 2) : []),
    ...(wheels ? around(wheels.centre, design.wheels!.diameter / 2) : []),
  ]
}

const isRound = ({ kind }: Part): boolean => kind === 'pipe' || kind === 'wheels'

/** As long and as high as the circle, half a percent larger at its corners: a door is never told too narrow. */
const around = ({ x, y }: Point, radius: number): readonly Point[] => {
  const reach = radius / Math.cos(Math.PI / roundCorners)
  return Array.from({ length: roundCorners }, (_, i) => {
    const angle = ((2 * i + 1) * Math.PI) / roundCorners
    return { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) }
  })
}

/**
 * Between two parallel lines that touch a convex outline, one of them along an edge of it: nowhere are they nearer. The corner that
 * lies farthest from an edge only moves on from edge to edge.
 */
const leastWidth = (hull: readonly Point[]): number => {
  const count = hull.length
  let least = Number.POSITIVE_INFINITY
  let far = 0
  for (let i = 0; i < count; i++) {
    const p = hull[i]!
    const edge = pointSubtract(hull[(i + 1) % count]!, p)
    const size = Math.hypot(edge.x, edge.y)
    if (size === 0) continue
    const out = (k: number): number => pointCross(edge, pointSubtract(hull[k % count]!, p))
    far = Math.max(far, i + 1)
    while (out(far + 1) > out(far)) far++
    least = Math.min(least, out(far) / size)
  }
  return least
}
