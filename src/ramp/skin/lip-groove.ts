import type { QuarterDesign, Units } from '../../design/design.ts'
import { same } from '../check/offer.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import type { Transition } from '../side/transition.ts'
import { practice } from './skin-framing.ts'

/** The open V at the lip between the skin, cut square to the curve, and the deck board's front. Lengths mm. */
export interface LipGroove {
  /** at its mouth, along the floor: from the ridden edge to the board */
  readonly width: number
  /** from the lower of its two edges down to the lip */
  readonly depth: number
  /** between its sides, radians: so far off square the board's front is sawn to lie on the skin's ends */
  readonly bevel: number
  /** so much longer to the front the board then is */
  readonly forward: number
}

/** None under a pipe, without a board, nor where it is no wider than sheets are laid apart. */
export const lipGroove = (
  design: QuarterDesign,
  { heights, lipAngle }: Pick<Transition, 'heights' | 'lipAngle'>,
  units: Units,
): LipGroove | null => {
  if (design.coping || !design.deckBoard) return null
  const width = skinThickness(design) * Math.sin(lipAngle)
  if (width <= practice[units].gap + same) return null
  const depth = Math.min(heights.deck, heights.surface) - heights.frame
  return { width, depth, bevel: lipAngle, forward: depth * Math.tan(lipAngle) }
}
