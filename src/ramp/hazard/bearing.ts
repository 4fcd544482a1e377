import type { RampDesign, Sheet } from '../../design/design.ts'
import { studLength } from '../frame/bays.ts'
import { spanLoad } from '../frame/span.ts'
import type { Stud } from '../frame/stud.ts'
import { type Bearing, between, beyond, stackOf } from './strength.ts'

/** Sheets on timbers; places along them, mm. */
export interface Borne {
  readonly sheets: readonly Sheet[]
  readonly from: number
  readonly to: number
  /** what a timber holds, in order */
  readonly timbers: readonly { readonly from: number; readonly to: number }[]
  /** from side to side: sheets span that way where it is less */
  readonly width: number
}

/** The skin on its studs from one place up it to another. */
export const borneSkin = (
  design: RampDesign,
  studs: readonly Stud[],
  { from, to }: { readonly from: number; readonly to: number },
): Borne => ({
  sheets: design.skin,
  from,
  to,
  timbers: studs.map(({ at, width }) => ({ from: at - width / 2, to: at + width / 2 })),
  width: studLength(design),
})

/** A stretch of sheets and what it does under the load. */
export interface Weak extends Bearing {
  readonly from: number
  readonly to: number
}

/** What gives way under a rider who lands. */
export interface Weakest {
  readonly between: Weak | null
  /** ends that hang free, from the front */
  readonly free: readonly Weak[]
}

/** Sag over span, and over the arm of an end that hangs free, up to which a sheet is ridden; our own choice. */
const mostSag = { between: 1 / 40, free: 1 / 20 } as const

const gives = ({ bears, sag }: Bearing, most: number): boolean => bears < spanLoad || sag > most

/** Where a stated load on a spot may break through sheets, or bends them deep; nothing where nothing is known of them. */
export const weakest = ({ sheets, from, to, timbers, width }: Borne): Weakest => {
  const stack = stackOf(sheets)
  if (stack === null) return { between: null, free: [] }
  const [first, last] = [timbers[0], timbers.at(-1)]
  const spans = timbers.slice(1).map((timber, i): Weak => {
    const [start, end] = [timbers[i]!.to, timber.from]
    return { from: start, to: end, ...between(stack, Math.min(end - start, width), width, spanLoad) }
  })
  // without any it hangs free from end to end
  const ends = (
    first && last
      ? [
          { from, to: first.from },
          { from: last.to, to },
        ]
      : [{ from, to }]
  ).map((end): Weak => ({ ...end, ...beyond(stack, end.to - end.from, width, spanLoad) }))
  const least = spans.reduce<Weak | null>((a, b) => (a && a.bears <= b.bears ? a : b), null)
  return {
    between: least && gives(least, mostSag.between) ? least : null,
    free: ends.filter((end) => gives(end, mostSag.free)),
  }
}
