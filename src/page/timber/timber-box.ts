import { type Affine, affineApply } from '../../geometry/affine.ts'
import { type Convex, convexContains } from '../../geometry/clip.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'

/** The section of a timber in a window, mm. */
export interface TimberBox {
  readonly corners: Convex
  /** in the middle of its narrow way, from its face or its outer end on */
  readonly ends: readonly [Point, Point]
  /** direction of its long way, radians */
  readonly along: number
  readonly long: number
  readonly narrow: number
}

export const timberBox = (outline: Path, toWindow: Affine): TimberBox => {
  const corners = pathSegments(outline).map(({ from }) => affineApply(toWindow, from))
  const [a, b, c, d] = corners as [Point, Point, Point, Point]
  const [wide, deep] = [pointDistance(a, b), pointDistance(b, c)]
  const ends: readonly [Point, Point] =
    deep >= wide
      ? [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
      : [pointBetween(a, d, 0.5), pointBetween(b, c, 0.5)]
  return {
    corners,
    ends,
    along: pointAngle(...ends),
    long: Math.max(wide, deep),
    narrow: Math.min(wide, deep),
  }
}

/** Places in it: shares of its long way from its face on, at each of which some lie aside, in shares of its narrow way. */
export const placesIn = (
  { ends, along, narrow }: TimberBox,
  shares: readonly number[],
  asides: readonly number[],
): readonly Point[] =>
  shares.flatMap((t) => {
    const at = pointBetween(...ends, t)
    return asides.map((off) => pointToward(at, along + Math.PI / 2, off * narrow))
  })

/** Whether points lie in it, so far from its edges, mm. */
export const isWithin = ({ corners }: TimberBox, points: readonly Point[], air: number): boolean =>
  points.every((p) => convexContains(corners, p, -air))

/** How far it reaches in a direction, from end to end, mm; a hair more. */
export const extentOf = ({ corners }: TimberBox, angle: number): number => {
  const along = corners.map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle))
  return Math.max(...along) - Math.min(...along) + 1e-6
}

/** Corners of boxes about a point, half so wide and half so high, turned by an angle. */
export const boxesAlong = (turn: number) => {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return ({ x, y }: Point, wide: number, high: number): Convex => {
    const corner = (i: number, k: number): Point => ({
      x: x + i * wide * cos - k * high * sin,
      y: y + i * wide * sin + k * high * cos,
    })
    return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
  }
}
