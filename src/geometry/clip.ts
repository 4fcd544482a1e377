import { segmentAt } from './at.ts'
import type { Box } from './bounds.ts'
import type { ArcSegment, Path, Segment } from './path.ts'
import { pathOf, pathSegments, segmentsPath } from './path.ts'
import { type Point, pointCross, pointSubtract } from './point.ts'
import { segmentPart } from './split.ts'

/** A convex polygon, corners counter-clockwise. */
export type Convex = readonly Point[]

/** The corners of a box as a convex polygon. */
export const boxCorners = ({ x0, y0, x1, y1 }: Box): Convex => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
]

/** Inside or on the edge, within `slack` mm outside of it. */
export const convexContains = (polygon: Convex, p: Point, slack = 0): boolean => {
  // asked of every point of every page: a loop that makes nothing
  for (let i = 0; i < polygon.length; i++) {
    const corner = polygon[i]!
    const next = polygon[i + 1 === polygon.length ? 0 : i + 1]!
    const x = next.x - corner.x
    const y = next.y - corner.y
    const least = slack === 0 ? 0 : -slack * Math.sqrt(x * x + y * y)
    if (x * (p.y - corner.y) - y * (p.x - corner.x) < least) return false
  }
  return true
}

/** Whether all of some points lie in it, likewise. */
export const convexHolds = (polygon: Convex, points: readonly Point[], slack = 0): boolean => {
  for (let i = 0; i < points.length; i++) if (!convexContains(polygon, points[i]!, slack)) return false
  return true
}

/** Parameters at which a segment crosses the infinite line through p and q. Lines and arcs exact, cubics to 1e-10 mm. */
export const lineCrossings = (segment: Segment, p: Point, q: Point): readonly number[] => {
  const edge = pointSubtract(q, p)
  const size = Math.hypot(edge.x, edge.y)
  const height = (r: Point): number => pointCross(edge, pointSubtract(r, p)) / size
  switch (segment.kind) {
    case 'line': {
      const t = lineCrossing(segment, p, q)
      return Number.isFinite(t) ? [t] : []
    }
    case 'arc': {
      // the height over the edge is h + r·sin(φ − direction of the edge)
      const ratio = -height(segment.centre) / segment.radius
      if (Math.abs(ratio) > 1) return []
      const direction = Math.atan2(edge.y, edge.x)
      const rise = Math.asin(ratio)
      // how far on from the start, in the arc's own sense
      const turn = 2 * Math.PI * Math.sign(segment.sweep)
      return [direction + rise, direction + Math.PI - rise].map((angle) => {
        const ahead = (angle - segment.startAngle) % (2 * Math.PI)
        return (ahead * turn < 0 ? ahead + turn : ahead) / segment.sweep
      })
    }
    case 'cubic': {
      const heights = [segment.from, segment.c1, segment.c2, segment.to].map(height)
      return bernsteinRoots(heights as [number, number, number, number])
    }
    default:
      return segment satisfies never
  }
}

/** Of two straight lines; not finite where they run the same way. */
const lineCrossing = (
  { from, to }: { readonly from: Point; readonly to: Point },
  p: Point,
  q: Point,
): number => {
  const x = q.x - p.x
  const y = q.y - p.y
  const size = Math.hypot(x, y)
  const a = (x * (from.y - p.y) - y * (from.x - p.x)) / size
  const b = (x * (to.y - p.y) - y * (to.x - p.x)) / size
  return a === b ? Number.POSITIVE_INFINITY : a / (a - b)
}

/** Roots in 0 … 1 of a cubic in Bernstein form, by halving where the sign can change; a stretch within 1e-10 has one. */
const bernsteinRoots = (w: readonly [number, number, number, number], t0 = 0, t1 = 1): number[] => {
  if (w.every((v) => v > 0) || w.every((v) => v < 0)) return []
  if (t1 - t0 < 1e-12 || w.every((v) => Math.abs(v) < 1e-10)) return [(t0 + t1) / 2]
  const [a, b, c] = [(w[0] + w[1]) / 2, (w[1] + w[2]) / 2, (w[2] + w[3]) / 2]
  const [d, e] = [(a + b) / 2, (b + c) / 2]
  const m = (d + e) / 2
  const half = (t0 + t1) / 2
  return [...bernsteinRoots([w[0], a, d, m], t0, half), ...bernsteinRoots([m, e, c, w[3]], half, t1)]
}

/**
 * Whether a segment lies wholly beyond one edge of a polygon, or an arc's circle all round it or beside it: asked first, since most segments
 * do. May say no too often.
 */
