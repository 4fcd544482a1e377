import { curvedOf } from '../design/kind-traits.ts'
import { type Box, pointsBounds } from '../geometry/bounds.ts'
import { inch } from '../geometry/inch.ts'
import type { Units } from '../length.ts'
import { alikeWide, flatMet } from '../ramp/beside/meeting-trial.ts'
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

/** Wood round a bolt; how far from the joint one may lie; usual lengths of bolts, and what head, washers and nut take of them. Common practice, no source. mm */
const practice = {
  mm: {
    clear: 25,
    step: 5,
    apart: 150,
    farthest: 600,
    bolts: [40, 45, 50, 60, 70, 80, 90, 100, 120],
    nut: 12,
  },
  in: {
    clear: inch,
    step: inch / 4,
    apart: 6 * inch,
    farthest: 24 * inch,
    bolts: [1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5].map((inches) => inches * inch),
    nut: inch / 2,
  },
} as const

const slack = 1e-6

const boxOf = (timber: Timber): Box => pointsBounds(timberCorners(timber))

/**
 * Two places clear of what stands behind, past the end timber; one where there is room for no more; else in front of it, then past
 * the next ones. None where no place is left. `boxes`: their near and far edges from the joint.
 */
const places = (boxes: readonly Box[], units: Units): readonly number[] => {
  const { clear, step, apart, farthest } = practice[units]
  const sorted = [...boxes].sort((a, b) => a.x0 - b.x0)
  // what is free begins where all before it end
  const starts = [0, ...sorted.map((_, i) => Math.max(...sorted.slice(0, i + 1).map(({ x1 }) => x1)))]
  const between = starts.map((start, i): readonly number[] => {
    const next = sorted[i]
    const first = start + clear
    const last = Math.min(next ? next.x0 - clear : Number.POSITIVE_INFINITY, first + apart)
    const [near, far] = [Math.ceil(first / step - slack) * step, Math.floor(last / step + slack) * step]
    if (far - near >= clear) return [near, far]
    return far >= near ? [near] : []
  })
  const [front = [], past = [], ...beyond] = between
  return [past, front, ...beyond].find((own) => own.length > 0 && Math.max(...own) <= farthest) ?? []
}

/** What stands inside a side, near the floor: timbers, and plates over joints of the side. */
const behind = ({ studs, splices }: SolvedRamp, below: number): readonly Box[] => [
  ...studs.map(boxOf),
  ...splices.map(({ plate }) => pointsBounds(plate.corners)).filter(({ y0 }) => y0 < below),
]

/** The same as seen from either end of a flat. */
const behindEnds = (flat: Flat, below: number): readonly Box[] => {
  const near = behind(flat, below)
  return [...near, ...near.map((box) => ({ ...box, x0: flat.length - box.x1, x1: flat.length - box.x0 }))]
}

/** Null where no place is left for its bolts. */
const plateOf = (quarter: SolvedQuarter, flat: Flat, units: Units): JointPlate | null => {
  const { step, clear, bolts, nut } = practice[units]
  const low = Math.min(quarter.transition.toe.y, flat.heights.frame)
  const height = Math.max(step, Math.floor(low / (2 * step) + slack) * 2 * step)
  const thickness = quarter.design.sides.thickness
  const up = height / 2
  const holes = {
    quarter: places(behind(quarter, up + clear), units),
    flat: places(behindEnds(flat, up + clear), units),
    up,
  }
  if (holes.quarter.length === 0 || holes.flat.length === 0) return null
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

/** One for each quarter that runs out on a flat as wide as it is, where its bolts have room; its plate serves either side. */
export const jointPlates = (ramps: readonly SolvedRamp[], units: Units): readonly JointPlate[] =>
  curvedOf(ramps).flatMap((quarter) => {
    const flat = flatMet(quarter, ramps)
    const plate = flat && alikeWide(quarter, flat) ? plateOf(quarter, flat, units) : null
    return plate ? [plate] : []
  })
