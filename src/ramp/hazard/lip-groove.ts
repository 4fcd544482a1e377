import type { QuarterDesign, Units } from '../../design/design.ts'
import { showAngle } from '../../length/show-angle.ts'
import { type Draft, note, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { highStep, stepLimit, stepWords } from '../check/practice.ts'
import type { Transition } from '../side/transition.ts'
import { type LipGroove, lipGroove } from '../skin/lip-groove.ts'

/** A small wheel, across; common practice, no source. mm */
const smallWheel = 52

/** How far a wheel sinks that lies on both edges: it meets the far one as it meets a step so high. */
export const wheelSinks = ({ width, depth }: Pick<LipGroove, 'width' | 'depth'>): number => {
  const r = smallWheel / 2
  return width >= smallWheel ? depth : Math.min(depth, r - Math.sqrt(r * r - (width / 2) ** 2))
}

export const lipGrooveFindings = (
  design: QuarterDesign,
  transition: Transition,
  units: Units,
): readonly Draft[] => {
  const groove = lipGroove(design, transition, units)
  if (!groove) return []
  const show = (mm: number): string => measured(mm, units)
  const sinks = wheelSinks(groove)
  const high = sinks > stepLimit + same
  const words =
    `no pipe covers the lip: between the skin's ends, square to the curve, and the deck board an open groove ${show(groove.width)} wide and ` +
    `${show(groove.depth)} deep runs across the ramp; a wheel ${show(smallWheel)} across sinks ${high ? highStep(sinks, units) : show(sinks)} into it` +
    `${high ? ` and stops as at a step so high, at more than ${stepWords[units]}` : ''}; saw the deck board ${show(groove.forward)} longer, the underside of its ` +
    `front edge bevelled ${showAngle(groove.bevel)} off square to lie on the skin's ends, or glue in a strip of wood planed to that wedge`
  return [high ? warn('lip-groove', words) : note('lip-groove', words)]
}
