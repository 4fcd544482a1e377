import type { Coping, QuarterDesign, Units } from '../design/design.ts'
import { bisect } from '../geometry/bisect.ts'
import { type Point, pointDistance } from '../geometry/point.ts'
import { type Finding, stop, warn } from './check.ts'
import { measured, offer, same } from './offer.ts'
import { skinThickness, type Transition } from './transition.ts'

/** The pipe and the notch that seats it, solved: design.md §5. Lengths mm. */
export interface SolvedCoping {
  readonly outside: number
  readonly seat: 'square' | 'round'
  readonly centre: Point
  /** above the deck board */
  readonly up: number
  /** square to the ridden face */
  readonly out: number
  /** from the lip along the top line to the notch's back wall */
  readonly along: number
  /** from the top line down to the seat */
  readonly down: number
}

const leastWood = 40

interface Solved {
  readonly coping: SolvedCoping | null
  readonly findings: readonly Finding[]
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

  const findings: Finding[] = []
  const x = by.kind === 'notch' ? lip.x + by.along - r : middleAt(by.out)
  const up = y + r - (frame + board)
  if (!seatable) findings.push(levelFinding(ramp, frame, floor, up, units))
  if (x === null) {
    if (seatable) findings.push(reachFinding(ramp.coping, transition, y, up, skin, units))
    return { coping: null, findings }
  }
  const centre = { x, y }
  const coping = { outside, seat, centre, up, out: outAt(x), along: x + r - lip.x, down: frame - floor }
  if (seatable) {
    const bounds = seatBounds(transition, coping)
    findings.push(...seatFindings(ramp, transition, coping, bounds, outAt, units))
    if (coping.out < -same)
      findings.push(behindFinding(by.kind, coping, bounds, lip.x, r, middleAt(0), units))
  }
  findings.push(...woodFindings(ramp, transition, coping, deck, units), ...topFindings(ramp, coping, units))
  return { coping, findings }
}

/** The floor lies above the top line, or below the toe. */
const levelFinding = (
  ramp: QuarterDesign,
  frame: number,
  floor: number,
  up: number,
  units: Units,
): Finding => {
  const { above, below } = offer(units)
  const show = (mm: number): string => measured(mm, units)
  if (floor >= frame - same)
    return stop(
      'notch-level',
      `the notch's floor comes out ${show(floor - frame)} above the side's top line, so there is nothing to seat the pipe; ` +
        `with this deck board \`up\` may be at most ${below(up - (floor - frame))}`,
    )
  const remedy =
    ramp.coping?.by.kind === 'notch'
      ? `it may be at most ${below(frame - ramp.toe)} deep`
      : `\`up\` must be at least ${above(up + ramp.toe - floor)}`
  return stop(
    'notch-level',
    `the notch is ${show(frame - floor)} deep and its floor comes out below the toe; ${remedy}`,
  )
}

/** The level of the pipe's middle is above or below all places that lie `out` of the ridden face. */
const reachFinding = (
  { outside, by }: Coping,
  { curve }: Transition,
  y: number,
  up: number,
  skin: number,
  units: Units,
): Finding => {
  const show = (mm: number): string => measured(mm, units)
  const out = by.kind === 'reveals' ? by.out : 0
  const r = outside / 2
  const over = y - curve.offset(skin - (r - out)).point(curve.lip).y
  if (over > 0)
    return stop(
      'pipe-reach',
      `a pipe ${show(outside)} thick standing ${show(up)} up lies above the reach of the curve; ` +
        `\`up\` may be at most ${offer(units).atMost(up - over)}, or take a larger radius`,
    )
  const place = curve.placeAtHeight(y - r)
  const touching = place === null ? null : { x: curve.point(place).x, y }
  const most = touching ? r - curve.offset(skin).nearest(touching).distance : 0
  return stop(
    'notch-floor',
    `there is no floor under the pipe's middle; \`out\` may be at most ${offer(units).atMost(most)} (${show(out)} now)`,
  )
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
  { centre, outside, along, out, seat }: SolvedCoping,
  { least, most }: SeatBounds,
  outAt: (x: number) => number,
  units: Units,
): readonly Finding[] => {
  const { atLeast, atMost, above, below } = offer(units)
  const show = (mm: number): string => measured(mm, units)
  const reveals = ramp.coping?.by.kind === 'reveals'
  const r = outside / 2
  const alongAt = (x: number): number => x + r - lip.x
  const findings: Finding[] = []
  if (centre.x < least - same)
    findings.push(
      stop(
        'notch-floor',
        `there is no floor under the pipe's middle: the curve passes ${show(least - centre.x)} behind it; ` +
          (reveals
            ? `\`out\` may be at most ${atMost(outAt(least))} (${show(out)} now)`
            : `\`along\` must be at least ${atLeast(alongAt(least))} (${show(along)} now)`),
      ),
    )
  if (seat === 'round' && centre.x > most - same)
    findings.push(
      stop(
        'notch-floor',
        'the round seat does not meet the curve; take a square seat, or bring the pipe further out of the face: ' +
          (reveals
            ? `\`out\` at least ${above(outAt(most))} (${show(out)} now)`
            : `\`along\` at most ${below(alongAt(most))} (${show(along)} now)`),
      ),
    )
  // a given `along` is always above 0
  if (reveals && along <= same && centre.x >= least - same)
    findings.push(
      stop(
        'notch-front',
        `the notch's back wall comes out ${show(-along)} in front of the lip, where there is no wood; ` +
          `\`out\` may be at most ${below(outAt(lip.x - r))} (${show(out)} now)`,
      ),
    )
  return findings
}

