import { affineIdentity } from '../geometry/affine.ts'
import { type Box, boxGrow, boxHolds, boxOverlaps, pointsBounds, segmentBounds } from '../geometry/bounds.ts'
import { type Convex, segmentClip } from '../geometry/clip.ts'
import { convexApart } from '../geometry/overlap.ts'
import { type Path, pathSegments, type Segment } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { Drawing } from './drawing.ts'
import { type TextMark, textCorners } from './text-box.ts'

/** A text where it may stand, with a leader to what it names. */
export interface LabelPlace {
  readonly text: TextMark
  readonly leader?: Path
}

/** What lies on an edge of a box lies in it, mm. */
const hair = 1e-6

/** Labels keep this far off lines and each other, mm. */
const pad = 0.4

/**
 * For each label the first of its places that lies inside, clear of all lines, of the labels set before it and of their leaders;
 * null where there is none.
 */
export const placeLabels = (
  labels: readonly Iterable<LabelPlace>[],
  drawn: Drawing,
  inside: Box,
): readonly (LabelPlace | null)[] => {
  const taken: { readonly box: Convex; readonly bounds: Box }[] = []
  const lines = drawn.flatMap((mark) =>
    mark.kind === 'stroke' || mark.kind === 'fill' ? pathSegments(mark.path).map(bounded) : [],
  )
  return labels.map((places) => {
    for (const place of places) {
      const box = padded(textCorners(place.text, affineIdentity))
      const around = pointsBounds(box)
      if (!boxHolds(inside, around)) continue
      const { leader } = place
      const near = boxGrow(around, hair)
      if (taken.some((other) => boxOverlaps(other.bounds, near) && !convexApart(box, other.box, 0))) continue
      if (leader && taken.some((other) => !isOff(leader, other.box))) continue
      if (lines.some(({ segment, bounds }) => boxOverlaps(bounds, around) && !isClear(segment, box))) continue
      if (leader && !isOff(leader, box)) continue
      taken.push({ box, bounds: around })
      if (leader) lines.push(...pathSegments(leader).map(bounded))
      return place
    }
    return null
  })
}

const bounded = (segment: Segment) => ({ segment, bounds: boxGrow(segmentBounds(segment), hair) })

const isClear = (segment: Segment, box: Convex): boolean => segmentClip(segment, box).length === 0

const isOff = (path: Path, box: Convex): boolean =>
  pathSegments(path).every((segment) => isClear(segment, box))

/** Corners of a box, lower left first, moved outward. */
const padded = ([a, b, c, d]: readonly Point[]): Convex => {
  const unit = (p: Point, q: Point): Point => {
    const size = Math.hypot(q.x - p.x, q.y - p.y) || 1
    return { x: ((q.x - p.x) / size) * pad, y: ((q.y - p.y) / size) * pad }
  }
  const [u, v] = [unit(a!, b!), unit(a!, d!)]
  const moved = (p: Point, along: number, up: number): Point => ({
    x: p.x + along * u.x + up * v.x,
    y: p.y + along * u.y + up * v.y,
  })
  return [moved(a!, -1, -1), moved(b!, 1, -1), moved(c!, 1, 1), moved(d!, -1, 1)]
}
