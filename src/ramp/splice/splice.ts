import type { Units } from '../../design/design.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { convexContains } from '../../geometry/clip.ts'
import { polygonContains } from '../../geometry/contains.ts'
import { inch } from '../../geometry/inch.ts'
import { pathDistance, segmentsGap } from '../../geometry/nearest.ts'
import { convexOverlap } from '../../geometry/overlap.ts'
import type { Path, Segment } from '../../geometry/path.ts'
import { pathCut } from '../../geometry/path-cut.ts'
import type { Point } from '../../geometry/point.ts'
import { outerPolygon } from '../../geometry/polygon/outer-polygon.ts'
import { same } from '../check/offer.ts'
import { type Timber, timberCorners } from '../frame/timber.ts'

/** Where two pieces of a side meet: along the middle of a timber, from its face straight to the bottom edge. mm */
export interface Splice {
  /** index among the studs, then the timbers behind the lip; it stands on the plate, so it is cut shorter */
  readonly timber: number
  /** on the curve or the top line */
  readonly top: Point
  /** on the bottom edge */
  readonly foot: Point
  /** of plywood as thick as the side, inside it over the joint, turned as the timber is */
  readonly plate: {
    /** counter-clockwise from the upper end of the edge under the timber's face */
    readonly corners: readonly Point[]
    /** across the joint, and along it */
    readonly size: readonly [number, number]
  }
}

/** What may be spliced: a side, the timbers behind it, and edges that a joint keeps away from. */
export interface Spliced {
  readonly outline: Path
  readonly timbers: readonly Timber[]
  /** the notch, or the lip */
  readonly avoid: readonly Segment[]
  /** where the bottom edge ends, behind the toe */
  readonly bottom: number
}

/**
 * Common practice, no source, mm: a joint from notch and lip; a piece along the floor at least; the plate from the side's edges
 * and from other timbers, and how far it reaches to either side of the joint. A narrower timber has no room for a screw on each
 * side of the joint.
 */
export const splicing = {
  mm: { away: 100, piece: 200, edge: 5, gap: 3, most: 200, least: 75, step: 5, timber: 30 },
  in: {
    away: 4 * inch,
    piece: 8 * inch,
    edge: (3 * inch) / 16,
    gap: inch / 8,
    most: 8 * inch,
    least: 3 * inch,
    step: inch / 4,
    timber: 1.1875 * inch,
  },
} as const

/** What pieces are called behind their side's mark, from the toe. */
export const pieceLetters = ['a', 'b', 'c', 'd'] as const

/** Those of a ramp's sides; `a` alone where each is one piece. */
export const piecesOf = ({ splices }: { readonly splices: readonly Splice[] }): readonly string[] =>
  pieceLetters.slice(0, splices.length + 1)

/** So many joints at most, and as much of each must lie under its plate. */
const mostJoints = 3
const leastCovered = 0.6

/**
 * The fewest joints with which every piece comes out of a panel; of as many those under the longest plates, then those that part
 * the side most evenly. None where the side fits whole, null where no timbers carry what is needed.
 */
export const solveSplices = (
  side: Spliced,
  sizes: readonly (readonly [number, number])[],
  units: Units,
): readonly Splice[] | null => {
  if (fitsPanel(side.outline, sizes)) return []
  const polygon = outerPolygon(side.outline, 0.5)
  // a plate's grain runs across the joint, a panel's along its long side
  const widest = Math.max(...sizes.map(([short]) => short))
  const places = side.timbers
    .flatMap((_, i) => spliceOn(side, polygon, i, widest, units) ?? [])
    .sort((a, b) => a.foot.x - b.foot.x)
  const follows = followed(side, places, sizes, units)
  for (let count = 1; count <= mostJoints; count++) {
    const ways = chains(follows, places.length, count).map((chain) => chain.map((i) => places[i]!))
    const [best] = ways.sort((a, b) => shortest(b) - shortest(a) || longest(side, a) - longest(side, b))
    if (best) return best
  }
  return null
}

/**
 * Whether the piece between two joints can be sawn: they do not cross, and it is long enough to be held and fits a panel. By their
 * indices; null for the toe and for the back. Each is cut out once, however many ways it is a part of.
 */
type Follows = (from: number | null, to: number | null) => boolean

const followed = (
  { outline, bottom }: Spliced,
  places: readonly Splice[],
  sizes: readonly (readonly [number, number])[],
  units: Units,
): Follows => {
  const known = new Map<string, boolean>()
  const sound: Follows = (from, to) => {
    const [a, b] = [from === null ? null : places[from]!, to === null ? null : places[to]!]
    if ((b?.foot.x ?? bottom) - (a?.foot.x ?? 0) < splicing[units].piece - same) return false
    if (a && b && b.top.x <= a.top.x) return false
    const joints = [a, b].filter((joint) => joint !== null)
    return fitsPanel(sidePieces(outline, joints)[a ? 1 : 0]!, sizes)
  }
  return (from, to) => {
    const key = `${from} ${to}`
    const found = known.get(key) ?? sound(from, to)
    known.set(key, found)
    return found
  }
}

