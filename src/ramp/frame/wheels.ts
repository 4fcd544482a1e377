import type { QuarterDesign, Units } from '../../design/design.ts'
import { thinWide } from '../../design/section.ts'
import { inch } from '../../geometry/inch.ts'
import type { Point } from '../../geometry/point.ts'
import { type Draft, stop, type Trial } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { chamferKey, firstThat, orWays, wheelKey } from '../check/remedy.ts'
import { offering, set, tell, told } from '../check/told.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Transition } from '../side/transition.ts'
import { wallMiddles } from './bays.ts'
import { apart, cornersApart, insidePanel, notchBox } from './pipe-timber.ts'
import type { Stud } from './stud.ts'
import { type Timber, timberCorners } from './timber.ts'

/** Wheels on the cut of the back bottom corner. Lengths mm, angles radians. */
export interface SolvedWheels {
  /** of the axles, seen from the side */
  readonly centre: Point
  /** under the wheels, and behind them, while the ramp stands */
  readonly clearance: number
  /** how far the plates lie inside the cut */
  readonly recess: number
  /** how far the ramp is tipped when its weight comes on the wheels, and when its back edge comes down */
  readonly tip: { readonly least: number; readonly most: number }
  /** how high the toe is then */
  readonly lift: number
  /** middles of the wheels from the ramp's left outer face */
  readonly across: readonly number[]
  /** the timber that holds them, its outer face under their plates */
  readonly timber: Timber
}

/** Off the floor while the ramp is ridden; out of the cut, so that neither of its edges drags. mm, common practice, no source */
const wheelGap = { clearance: { mm: 6, in: inch / 4 }, out: 10 } as const

const outward: Point = { x: Math.SQRT1_2, y: -Math.SQRT1_2 }

/**
 * Wheels stand square to the 45° cut, in its middle, so far inside it that they keep off the floor: where they keep off the
 * floor they keep off a wall behind the ramp. Tipped about the cut's lower edge they come down when the floor touches them
 * from there.
 */
const place = ({ chamfer, wheels, studs: { section } }: QuarterDesign, length: number, units: Units) => {
  const { diameter, height } = wheels!
  const r = diameter / 2
  // how far the axle is out of the cut, at the most for the clearance, and as the plate on the cut has it
  const out = Math.min(height - r, Math.SQRT2 * (chamfer / 2 - wheelGap.clearance[units] - r))
  const recess = height - r - out
  const middle = { x: length - chamfer / 2, y: chamfer / 2 }
  const centre = { x: middle.x + outward.x * out, y: middle.y + outward.y * out }
  const [dx, dy] = [centre.x - (length - chamfer), centre.y]
  const least = Math.atan2(dy, dx) - Math.asin(Math.min(1, r / Math.hypot(dx, dy)))
  const [thin, wide] = thinWide(section)
  const timber: Timber = {
    x: middle.x - outward.x * recess,
    y: middle.y - outward.y * recess,
    // its face looks out of the cut
    angle: (-3 * Math.PI) / 4,
    lies: 'flat',
    width: wide,
    depth: thin,
  }
  return { centre, clearance: centre.y - r, recess, out: out + r, least, timber }
}

export const solveWheels = (
  design: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  length: number,
  studs: readonly Stud[],
  units: Units,
): { readonly wheels: SolvedWheels | null; readonly findings: readonly Draft[] } => {
  if (!design.wheels) return { wheels: null, findings: [] }
  if (design.chamfer === 0)
    return {
      wheels: null,
      findings: [
        wheelStop(design, 'wheels stand on the cut of the back bottom corner, and that is not cut', units),
      ],
    }
  const { centre, clearance, recess, out, least, timber } = place(design, length, units)
  if (out < wheelGap.out - same)
    return {
      wheels: null,
      findings: [
        wheelStop(
          design,
          `wheels ${measured(design.wheels.diameter, units)} across would not reach out of a cut with a leg of ${measured(design.chamfer, units)} and stay ${measured(wheelGap.clearance[units], units)} off the floor`,
          units,
        ),
      ],
    }
  const panel = { length, chamfer: design.chamfer }
  const fits =
    insidePanel(timber, transition, panel) &&
    (!coping || cornersApart(timberCorners(timber), notchBox(coping, transition.heights.frame))) &&
    studs.every((stud) => apart(timber, stud))
  if (!fits)
    return {
      wheels: null,
      findings: [
        wheelStop(
          design,
          `the timber that holds the wheels finds no room behind a cut with a leg of ${measured(design.chamfer, units)}`,
          units,
        ),
      ],
    }
  const across = wheelsAcross(design)
  if (across === null) return { wheels: null, findings: [countStop(design)] }
  return {
    wheels: {
      centre,
      clearance,
      recess,
      tip: { least, most: Math.PI / 2 - least },
      lift: (length - design.chamfer) * Math.sin(least),
      across,
      timber,
    },
    findings: [],
  }
}

