import { segmentAt } from './at.ts'
import type { Path, Segment } from './path.ts'
import { pathSegments } from './path.ts'
import type { Point } from './point.ts'

/** An axis-parallel box, mm. */
export interface Box {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

/** Throws RangeError on an empty list. */
export const pointsBounds = (points: readonly Point[]): Box => {
  if (points.length === 0) throw new RangeError('no points, no bounds')
  let x0 = Number.POSITIVE_INFINITY
  let y0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (let i = 0; i < points.length; i++) {
    const { x, y } = points[i]!
    x0 = Math.min(x0, x)
    y0 = Math.min(y0, y)
    x1 = Math.max(x1, x)
    y1 = Math.max(y1, y)
  }
  return { x0, y0, x1, y1 }
}

/** Parameters where a segment can be extreme in x or y, its ends among them. */
const extremes = (segment: Segment): readonly number[] => {
  switch (segment.kind) {
    case 'line':
      return [0, 1]
    case 'arc': {
      const ts = [0, 1]
      if (segment.sweep === 0) return ts
      const low = Math.min(segment.startAngle, segment.startAngle + segment.sweep)
      const high = Math.max(segment.startAngle, segment.startAngle + segment.sweep)
      for (let k = Math.ceil(low / (Math.PI / 2)); k * (Math.PI / 2) <= high; k++)
        ts.push((k * (Math.PI / 2) - segment.startAngle) / segment.sweep)
      return ts
    }
    case 'cubic': {
      const ts = [0, 1]
      for (const axis of ['x', 'y'] as const) {
        const p0 = segment.from[axis]
        const p1 = segment.c1[axis]
        const p2 = segment.c2[axis]
        const p3 = segment.to[axis]
        const a = p3 - 3 * p2 + 3 * p1 - p0
        const b = 2 * (p2 - 2 * p1 + p0)
        const c = p1 - p0
        // neither root may come from a difference of like numbers (Numerical Recipes, 3rd ed., 5.6)
        const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(b * b - 4 * a * c)) / 2
        const roots = [q / a, c / q]
        ts.push(...roots.filter((t) => t > 0 && t < 1))
      }
      return ts
    }
    default:
      return segment satisfies never
  }
}

export const segmentBounds = (segment: Segment): Box =>
  pointsBounds(
    segment.kind === 'line'
      ? [segment.from, segment.to]
      : extremes(segment).map((t) => segmentAt(segment, t)),
  )

export const pathBounds = (path: Path): Box => {
  // most paths are straight: nothing is made for them
  if (isStraight(path)) return straightBounds(path)
  const points: Point[] = [path.start]
  for (const segment of pathSegments(path))
    if (segment.kind === 'line') points.push(segment.to)
    else for (const t of extremes(segment)) points.push(segmentAt(segment, t))
  return pointsBounds(points)
}

const isStraight = ({ pieces }: Path): boolean => {
  for (let i = 0; i < pieces.length; i++) if (pieces[i]!.kind !== 'line') return false
  return true
}

const straightBounds = ({ start, pieces }: Path): Box => {
  let { x: x0, y: y0 } = start
  let x1 = x0
  let y1 = y0
  for (let i = 0; i < pieces.length; i++) {
    const { x, y } = pieces[i]!.to
    x0 = Math.min(x0, x)
    y0 = Math.min(y0, y)
    x1 = Math.max(x1, x)
    y1 = Math.max(y1, y)
  }
  return { x0, y0, x1, y1 }
}

export const boxUnion = (a: Box, b: Box): Box => ({
  x0: Math.min(a.x0, b.x0),
  y0: Math.min(a.y0, b.y0),
  x1: Math.max(a.x1, b.x1),
  y1: Math.max(a.y1, b.y1),
})

export const boxOverlaps = (a: Box, b: Box): boolean =>
  a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1

/** Whether all of `b` lies in `a`, its edges too. */
export const boxHolds = (a: Box, b: Box): boolean =>
  b.x0 >= a.x0 && b.x1 <= a.x1 && b.y0 >= a.y0 && b.y1 <= a.y1

export const boxGrow = (box: Box, by: number): Box => ({
  x0: box.x0 - by,
  y0: box.y0 - by,
  x1: box.x1 + by,
  y1: box.y1 + by,
})
