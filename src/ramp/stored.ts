import { same } from './check/offer.ts'

/** How a ramp lies when it is pushed in from the back of the other. */
export const ways = ['toe-first', 'back-first', 'toe-first upside-down', 'back-first upside-down'] as const
export type Way = (typeof ways)[number]

/** What of a ramp may touch, or be touched. `number` of a timber as on the paper, from 1; of a layer of skin from the studs. */
export type Part =
  | { readonly kind: 'side' | 'board' | 'pipe' | 'wheels' }
  | { readonly kind: 'skin' | 'stud'; readonly number: number }

/** One way in, level on the floor. Lengths mm. */
export interface Slid {
  readonly way: Way
  /** how much of it comes to lie inside, of its whole length */
  readonly depth: number
  /** how far it stands out at the back; 0 or less where it does not */
  readonly out: number
  /** from the other's front to its own foremost point */
  readonly front: number
  /** from the other's front bottom corner to its own; back-first it lies turned round from there */
  readonly corner: number
  /** the place that is tight, seen from the other's front bottom corner; null where nothing is in the way */
  readonly tight: { readonly x: number; readonly y: number; readonly part: Part; readonly meets: Part } | null
}

/** What to do about the timbers that stand low at the other's back. */
export type LowTimber = 'none' | 'lift over' | 'leave out or raise' | 'leave out'

/** Whether they are out while the other ramp is in. */
export const comesOut = (timber: LowTimber): boolean => timber.startsWith('leave out')

/** What stands low at a ramp's back, in the way of another on the floor. */
export interface Low {
  readonly timber: LowTimber
  /** of the highest of them, mm */
  readonly height: number
  /** of its timbers as on the paper, from 1 */
  readonly numbers: readonly number[]
  /** whether one of them holds wheels, which come out with it */
  readonly wheels: boolean
}

export const nothingLow: Low = { timber: 'none', height: 0, numbers: [], wheels: false }

/** How one ramp is kept in another. */
export interface Storing {
  readonly ramp: string
  readonly outer: string
  /** every way, the toe first; none where ribs shut it out */
  readonly slid: readonly Slid[]
  readonly low: Low
  /** the ramp before it that is kept in the same one; null where it is the first */
  readonly behind: string | null
  /** length, width and height of the two as they are stored, the best way in; null where it does not go in at all */
  readonly stored: readonly [number, number, number] | null
  /** that length from end to end, from the other's front bottom corner */
  readonly span: readonly [number, number]
}

/** The way that leaves least of it outside; the first of those that are as good. */
export const bestWay = ({ slid }: Pick<Storing, 'slid'>): Slid =>
  slid.reduce((a, b) => (b.out < a.out - same ? b : a))
