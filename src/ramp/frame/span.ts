import type { RampDesign, Units } from '../../design/design.ts'
import { rampPath, rangeAt } from '../../design/schema.ts'
import { thinWide } from '../../design/section.ts'
import { quote } from '../../length/quote.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, note, type Trial, warn } from '../check/check.ts'
import { measured, offer, rounded, sectionText } from '../check/offer.ts'
import { offering, type Said, set, type Told, tell, unoffered } from '../check/told.ts'
import { studLength } from './bays.ts'

/** What a cross timber bears between two sides. */
export interface Span {
  /** sag in its middle under the load, mm */
  readonly sag: number
  /** span over sag */
  readonly ratio: number
}

/** One heavy rider who lands, N: in the middle of one stud, as a load at rest. A stated assumption, no source. */
export const spanLoad = 1500

/** Modulus of elasticity of common softwood framing, N/mm². A stated assumption; from memory: C16 of EN 338 has 8000. */
export const spanStiffness = 8000

/** Span over sag that floors are commonly held to; from memory. */
const spanRatio = 360

/** So many times the sag of floors is no stud to land on; our own choice. */
const softest = 4

/** N in a pound of force. */
const pound = 4.4482216

const forceWords =
  (toTens: (tens: number) => number) =>
  (newton: number): string =>
    `${toTens(newton / 10) * 10} N (${toTens(newton / pound / 10) * 10} lb)`

/** A force that is borne, told no larger than it is: `1490 N (330 lb)`. */
export const borneWords = forceWords(Math.floor)

/** A force that is to be held, told no smaller than it is: `1500 N (340 lb)`. */
export const heldWords = forceWords(Math.ceil)

/**
 * Sag of a beam on two supports with a load in its middle: F L³ / (48 E I), I = b h³ / 12 (handbook beam formula). `width`
 * across the load, `depth` along it, mm.
 */
export const studSpan = (length: number, width: number, depth: number): Span => {
  const inertia = (width * depth ** 3) / 12
  const sag = (spanLoad * length ** 3) / (48 * spanStiffness * inertia)
  return { sag, ratio: length / sag }
}

/** A stud as it lies, and what helps it besides ribs. */
interface Bearing {
  readonly width: number
  readonly depth: number
  /** in place of a deeper one */
  readonly instead: string | null
}

const onEdge = ({ studs }: RampDesign): Bearing => {
  const [width, depth] = thinWide(studs.section)
  return { width, depth, instead: null }
}

/**
 * Where a stud sags more than floors do: a note, a warning where it sags more than four times as much; with the ribs or the depth
 * that would come under that. `stored`: names of what stores inside the ramp, which no rib may stand in the way of.
 */
export const spanFindings = <D extends RampDesign>(
  design: D,
  units: Units,
  stud: Bearing = onEdge(design),
  stored: readonly string[] = [],
): readonly Draft<D>[] => {
  const { sides } = design
  if (bearsAs(design, sides.count, stud)) return []
  const length = bayOf(design, sides.count)
  const { sag, ratio } = studSpan(length, stud.width, stud.depth)
  const keep =
    stored.length > 0
      ? `; ${wordList(stored.map((name) => quote(name)))} ${stored.length === 1 ? 'stores' : 'store'} inside: a middle rib would stop that, deeper studs leave less height for it`
      : ''
  const message = (works: (changed: D) => boolean): Told => {
    const found = [
      ...(stored.length > 0 ? [] : ribWays(design, stud, works)),
      ...(stud.instead !== null ? [stud.instead] : depthWays(design, stud, length, works, units)),
    ]
    return tell(
      `a stud ${rounded(length, units)} long sags about ${measured(sag, units)} (span/${Math.floor(ratio)}) under ${heldWords(spanLoad)} `,
      `at rest in its middle, stiffness ${spanStiffness} N/mm², both assumed; floors are commonly held to span/${spanRatio}: `,
      ...(found.length > 0
        ? found.flatMap((way, i) => (i === 0 ? [way] : [' or ', way]))
        : ['ribs and deeper studs together']),
      ` would${keep}. Judge for yourself or ask who knows timber`,
    )
  }
  return [
    ratio < spanRatio / softest
      ? warn('span', (trial: Trial<D>) => message(trial))
      : note(
          'span',
          // not tried on the whole ramp, so said and not offered
          unoffered(message(() => true)),
        ),
  ]
}

const bayOf = ({ width, sides }: RampDesign, count: number): number =>
  studLength({ width, sides: { ...sides, count } })

/** Whether a stud between so many sides sags as little as floors do; where sides leave it no length, none sags. */
const bearsAs = (design: RampDesign, count: number, stud: Bearing): boolean => {
  const bay = bayOf(design, count)
  return bay <= 0 || studSpan(bay, stud.width, stud.depth).ratio >= spanRatio
}

/** The fewest ribs that bear it. */
const ribWays = <D extends RampDesign>(
  design: D,
  stud: Bearing,
  works: (changed: D) => boolean,
): readonly Said[] => {
  const { sides } = design
  const { most } = rangeAt(`${rampPath(design.kind)}.sides.count`)
  const count = Array.from({ length: most - sides.count }, (_, i) => sides.count + 1 + i).find(
    (n) =>
      bayOf(design, n) > 0 && bearsAs(design, n, stud) && works({ ...design, sides: { ...sides, count: n } }),
  )
  if (count === undefined) return []
  const ribs = count - 2
  return [
    offering(
      `${ribs === 1 ? '1 middle rib' : `${ribs} middle ribs`} (sides: { count: ${count} })`,
      set('sides.count', `${count}`),
    ),
  ]
}

/** Span over sag is 4 E b h³ / (F L²). */
const depthWays = <D extends RampDesign>(
  design: D,
  { width }: Bearing,
  length: number,
  works: (changed: D) => boolean,
  units: Units,
): readonly Said[] => {
  const { atLeast, atLeastMm } = offer(units)
  const least = Math.cbrt((spanRatio * spanLoad * length ** 2) / (4 * spanStiffness * width))
  return works({ ...design, studs: { ...design.studs, section: [width, atLeastMm(least)] } })
    ? [
        offering(
          `studs ${atLeast(least)} deep or more`,
          set('studs.section', sectionText(width, atLeast(least), units)),
        ),
      ]
    : []
}
