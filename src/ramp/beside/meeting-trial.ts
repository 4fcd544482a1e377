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

/** Ramps whose widths differ by less line up, mm. */
const alikeWithin = 1

/** Whether the edges of the two line up where they meet. */
export const alikeWide = (quarter: Pick<Quarter, 'width'>, flat: Pick<Flat, 'width'>): boolean =>
  Math.abs(flat.width - quarter.width) <= alikeWithin + same

/** A flat has so many; a quarter as wide as it takes one of them. */
const ends = 2

/**
 * The flat that each quarter runs out on, by the quarter's name; null where the ends of those at its height are taken. Of flats that
 * are alike the one with most ends left.
 */
const flatsMet = (ramps: readonly Ramp[]): ReadonlyMap<string, Flat | null> => {
  const met = new Map<string, Flat | null>()
  const flats: readonly Flat[] = straightOf(ramps)
  if (flats.length === 0) return met
  const taken = new Map<Flat, number>()
  const takenOf = (flat: Flat): number => taken.get(flat) ?? 0
  for (const { name, design, transition, width } of curvedOf(ramps)) {
    if (design.runOut.kind !== 'flat' || !transition) continue
    const level = transition.level.surface
    const nearest = (own: readonly Flat[]): Flat | null =>
      nearestFlat(
        level,
        width,
        own.toSorted((a, b) => takenOf(a) - takenOf(b)).map((one) => ({ ...metOf(one), one })),
      )?.one ?? null
    const isFree = (flat: Flat): boolean => takenOf(flat) < ends || !alikeWide({ width }, flat)
    const first = nearest(flats)!
    const flat = isFree(first)
      ? first
      : nearest(
          flats.filter(
            (one) =>
              isFree(one) &&
              alikeWide({ width }, one) &&
              Math.abs(one.heights.surface - level) <= meetWithin + same,
          ),
        )
    if (flat && alikeWide({ width }, flat)) taken.set(flat, takenOf(flat) + 1)
    met.set(name, flat)
  }
  return met
}

/** The flat that a quarter runs out on, of all ramps of its design; null where it runs out on none, or where none has an end left. */
export const flatMet = ({ name }: Pick<Quarter, 'name'>, ramps: readonly Ramp[]): Flat | null =>
  flatsMet(ramps).get(name) ?? null

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
