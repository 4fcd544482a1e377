import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Draft } from '../check/check.ts'
import { circleCurve } from '../curve/circle.ts'
import { circleStop, type Reckoned, steepFindings } from './circle-stops.ts'
import { skinThickness } from './skin-thickness.ts'
import type { CircleTransition } from './transition.ts'

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

/** The circle of a quarter, with the findings about it; null where there is none. */
export const solveCircle = (
  ramp: QuarterDesign,
  units: Units,
): { readonly transition: CircleTransition | null; readonly findings: readonly Draft[] } => {
  const reckoned = reckon(ramp)
  const stopped = circleStop(ramp, reckoned, units)
  if (stopped) return { transition: null, findings: [stopped] }
  const { board, radius, centre: c, level, wanted } = reckoned
  const toeAngle = Math.acos(Math.min(1, (c - ramp.toe) / radius.frame))
  const lipAngle = Math.acos((c - wanted) / level)
  const frame = ramp.height.layer === 'surface' ? c - radius.frame * Math.cos(lipAngle) : wanted
  const centre = { x: -radius.frame * Math.sin(toeAngle), y: c }
  const run = radius.frame * (Math.sin(lipAngle) - Math.sin(toeAngle))
  const transition: CircleTransition = {
    kind: 'circle',
    curve: circleCurve(centre, radius.frame, toeAngle, lipAngle),
    face: circleCurve(centre, radius.surface, toeAngle, lipAngle),
    level: { place: 0, frame: c - radius.frame, surface: c - radius.surface },
    tightest: radius.frame,
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
