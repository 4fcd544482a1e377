import type { RampDesign, Units } from '../design/design.ts'
import { bisect } from '../geometry/bisect.ts'
import { type Point, pointDistance } from '../geometry/point.ts'
import { showLength } from '../length.ts'
import { type Finding, note, warn } from './check.ts'
import type { SolvedCoping } from './coping.ts'
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

/** How far the stud sticks out of the panel's front or bottom edge; 0 or less when it is inside. */
const outside = (stud: Stud): number => Math.max(...studCorners(stud).map((p) => Math.max(-p.x, -p.y)))

export const solveStuds = (
  ramp: RampDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  curveEnd: number,
  units: Units,
): { readonly studs: readonly Stud[]; readonly findings: readonly Finding[] } => {
  const show = (mm: number): string => showLength(mm, units)
  const { curve } = transition
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

  // the first lies flat, flush with the toe, moved up by the least amount that fits, else ripped
  const flush = bisect(
    (at) =>
      -Math.min(
        ...studCorners(place(at, 'flat', 'toe'))
          .slice(0, 2)
          .map((p) => p.x),
      ),
    0,
    wide,
  )
  const first = place(flush, 'flat', 'toe')
  const last = Math.min(flush + ramp.studs.every / 2, end - wide / 2)
  if (outside(first) <= 1e-9) studs.push(first)
  else if (last > flush && outside(place(last, 'flat', 'toe')) <= 0) {
    const moved = place(
      bisect((at) => outside(place(at, 'flat', 'toe')), flush, last),
      'flat',
      'toe',
    )
    studs.push(moved)
    findings.push(
      note(
        'stud-toe',
        `the first stud does not fit flush with the toe; it lies ${show(moved.at - flush)} further up`,
      ),
    )
  } else {
    const fits = (depth: number): boolean => outside(place(flush, 'flat', 'toe', depth)) <= 0
    const ripped = fits(0) ? bisect((depth) => outside(place(flush, 'flat', 'toe', depth)), 0, thin) : 0
    if (ripped >= 10) {
      studs.push(place(flush, 'flat', 'toe', ripped))
      findings.push(note('stud-toe', `the first stud is ripped to ${show(ripped)} thick to lie in the toe`))
    } else
      findings.push(
        warn(
          'stud-toe',
          `no stud fits in the toe; a toe of ${show(ramp.toe + outside(first))} takes one laid flat`,
        ),
      )
  }

  const clears = (stud: Stud): boolean =>
    outside(stud) <= 0 && (!coping || studCorners(stud).every((p) => outsideNotch(p, coping)))
  let before = studs[0] ? studs[0].at + studs[0].width / 2 : 0
  for (let at = ramp.studs.every; at + thin / 2 <= end; at += ramp.studs.every) {
    const stud = [place(at, 'edge', 'curve'), place(at, 'flat', 'curve')].find(
      (candidate) =>
        at - candidate.width / 2 >= before && at + candidate.width / 2 <= end && clears(candidate),
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

/** Below the notch's floor, or in front of it and clear of the pipe. */
const outsideNotch = (p: Point, coping: SolvedCoping): boolean =>
  p.y <= coping.centre.y - coping.outside / 2 || pointDistance(p, coping.centre) >= coping.outside / 2
