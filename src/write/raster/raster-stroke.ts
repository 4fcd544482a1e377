import { type Point, pointDistance, pointToward } from '../../geometry/point.ts'
import type { Polyline } from './raster-flatten.ts'

export type Polygon = readonly Point[]

/**
 * A line as polygons that all turn the same way, to be filled together by the non-zero rule: butt ends and round joins, as
 * the PDF has them. Width and dashes in pixels.
 */
export const strokePolygons = (line: Polyline, width: number, dash: readonly number[]): readonly Polygon[] =>
  (dash.length > 0 ? dashed(line, dash) : [line]).flatMap((part) => outlined(part, width / 2))

const outlined = ({ points, closed }: Polyline, half: number): readonly Polygon[] => {
  const ends = closed ? [...points, points[0]!] : points
  const polygons: Polygon[] = []
  let before: number | null = null
  let first: number | null = null
  for (let i = 1; i < ends.length; i++) {
    const [a, b] = [ends[i - 1]!, ends[i]!]
    if (a.x === b.x && a.y === b.y) continue
    const angle = Math.atan2(b.y - a.y, b.x - a.x)
    polygons.push(bar(a, b, angle, half))
    if (before !== null) polygons.push(...join(a, before, angle, half))
    first ??= angle
    before = angle
  }
  if (closed && first !== null && before !== null) polygons.push(...join(points[0]!, before, first, half))
  return polygons
}

const square = Math.PI / 2

const bar = (a: Point, b: Point, angle: number, half: number): Polygon => [
  pointToward(a, angle - square, half),
  pointToward(b, angle - square, half),
  pointToward(b, angle + square, half),
  pointToward(a, angle + square, half),
]

/** The wedge between two bars on the outer side of a turn, its rim round within a fiftieth of a pixel. */
const join = (at: Point, from: number, to: number, half: number): readonly Polygon[] => {
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from))
  if (Math.abs(turn) < 1e-6) return []
  // the outer side lies to the right of a left turn
  const side = turn > 0 ? -square : square
  const step = 2 * Math.acos(Math.max(0, 1 - 0.02 / half))
  const count = Math.max(1, Math.ceil(Math.abs(turn) / Math.max(step, 0.05)))
  const rim = Array.from({ length: count + 1 }, (_, i) =>
    pointToward(at, from + side + (turn * i) / count, half),
  )
  return [turn > 0 ? [at, ...rim] : [at, ...rim.reverse()]]
}

/** The parts of a line that a pattern of drawn and left-out lengths shows; it begins anew with each line. */
const dashed = ({ points, closed }: Polyline, dash: readonly number[]): readonly Polyline[] => {
  const ends = closed ? [...points, points[0]!] : points
  // an odd pattern is read twice (ISO 32000-1, 8.4.3.6)
  const parts: Point[][] = []
  let index = 0
  let left = dash[0]!
  let drawing: Point[] | null = [ends[0]!]
  const turn = (at: Point): void => {
    if (drawing) parts.push([...drawing, at])
    index++
    left = dash[index % dash.length]!
    drawing = index % 2 === 0 ? [at] : null
  }
  for (let i = 1; i < ends.length; i++) {
    const [a, b] = [ends[i - 1]!, ends[i]!]
    const long = pointDistance(a, b)
    let done = 0
    while (long - done > left) {
      done += left
      turn({ x: a.x + ((b.x - a.x) * done) / long, y: a.y + ((b.y - a.y) * done) / long })
    }
    left -= long - done
    drawing?.push(b)
  }
  if (drawing && drawing.length > 1) parts.push(drawing)
  return parts.map((part) => ({ points: part, closed: false }))
}
