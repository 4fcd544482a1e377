import type { QuarterDesign, Units } from '../../design/design.ts'
import { pound } from '../../length/mass.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, note, stop, type Trial, warn } from '../check/check.ts'
import { rounded } from '../check/offer.ts'
import { backKey, chamferKey, firstThat, orWays } from '../check/remedy.ts'
import { offering, set, type Told, tell, told } from '../check/told.ts'
import { heldWords } from '../frame/span.ts'
import { rampParts } from './masses.ts'
import type { Standing } from './standing.ts'

/** A heavy rider who stands on the ramp or rolls up it, kg. A stated assumption, no source. */
export const rider = 80

/** m/s² */
const gravity = 9.81

/** Part of its load that a floor surely holds against sliding; wood on a smooth or dusty floor, from memory. */
const grip = 0.3

/** How a ramp stands on its foot: moments about the foot's back end, kg mm, positive where they hold it down. */
export interface Balance {
  /** behind the toe, mm: where the foot ends, and the ramp's middle */
  readonly foot: number
  readonly middle: number
  /** kg, at least */
  readonly least: number
  /** of the ramp alone, at the worst of what its parts may weigh */
  readonly alone: number
  /** with a rider on the back edge of the deck */
  readonly standing: number
  /** the least with a rider who rolls up the curve just to its lip */
  readonly rolling: number
  /** the greatest such push backward, N, and the greatest part of the load on the floor that it is, at another place */
  readonly push: { readonly force: number; readonly share: number }
}

/** Places along the curve at which a rolling rider is tried. */
const places = 48

/**
 * A rider without friction who comes to rest at the lip: at slope θ, where the face lies `under` below the lip, v² = 2 g under, and he
 * presses m (v² / ρ + g cos θ) square to the face.
 */
export const balance = (design: QuarterDesign, ramp: Standing): Balance => {
  const { transition, side } = ramp
  const parts = rampParts(design, ramp)
  const foot = side.length - design.chamfer
  const sum = (of: (part: (typeof parts)[number]) => number): number =>
    parts.reduce((total, part) => total + of(part), 0)
  const middle = sum(({ mass, middle: { x } }) => mass.usual * x) / sum(({ mass }) => mass.usual)
  // what lies before the end of the foot as light as it may be, what lies behind it as heavy
  const alone = sum(({ mass, middle: { x } }) => (foot - x) * (x < foot ? mass.least : mass.most))
  const least = sum(({ mass }) => mass.least)

  const { curve, face, heights } = transition
  const top = heights.surface
  let rolling = Number.POSITIVE_INFINITY
  let push = { force: 0, share: 0 }
  for (let i = 0; i <= places; i++) {
    const place = curve.toe + ((curve.lip - curve.toe) * i) / places
    const { x, y } = face.point(place)
    const slope = face.slope(place)
    const pressed = rider * ((2 * Math.max(0, top - y)) / face.radiusAt(place) + Math.cos(slope))
    const [back, down] = [pressed * Math.sin(slope), pressed * Math.cos(slope)]
    rolling = Math.min(rolling, alone + down * (foot - x) - back * y)
    push = {
      force: Math.max(push.force, back * gravity),
      share: Math.max(push.share, back / (down + least)),
    }
  }
  return { foot, middle, least, alone, standing: alone - rider * (side.length - foot), rolling, push }
}

const kilos = (kg: number): string => `${Math.floor(kg)} kg (${Math.floor(kg / pound)} lb)`

/** A smaller chamfer where the foot is what is short, a longer deck else. */
const footWays = (trial: Trial, design: QuarterDesign, units: Units): Told => {
  const { chamfer, back } = design
  const smaller = chamfer > 0 ? firstThat(trial, design, chamferKey, chamfer, -1, units) : null
  const without = chamfer > 0 && !smaller && trial(chamferKey.typed(design, 0))
  const longer = smaller || without ? null : firstThat(trial, design, backKey(design), back.value, 1, units)
  return orWays(
    [
      smaller && told`a chamfer of ${smaller} or less`,
      without ? offering('no chamfer', set('chamfer', 'none')) : null,
      longer &&
        (back.from === 'deck'
          ? told`a deck of ${longer} or more from lip to back`
          : told`a side ${longer} long`),
    ],
    'fix it to a wall, or set another back to back with it',
  )
}

/** A ramp that falls over, or that a rider tips or pushes back. */
export const tipFindings = (design: QuarterDesign, ramp: Standing, units: Units): readonly Draft[] => {
  const { foot, middle, least, alone, standing, rolling, push } = balance(design, ramp)
  const show = (mm: number): string => rounded(mm, units)
  const ends = `its foot ends ${show(foot)} behind the toe`
  if (middle >= foot)
    return [
      stop(
        'tips',
        (trial: Trial) =>
          told`it falls over by itself: ${ends}, its middle lies ${show(middle)} behind it; ${footWays(trial, design, units)}`,
      ),
    ]
  const findings: Draft[] = []
  const leftOut = [
    ...(design.runOut.kind === 'sheet' ? ['its run-out'] : []),
    ...(design.wheels ? ['its wheels'] : []),
    'screws',
  ]
  const who =
    standing < rolling
      ? `on the back edge of the deck, ${show(ramp.side.length)} behind the toe, tips it over`
      : 'who rolls up it tips it over backward'
  if (Math.min(alone, standing, rolling) <= 0)
    findings.push(
      warn('tips', (trial: Trial) =>
        tell(
          `a rider of ${kilos(rider)} ${who}: ${ends}, its own middle lies only ${show(foot - middle)} before that, and it is reckoned at its lightest, ${kilos(least)} without ${wordList(leftOut)}; `,
          footWays(trial, design, units),
        ),
      ),
    )
  if (push.share > grip)
    findings.push(
      note(
        'pushed-back',
        `a rider of ${kilos(rider)} who rolls up it pushes it back with about ${heldWords(push.force)}; at its lightest, ${kilos(least)} without ${wordList(leftOut)}, ` +
          `it slides on a floor that holds less than ${push.share.toFixed(2)} of the load on it; tie it down, or set it against a wall`,
      ),
    )
  return findings
}