/** A wheel's middle from a wall's face, and from the next wheel's: so wide is its plate. mm, common practice, no source */
const wheelRoom = { wall: 60, plate: 80 } as const

/** Between two walls, where a wheel's middle may stand. mm */
type Zone = readonly [low: number, high: number]

/** How many find room side by side from there on. */
const roomFrom = (zones: readonly Zone[], from: number): number =>
  zones.reduce((sum, [low, high]) => {
    const room = high - Math.max(low, from)
    return room < -same ? sum : sum + 1 + Math.floor((room + same) / wheelRoom.plate)
  }, 0)

const zonesOf = (
  { sides: { thickness }, width }: QuarterDesign,
  walls: readonly number[],
): readonly Zone[] => {
  const off = thickness / 2 + wheelRoom.wall
  const inset = Math.min(thickness + wheelRoom.wall, width / 4)
  return walls
    .slice(1)
    .map((right, i) => [
      i === 0 ? inset : walls[i]! + off,
      i === walls.length - 2 ? width - inset : right - off,
    ])
}

/** So many find room at the most. */
export const mostWheels = (design: QuarterDesign): number => roomFrom(zonesOf(design, wallMiddles(design)), 0)

/**
 * Middles of the wheels from the ramp's left outer face, mm: the first and the last near the outer sides, the others evenly
 * between, each as near to that as ribs and the plates before it leave room. Null where they find none.
 */
export const wheelsAcross = (design: QuarterDesign): readonly number[] | null => {
  const { count } = design.wheels!
  const zones = zonesOf(design, wallMiddles(design))
  if (roomFrom(zones, 0) < count) return null
  const { plate } = wheelRoom
  const [first, last] = [zones[0]![0], zones.at(-1)![1]]
  const places: number[] = []
  for (let i = 0; i < count; i++) {
    const even = first + (i * (last - first)) / (count - 1)
    const least = i === 0 ? 0 : places[i - 1]! + plate
    const fits = (at: number): boolean =>
      at >= least - same &&
      zones.some(([low, high]) => at >= low - same && at <= high + same) &&
      roomFrom(zones, at + plate) >= count - 1 - i
    const steps = Array.from({ length: count }, (_, k) => k * plate)
    const ways = [
      even,
      least,
      ...zones.flatMap(([low, high]) => steps.flatMap((by) => [low + by, high - by])),
    ]
    const far = (at: number): number => Math.abs(at - even)
    places.push(ways.filter(fits).reduce((best, at) => (far(at) < far(best) - same ? at : best)))
  }
  return places
}

const wheelStop = (design: QuarterDesign, why: string, units: Units): Draft =>
  stop('wheels-fit', (trial: Trial) => {
    const longer = firstThat(
      trial,
      design,
      chamferKey,
      Math.max(design.chamfer, chamferKey.range.least),
      1,
      units,
    )
    const smaller = firstThat(trial, design, wheelKey, design.wheels!.diameter, -1, units)
    return tell(
      `${why}; `,
      orWays(
        [
          longer && told`a chamfer of { leg: ${longer} } takes the wheels`,
          smaller && told`wheels of ${smaller} or less fit`,
        ],
        'no chamfer that the side has room for takes them: make the deck longer',
      ),
      ', or leave the wheels out',
    )
  })

const countStop = (design: QuarterDesign): Draft => {
  const { count } = design.wheels!
  const most = mostWheels(design)
  return stop('wheels-fit', () =>
    tell(
      `${count} wheels find no room side by side between the sides${design.sides.count > 2 ? ' and ribs' : ''}; `,
      most < 2
        ? 'leave the wheels out, or make the ramp wider'
        : offering(`take ${most} (wheels: { count: ${most} })`, set('wheels.count', `${most}`)),
    ),
  )
}
