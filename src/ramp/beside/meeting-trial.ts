import type { FlatDesign, QuarterDesign, RampDesign } from '../../design/design.ts'
import { curvedOf, straightOf } from '../../design/kind-traits.ts'
import { same } from '../check/offer.ts'
import { stepLimit } from '../check/practice.ts'
import type { Flat, Quarter, Ramp } from '../ramp.ts'
import { afterAll } from './twins.ts'

/** A ridden face and a flat this near in height are the same to a wheel, mm. */
export const meetWithin = 1

/** Of a flat, as a quarter meets it. */
export interface Met {
  readonly surface: number
  readonly width: number
}

export const metOf = ({ heights, width }: Flat): Met => ({ surface: heights.surface, width })

/** The flat that a quarter meets: the nearest in height, then in width. */
const nearestFlat = <M extends Met>(level: number, width: number, flats: readonly M[]): M | null =>
  flats.reduce<M | null>((best, one) => {
    if (!best) return one
    const nearer = Math.abs(one.surface - level) - Math.abs(best.surface - level)
    const alike = Math.abs(one.width - width) - Math.abs(best.width - width)
    return (Math.abs(nearer) > same ? nearer : alike) < 0 ? one : best
  }, null)

/** The flat that a quarter runs out on; null where it runs out on none, or the design has none. */
export const flatMet = (
  { design, transition, width }: Pick<Quarter, 'design' | 'transition' | 'width'>,
  flats: readonly Flat[],
): Flat | null =>
  design.runOut.kind === 'flat' && transition
    ? (nearestFlat(
        transition.level.surface,
        width,
        flats.map((one) => ({ ...metOf(one), one })),
      )?.one ?? null)
    : null

/** What is wrong where a quarter runs out on a flat. */
export const meetingFault = (
  { design, transition, width }: Pick<Quarter, 'design' | 'transition' | 'width'>,
  flats: readonly Met[],
): 'flat-missing' | 'flat-meets' | 'toe-step' | null => {
  if (design.runOut.kind !== 'flat' || !transition) return null
  const level = transition.level.surface
  const flat = nearestFlat(level, width, flats)
  if (!flat) return 'flat-missing'
  if (Math.abs(flat.surface - level) > meetWithin + same) return 'flat-meets'
  return transition.toeStep - flat.surface > stepLimit + same ? 'toe-step' : null
}

/** What is typed: into the quarter, into a flat, or a flat more whose surface is so high. */
export interface MeetingChange {
  readonly quarter?: QuarterDesign
  readonly flat?: { readonly from: FlatDesign; readonly to: FlatDesign }
  readonly surface?: number
}

/** Whether the quarter then runs out well, no ramp has a stop that it had not, and no other runs out worse. */
export type MeetingTrial = (change: MeetingChange) => boolean

interface Stopped {
  /** ids of what stops it */
  readonly stops: readonly string[]
}

/** Ramps solved anew, as far as they meet and may stop. */
export interface Anew {
  readonly quarter: (design: QuarterDesign) => Stopped & Pick<Quarter, 'transition'>
  readonly flat: (design: FlatDesign) => Stopped & Pick<Met, 'surface'>
}

export const meetingTrial = (own: Quarter, ramps: readonly Ramp[], anew: Anew): MeetingTrial => {
  const designs = ramps.map(({ design }) => design)
  const quarters = curvedOf(ramps)
  const flats = straightOf(ramps)
  const known = new Map<RampDesign, readonly string[]>()
  /** Whether a ramp with another design has a stop more. */
  const stopsMore = <D extends RampDesign>(
    from: D,
    { stops }: Stopped,
    solve: (d: D) => Stopped,
  ): boolean => {
    const before = known.get(from) ?? solve(from).stops
    known.set(from, before)
    return stops.some((id) => !before.includes(id))
  }
  return ({ quarter = own.design, flat, surface }) => {
    const met: Met[] = surface === undefined ? [] : [{ surface, width: own.width }]
    for (const ramp of flats) {
      const design = flat ? afterAll(ramp.design, flat, designs) : ramp.design
      if (design === ramp.design) met.push(metOf(ramp))
      else {
        const solved = anew.flat(design)
        if (stopsMore(ramp.design, solved, anew.flat)) return false
        met.push({ surface: solved.surface, width: design.width })
      }
    }
    return quarters.every((ramp) => {
      const design = afterAll(ramp.design, { from: own.design, to: quarter }, designs)
      const solved = design === ramp.design ? null : anew.quarter(design)
      if (solved && stopsMore(ramp.design, solved, anew.quarter)) return false
      const fault = meetingFault(
        { design, transition: (solved ?? ramp).transition, width: design.width },
        met,
      )
      return fault === null || (ramp.name !== own.name && fault === meetingFault(ramp, flats.map(metOf)))
    })
  }
}