const clearlyOutside = (segment: Segment, polygon: Convex): boolean => {
  const { from, to } = segment
  // an arc of less than half a turn stays within its sagitta of the chord
  const bulge =
    segment.kind !== 'arc'
      ? 0
      : Math.abs(segment.sweep) < Math.PI
        ? segment.radius * (1 - Math.cos(segment.sweep / 2))
        : 2 * segment.radius
  for (let i = 0; i < polygon.length; i++) {
    const p = polygon[i]!
    const q = polygon[i + 1 === polygon.length ? 0 : i + 1]!
    const x = q.x - p.x
    const y = q.y - p.y
    const beyond = -(bulge + 1e-6) * Math.sqrt(x * x + y * y)
    if (x * (from.y - p.y) - y * (from.x - p.x) >= beyond) continue
    if (x * (to.y - p.y) - y * (to.x - p.x) >= beyond) continue
    if (segment.kind === 'cubic') {
      const { c1, c2 } = segment
      if (x * (c1.y - p.y) - y * (c1.x - p.x) >= beyond) continue
      if (x * (c2.y - p.y) - y * (c2.x - p.x) >= beyond) continue
    }
    return true
  }
  return segment.kind === 'arc' && isClearOf(segment, polygon)
}

/** Whether the circle of an arc does not come into a circle about a polygon. */
const isClearOf = ({ centre, radius }: ArcSegment, polygon: Convex): boolean => {
  let x = 0
  let y = 0
  for (let i = 0; i < polygon.length; i++) {
    x += polygon[i]!.x / polygon.length
    y += polygon[i]!.y / polygon.length
  }
  let reach = 1e-6
  for (let i = 0; i < polygon.length; i++)
    reach = Math.max(reach, 1e-6 + Math.hypot(polygon[i]!.x - x, polygon[i]!.y - y))
  return Math.abs(Math.hypot(centre.x - x, centre.y - y) - radius) > reach
}

/** The parts of a segment inside a convex polygon, in order. Parts shorter than 1e-9 of the segment are dropped. */
export const segmentClip = (segment: Segment, polygon: Convex): readonly Segment[] =>
  clearlyOutside(segment, polygon) ? [] : segmentParts(segment, polygon, true)

/** The parts of it outside, likewise. */
const segmentOutside = (segment: Segment, polygon: Convex): readonly Segment[] =>
  clearlyOutside(segment, polygon) ? [segment] : segmentParts(segment, polygon, false)

/** Into an ascending list of a few, in its place. */
const insert = (ts: number[], t: number): void => {
  let i = ts.length
  for (; i > 0 && ts[i - 1]! > t; i--) ts[i] = ts[i - 1]!
  ts[i] = t
}

const segmentParts = (segment: Segment, polygon: Convex, inside: boolean): readonly Segment[] => {
  const ts = [0, 1]
  for (let i = 0; i < polygon.length; i++) {
    const next = polygon[i + 1 === polygon.length ? 0 : i + 1]!
    if (segment.kind === 'line') {
      const t = lineCrossing(segment, polygon[i]!, next)
      if (t > 0 && t < 1) insert(ts, t)
    } else for (const t of lineCrossings(segment, polygon[i]!, next)) if (t > 0 && t < 1) insert(ts, t)
  }
  const parts: Segment[] = []
  let open: number | undefined
  for (let i = 1; i < ts.length; i++) {
    const t0 = ts[i - 1]!
    const t1 = ts[i]!
    if (t1 - t0 < 1e-9) continue
    const wanted = convexContains(polygon, segmentAt(segment, (t0 + t1) / 2), 1e-9) === inside
    if (wanted && open === undefined) open = t0
    if (!wanted && open !== undefined) {
      parts.push(segmentPart(segment, open, t0))
      open = undefined
    }
  }
  if (open !== undefined) parts.push(segmentPart(segment, open, 1))
  return parts
}

/** The parts of a path inside a convex polygon, as open paths; pieces that follow one another stay joined. */
export const pathClip = (path: Path, polygon: Convex): readonly Path[] =>
  joined(path, (segment) => segmentClip(segment, polygon))

/** The parts of it outside, likewise. */
export const pathOutside = (path: Path, polygon: Convex): readonly Path[] =>
  joined(path, (segment) => segmentOutside(segment, polygon))

const joined = (path: Path, partsOf: (segment: Segment) => readonly Segment[]): readonly Path[] => {
  const only = path.pieces[0]
  // edges and ticks, most of what is clipped
  if (path.pieces.length === 1 && only!.kind === 'line' && !path.closed)
    return partsOf({ kind: 'line', from: path.start, to: only!.to }).map((part) => pathOf(part.from, part.to))
  const runs: Segment[][] = []
  for (const segment of pathSegments(path))
    for (const part of partsOf(segment)) {
      const run = runs.at(-1)
      const end = run?.at(-1)?.to
      if (run && end && end.x === part.from.x && end.y === part.from.y) run.push(part)
      else runs.push([part])
    }
  const first = runs[0]
  const last = runs.at(-1)
  if (first && last && path.closed && first !== last) {
    const a = first[0]!.from
    const z = last.at(-1)!.to
    if (a.x === z.x && a.y === z.y) return [...runs.slice(1, -1), [...last, ...first]].map(segmentsPath)
  }
  return runs.map(segmentsPath)
}
