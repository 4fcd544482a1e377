import type { QuarterDesign, Units } from '../../design/design.ts'
import { thinWide } from '../../design/section.ts'
import { boxCorners } from '../../geometry/clip.ts'
import { convexApart } from '../../geometry/overlap.ts'
import type { Point } from '../../geometry/point.ts'
import { same } from '../check/offer.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Transition } from '../side/transition.ts'
import { screwGrip, screwLength } from './screw-lengths.ts'
import { type Timber, timberCorners } from './timber.ts'

/** How far the pipe's screws stay inside a timber's long edges, where there is room and at least; nearer than the first they split it unless it is clamped. Common practice, no source. mm */
export const insideEdge = { wanted: 10, least: 6 } as const

/** How far the lip stud comes down the curve at most to make room for the pipe's timber, mm: the skin's end hangs over it. */
export const lipRoom = 25

/**
 * What a screw straight down from the pipe's middle finds under the notch's floor: so much air, then so much wood, mm; null
 * where it misses the timber.
 */
const pipeRun = (
  { centre, outside }: SolvedCoping,
  timber: Timber,
): { readonly air: number; readonly wood: number } | null => {
  const floor = centre.y - outside / 2
  const corners = timberCorners(timber)
  const crossed = corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length]!
    return Math.min(a.x, b.x) <= centre.x && Math.max(a.x, b.x) >= centre.x && a.x !== b.x
      ? [a.y + ((b.y - a.y) * (centre.x - a.x)) / (b.x - a.x)]
      : []
  })
  if (crossed.length === 0) return null
  const top = Math.min(floor, Math.max(...crossed))
  return { air: floor - top, wood: top - Math.min(...crossed) }
}

/** How far behind the front face of a timber the pipe's screws enter it, and how far before its rear one; mm. */
export const pipeEdges = (
  { centre }: Pick<SolvedCoping, 'centre'>,
  { x, width }: Timber,
): { readonly front: number; readonly rear: number } => ({
  front: centre.x - (x - width / 2),
  rear: x + width / 2 - centre.x,
})

/** Whether a usual screw reaches the timber and grips in it, or goes through one that is thinner. */
export const holdsPipe = (
  coping: SolvedCoping,
  timber: Timber,
  { studs }: QuarterDesign,
  units: Units,
): boolean => {
  const run = pipeRun(coping, timber)
  return (
    run !== null &&
    run.wood >= Math.min(screwGrip[units], ...studs.section) - same &&
    screwLength(run.air, units) !== null
  )
}

/** A ramp's pipe with what may hold it. */
interface HeldPipe {
  readonly design: QuarterDesign
  readonly coping: SolvedCoping | null
  readonly studs: readonly (Timber & { readonly role: string })[]
  readonly deckTimbers: readonly { readonly role: string }[]
}

/** The air under the notch's floor before the screws of a pipe meet the last stud, mm; null where that does not hold them. */
export const airToLip = (
  coping: SolvedCoping,
  studs: HeldPipe['studs'],
  design: QuarterDesign,
  units: Units,
): number | null => {
  const lip = studs.find(({ role }) => role === 'lip')
  return lip && holdsPipe(coping, lip, design, units) ? pipeRun(coping, lip)!.air : null
}

/** Whether the screws of a pipe go into blocks: it has no timber of its own, and the last stud does not hold them. */
export const pipeOnBlocks = ({ design, coping, studs, deckTimbers }: HeldPipe, units: Units): boolean =>
  coping !== null &&
  !deckTimbers.some(({ role }) => role === 'pipe') &&
  airToLip(coping, studs, design, units) === null

/** The air that the screws of a pipe cross, mm: none where it has a timber of its own, or where blocks fill it. */
export const pipeAir = ({ design, coping, studs, deckTimbers }: HeldPipe, units: Units): number =>
  coping && !deckTimbers.some(({ role }) => role === 'pipe')
    ? (airToLip(coping, studs, design, units) ?? 0)
    : 0

/** Ways for a timber of the pipe's own, its top in the notch's floor: flat, else on edge, the middle one nearest to its middle. `inside`: how far its screws stay off its long edges, mm. */
export const pipeTimbers = (
  { studs: { section } }: QuarterDesign,
  { centre, outside, seat }: SolvedCoping,
  inside: number = insideEdge.least,
): readonly Timber[] => {
  const [thin, wide] = thinWide(section)
  const r = outside / 2
  const wall = centre.x + r
  const at = (lies: Timber['lies'], x: number): Timber => {
    const [width, depth] = lies === 'edge' ? [thin, wide] : [wide, thin]
    return { x, y: centre.y - r, angle: 0, lies, width, depth }
  }
  const flat = at('flat', seat === 'square' ? wall - wide / 2 : centre.x)
  // as far back as the wall and the screw allow
  const lastOf = (off: number): number =>
    Math.max(centre.x, Math.min(wall - thin / 2, centre.x + thin / 2 - off))
  const last = lastOf(inside)
  const places = [
    ...Array.from({ length: Math.ceil(last - centre.x) }, (_, i) => centre.x + i),
    Math.min(last, lastOf(insideEdge.wanted)),
    last,
  ].sort((a, b) => a - b)
  return [flat, ...places.map((x) => at('edge', x))].filter(
    ({ x, width }) => Math.abs(x - centre.x) <= width / 2 - inside + same,
  )
}

/** Whether a timber lies whole in the panel, before it is notched. */
export const insidePanel = (
  timber: Timber,
  { curve, heights }: Transition,
  { length, chamfer }: { readonly length: number; readonly chamfer: number },
): boolean =>
  timberCorners(timber).every(
    (p) =>
      p.x >= -same &&
      p.y >= -same &&
      p.x <= length + same &&
      p.y <= heights.frame + same &&
      p.x - p.y <= length - chamfer + same &&
      (p.x >= curve.point(curve.lip).x || curve.nearest(p).distance >= -same),
  )

/** Whether two timbers leave each other their room. */
export const apart = (a: Timber, b: Timber): boolean => {
  // no corner lies farther from the middle of its face; most lie much farther from each other
  const reach = Math.hypot(a.width / 2, a.depth) + Math.hypot(b.width / 2, b.depth)
  const dx = a.x - b.x
  const dy = a.y - b.y
  return dx * dx + dy * dy > reach * reach || cornersApart(timberCorners(a), timberCorners(b))
}

export const cornersApart = (a: readonly Point[], b: readonly Point[]): boolean => convexApart(a, b, same)

/** What the notch takes of a panel so high, as a box. */
export const notchBox = ({ centre, outside }: SolvedCoping, height: number): readonly Point[] => {
  const r = outside / 2
  const low = centre.y - r
  return boxCorners({ x0: centre.x - r, y0: low, x1: centre.x + r, y1: Math.max(height, low) })
}
