import { segmentAt } from '../../../src/geometry/at.ts'
import { polygonContains } from '../../../src/geometry/contains.ts'
import { segmentLength } from '../../../src/geometry/length.ts'
import { pathSegments } from '../../../src/geometry/path.ts'
import { type Point, pointBetween } from '../../../src/geometry/point.ts'
import type { Side } from '../../../src/ramp/side/side.ts'

/** Points of each edge no farther apart than `step`. */
const points = ({ edges }: Side, step: number): readonly (readonly [string, readonly Point[]])[] =>
  edges.map(({ name, path }) => [
    name,
    pathSegments(path).flatMap((segment) => {
      const count = Math.ceil(segmentLength(segment) / step)
      return Array.from({ length: count + 1 }, (_, i) => segmentAt(segment, i / count))
    }),
  ])

/** The shortest way through wood from one edge to another that is not beside it, by trying many points; but at the toe. */
export const woodByPoints = (side: Side, step: number): number => {
  const all = points(side, step)
  const polygon = all.flatMap(([, own]) => own)
  let least = Number.POSITIVE_INFINITY
  for (const [i, [name, own]] of all.entries())
    for (const [other, theirs] of all.slice(i + 2)) {
      // the blunt toe, the corner behind a chamfer, the wood behind the notch
      const pair = `${name} ${other}`
      if (['bottom curve', 'bottom back', 'bottom toe', 'back notch'].includes(pair)) continue
      for (const p of own)
        for (const q of theirs) {
          const square = (p.x - q.x) ** 2 + (p.y - q.y) ** 2
          if (square < least && [0.1, 0.5, 0.9].every((t) => polygonContains(polygon, pointBetween(p, q, t))))
            least = square
        }
    }
  return Math.sqrt(least)
}
