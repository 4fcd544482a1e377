import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Point } from '../../geometry/point.ts'
import type { Draft } from '../check/check.ts'
import { circleCurve } from '../curve/circle.ts'
import type { Curve } from '../curve/curve.ts'
import { curveStop, type Reckoned, steepFindings } from './curve-stops.ts'
import { skinThickness } from './skin-thickness.ts'

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

/** The radii, and the heights of the centre and of the layer that is given. */
const reckon = (ramp: QuarterDesign): Reckoned => {
  const { circle, tangent } = ramp.transition
  const skin = skinThickness(ramp)
  const board = ramp.deckBoard?.thickness ?? 0
  const frame = circle.layer === 'frame' ? circle.radius : circle.radius + skin
  const surface = frame - skin
  const { layer, value } = ramp.height
  return {
    skin,
    board,
    radius: { frame, surface },
    // from the radius of the layer whose tangent height is given
    centre: tangent.height + (tangent.layer === 'frame' ? frame : surface),
    level: layer === 'surface' ? surface : frame,
    wanted: layer === 'deck' ? value - board : value,
  }
}

/** The curve of a quarter, with the findings about it; null where there is none. */
export const solveTransition = (
  ramp: QuarterDesign,
  units: Units,
): { readonly transition: Transition | null; readonly findings: readonly Draft[] } => {
  const reckoned = reckon(ramp)
  const stopped = curveStop(ramp, reckoned, units)
  if (stopped) return { transition: null, findings: [stopped] }
  const { board, radius, centre: c, level, wanted } = reckoned
  const toeAngle = Math.acos(Math.min(1, (c - ramp.toe) / radius.frame))
  const lipAngle = Math.acos((c - wanted) / level)
  const frame = ramp.height.layer === 'surface' ? c - radius.frame * Math.cos(lipAngle) : wanted
  const centre = { x: -radius.frame * Math.sin(toeAngle), y: c }
  const run = radius.frame * (Math.sin(lipAngle) - Math.sin(toeAngle))
  const transition: Transition = {
    kind: 'circle',
    curve: circleCurve(centre, radius.frame, toeAngle, lipAngle),
    centre,
    radius,
    heights: { frame, deck: frame + board, surface: c - radius.surface * Math.cos(lipAngle) },
    toe: { x: 0, y: ramp.toe },
    lip: { x: run, y: frame },
    toeAngle,
    lipAngle,
    arc: radius.frame * (lipAngle - toeAngle),
    run,
    toeStep: c - radius.surface * Math.cos(toeAngle),
    bridge: radius.surface * toeAngle,
  }
  return { transition, findings: steepFindings(ramp, reckoned, lipAngle, units) }
}
