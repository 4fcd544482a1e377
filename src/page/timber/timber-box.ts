import { type Affine, affineApply } from '../../geometry/affine.ts'
import { type Convex, convexHolds } from '../../geometry/clip.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance } from '../../geometry/point.ts'
import { longWay } from '../../pattern/timber-marks.ts'

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
  const [a, b, c] = corners as [Point, Point, Point]
  const [wide, deep] = [pointDistance(a, b), pointDistance(b, c)]
  const ends = longWay(corners, wide, deep)
  return {
    corners,
    ends,
    along: pointAngle(...ends),
    long: Math.max(wide, deep),
    narrow: Math.min(wide, deep),
  }
}

/** A place in a timber, and how far it lies from its nearer end and its nearer long side, mm. */
export interface TimberPlace extends Point {
  readonly toEnd: number
  readonly toSide: number
}

/** Places in it: shares of its long way from its face on, at each of which some lie aside, in shares of its narrow way. */
export const placesOnWood = (
  { ends, along, long, narrow }: TimberBox,
  shares: readonly number[],
  asides: readonly number[],
): readonly TimberPlace[] => {
  const places: TimberPlace[] = []
  const [cos, sin] = [Math.cos(along + Math.PI / 2), Math.sin(along + Math.PI / 2)]
  for (const t of shares) {
    const at = pointBetween(ends[0], ends[1], t)
    const toEnd = Math.min(t, 1 - t) * long
    for (const off of asides)
      places.push({
        x: at.x + off * narrow * cos,
        y: at.y + off * narrow * sin,
        toEnd,
        toSide: (0.5 - Math.abs(off)) * narrow,
      })
  }
  return places
}

/** Whether a box along it about a place, half so long and wide, may lie in it: asked before its corners are. */
export const mayHold = ({ toEnd, toSide }: TimberPlace, long: number, wide: number): boolean =>
  long <= toEnd + 1e-6 && wide <= toSide + 1e-6

/** Whether points lie in it, so far from its edges, mm. */
export const isWithin = ({ corners }: TimberBox, points: readonly Point[], air: number): boolean =>
  convexHolds(corners, points, -air)

/** How far it reaches in a direction, from end to end, mm; a hair more. */
export const extentOf = ({ corners }: TimberBox, angle: number): number => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { x, y } of corners) {
    const along = x * cos + y * sin
    low = Math.min(low, along)
    high = Math.max(high, along)
  }
  return high - low + 1e-6
}

/** Corners of boxes about a point, half so wide and half so high, turned by an angle. */
export const boxesAlong = (turn: number) => {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return ({ x, y }: Point, wide: number, high: number): Convex => {
    // hundreds of places are tried on a page
    const along = { x: wide * cos, y: wide * sin }
    const up = { x: high * sin, y: high * cos }
    return [
      { x: x - along.x + up.x, y: y - along.y - up.y },
      { x: x + along.x + up.x, y: y + along.y - up.y },
      { x: x + along.x - up.x, y: y + along.y + up.y },
      { x: x - along.x - up.x, y: y - along.y + up.y },
    ]
  }
}
