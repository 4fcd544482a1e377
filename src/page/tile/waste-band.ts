import { segmentDirection } from '../../geometry/at.ts'
import { segmentLength } from '../../geometry/length.ts'
import { arcSegment, type Path, pathSegments, type Segment, segmentsPath } from '../../geometry/path.ts'
import { pointToward } from '../../geometry/point.ts'
import { segmentPart } from '../../geometry/split.ts'

/** A band of grey beside the cut line, on the waste side alone: from the line's middle to its near edge, and its width, mm. */
const near = 0.6
export const bandPen = { width: 3.4, grey: 0.72 } as const

/** From the cut line to the far edge of the band, mm. */
export const bandReach = near + bandPen.width

/** Middles of the band, one for each segment of a cut line, in the pattern, so that neighbours draw the same ones. */
export const wasteBands = (cut: Path): readonly Path[] => {
  const segments = pathSegments(cut)
  return segments.flatMap((segment, i) => {
    const part = shortened(
      segment,
      cornerRoom(segments[i - 1], segment),
      cornerRoom(segment, segments[i + 1]),
    )
    const middle = part && besideOf(part, near + bandPen.width / 2)
    return middle ? [segmentsPath([middle])] : []
  })
}

/** In a sharp corner of the waste a band ends where it would cross the other line, mm before the corner. */
const cornerRoom = (before: Segment | undefined, after: Segment | undefined): number => {
  if (!before || !after) return 0
  const bend = segmentDirection(after, 0) - segmentDirection(before, 1)
  // the wood is on the left of the way: the waste's own corner is wide where the way turns left
  const corner = Math.PI + Math.atan2(Math.sin(bend), Math.cos(bend))
  return corner < Math.PI / 2 ? bandReach / Math.tan(corner) : 0
}

const shortened = (segment: Segment, before: number, behind: number): Segment | null => {
  const length = segmentLength(segment)
  return before + behind < length ? segmentPart(segment, before / length, 1 - behind / length) : null
}

/** The same line `off` mm to the right of the way; null where an arc has no room for it. */
const besideOf = (segment: Segment, off: number): Segment | null => {
  switch (segment.kind) {
    case 'line': {
      const right = segmentDirection(segment, 0) - Math.PI / 2
      return {
        kind: 'line',
        from: pointToward(segment.from, right, off),
        to: pointToward(segment.to, right, off),
      }
    }
    case 'arc': {
      const radius = segment.radius + (segment.sweep > 0 ? off : -off)
      return radius > bandPen.width
        ? arcSegment(segment.centre, radius, segment.startAngle, segment.sweep)
        : null
    }
    case 'cubic': {
      // exact at both ends, and near enough for a band between them
      const [first, last] = [segmentDirection(segment, 0), segmentDirection(segment, 1)]
      const move = (direction: number) => ({
        x: off * Math.cos(direction - Math.PI / 2),
        y: off * Math.sin(direction - Math.PI / 2),
      })
      const [a, b] = [move(first), move(last)]
      return {
        kind: 'cubic',
        from: { x: segment.from.x + a.x, y: segment.from.y + a.y },
        c1: { x: segment.c1.x + a.x, y: segment.c1.y + a.y },
        c2: { x: segment.c2.x + b.x, y: segment.c2.y + b.y },
        to: { x: segment.to.x + b.x, y: segment.to.y + b.y },
      }
    }
    default:
      return segment satisfies never
  }
}
