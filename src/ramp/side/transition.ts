import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Point } from '../../geometry/point.ts'
import { type Draft, stop, type Trial, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import {
  firstThat,
  heightKey,
  type Key,
  manyFaults,
  type Offered,
  orWays,
  radiusKey,
  tangentKey,
  toeKey,
} from '../check/remedy.ts'
import { circleCurve } from '../curve/circle.ts'
import type { Curve } from '../curve/curve.ts'

/** The curved part, solved: docs/geometry.md. Lengths mm, angles radians. */
export interface Transition {
  readonly kind: 'circle'
  /** the frame's edge, from the toe corner to the uncut lip */
  readonly curve: Curve
  readonly centre: Point
  readonly radius: { readonly frame: number; readonly surface: number }
  readonly heights: { readonly frame: number; readonly deck: number; readonly surface: number }
  readonly toe: Point
  readonly lip: Point
  readonly toeAngle: number
  readonly lipAngle: number
  readonly arc: number
  readonly run: number
  /** height of the ridden face over the floor at the toe */
  readonly toeStep: number
  /** length of the ridden face that is missing between toe and floor */
  readonly bridge: number
}

const steepLimit = (80 * Math.PI) / 180

export const skinThickness = (ramp: Pick<QuarterDesign, 'skin'>): number =>
  ramp.skin.reduce((sum, sheet) => sum + sheet.thickness, 0)

interface Solved {
  readonly transition: Transition | null
  readonly findings: readonly Draft[]
}

const unsolved = (why: Draft): Solved => ({ transition: null, findings: [why] })

export const solveTransition = (ramp: QuarterDesign, units: Units): Solved => {
  const show = (mm: number): string => measured(mm, units)
  const { atLeast, atMost } = offer(units)
  const first = (trial: Trial, key: Key, from: number, towards: 1 | -1): Offered | null =>
    firstThat(trial, ramp, key, from, towards, units)
  const [aRadius, aHeight, aTangent] = [radiusKey(ramp), heightKey(ramp), tangentKey(ramp)]
  const { circle, tangent } = ramp.transition
  const skin = skinThickness(ramp)
  const board = ramp.deckBoard?.thickness ?? 0
  const frameRadius = circle.layer === 'frame' ? circle.radius : circle.radius + skin
  const surfaceRadius = frameRadius - skin
  if (surfaceRadius <= 0)
    return unsolved(
      stop('radius-skin', (trial: Trial) => {
        const larger = first(trial, aRadius, skin, 1)
        return (
          `the frame's radius ${show(frameRadius)} leaves no ridden face inside a skin ${show(skin)} thick; ` +
          orWays([larger && `give a radius of ${larger.shown} or more`], `take a thinner skin; ${manyFaults}`)
        )
      }),
    )
  // the radius of the layer whose tangent height is given, and the height of the centre that follows
  const c = tangent.height + (tangent.layer === 'frame' ? frameRadius : surfaceRadius)

  const { layer, value } = ramp.height
  const levelRadius = layer === 'surface' ? surfaceRadius : frameRadius
  const wanted = layer === 'deck' ? value - board : value
  if (wanted > c + same)
    return unsolved(
      stop('overhang', (trial: Trial) => {
        const larger = first(trial, aRadius, circle.radius + (wanted - c), 1)
        const lower = first(trial, aHeight, value - (wanted - c), -1)
        return (
          `a ${layer} height of ${show(value)} lies above the centre of the curve (${show(c)}), so the lip would lean over the rider; ` +
          orWays(
            [
              larger && `the least ${circle.layer} radius for this height is ${larger.shown}`,
              lower && `lower the height to ${lower.shown}`,
            ],
            `the curve needs a ${circle.layer} radius of ${atLeast(circle.radius + (wanted - c))} or a height of ${atMost(value - (wanted - c))}, but then another part stops; ${manyFaults}`,
          )
        )
      }),
    )
  const lowest = c - frameRadius
  const toeAngle = Math.acos(Math.min(1, (c - ramp.toe) / frameRadius))
  // the layer whose height is given, over the toe; at its lowest where the toe lies below the curve
  const foot = c - levelRadius * Math.cos(toeAngle)
  if (wanted <= c - levelRadius + same)
    return unsolved(
      stop('height-low', (trial: Trial) => {
        const higher = first(trial, aHeight, foot + value - wanted, 1)
        const lower = first(trial, aTangent, tangent.height, -1)
        return (
          `a ${layer} height of ${show(value)} is not above the lowest point of the curve; ` +
          orWays(
            [higher && `make it ${higher.shown} or more`, lower && `lower the tangent to ${lower.shown}`],
            `make it higher; ${manyFaults}`,
          )
        )
      }),
    )
  const lipAngle = Math.acos((c - wanted) / levelRadius)
  const frame = layer === 'surface' ? c - frameRadius * Math.cos(lipAngle) : wanted
  if (ramp.toe < lowest - same)
    return unsolved(
      stop('toe-low', (trial: Trial) => {
        const higher = first(trial, toeKey, lowest, 1)
        const lower = first(trial, aTangent, tangent.height - (lowest - ramp.toe), -1)
        return (
          `the curve never comes down to a toe of ${show(ramp.toe)}: its lowest point is ${show(lowest)} above the floor; ` +
          orWays(
            [higher && `the lowest toe is ${higher.shown}`, lower && `lower the tangent to ${lower.shown}`],
            `take a higher toe or a lower tangent; ${manyFaults}`,
          )
        )
      }),
    )
  if (ramp.toe >= frame - same)
    return unsolved(
      stop('toe-high', (trial: Trial) => {
        const lower = first(trial, toeKey, frame, -1)
        const higher = first(trial, aHeight, foot + value - wanted, 1)
        return (
          `a toe of ${show(ramp.toe)} is not below the side's top line, ${show(frame)} above the floor; ` +
          orWays(
            [
              lower && `make the toe ${lower.shown} or less`,
              higher && `make the ${layer} height ${higher.shown} or more`,
            ],
            `take a lower toe or a greater height; ${manyFaults}`,
          )
        )
      }),
    )
  const centre = { x: -frameRadius * Math.sin(toeAngle), y: c }
  const run = frameRadius * (Math.sin(lipAngle) - Math.sin(toeAngle))

  const findings: Draft[] = []
  if (lipAngle > steepLimit + 1e-9) {
    // a layer that runs level at height H and stands at 80° at height h: radius (1 − cos 80°) = h − H
    const least = (wanted - (c - levelRadius)) / (1 - Math.cos(steepLimit)) + circle.radius - levelRadius
    findings.push(
      warn('steep', (trial: Trial) => {
        const larger = first(trial, aRadius, least, 1)
        return (
          `the lip stands at ${((lipAngle * 180) / Math.PI).toFixed(1)}°, over 80°: nearly a wall; ` +
          orWays(
            [
              larger &&
                `at this height a ${circle.layer} radius of ${larger.shown} or more keeps it under 80°`,
            ],
            `take a larger radius; ${manyFaults}`,
          )
        )
      }),
    )
  }
  const transition: Transition = {
    kind: 'circle',
    curve: circleCurve(centre, frameRadius, toeAngle, lipAngle),
    centre,
    radius: { frame: frameRadius, surface: surfaceRadius },
    heights: { frame, deck: frame + board, surface: c - surfaceRadius * Math.cos(lipAngle) },
    toe: { x: 0, y: ramp.toe },
    lip: { x: run, y: frame },
    toeAngle,
    lipAngle,
    arc: frameRadius * (lipAngle - toeAngle),
    run,
    toeStep: c - surfaceRadius * Math.cos(toeAngle),
    bridge: surfaceRadius * toeAngle,
  }
  return { transition, findings }
}
