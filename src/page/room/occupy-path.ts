import { type Affine, affineApply, affineIdentity } from '../../geometry/affine.ts'
import { type ArcSegment, type Path, pathSegments, segmentsPath } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { type Occupancy, occupyRow } from './occupancy.ts'

/**
 * Squares that a path touches, and those `around` it, mm. Lines and arcs by their own formulas, row by row; `frame` keeps shapes
 * (a turn, a move, a scale).
 */
export const occupyPath = (map: Occupancy, path: Path, frame: Affine, around: number, kind: number): void => {
  const only = path.pieces[0]
  // ticks and arms, most of what is drawn
  if (path.pieces.length === 1 && only!.kind === 'line' && !path.closed) {
    if (frame === affineIdentity) occupyLine(map, path.start, only!.to, around, kind)
    else occupyLine(map, affineApply(frame, path.start), affineApply(frame, only!.to), around, kind)
    return
  }
  for (const segment of pathSegments(path)) {
    switch (segment.kind) {
      case 'line':
        occupyLine(map, affineApply(frame, segment.from), affineApply(frame, segment.to), around, kind)
        break
      case 'arc':
        occupyArc(map, segment, frame, around, kind)
        break
      case 'cubic':
        occupyChords(map, pathSample(segmentsPath([segment]), map.step), frame, around, kind)
        break
      default:
        segment satisfies never
    }
  }
}

const occupyChords = (
  map: Occupancy,
  points: readonly Point[],
  frame: Affine,
  around: number,
  kind: number,
): void => {
  for (let i = 1; i < points.length; i++)
    occupyLine(map, affineApply(frame, points[i - 1]!), affineApply(frame, points[i]!), around, kind)
}

const occupyLine = (map: Occupancy, from: Point, to: Point, around: number, kind: number): void => {
  const low = from.y <= to.y ? from : to
  const high = from.y <= to.y ? to : from
  const rise = high.y - low.y
  const slope = rise < 1e-9 ? 0 : (high.x - low.x) / rise
  const { columns, step, stride, taken } = map
  const top = Math.min(map.rows - 1, Math.floor((high.y + around) / step))
  for (let row = Math.max(0, Math.floor((low.y - around) / step)); row <= top; row++) {
    const below = row * step - around
    const above = (row + 1) * step + around
    const a = below <= low.y ? low.x : low.x + (below - low.y) * slope
    const b = above >= high.y ? high.x : low.x + (above - low.y) * slope
    const first = row * stride + Math.max(0, Math.floor((Math.min(a, b) - around) / step))
    const last = row * stride + Math.min(columns - 1, Math.floor((Math.max(a, b) + around) / step))
    for (let k = first; k <= last; k++) taken[k]! |= kind
  }
}

const quarter = Math.PI / 2

/** Quarter by quarter of its circle: in each it goes one way across and one way up. */
const occupyArc = (
  map: Occupancy,
  { centre, radius, startAngle, sweep }: ArcSegment,
  frame: Affine,
  around: number,
  kind: number,
): void => {
  const [a, b, c, d] = frame
  const middle = affineApply(frame, centre)
  const r = radius * Math.hypot(a, b)
  // a mirror turns the other way
  const turned = Math.atan2(b, a)
  const mirrored = a * d - b * c < 0
  const start = mirrored ? turned - startAngle : turned + startAngle
  const end = mirrored ? start - sweep : start + sweep
  const [first, last] = start <= end ? [start, end] : [end, start]
  for (let k = Math.floor(first / quarter); k * quarter < last; k++) {
    const from = Math.max(first, k * quarter)
    const to = Math.min(last, (k + 1) * quarter)
    const side = Math.cos((k + 0.5) * quarter) >= 0 ? 1 : -1
    const at = (angle: number): Point => ({
      x: middle.x + r * Math.cos(angle),
      y: middle.y + r * Math.sin(angle),
    })
    const [p, q] = [at(from), at(to)]
    const [low, high] = p.y <= q.y ? [p, q] : [q, p]
    const xAt = (y: number): number =>
      middle.x + side * Math.sqrt(Math.max(0, r * r - (y - middle.y) * (y - middle.y)))
    occupyStretch(map, low, high, xAt, around, kind)
  }
}

/** A stretch of a circle that goes one way across and one way up; `xAt`: where it is at a height between its ends. */
const occupyStretch = (
  map: Occupancy,
  low: Point,
  high: Point,
  xAt: (y: number) => number,
  around: number,
  kind: number,
): void => {
  const { step } = map
  const top = Math.min(map.rows - 1, Math.floor((high.y + around) / step))
  for (let row = Math.max(0, Math.floor((low.y - around) / step)); row <= top; row++) {
    const below = row * step - around
    const above = (row + 1) * step + around
    const a = below <= low.y ? low.x : xAt(below)
    const b = above >= high.y ? high.x : xAt(above)
    occupyRow(map, row, Math.min(a, b) - around, Math.max(a, b) + around, kind)
  }
}
