import type { QuarterDesign, Units } from '../design/design.ts'
import type { Point } from '../geometry/point.ts'
import { type Finding, note, stop, warn } from './check.ts'
import { circleCurve } from './circle.ts'
import type { Curve } from './curve.ts'
import { listed, measured, offer, rounded, same } from './offer.ts'

/** The curved part, solved: design.md §5. Lengths mm, angles radians. */
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
/** A wheel stops at a higher step; common practice, no source. mm */
export const stepLimit = 6

export const skinThickness = (ramp: Pick<QuarterDesign, 'skin'>): number =>
  ramp.skin.reduce((sum, sheet) => sum + sheet.thickness, 0)

export const solveTransition = (
  ramp: QuarterDesign,
  units: Units,
): { readonly transition: Transition | null; readonly findings: readonly Finding[] } => {
  const show = (mm: number): string => measured(mm, units)
  const { atLeast, atMost, above, below } = offer(units)
  const { circle, tangent } = ramp.transition
  const skin = skinThickness(ramp)
  const board = ramp.deckBoard?.thickness ?? 0
  const frameRadius = circle.layer === 'frame' ? circle.radius : circle.radius + skin
  const surfaceRadius = frameRadius - skin
  if (surfaceRadius <= 0)
    return {
      transition: null,
      findings: [
        stop(
          'radius-skin',
          `the frame's radius ${show(frameRadius)} leaves no ridden face inside a skin ${show(skin)} thick; give a radius of ${above(skin)} or more`,
        ),
      ],
    }
  // the radius of the layer whose tangent height is given, and the height of the centre that follows
  const c = tangent.height + (tangent.layer === 'frame' ? frameRadius : surfaceRadius)

  const { layer, value } = ramp.height
  const levelRadius = layer === 'surface' ? surfaceRadius : frameRadius
  const wanted = layer === 'deck' ? value - board : value
  if (wanted > c + same)
    return {
      transition: null,
      findings: [
        stop(
          'overhang',
          `a ${layer} height of ${show(value)} lies above the centre of the curve (${show(c)}), so the lip would lean over the rider; ` +
            `the least ${circle.layer} radius for this height is ${atLeast(circle.radius + (wanted - c))}, ` +
            `or lower the height to ${atMost(value - (wanted - c))}`,
        ),
      ],
    }
  const lowest = c - frameRadius
  const toeAngle = Math.acos(Math.min(1, (c - ramp.toe) / frameRadius))
  // the layer whose height is given, over the toe; at its lowest where the toe lies below the curve
  const foot = c - levelRadius * Math.cos(toeAngle)
  if (wanted <= c - levelRadius + same)
    return {
      transition: null,
      findings: [
        stop(
          'height-low',
          `a ${layer} height of ${show(value)} is not above the lowest point of the curve; ` +
            `make it ${above(foot + value - wanted)} or more, or lower the tangent`,
        ),
      ],
    }
  const lipAngle = Math.acos((c - wanted) / levelRadius)
  const frame = layer === 'surface' ? c - frameRadius * Math.cos(lipAngle) : wanted
  if (ramp.toe < lowest - same)
    return {
      transition: null,
      findings: [
        stop(
          'toe-low',
          `the curve never comes down to a toe of ${show(ramp.toe)}: its lowest point is ${show(lowest)} above the floor; ` +
            `the lowest toe is ${atLeast(lowest)}, or lower the tangent by ${atLeast(lowest - ramp.toe)}`,
        ),
      ],
    }
  if (ramp.toe >= frame - same)
    return {
      transition: null,
      findings: [
        stop(
          'toe-high',
          `a toe of ${show(ramp.toe)} is not below the side's top line, ${show(frame)} above the floor; ` +
            `make the toe ${below(frame)} or less, or the ${layer} height ${above(foot + value - wanted)} or more`,
        ),
      ],
    }
  const centre = { x: -frameRadius * Math.sin(toeAngle), y: c }
  const run = frameRadius * (Math.sin(lipAngle) - Math.sin(toeAngle))
  const toeStep = c - surfaceRadius * Math.cos(toeAngle)
  const bridge = surfaceRadius * toeAngle

  const findings: Finding[] = []
  if (lipAngle > steepLimit + 1e-9) {
    // a layer that runs level at height H and stands at 80° at height h: radius (1 − cos 80°) = h − H
    const least = (wanted - (c - levelRadius)) / (1 - Math.cos(steepLimit)) + circle.radius - levelRadius
    findings.push(
      warn(
        'steep',
        `the lip stands at ${((lipAngle * 180) / Math.PI).toFixed(1)}°, over 80°: nearly a wall; ` +
          `at this height a ${circle.layer} radius of ${atLeast(least)} or more keeps it under 80°`,
      ),
    )
  }
  if (toeStep > stepLimit + same && ramp.runOut.kind === 'none') {
    // the toe over which the ridden face lies at the limit; below the lowest point or the floor there is none
    const cos = (c - stepLimit) / surfaceRadius
    const toe = c - frameRadius * cos
    const lower = cos < 1 && toe > Math.max(0, lowest) + 2 ? `, or lower the toe to ${atMost(toe)}` : ''
    findings.push(
      warn(
        'toe-step',
        `the ridden face ends ${show(toeStep)} above the floor at the toe, a wheel stops at more than ${show(stepLimit)}; ` +
          `say what closes it (run-out: { sheet: ${units === 'mm' ? '1.5' : '1/16'} steel }, about ${rounded(bridge, units)} long)${lower}`,
      ),
    )
  }
  if (ramp.runOut.kind === 'stepped' && ramp.skin.length > 0) {
    // the lowest layer's face over the floor, then the thickness of each layer on it
    const [lowest, ...upper] = ramp.skin.map(({ thickness }) => thickness)
    const steps = [c - (frameRadius - lowest!) * Math.cos(toeAngle), ...upper]
    const words = `the skin rises at the toe in steps of ${listed(steps, units)}`
    const high = Math.max(...steps) > stepLimit + same
    findings.push(
      high
        ? warn(
            'toe-step',
            `${words}, a wheel stops at more than ${show(stepLimit)}; take thinner layers and a lower toe, ` +
              `or say what closes it (run-out: { sheet: ${units === 'mm' ? '1.5' : '1/16'} steel }, about ${rounded(bridge, units)} long)`,
          )
        : note('toe-step', words),
    )
  }
  if (toeStep > stepLimit + same && ramp.runOut.kind === 'sheet')
    findings.push(
      note(
        'toe-step',
        `the run-out bridges ${rounded(bridge, units)} of curve from the toe, ${rounded(toeStep, units)} above the floor, plus what lies flat on it`,
      ),
    )
  return {
    transition: {
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
      toeStep,
      bridge,
    },
    findings,
  }
}