/** Its pieces from the toe to the back, each from its front bottom corner counter-clockwise. */
export const sidePieces = (outline: Path, splices: readonly Splice[]): readonly Path[] => {
  const pieces: Path[] = []
  let rest = outline
  for (const { foot, top } of splices) {
    const [front, back] = pathCut(rest, foot, top)
    pieces.push(front)
    rest = back
  }
  return [...pieces, rest]
}

/** Lying or standing. */
const fitsPanel = (outline: Path, sizes: readonly (readonly [number, number])[]): boolean => {
  const { x0, y0, x1, y1 } = pathBounds(outline)
  const [low, far] = [Math.min(x1 - x0, y1 - y0), Math.max(x1 - x0, y1 - y0)]
  return sizes.some(([short, long]) => low <= short + same && far <= long + same)
}

/** The shortest of their plates. */
const shortest = (splices: readonly Splice[]): number =>
  Math.min(...splices.map(({ plate }) => plate.size[1]))

/** The longest piece along the floor. */
const longest = ({ bottom }: Spliced, splices: readonly Splice[]): number =>
  Math.max(...reaches(splices, bottom))

const reaches = (splices: readonly Splice[], bottom: number): readonly number[] => {
  const ends = [0, ...splices.map(({ foot }) => foot.x), bottom]
  return ends.slice(1).map((end, i) => end - ends[i]!)
}

/** All ways to take `count` of so many joints, by their indices in order, so that each piece can be sawn. */
const chains = (
  follows: Follows,
  joints: number,
  count: number,
  from: number | null = null,
): readonly (readonly number[])[] => {
  if (count === 0) return follows(from, null) ? [[]] : []
  const found: (readonly number[])[] = []
  for (let i = from === null ? 0 : from + 1; i < joints; i++)
    if (follows(from, i)) for (const rest of chains(follows, joints, count - 1, i)) found.push([i, ...rest])
  return found
}

/** The joint on a timber, with the widest plate that has room and is no longer than `longest`; null where it has none or comes too near to the notch. */
const spliceOn = (
  side: Spliced,
  polygon: readonly Point[],
  index: number,
  longest: number,
  units: Units,
): Splice | null => {
  const timber = side.timbers[index]!
  const { away, timber: leastWide } = splicing[units]
  const top = { x: timber.x, y: timber.y }
  const foot = { x: timber.x + timber.y * Math.tan(timber.angle), y: 0 }
  if (timber.width < leastWide - same || Math.cos(timber.angle) < Math.SQRT1_2) return null
  if (foot.x <= 0 || foot.x > side.bottom - away) return null
  // one in a corner does not reach the side's edge
  if (pathDistance(side.outline, top) > 1e-4) return null
  const joint = { kind: 'line', from: top, to: foot } as const
  if (side.avoid.some((edge) => segmentsGap(joint, edge).distance < away)) return null
  const plate = plateOver(side, polygon, index, longest, units)
  return plate && { timber: index, top, foot, plate }
}

const plateOver = (
  side: Spliced,
  polygon: readonly Point[],
  index: number,
  longest: number,
  units: Units,
): Splice['plate'] | null => {
  const { edge, gap, most, least, step } = splicing[units]
  const timber = side.timbers[index]!
  const [cos, sin] = [Math.cos(timber.angle), Math.sin(timber.angle)]
  // one of two axes of a plate lies within half a right angle of the way to another timber: so far away it parts them by the gap
  const reach = Math.SQRT2 * (Math.hypot(most, timber.y / cos) + gap)
  const others = side.timbers
    .filter((other, i) => {
      const far = Math.hypot(other.x - timber.x, other.y - timber.y)
      return i !== index && far <= reach + Math.SQRT2 * Math.hypot(other.width / 2, other.depth)
    })
    .map(timberCorners)
  const joint = timber.y / cos
  for (let half = most; half >= least - same; half -= step) {
    // the lower one of its corners stays off the floor
    const room = (timber.y - edge - half * Math.abs(sin)) / cos - edge
    const length = Math.floor(Math.min(room, longest) / step + same) * step
    if (length < leastCovered * joint) continue
    const corners = timberCorners({
      ...timber,
      x: timber.x + edge * sin,
      y: timber.y - edge * cos,
      width: 2 * half,
      depth: length,
    })
    const inside =
      corners.every((p) => polygonContains(polygon, p)) &&
      polygon.every((p) => !convexContains(corners, p, edge - 1))
    if (inside && others.every((other) => convexOverlap(corners, other) <= -gap + same))
      return { corners, size: [2 * half, length] }
  }
  return null
}
