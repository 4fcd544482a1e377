import { curvedOf, straightOf } from '../design/kind-traits.ts'
import { type Box, pointsBounds } from '../geometry/bounds.ts'
import { inch } from '../geometry/inch.ts'
import type { Units } from '../length.ts'
import { flatMet } from '../ramp/beside/meeting-trial.ts'
import { same } from '../ramp/check/offer.ts'
import { type Timber, timberCorners } from '../ramp/frame/timber.ts'
import type { Flat, SolvedQuarter, SolvedRamp } from '../ramp/ramp.ts'

/** A plate of offcut on the outside of the sides, over the joint of a quarter and a flat; lengths mm. */
export interface JointPlate {
  readonly quarter: string
  readonly flat: string
  /** along the floor, and up from it */
  readonly size: readonly [number, number]
  readonly thickness: number
  /** its bolts: from the joint into either ramp, both so far up from the floor */
  readonly holes: {
    readonly quarter: readonly number[]
    readonly flat: readonly number[]
    readonly up: number
  }
  /** under the head */
  readonly bolt: number
}

/** Wood round a bolt; usual lengths of bolts, and what head, washers and nut take of them. Common practice, no source. mm */
const practice = {
  mm: { clear: 25, step: 5, apart: 150, bolts: [40, 45, 50, 60, 70, 80, 90, 100, 120], nut: 12 },
  in: {
    clear: inch,
    step: inch / 4,
    apart: 6 * inch,
    bolts: [1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5].map((inches) => inches * inch),
    nut: inch / 2,
  },
} as const

const slack = 1e-6

const boxOf = (timber: Timber): Box => pointsBounds(timberCorners(timber))

/** Two places between the end timber and the next, clear of both; one in their middle where there is room for no more. `from`: distances of their near and far edges from the joint. */
const places = (boxes: readonly Box[], units: Units): readonly number[] => {
  const { clear, step, apart } = practice[units]
  const [end, next] = [...boxes].sort((a, b) => a.x0 - b.x0)
  const first = (end ? end.x1 : 0) + clear
  const last = Math.min(next ? next.x0 - clear : Number.POSITIVE_INFINITY, first + apart)
  const [near, far] = [Math.ceil(first / step - slack) * step, Math.floor(last / step + slack) * step]
  if (far - near >= clear) return [near, far]
  return far >= near ? [near] : [((end?.x1 ?? 0) + (next?.x0 ?? 0)) / 2]
}

/** As seen from either end of it, the nearer timber of both. */
const flatBoxes = ({ studs, length }: Flat): readonly Box[] => {
  const near = studs.map(boxOf)
  const far = near.map((box) => ({ ...box, x0: length - box.x1, x1: length - box.x0 }))
  const sorted = [near, far].map((all) => [...all].sort((a, b) => a.x0 - b.x0))
  return [0, 1].flatMap((i) => {
    const both = sorted.flatMap((all) => all[i] ?? [])
    if (both.length === 0) return []
    // the end timber reaches as far as the thicker does, the next begins where the nearer does
    return [
      {
        ...both[0]!,
        x0: Math.min(...both.map(({ x0 }) => x0)),
        x1: i === 0 ? Math.max(...both.map(({ x1 }) => x1)) : Math.min(...both.map(({ x1 }) => x1)),
      },
    ]
  })
}

const plateOf = (quarter: SolvedQuarter, flat: Flat, units: Units): JointPlate => {
  const { step, clear, bolts, nut } = practice[units]
  const low = Math.min(quarter.transition.toe.y, flat.heights.frame)
  const height = Math.max(step, Math.floor(low / (2 * step) + slack) * 2 * step)
  const thickness = quarter.design.sides.thickness
  const holes = {
    quarter: places(quarter.studs.map(boxOf), units),
    flat: places(flatBoxes(flat), units),
    up: height / 2,
  }
  const reach = (own: readonly number[]): number => Math.max(...own) + clear
  const through = thickness + Math.max(thickness, flat.design.sides.thickness) + nut
  return {
    quarter: quarter.name,
    flat: flat.name,
    size: [
      Math.ceil((2 * Math.max(reach(holes.quarter), reach(holes.flat))) / (2 * step)) * 2 * step,
      height,
    ],
    thickness,
    holes,
    bolt: bolts.find((length) => length >= through - same) ?? Math.ceil(through / step) * step,
  }
}

/** One for each quarter that runs out on a flat; its plate serves either side. */
export const jointPlates = (ramps: readonly SolvedRamp[], units: Units): readonly JointPlate[] => {
  const flats: readonly Flat[] = straightOf(ramps)
  return curvedOf(ramps).flatMap((quarter) => {
    const flat = flatMet(quarter, flats)
    return flat ? [plateOf(quarter, flat, units)] : []
  })
}
