import type { RampDesign, Units } from '../design/design.ts'
import { bisect } from '../geometry/bisect.ts'
import type { Point } from '../geometry/point.ts'
import { type Finding, note, warn } from './check.ts'
import type { SolvedCoping } from './coping.ts'
import { measured, offer, same } from './offer.ts'
import type { Transition } from './transition.ts'

/** A cross timber, seen from the end. The skin face's middle lies on the curve; the rest is in the panel. */
export interface Stud {
  /** along the curve from the toe corner to its middle, mm */
  readonly at: number
  readonly x: number
  readonly y: number
  /** slope of the curve there, radians */
  readonly angle: number
  readonly lies: 'edge' | 'flat'
  readonly role: 'toe' | 'curve'
  /** along the curve, and into the panel */
  readonly width: number
  readonly depth: number
}

/** Corners, counter-clockwise from the upper end of the skin face. */
export const studCorners = (stud: Stud): readonly Point[] => {
  const [cos, sin] = [Math.cos(stud.angle), Math.sin(stud.angle)]
  const corner = (along: number, into: number): Point => ({
    x: stud.x + along * cos + into * sin,
    y: stud.y + along * sin - into * cos,
  })
  const half = stud.width / 2
  return [corner(half, 0), corner(-half, 0), corner(-half, stud.depth), corner(half, stud.depth)]
}

/** Thinnest strip that is worth ripping, mm. */
const leastRipped = 10

/** What an offered toe may be higher than asked for, and leaves to spare. */
const toeRoom = 2

/** The panel as far as studs meet its edges. */
interface Panel {
  /** where the cut curve ends at its top */
  readonly curveEnd: number
  readonly length: number
}

export const solveStuds = (
  ramp: RampDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  { curveEnd, length }: Panel,
  units: Units,
): { readonly studs: readonly Stud[]; readonly findings: readonly Finding[] } => {
  const show = (mm: number): string => measured(mm, units)
  const { curve } = transition
  /** How far the stud sticks out of the panel's front, bottom, back or chamfer; 0 or less when it is inside. */
  const outside = (stud: Stud): number =>
    Math.max(
      ...studCorners(stud).flatMap((p) => [
        -p.x,
        -p.y,
        p.x - length,
        (p.x - p.y - (length - ramp.chamfer)) * Math.SQRT1_2,
      ]),
    )
  const [thin, wide] = [Math.min(...ramp.studs.section), Math.max(...ramp.studs.section)]
  const place = (
    at: number,
    lies: 'edge' | 'flat',
    role: Stud['role'],
    depth = lies === 'flat' ? thin : wide,
  ): Stud => {
    const here = curve.placeAtLength(at)
    return {
      at,
      ...curve.point(here),
      angle: curve.slope(here),
      lies,
      role,
      width: lies === 'flat' ? wide : thin,
      depth,
    }
  }
  const end = curve.lengthTo(curveEnd)
  const findings: Finding[] = []
  const studs: Stud[] = []

  const fits = (stud: Stud): boolean =>
    stud.at + stud.width / 2 <= end + same && outside(stud) <= same && (!coping || clearsPipe(stud, coping))

  // the first lies flat, flush with the toe, moved up by the least amount that fits, else ripped
  const overFront = (at: number): number => {
    const [upper, lower] = studCorners(place(at, 'flat', 'toe'))
    return -Math.min(upper!.x, lower!.x)
  }
  // a curve that starts nearly upright never comes clear of the front
  const flush = overFront(wide) < 0 ? bisect(overFront, 0, wide) : wide / 2
  const first = place(flush, 'flat', 'toe')
  const last = Math.min(flush + ramp.studs.every / 2, end - wide / 2)
  const moved = (): Stud | null => {
    if (last <= flush || outside(first) <= same || outside(place(last, 'flat', 'toe')) > 0) return null
    return place(
      bisect((at) => outside(place(at, 'flat', 'toe')), flush, last),
      'flat',
      'toe',
    )
  }
  const ripped = (): Stud | null => {
    const spill = (depth: number): number => outside(place(flush, 'flat', 'toe', depth)) - same / 2
    const depth = spill(0) < 0 && spill(thin) > 0 ? bisect(spill, 0, thin) : 0
    return depth >= leastRipped ? place(flush, 'flat', 'toe', depth) : null
  }
  const toeStud = [() => first, moved, ripped].map((way) => way()).find((stud) => stud && fits(stud))
  /** A higher toe under which the first would fit, if the floor is what is in the way and the rest of the curve has room. */
  const higherToe = (): number | null => {
    const toe = ramp.toe + outside(first)
    const start = curve.placeAtHeight(toe + toeRoom)
    if (start === null || -Math.min(...studCorners(first).map((p) => p.y)) < outside(first)) return null
    const stud = place(curve.lengthTo(start) + wide / 2, 'flat', 'toe')
    const seat = coping ? coping.centre.y - coping.outside / 2 : transition.heights.frame
    const low = studCorners(stud).every((p) => p.y < seat - toeRoom)
    return low && fits({ ...stud, at: stud.at + toeRoom }) ? toe : null
  }
  if (!toeStud) findings.push(noToeStud(higherToe(), units))
  else {
    studs.push(toeStud)
    if (toeStud.depth < thin)
      findings.push(
        note('stud-toe', `the first stud is ripped to ${show(toeStud.depth)} thick to lie in the toe`),
      )
    else if (toeStud !== first)
      findings.push(
        note(
          'stud-toe',
          `the first stud does not fit flush with the toe; it lies ${show(toeStud.at - flush)} further up`,
        ),
      )
  }

  let before = studs[0] ? studs[0].at + studs[0].width / 2 : 0
  for (let at = ramp.studs.every; at + thin / 2 <= end; at += ramp.studs.every) {
    const stud = [place(at, 'edge', 'curve'), place(at, 'flat', 'curve')].find(
      (candidate) => at - candidate.width / 2 >= before && fits(candidate),
    )
    if (!stud) {
      findings.push(
        warn(
          'stud-outside',
          `no stud fits ${show(at)} up the curve: it would leave the panel or meet another; left out`,
        ),
      )
      continue
    }
    if (stud.lies === 'flat')
      findings.push(
        note('stud-outside', `the stud ${show(at)} up the curve is too deep on edge there; it lies flat`),
      )
    studs.push(stud)
    before = at + stud.width / 2
  }
  return { studs, findings }
}

const noToeStud = (toe: number | null, units: Units): Finding =>
  warn(
    'stud-toe',
    toe === null
      ? 'no stud fits in the toe: it would leave the panel or meet the notch; the curve is too short, or starts too steep, for this section'
      : `no stud fits in the toe; a toe of ${offer(units).atLeast(toe)} takes one laid flat`,
  )

/** Below the notch's floor, or nowhere nearer to the pipe's middle than its radius. */
const clearsPipe = (stud: Stud, { centre, outside }: SolvedCoping): boolean => {
  const r = outside / 2
  if (studCorners(stud).every((p) => p.y <= centre.y - r + same)) return true
  // the middle in the stud's own axes: along its skin face, and into the panel
  const [dx, dy] = [centre.x - stud.x, centre.y - stud.y]
  const [cos, sin] = [Math.cos(stud.angle), Math.sin(stud.angle)]
  const along = Math.max(0, Math.abs(dx * cos + dy * sin) - stud.width / 2)
  const into = dx * sin - dy * cos
  return Math.hypot(along, Math.max(0, -into, into - stud.depth)) >= r - same
}
