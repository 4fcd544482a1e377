import type { Mass } from '../design/densities.ts'
import type { Units, Wheels } from '../design/design.ts'
import type { Point } from '../geometry/point.ts'
import type { SolvedWheels } from '../ramp/frame/wheels.ts'
import type { SolvedQuarter, WholeDesign } from '../ramp/ramp.ts'
import { balancePoint } from './balance.ts'
import { type HandlePlace, handleBolt, handlePlace } from './handle.ts'
import type { Weight } from './weight.ts'

/** How one ramp is moved by hand. Lengths mm, weights kg. */
export interface Moving {
  readonly ramp: string
  /** where it hangs level, seen from the side */
  readonly balance: Point
  /** middle of a handle on each side, over the balance where it can be; seen from the side. Null where none has room. */
  readonly handle: HandlePlace | null
  /** of the bolts that hold it, under the head */
  readonly bolt: number
  /** a rope through two holes where a handle would not pass into the ramp that it stores inside */
  readonly grip: 'handle' | 'rope'
  readonly rolling: Rolling | null
}

export interface Rolling extends Wheels, Omit<SolvedWheels, 'timber'> {
  /** what holds them: its number on the paper */
  readonly timber: number
  /** what each must bear, of the heaviest the ramp may be */
  readonly rated: number
  /** what the hands at the toe hold when the wheels take over */
  readonly hands: Mass
}

/** A third each, so that one may hang in a hollow; of two, a half each. */
const wheelShare = (count: number): number => Math.max(1 / 3, 1 / count)

export const moveRamp = (
  ramp: SolvedQuarter,
  { ramps }: WholeDesign,
  weight: Weight,
  units: Units,
): Moving => {
  const balance = balancePoint(ramp)
  const handle = handlePlace(ramp, balance)
  const plated = handle?.plated ?? false
  return {
    ramp: ramp.name,
    balance,
    handle,
    bolt: handleBolt(plated ? [ramp] : ramps, units, plated),
    grip: ramp.design.storesInside ? 'rope' : 'handle',
    rolling: rollingOf(ramp, weight),
  }
}

/** On its wheels; null where it has none. */
export const rollingOf = (ramp: SolvedQuarter, weight: Weight): Rolling | null => {
  const { wheels, design } = ramp
  if (!wheels) return null
  const own = weight.ramps.find((one) => one.ramp === ramp.name)!
  return {
    ...design.wheels!,
    ...wheels,
    timber: ramp.studs.length + ramp.deckTimbers.findIndex(({ role }) => role === 'wheels') + 1,
    rated: own.most * wheelShare(design.wheels!.count),
    hands: handsOf(balancePoint(ramp), wheels.centre, wheels.tip.least, own),
  }
}

/** Levers about the axle, along the floor, while the ramp is tipped by so much. */
const handsOf = (balance: Point, axle: Point, tip: number, { least, usual, most }: Mass): Mass => {
  const along = ({ x, y }: Point): number => x * Math.cos(tip) + y * Math.sin(tip)
  const share = Math.max(0, (along(axle) - along(balance)) / along(axle))
  return { least: least * share, usual: usual * share, most: most * share }
}
