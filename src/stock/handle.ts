import { bisect } from '../geometry/bisect.ts'
import { polygonInside } from '../geometry/contains.ts'
import { inch } from '../geometry/inch.ts'
import { segmentDistance } from '../geometry/nearest.ts'
import { pathSegments } from '../geometry/path.ts'
import { type Point, pointDistance } from '../geometry/point.ts'
import { outerPolygon } from '../geometry/polygon/outer-polygon.ts'
import type { Units } from '../length.ts'
import { same } from '../ramp/check/offer.ts'
import { timberDistance } from '../ramp/frame/timber.ts'
import type { SolvedQuarter, SolvedRamp } from '../ramp/ramp.ts'
import type { Splice } from '../ramp/splice/splice.ts'

/** A handle of the trade with two feet and four bolts, as it lies on the side, mm; common practice, no source. */
export const handleSize = { length: 160, height: 40 } as const
/** The same in words, in inches as they are sold: no more than that. */
export const handleWords = '160 × 40 mm (6 1/4 × 1 1/2 in)'
export const boltsFromMiddle = { along: 65, up: 12 } as const
/** Apart in the same words, to the nearest sixteenth: another pattern of holes would meet timbers that these keep clear of. */
export const handleHoles = '130 × 24 mm (5 1/8 × 15/16 in)'

/** Bolts, rope and the holes for them; common practice, no source. A knot holds what its hole is a little wider than. */
export const grips = {
  bolt: 'M6 (1/4 in)',
  boltHole: '7 mm (5/16 in)',
  rope: '10 mm (3/8 in)',
  ropeHole: '12 mm (1/2 in)',
  loop: '600 mm (24 in)',
} as const

/** Lengths of bolts as they are sold, and what a handle's foot, head, washers and nut take of one; common practice, no source. mm */
const bolts = {
  mm: { sold: [25, 30, 35, 40, 45, 50, 60, 70, 80], taken: 16 },
  in: { sold: [1, 1.25, 1.5, 1.75, 2, 2.5, 3].map((inches) => inches * inch), taken: 0.625 * inch },
} as const

/** Of the bolts that hold handles, through the thickest of the sides, `plated` through a plate as thick too; under the head. */
export const handleBolt = (
  ramps: readonly Pick<SolvedRamp, 'design'>[],
  units: Units,
  plated = false,
): number => {
  const { sold, taken } = bolts[units]
  const thickest = Math.max(...ramps.map(({ design }) => design.sides.thickness))
  const through = (plated ? 2 : 1) * thickest + taken
  return sold.find((length) => length >= through - same) ?? through
}

/** Least of a handle from an edge of the side, and of a bolt's middle from a timber, so that washer and spanner have room; mm. */
const edgeRoom = 20
export const boltRoom = 15

/** How finely places are tried aside, and down, mm. */
const steps = { aside: 10, down: 5 } as const

/** How far aside of the balance, and how high over it, mm: what hangs level comes first, then what does not turn over in the hands. */
const leanings = [
  { aside: 20, over: 0 },
  { aside: 20, over: -150 },
  { aside: 60, over: -150 },
  { aside: 200, over: -400 },
] as const

/** Of the four bolts of a handle. */
export const handleBolts = ({ x, y }: Point): readonly Point[] =>
  [-1, 1].flatMap((along) =>
    [-1, 1].map((up) => ({ x: x + along * boltsFromMiddle.along, y: y + up * boltsFromMiddle.up })),
  )

/** Of what holds a grip: a rope's two lie level with its middle. */
export const gripHoles = (middle: Point, grip: 'handle' | 'rope'): readonly Point[] =>
  grip === 'handle'
    ? handleBolts(middle)
    : [-1, 1].map((way) => ({ x: middle.x + way * boltsFromMiddle.along, y: middle.y }))

/** Its middle, and whether its bolts pass the plate over a joint of the side too. */
export interface HandlePlace extends Point {
  readonly plated: boolean
}

/** Whether a bolt passes a plate: null where it lies too near to the plate's edge for its washer, or to the glued joint for its hole. */
const passes = ({ top, foot, plate: { corners } }: Splice, bolt: Point): boolean | null => {
  const offs = corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length]!
    return (
      ((to.x - from.x) * (bolt.y - from.y) - (to.y - from.y) * (bolt.x - from.x)) / pointDistance(from, to)
    )
  })
  const inside = Math.min(...offs)
  const offJoint = segmentDistance({ kind: 'line', from: top, to: foot }, bolt)
  if (Math.min(Math.abs(inside), offJoint) < boltRoom) return null
  return inside > 0
}

/** From a handle's middle to the corners of the room that it takes. */
const [roomAlong, roomUp] = [handleSize.length / 2 + edgeRoom, handleSize.height / 2 + edgeRoom]

/**
 * Where a handle is bolted to the outside of each side: clear of the side's edges, its bolts clear of timbers and joints. As near over the
 * balance and as high as that allows, so that the ramp hangs level and does not turn over; beside a plate over a joint of the side
 * rather than through it, as far as it hangs as well there. Null where no place is left.
 */
export const handlePlace = (ramp: SolvedQuarter, balance: Point): HandlePlace | null => {
  const within = polygonInside(outerPolygon(ramp.side.outline, 1))
  const corners = pathSegments(ramp.side.outline).map(({ from }) => from)
  const timbers = [...ramp.studs, ...ramp.deckTimbers]
  // an edge of the side rises or falls all along: without a corner of the other, neither reaches into the other
  const stands = ({ x, y }: Point): boolean =>
    [-roomAlong, roomAlong].every((dx) =>
      [-roomUp, roomUp].every((dy) => within({ x: x + dx, y: y + dy })),
    ) &&
    corners.every((p) => Math.abs(p.x - x) >= roomAlong || Math.abs(p.y - y) >= roomUp) &&
    handleBolts({ x, y }).every((bolt) => timbers.every((timber) => timberDistance(timber, bolt) >= boltRoom))
  // all four alike: a bolt for side and plate may have no thread where its nut meets the side alone
  const joined = (place: Point, plated: boolean): boolean =>
    handleBolts(place).every((bolt) => {
      const met = ramp.splices.map((splice) => passes(splice, bolt))
      return !met.includes(null) && met.includes(true) === plated
    })
  for (const { aside, over } of leanings)
    for (const plated of ramp.splices.length > 0 ? [false, true] : [false])
      for (let dx = 0; dx <= aside; dx += steps.aside)
        for (const x of dx === 0 ? [balance.x] : [balance.x + dx, balance.x - dx])
          for (
            let y = topAt(ramp, Math.max(0, x - roomAlong)) - roomUp;
            y >= Math.max(roomUp, balance.y + over);
            y -= steps.down
          )
            if (stands({ x, y }) && joined({ x, y }, plated)) return { x, y, plated }
  return null
}

/** How high the side is at a distance behind the toe. */
const topAt = ({ transition: { curve, lip, heights } }: SolvedQuarter, x: number): number =>
  x >= lip.x
    ? heights.frame
    : curve.point(bisect((place) => curve.point(place).x - x, curve.toe, curve.lip)).y