const behindFinding = (
  by: 'notch' | 'reveals',
  coping: SolvedCoping,
  { least }: SeatBounds,
  lip: number,
  r: number,
  flush: number | null,
  units: Units,
): Finding => {
  const said = `the pipe lies ${measured(-coping.out, units)} behind the ridden face instead of standing out; `
  if (by === 'reveals')
    return warn('pipe-behind-face', `${said}\`out\` 0 brings it flush, more brings it out`)
  const along = flush === null ? 0 : flush + r - lip
  // a notch that is long enough for a floor under the pipe and short enough for the face
  return warn(
    'pipe-behind-face',
    along > Math.max(0, least + r - lip) + 2
      ? `${said}a notch ${offer(units).atMost(along)} along at this depth brings it flush, less brings it out`
      : `${said}no notch of this depth that keeps a floor under it brings it out: give \`up\` and \`out\` in place of the notch`,
  )
}

/** Wood behind the wall, and a wall high enough to hold the pipe. */
const woodFindings = (
  ramp: QuarterDesign,
  { heights, run }: Transition,
  { centre, outside, along, up, down }: SolvedCoping,
  deck: number,
  units: Units,
): readonly Finding[] => {
  const { atLeast, atMost } = offer(units)
  const show = (mm: number): string => measured(mm, units)
  const enough =
    ramp.back.from === 'deck'
      ? `a deck of ${atLeast(along + leastWood)}`
      : `a side ${atLeast(run + along + leastWood)} long`
  const findings: Finding[] = []
  if (along >= deck - same)
    findings.push(
      stop(
        'notch-long',
        `the notch reaches ${show(along)} behind the lip, the deck is only ${show(deck)}; make it ${enough} or more`,
      ),
    )
  else if (deck - along < leastWood - same)
    findings.push(
      warn(
        'notch-wood',
        `only ${show(deck - along)} of wood stands behind the notch; ${show(leastWood)} or more is stronger: ${enough}`,
      ),
    )
  const over = centre.y - heights.frame
  if (over > same && down > same)
    findings.push(
      warn(
        'notch-wall',
        `the notch's back wall ends ${show(over)} below the pipe's middle and does not hold it; ` +
          `a notch ${atLeast(outside / 2)} deep or more does (\`up\` ${atMost(up - over)} or less)`,
      ),
    )
  return findings
}

const topFindings = (ramp: QuarterDesign, { up, down }: SolvedCoping, units: Units): readonly Finding[] => {
  if (up >= -same) return []
  const said = `the pipe's top lies ${measured(-up, units)} under the deck board; `
  if (ramp.coping?.by.kind === 'reveals')
    return [warn('pipe-under-deck', `${said}\`up\` 0 brings it level, more brings it up`)]
  return [
    warn(
      'pipe-under-deck',
      down + up > 2
        ? `${said}a notch ${offer(units).atMost(down + up)} down brings it level, less brings it up`
        : `${said}it is thinner than the board over its seat: take a thicker pipe or a thinner deck board`,
    ),
  ]
}
