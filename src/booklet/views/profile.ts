import type { Units } from '../../design/design.ts'
import { isCurved } from '../../design/kind-traits.ts'
import { circle, type Path, polygonOf, rectangle, type Segment, segmentsPath } from '../../geometry/path.ts'
import { type Point, point } from '../../geometry/point.ts'
import { runOutLength } from '../../ramp/beside/toe-step.ts'
import type { Curve } from '../../ramp/curve/curve.ts'
import { type Timber, timberCorners } from '../../ramp/frame/timber.ts'
import type { Ramp, SolvedQuarter, SolvedRamp } from '../../ramp/ramp.ts'

/** A ramp as it is cut across, seen from its right side: toe at the left, floor at y = 0, mm. Closed outlines. */
export interface Profile {
  readonly side: Path
  /** from the studs outward */
  readonly skin: readonly Path[]
  /** from the toe */
  readonly studs: readonly Path[]
  /** behind the lip */
  readonly timbers: readonly Path[]
  readonly board: Path | null
  readonly pipe: { readonly centre: Point; readonly radius: number; readonly path: Path } | null
  readonly runOut: Path | null
}

/** Null where a stop leaves its side unsolved. */
export const solvedRamp = (ramp: Ramp): SolvedRamp | null =>
  !isCurved(ramp)
    ? ramp
    : ramp.transition && ramp.side && ramp.length !== null && ramp.deck !== null
      ? (ramp as SolvedQuarter)
      : null

/** The edge under the skin. */
export const frameCurve = (ramp: SolvedRamp): Curve => (isCurved(ramp) ? ramp.transition.curve : ramp.curve)

export const rampProfile = (ramp: SolvedRamp, units: Units): Profile => {
  const curve = frameCurve(ramp)
  const shared = {
    skin: ramp.skin
      .filter(({ length }) => length > 0)
      .map(({ below, sheet, start, end }) => band(curve, below, below + sheet.thickness, start, end)),
    studs: ramp.studs.map(timberPath),
  }
  if (!isCurved(ramp))
    return {
      ...shared,
      side: rectangle(0, 0, ramp.length, ramp.heights.frame),
      timbers: [],
      board: null,
      pipe: null,
      runOut: null,
    }
  const { coping, deckBoard: board, side } = ramp
  return {
    ...shared,
    side: side.outline,
    timbers: ramp.deckTimbers.map(timberPath),
    board: board
      ? rectangle(board.from, side.height, board.from + board.length, side.height + board.sheet.thickness)
      : null,
    pipe: coping && {
      centre: coping.centre,
      radius: coping.outside / 2,
      path: circle(coping.centre, coping.outside / 2),
    },
    runOut: runOutPath(ramp, units),
  }
}

const timberPath = (timber: Timber): Path => {
  const [a, ...rest] = timberCorners(timber)
  return polygonOf(a!, ...rest)
}

/** Between two offsets of a curve, cut square at both ends. */
export const band = (curve: Curve, low: number, high: number, start: number, end: number): Path => {
  const [lower, upper] = [curve.offset(low), curve.offset(high)]
  const up: Segment = { kind: 'line', from: lower.point(end), to: upper.point(end) }
  return {
    ...segmentsPath([...lower.segments(start, end), up, ...upper.segments(end, start)]),
    closed: true,
  }
}

/** Of what the sheet has beyond the bridge, this part laps on the skin; the rest lies on the floor. */
const lapShare = 0.4

/** The place at which a transition runs level: a place of a circle is its slope. */
const level = 0

/** The sheet that closes the step: on the floor, up the ridden face continued, and on over the skin. */
const runOutPath = (ramp: SolvedQuarter, units: Units): Path | null => {
  const { runOut } = ramp.design
  if (runOut.kind !== 'sheet') return null
  const { transition } = ramp
  const thick = runOut.sheet.thickness
  const face = transition.curve.offset(ramp.skinThickness)
  // where the face, continued, comes to the floor or runs level above it
  const foot = face.placeAtHeight(0) ?? level
  const over = runOutLength(transition, units) - transition.bridge
  const end = Math.min(transition.curve.lip, face.placeAtLength(lapShare * over))
  const under = face.point(foot)
  const upper = face.offset(thick)
  const tail = point(under.x - (1 - lapShare) * over, under.y)
  const above = upper.point(foot)
  return {
    ...segmentsPath([
      { kind: 'line', from: tail, to: under },
      ...face.segments(foot, end),
      { kind: 'line', from: face.point(end), to: upper.point(end) },
      ...upper.segments(end, foot),
      { kind: 'line', from: above, to: point(tail.x, above.y) },
    ]),
    closed: true,
  }
}
