import type { Point } from '../geometry/point.ts'
import type { Side } from './side/side.ts'
import type { CircleTransition, Transition } from './side/transition.ts'

/** A board on a screw that draws a circle; mm. */
export interface SwingArm {
  /** the screw, from two edges of the panel */
  readonly pivot: { readonly inFront: number; readonly above: number }
  /** screw to pencil */
  readonly arm: number
  /** the sheet as bought with the side in its lower front corner: its size, and the floor that the pivot needs beyond it */
  readonly sheet: { readonly length: number; readonly height: number }
  readonly floor: { readonly inFront: number; readonly above: number }
  /** the same where the panel is cut to the side's own height first */
  readonly floorAbovePanel: number
}

/** `sheet`: short and long side of the panel as bought; it lies as the side needs it. */
const swingArm = (
  { centre, radius }: Pick<CircleTransition, 'centre' | 'radius'>,
  { length, height }: Pick<Side, 'length' | 'height'>,
  [short, long]: readonly [number, number],
): SwingArm => {
  const lies = length >= height ? { length: long, height: short } : { length: short, height: long }
  const pivot: Point = centre
  const beyond = (mm: number): number => Math.max(0, mm)
  return {
    pivot: { inFront: -pivot.x, above: pivot.y },
    arm: radius.frame,
    sheet: lies,
    floor: { inFront: beyond(-pivot.x), above: beyond(pivot.y - lies.height) },
    floorAbovePanel: beyond(pivot.y - height),
  }
}

/** Only a circle can be swung. */
export const swingOf = (
  transition: Transition,
  side: Side,
  sheet: readonly [number, number],
): SwingArm | null => {
  switch (transition.kind) {
    case 'circle':
      return swingArm(transition, side, sheet)
    default:
      return transition.kind satisfies never
  }
}
