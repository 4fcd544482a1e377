import type { Point } from '../../../src/geometry/point.ts'
import type { Curve } from '../../../src/ramp/curve/curve.ts'

/**
 * A transition that is known by points alone, from below its toe to above its lip: every query is answered by looking along
 * them. A place is an index with its fraction; an offset moves each point square to its neighbours, so places stay on normals.
 * It knows no circle, no centre and no radius. Error: about step² / 8 of the curvature, and the same of the slope.
 */
export const sampledCurve = (points: readonly Point[], toe: number, lip: number): Curve => {
  const last = points.length - 1
  const lengths = [0]
  for (let i = 1; i <= last; i++)
    lengths.push(
      lengths[i - 1]! + Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y),
    )
  /** way up at a corner: the direction from the one before to the one after */
  const ways = points.map((_, i) => {
    const [a, b] = [points[Math.max(0, i - 1)]!, points[Math.min(last, i + 1)]!]
    const size = Math.hypot(b.x - a.x, b.y - a.y)
    return { x: (b.x - a.x) / size, y: (b.y - a.y) / size }
  })
  const between = <T>(list: readonly T[], place: number, mix: (a: T, b: T, t: number) => T): T => {
    const i = Math.min(last - 1, Math.max(0, Math.floor(place)))
    return mix(list[i]!, list[i + 1]!, place - i)
  }
  const mixPoints = (a: Point, b: Point, t: number): Point => ({
    x: a.x + (b.x - a.x) * t,
    y: a.y + (b.y - a.y) * t,
  })
  const mix = (a: number, b: number, t: number): number => a + (b - a) * t
  const point = (place: number): Point => between(points, place, mixPoints)
  const along = (place: number): number => between(lengths, place, mix)
  const lengthTo = (place: number): number => along(place) - lengths[toe]!

  /** the lowest place where f, asked at the corners and in halves between two of them, changes its sign */
  const firstZero = (f: (p: Point) => number): number | null => {
    for (let i = 0; i < last; i++) {
      if (f(points[i]!) > 0 === f(points[i + 1]!) > 0) continue
      let [a, b] = [i, i + 1]
      for (let k = 0; k < 60; k++) {
        const middle = (a + b) / 2
        if (f(point(middle)) > 0 === f(points[i]!) > 0) a = middle
        else b = middle
      }
      return (a + b) / 2
    }
    return null
  }

  return {
    toe,
    lip,
    point,
    slope: (place) => {
      const way = between(ways, place, mixPoints)
      return Math.atan2(way.y, way.x)
    },
    radiusAt: (place) => {
      // of the circle through three points
      const i = Math.min(last - 1, Math.max(1, Math.round(place)))
      const [a, b, c] = [points[i - 1]!, points[i]!, points[i + 1]!]
      const side = (p: Point, q: Point): number => Math.hypot(q.x - p.x, q.y - p.y)
      const twice = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)
      return (side(a, b) * side(b, c) * side(c, a)) / (2 * Math.abs(twice))
    },
    lengthTo,
    placeAtLength: (length) => {
      const wanted = length + lengths[toe]!
      let [a, b] = [0, last]
      while (b - a > 1) {
        const middle = (a + b) >> 1
        if (lengths[middle]! <= wanted) a = middle
        else b = middle
      }
      return a + (wanted - lengths[a]!) / (lengths[a + 1]! - lengths[a]!)
    },
    placeAtHeight: (y) => firstZero((p) => p.y - y),
    placeAtDistance: (from, distance) => firstZero((p) => Math.hypot(p.x - from.x, p.y - from.y) - distance),
    nearest: (p) => {
      let best = { place: 0, distance: Number.POSITIVE_INFINITY }
      for (let i = 0; i < last; i++) {
        const [a, b] = [points[i]!, points[i + 1]!]
        const [dx, dy] = [b.x - a.x, b.y - a.y]
        const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)))
        const off = Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy)
        // the wood lies on the right of the way up
        const side = dx * (p.y - a.y) - dy * (p.x - a.x) > 0 ? -1 : 1
        if (off < Math.abs(best.distance)) best = { place: i + t, distance: side * off }
      }
      return best
    },
    offset: (distance) =>
      sampledCurve(
        points.map((p, i) => ({ x: p.x - distance * ways[i]!.y, y: p.y + distance * ways[i]!.x })),
        toe,
        lip,
      ),
    segments: (from, to) => {
      const step = to > from ? 1 : -1
      const places = [from]
      for (
        let i = step > 0 ? Math.floor(from) + 1 : Math.ceil(from) - 1;
        step > 0 ? i < to : i > to;
        i += step
      )
        places.push(i)
      places.push(to)
      return places.slice(1).map((place, i) => ({ kind: 'line', from: point(places[i]!), to: point(place) }))
    },
  }
}

/** Points of a curve given by a parameter, even from `low` to `high`, a share `beyond` of the whole past both ends. */
export const sampleBetween = (
  at: (parameter: number) => Point,
  low: number,
  high: number,
  { count, before, after }: { readonly count: number; readonly before: number; readonly after: number },
): Curve => {
  const points = Array.from({ length: before + count + after + 1 }, (_, i) =>
    at(low + ((high - low) * (i - before)) / count),
  )
  return sampledCurve(points, before, before + count)
}
