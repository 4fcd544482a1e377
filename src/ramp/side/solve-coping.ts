import type { QuarterDesign, Units } from '../../design/design.ts'
import { bisect } from '../../geometry/bisect.ts'
import { pointDistance } from '../../geometry/point.ts'
import { type Draft, stop, type Trial, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { alongKey, firstOf, firstThat, orWays, outKey, radiusKey, upKey } from '../check/remedy.ts'
import { offering, set, type Told, tell, told, typedWith } from '../check/told.ts'
import type { SolvedCoping } from './coping.ts'
import { levelFinding, topFindings, woodFindings } from './coping-wood.ts'
import { skinThickness } from './skin-thickness.ts'
import type { Transition } from './transition.ts'

interface Solved {
  readonly coping: SolvedCoping | null
  readonly findings: readonly Draft[]
}

export const solveCoping = (
  ramp: QuarterDesign,
  transition: Transition,
  deck: number,
  units: Units,
): Solved => {
  if (!ramp.coping) return { coping: null, findings: [] }
  const { outside, seat, by } = ramp.coping
  const { curve, lip } = transition
  const { frame } = transition.heights
  const r = outside / 2
  const board = ramp.deckBoard?.thickness ?? 0
  const skin = skinThickness(ramp)
  const y = by.kind === 'notch' ? frame - by.down + r : frame + board + by.up - r
  const floor = y - r
  const seatable = floor > ramp.toe + same && floor < frame - same

  /** where along a level the pipe's middle lies for a wanted `out`; null above or below the curve's reach */
  const middleAt = (out: number): number | null => {
    const middles = curve.offset(skin - (r - out))
    const place = middles.placeAtHeight(y)
    return place === null ? null : middles.point(place).x
  }
  const outAt = (x: number): number => r - curve.offset(skin).nearest({ x, y }).distance

  const findings: Draft[] = []
  const x = by.kind === 'notch' ? lip.x + by.along - r : middleAt(by.out)
  const up = y + r - (frame + board)
  if (!seatable) findings.push(levelFinding(ramp, frame, floor, up, units))
  if (x === null) {
    if (seatable) findings.push(reachFinding(ramp, transition, y, up, skin, units))
    return { coping: null, findings }
  }
  const centre = { x, y }
  const coping = { outside, seat, centre, up, out: outAt(x), along: x + r - lip.x, down: frame - floor }
  if (seatable) {
    const bounds = seatBounds(transition, coping)
    findings.push(...seatFindings(ramp, transition, coping, bounds, outAt, units))
    if (coping.out < -same) findings.push(behindFinding(ramp, coping, bounds, lip.x, middleAt(0), units))
  }
  findings.push(...woodFindings(ramp, transition, coping, deck, units), ...topFindings(ramp, coping, units))
  return { coping, findings }
}

/** A larger radius as a way out. */
const radiusWay = (ramp: QuarterDesign, units: Units, trial: Trial): Told | null => {
  const { layer, radius } = ramp.transition.circle
  const larger = firstThat(trial, ramp, radiusKey(ramp), radius, 1, units)
  return larger && told`take a ${layer} radius of ${larger} or more`
}

/** The level of the pipe's middle is above or below all places that lie `out` of the ridden face. */
const reachFinding = (
  ramp: QuarterDesign,
  { curve }: Transition,
  y: number,
  up: number,
  skin: number,
  units: Units,
): Draft => {
  const { outside, by } = ramp.coping!
  const show = (mm: number): string => measured(mm, units)
  const out = by.kind === 'reveals' ? by.out : 0
  const r = outside / 2
  const over = y - curve.offset(skin - (r - out)).point(curve.lip).y
  if (over > 0)
    return stop('pipe-reach', (trial: Trial) => {
      const lower = firstOf(ramp, units, trial)(upKey, up - over, -1)
      return tell(
        `a pipe ${show(outside)} thick standing ${show(up)} up lies above the reach of the curve; `,
        orWays(
          [lower && told`\`up\` may be at most ${lower}`, radiusWay(ramp, units, trial)],
          'take a thinner pipe or a higher ramp',
        ),
      )
    })
  const place = curve.placeAtHeight(y - r)
  const touching = place === null ? null : { x: curve.point(place).x, y }
  const most = touching ? r - curve.offset(skin).nearest(touching).distance : 0
  return stop(
    'notch-floor',
    (trial: Trial) =>
      told`there is no floor under the pipe's middle; ${inwardWays(ramp, most, { out, up }, units, trial)}`,
  )
}

/**
 * How a pipe that hangs too far out of the wood comes over it: less `out`, or more `up`. An `out` under 0 would hide it behind
 * the ridden face and is the last thing offered.
 */
const inwardWays = (
  ramp: QuarterDesign,
  most: number,
  now: { readonly out: number; readonly up: number },
  units: Units,
  trial: Trial,
): Told => {
  const show = (mm: number): string => measured(mm, units)
  const first = firstOf(ramp, units, trial)
  const less = first(outKey, most, -1)
  const lessWay = less && told`\`out\` may be at most ${less} (${show(now.out)} now)`
  if (lessWay && less.mm >= 0 && now.up >= 0) return lessWay
  const more = first(upKey, now.up, 1)
  const ways = [
    more && told`\`up\` must be at least ${more} (${show(now.up)} now)`,
    less && less.mm >= 0 ? lessWay : null,
    now.up >= 0 ? radiusWay(ramp, units, trial) : null,
  ].filter((way) => way !== null)
  return orWays(ways.length > 0 ? ways : [lessWay], 'take a thinner pipe or a higher ramp')
}

/** Between which places along its level the pipe's middle must lie, x mm. */
interface SeatBounds {
  /** wood under the middle: the curve at the floor's height */
  readonly least: number
  /** a round seat reaches the curve below the lip only up to here */
  readonly most: number
}

const seatBounds = ({ curve, lip }: Transition, { centre, seat, outside }: SolvedCoping): SeatBounds => {
  const r = outside / 2
  const place = curve.placeAtHeight(centre.y - r)
  const least = place === null ? centre.x : curve.point(place).x
  if (seat === 'square') return { least, most: Number.POSITIVE_INFINITY }
  const beside = (x: number): number => {
    const middle = { x, y: centre.y }
    const foot = Math.min(curve.lip, Math.max(curve.toe, curve.nearest(middle).place))
    return r - pointDistance(curve.point(foot), middle)
  }
  return { least, most: bisect(beside, least, lip.x + 2 * r) }
}

/** No wood under the pipe's middle, a round seat that does not open to the curve, a wall before the lip. */
const seatFindings = (
  ramp: QuarterDesign,
  { lip }: Transition,
  coping: SolvedCoping,
  { least, most }: SeatBounds,
  outAt: (x: number) => number,
  units: Units,
): readonly Draft[] => {
  const { centre, outside, along, seat } = coping
  const r = outside / 2
  const alongAt = (x: number): number => x + r - lip.x
  const on: SeatPlace = { ramp, coping, outAt, alongAt, units }
  const floored = centre.x >= least - same
  return [
    ...(floored ? [] : [floorStop(on, least)]),
    ...(seat === 'round' && centre.x > most - same ? [shutStop(on, most)] : []),
    // a given `along` is always above 0
    ...(isRevealed(ramp) && along <= same && floored ? [frontStop(on, lip.x - r)] : []),
  ]
}

/** A seat, and what its reveal and its notch would be with the pipe's middle at another x of the same level, mm. */
interface SeatPlace {
  readonly ramp: QuarterDesign
  readonly coping: SolvedCoping
  readonly outAt: (x: number) => number
  readonly alongAt: (x: number) => number
  readonly units: Units
}

const isRevealed = ({ coping }: QuarterDesign): boolean => coping?.by.kind === 'reveals'

const floorStop = ({ ramp, coping, outAt, alongAt, units }: SeatPlace, least: number): Draft =>
  stop('notch-floor', (trial: Trial) => {
    const show = (mm: number): string => measured(mm, units)
    const said = `there is no floor under the pipe's middle: the curve passes ${show(least - coping.centre.x)} behind it; `
    if (isRevealed(ramp)) return tell(said, inwardWays(ramp, outAt(least), coping, units, trial))
    const longer = firstOf(ramp, units, trial)(alongKey, alongAt(least), 1)
    return tell(
      said,
      orWays(
        [longer && told`\`along\` must be at least ${longer} (${show(coping.along)} now)`],
        'give `up` and `out` in place of the notch',
      ),
    )
  })

const shutStop = ({ ramp, coping, outAt, alongAt, units }: SeatPlace, most: number): Draft =>
  stop('notch-floor', (trial: Trial) => {
    const show = (mm: number): string => measured(mm, units)
    const first = firstOf(ramp, units, trial)
    const square = trial({ ...ramp, coping: { ...ramp.coping!, seat: 'square' } })
    const more = isRevealed(ramp) ? first(outKey, outAt(most), 1) : null
    const shorter = isRevealed(ramp) ? null : first(alongKey, alongAt(most), -1)
    const further = 'bring the pipe further out of the face: '
    return tell(
      'the round seat does not meet the curve; ',
      orWays(
        [
          square ? offering('take a square seat', set('coping.seat', 'square')) : null,
          more && told`${further}\`out\` at least ${more} (${show(coping.out)} now)`,
          shorter && told`${further}\`along\` at most ${shorter} (${show(coping.along)} now)`,
        ],
        'take a thinner pipe or a higher ramp',
      ),
    )
  })

const frontStop = ({ ramp, coping, outAt, units }: SeatPlace, flush: number): Draft =>
  stop('notch-front', (trial: Trial) =>
    tell(
      `the notch's back wall comes out ${measured(-coping.along, units)} in front of the lip, where there is no wood; `,
      inwardWays(ramp, outAt(flush), coping, units, trial),
    ),
  )

const behindFinding = (
  ramp: QuarterDesign,
  coping: SolvedCoping,
  { least }: SeatBounds,
  lip: number,
  flush: number | null,
  units: Units,
): Draft =>
  warn('pipe-behind-face', (trial: Trial) => {
    const said = `the pipe lies ${measured(-coping.out, units)} behind the ridden face instead of standing out; `
    const first = firstOf(ramp, units, trial)
    if (ramp.coping?.by.kind === 'reveals') {
      const out = outKey.typed(ramp, 0)
      if (trial(out))
        return tell(said, offering('`out` 0 brings it flush', set('coping.out', '0')), ', more brings it out')
      const up = firstThat(trial, out, upKey, coping.up, 1, units)
      return tell(
        said,
        orWays(
          [up && typedWith(told`\`out\` 0 with \`up\` ${up} brings it flush`, set('coping.out', '0'))],
          'no `out` of 0 has a floor for it here: take a thinner pipe, a larger radius or a higher ramp',
        ),
      )
    }
    const r = coping.outside / 2
    const along = flush === null ? 0 : flush + r - lip
    // a notch that is long enough for a floor under the pipe and short enough for the face
    const shorter = along > Math.max(0, least + r - lip) + 2 ? first(alongKey, along, -1) : null
    return tell(
      said,
      orWays(
        [shorter && told`a notch ${shorter} along at this depth brings it flush, less brings it out`],
        'no notch of this depth that keeps a floor under it brings it out: give `up` and `out` in place of the notch',
      ),
    )
  })
