import type { FlatDesign, Units } from '../../design/design.ts'
import { rangeAt } from '../../design/schema.ts'
import { thinWide } from '../../design/section.ts'
import { type Finding, note, stop } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { offering, set, told } from '../check/told.ts'
import type { Curve } from '../curve/curve.ts'
import type { Stand, Stud } from './stud.ts'

/** How each stud of a flat lies. */
type Section = Pick<Stud, 'lies' | 'width' | 'depth'>

/** On edge where it stands in the frame; else on edge ripped to its height, or flat: what sags less. */
const flatSection = ({ studs }: FlatDesign, frame: number): Section => {
  const [thin, wide] = thinWide(studs.section)
  const edge: Section = { lies: 'edge', width: thin, depth: Math.min(wide, frame) }
  const flat: Section = { lies: 'flat', width: wide, depth: Math.min(thin, frame) }
  // a beam's stiffness goes with its width and the cube of its depth
  const stiffness = ({ width, depth }: Section): number => width * depth ** 3
  return wide <= frame + same || stiffness(edge) >= stiffness(flat) ? edge : flat
}

/** One flush with each end, the others at multiples of `every` from the first end; one that would meet an end's is that one. */
export const solveFlatStuds = (
  design: FlatDesign,
  curve: Curve,
  frame: number,
  units: Units,
): { readonly studs: readonly Stud[]; readonly stand: Stand; readonly findings: readonly Finding[] } => {
  const { length } = design
  const { every } = design.studs
  const section = flatSection(design, frame)
  const { width } = section
  const stops = roomFindings(design, width, units)
  if (stops.length > 0) return { studs: [], stand: () => null, findings: stops }
  const ends = [width / 2, length - width / 2] as const
  const inner = Array.from({ length: Math.floor(length / every) }, (_, i) => (i + 1) * every).filter((at) =>
    ends.every((end) => Math.abs(at - end) >= width - same),
  )
  const place = (at: number, role: Stud['role']): Stud => ({
    at,
    ...curve.point(curve.placeAtLength(at)),
    angle: curve.slope(curve.placeAtLength(at)),
    ...section,
    role,
  })
  const studs = [ends[0], ...inner, ends[1]].map((at, i, all) =>
    place(at, i === 0 || i === all.length - 1 ? 'end' : 'inner'),
  )
  const stand: Stand = (at, among) =>
    among.every((other) => Math.abs(at - other.at) >= width - same) && at > ends[0] && at < ends[1]
      ? place(at, 'seam')
      : null
  return { studs, stand, findings: sectionFindings(design, section, frame, units) }
}

const roomFindings = (
  { length, studs: { every } }: FlatDesign,
  width: number,
  units: Units,
): readonly Finding[] => {
  const { atLeast } = offer(units)
  const show = (mm: number): string => measured(mm, units)
  return [
    ...(length < 2 * width - same
      ? [
          stop(
            'length-short',
            offering(
              `a flat ${show(length)} long has no room for a stud ${show(width)} wide at each end; make it ${atLeast(2 * width)} or more`,
              set('length', atLeast(2 * width)),
            ),
          ),
        ]
      : []),
    ...(every < width - same
      ? [
          stop(
            'flat-studs',
            offering(
              `studs ${show(width)} wide do not fit side by side every ${show(every)}; make \`every\` ${atLeast(width)} or more`,
              set('studs.every', atLeast(width)),
            ),
          ),
        ]
      : []),
  ]
}

/** What is done to studs too deep for the frame, and the height that takes them whole. */
const sectionFindings = (
  { studs, height }: FlatDesign,
  { lies, depth }: Section,
  frame: number,
  units: Units,
): readonly Finding[] => {
  const [thin, wide] = thinWide(studs.section)
  if (wide <= frame + same) return []
  const { atLeast, atMost } = offer(units)
  const show = (mm: number): string => measured(mm, units)
  const done =
    lies === 'edge'
      ? `rip them to ${atMost(depth)} and stand them on edge`
      : depth < thin - same
        ? `lay them flat, ripped to ${atMost(depth)}`
        : 'lay them flat'
  const whole = height.value + wide - frame
  const { most } = rangeAt(`ramps[flat].height.${height.layer}`)
  const way =
    whole <= most
      ? offering(
          `; a ${height.layer} height of ${atLeast(whole)} takes them whole`,
          set(`height.${height.layer}`, atLeast(whole)),
        )
      : ''
  return [
    note(
      'flat-studs',
      told`studs ${show(wide)} deep do not stand in a frame ${show(frame)} high: ${done}${way}`,
    ),
  ]
}
