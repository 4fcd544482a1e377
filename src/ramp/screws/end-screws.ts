import type { RampDesign, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import type { Point } from '../../geometry/point.ts'
import { same } from '../check/offer.ts'
import { studLength, wallMiddles } from '../frame/bays.ts'
import { screwPoint, screwWithin, usualAtLeast } from '../frame/screw-lengths.ts'
import { type Timber, timberOffset } from '../frame/timber.ts'
import { type Crossed, noneCrossed } from '../skin/skin-framing.ts'
import { axesApart, axesDistance, beyond, type Driven } from './clearance.ts'
import { screwDiameter } from './screw-sort.ts'

/** The two screws through a side into the end of a timber, by how they are measured on that: from the middle of its face, mm. */
export interface EndScrew {
  /** along the face */
  readonly along: number
  /** square to it, into the panel */
  readonly down: number
  /** the same as seen from the side */
  readonly at: Point
}

export interface EndScrews {
  readonly pair: readonly [EndScrew, EndScrew]
  /** whether they keep off every screw that comes from above */
  readonly clear: boolean
  /** where no place does: how far off the middle of a wall those from above stand instead, beyond the points of the pair; else null */
  readonly off: number | null
}

/** How deep a frame's screws go into end grain; common practice, no source. mm */
const grip = { mm: 45, in: 1.75 * inch } as const

/** Off a timber's edges, and from one to the other; common practice, no source. mm */
const offEdge = { mm: 12, in: inch / 2 } as const
const pairApart = { mm: 15, in: (5 * inch) / 8 } as const

/** What is measured on a timber's end goes by whole steps. mm */
const step = { mm: 1, in: inch / 16 } as const

/** Of a frame's screw, through a wall and as many plates; in a bay so short that two would meet head on, no more than half of it. mm */
export const endScrewLength = (design: RampDesign, plates: 0 | 1, units: Units): number => {
  const through = design.sides.thickness * (1 + plates)
  const usual = usualAtLeast(through + grip[units], units)
  const half = studLength(design) / 2 - plates * design.sides.thickness
  const room = through + half - axesApart(screwDiameter('frame', units), screwDiameter('frame', units)) / 2
  return usual <= room + same ? usual : (screwWithin(room + screwPoint, units) ?? usual)
}

/** What is screwed to a frame's timbers, and in how many of them pieces of a side meet. */
interface Screwed {
  readonly design: RampDesign
  readonly units: Units
  /** indices of the timbers on which pieces of a side meet */
  readonly spliced: readonly number[]
}

/**
 * Where the screws go in the ends of each timber: on edge in the lower half, so that those from above end over them; flat near both
 * edges, so that those from above go in between. Where these meet one all the same, the next way is taken.
 */
const solveEndScrews = (
  timbers: readonly Timber[],
  driven: readonly Driven[],
  screwed: Screwed,
  crossed: Crossed = noneCrossed,
): readonly EndScrews[] => {
  const { design, units, spliced } = screwed
  const thick = screwDiameter('frame', units)
  const walls = wallMiddles(design)
  return timbers.map((timber, i): EndScrews => {
    const plated = spliced.includes(i)
    const lengthwise = { thick, walls, reach: reachOf(screwed, plated) }
    const near = driven.flatMap((one): readonly Driven[] => {
      const room = axesApart(one.thick, thick)
      if (!comesNear(timber, one, room)) return []
      const across = one.across.filter((at) => beyond(lengthwise, at) < room - same)
      return across.length > 0 ? [{ ...one, across }] : []
    })
    const pairs = waysFor(timber, plated, near, thick, units)
    const clears = (pair: EndScrews['pair']): boolean =>
      pair.every(({ at }) =>
        near.every((one) => axesDistance(one, { ...lengthwise, at }) >= axesApart(one.thick, thick) - same),
      )
    const found = pairs.find(clears)
    const off = crossed.timbers.includes(i) ? crossed.off : null
    return { pair: found ?? pairs[0]!, clear: found !== undefined, off }
  })
}

/** How far the points of a timber's screws lie beyond the middle of a wall, mm. */
const reachOf = ({ design, units }: Screwed, plated: boolean): number =>
  endScrewLength(design, plated ? 1 : 0, units) - design.sides.thickness / 2

/** The screws of a ramp, and where those in the ends of its timbers go. */
interface ScrewedDown<Laid> {
  readonly laid: Laid
  readonly ends: readonly EndScrews[]
}

/** Where no place in the ends of a timber keeps off the screws from above, these are laid once more, beyond the points of its own. */
export const screwDown = <Laid extends { readonly driven: readonly Driven[] }>(
  timbers: readonly Timber[],
  screwed: Screwed,
  lay: (crossed: Crossed) => Laid,
): ScrewedDown<Laid> => {
  const laid = lay(noneCrossed)
  const ends = solveEndScrews(timbers, laid.driven, screwed)
  const met = ends.flatMap(({ clear }, i) => (clear ? [] : [i]))
  if (met.length === 0) return { laid, ends }
  const { design, units } = screwed
  const reach = Math.max(...met.map((i) => reachOf(screwed, screwed.spliced.includes(i))))
  const room = reach + axesApart(screwDiameter('skin', units), screwDiameter('frame', units))
  const off = Math.ceil(room / step[units] - same) * step[units]
  // a row between two walls so near to each other would be left with nothing
  if (2 * off > studLength(design) + design.sides.thickness) return { laid, ends }
  const crossed = { timbers: met, off }
  const again = lay(crossed)
  return { laid: again, ends: solveEndScrews(timbers, again.driven, screwed, crossed) }
}

/** Whether a screw comes into a timber, or so near to it. mm */
export const comesNear = (timber: Timber, { from, to }: Driven, room: number): boolean => {
  // most stand in another timber
  const reach = timber.width / 2 + timber.depth + Math.abs(to.x - from.x) + Math.abs(to.y - from.y) + room
  if (Math.abs(from.x - timber.x) > reach || Math.abs(from.y - timber.y) > reach) return false
  const a = timberOffset(timber, from)
  const b = timberOffset(timber, to)
  const half = timber.width / 2 + room
  return (
    Math.min(a.along, b.along) <= half &&
    Math.max(a.along, b.along) >= -half &&
    Math.max(a.into, b.into) >= -room &&
    Math.min(a.into, b.into) <= timber.depth + room
  )
}

/** Places of a pair in the end of a timber, the usual one first. */
const waysFor = (
  timber: Timber,
  plated: boolean,
  near: readonly Driven[],
  thick: number,
  units: Units,
): readonly EndScrews['pair'][] => {
  const { width, depth } = timber
  const to = (along: number, down: number): EndScrew => ({ along, down, at: placed(timber, along, down) })
  const pair = (
    [a, b]: readonly [number, number],
    [first, second]: readonly [number, number],
  ): EndScrews['pair'] => [to(a, first), to(b, second)]
  const off = Math.min(offEdge[units], Math.max(width, depth) / 4)
  const aside = width / 4
  if (width > depth) {
    const wide = width / 2 - off
    const ways = [wide, aside].flatMap((upper) =>
      [wide, aside].map((lower): readonly [number, number] => [upper, -lower]),
    )
    return ways.map((along) => pair(along, [depth / 2, depth / 2]))
  }
  const low = depth - off
  const under = Math.max(
    0,
    ...near.map((one) => timberOffset(timber, one.to).into + axesApart(one.thick, thick)),
  )
  const whole = (down: number): number => Math.ceil(down / step[units] - same) * step[units]
  const half = whole(depth / 2)
  // the saw runs down the middle where pieces meet
  const sideways: readonly [number, number] = plated ? [-aside, aside] : [0, 0]
  const over = [half, Math.max(half, whole(under))].filter((down) => low - down >= pairApart[units] - same)
  return [
    ...over.map((down) => pair(sideways, [down, low])),
    pair([-aside, aside], [low, low]),
    pair([-aside, aside], [depth / 4, (3 * depth) / 4]),
    pair(sideways, [depth / 4, (3 * depth) / 4]),
  ]
}

const placed = ({ x, y, angle }: Timber, along: number, down: number): Point => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return { x: x + along * cos + down * sin, y: y + along * sin - down * cos }
}
