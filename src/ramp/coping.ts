import type { Coping, RampDesign, Units } from '../design/design.ts'
import type { Point } from '../geometry/point.ts'
import { showLength } from '../length.ts'
import { type Finding, stop, warn } from './check.ts'
import type { Transition } from './transition.ts'

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

/** Where the pipe lies; null where the wanted height is out of the curve's reach. */
const placePipe = (coping: Coping, transition: Transition, board: number): Point | null => {
  const r = coping.outside / 2
  const { frame } = transition.heights
  if (coping.by.kind === 'notch')
    return { x: transition.lip.x + coping.by.along - r, y: frame - coping.by.down + r }
  const y = frame + board + coping.by.up - r
  const skin = transition.radius.frame - transition.radius.surface
  const middles = transition.curve.offset(skin - (r - coping.by.out))
  const place = middles.placeAtHeight(y)
  return place === null ? null : middles.point(place)
}

export const solveCoping = (
  ramp: RampDesign,
  transition: Transition,
  deck: number,
  units: Units,
): { readonly coping: SolvedCoping | null; readonly findings: readonly Finding[] } => {
  if (!ramp.coping) return { coping: null, findings: [] }
  const show = (mm: number): string => showLength(mm, units)
  const { outside, seat } = ramp.coping
  const r = outside / 2
  const board = ramp.deckBoard?.thickness ?? 0
  const { frame } = transition.heights
  const centre = placePipe(ramp.coping, transition, board)
  if (!centre)
    return {
      coping: null,
      findings: [
        stop(
          'pipe-reach',
          `a pipe ${show(outside)} thick standing that far up lies above the reach of the curve; lower \`up\` or take a larger radius`,
        ),
      ],
    }
  const skin = transition.radius.frame - transition.radius.surface
  const down = frame - (centre.y - r)
  const along = centre.x + r - transition.lip.x
  const up = centre.y + r - (frame + board)
  const out = r - transition.curve.offset(skin).nearest(centre).distance
  const coping = { outside, seat, centre, up, out, along, down }

  const findings: Finding[] = []
  const floor = centre.y - r
  if (floor >= frame)
    findings.push(
      stop(
        'notch-level',
        `the notch's floor comes out ${show(floor - frame)} above the side's top line, so there is nothing to seat the pipe; ` +
          `with this deck board \`up\` may be at most ${show(up - (floor - frame))}`,
      ),
    )
  else if (floor <= ramp.toe)
    findings.push(
      stop(
        'notch-level',
        `the notch is ${show(down)} deep and its floor comes out below the toe; it may be at most ${show(frame - ramp.toe)} deep`,
      ),
    )
  // wood under the pipe's middle: the lowest point of the pipe lies below the frame's curve
  const under = transition.curve.nearest({ x: centre.x, y: floor }).distance
  if (floor < frame && under < 0)
    findings.push(
      stop(
        'notch-floor',
        `there is no floor under the pipe's middle: the curve passes ${show(-under)} behind it; ` +
          `${
            ramp.coping.by.kind === 'reveals'
              ? `make \`out\` smaller (${show(out)} now) or \`up\` larger (${show(up)} now)`
              : `make \`along\` larger (${show(along)} now)`
          }`,
      ),
    )
  if (along > deck)
    findings.push(
      stop(
        'notch-long',
        `the notch reaches ${show(along)} behind the lip, the deck is only ${show(deck)}; make the deck longer than ${show(along + leastWood)}`,
      ),
    )
  else if (deck - along < leastWood)
    findings.push(
      warn(
        'notch-wood',
        `only ${show(deck - along)} of wood stands behind the notch; ${show(leastWood)} or more is stronger: a deck of ${show(along + leastWood)}`,
      ),
    )
  if (centre.y > frame && floor < frame)
    findings.push(
      warn(
        'notch-wall',
        `the notch's back wall ends ${show(centre.y - frame)} below the pipe's middle and does not hold it; ` +
          `a notch ${show(r)} deep or more does (\`up\` ${show(up - (centre.y - frame))} or less)`,
      ),
    )
  if (out < 0)
    findings.push(
      warn(
        'pipe-behind-face',
        `the pipe lies ${show(-out)} behind the ridden face instead of standing out; ` +
          `a notch ${show(flushAlong(transition, centre, r, skin))} along at this depth brings it flush, less brings it out`,
      ),
    )
  if (up < 0)
    findings.push(
      warn(
        'pipe-under-deck',
        `the pipe's top lies ${show(-up)} under the deck board; a notch ${show(down + up)} down brings it level, less brings it up`,
      ),
    )
  return { coping, findings }
}

/** `along` with which a pipe at this height touches the ridden face from behind (out = 0). */
const flushAlong = (transition: Transition, centre: Point, r: number, skin: number): number => {
  const middles = transition.curve.offset(skin - r)
  const place = middles.placeAtHeight(centre.y)
  return place === null ? 0 : middles.point(place).x + r - transition.lip.x
}
