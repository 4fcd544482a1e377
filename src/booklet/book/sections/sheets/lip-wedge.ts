import { showAngle } from '../../../../length/show-angle.ts'
import type { SolvedQuarter } from '../../../../ramp/ramp.ts'
import { skinThickness } from '../../../../ramp/side/skin-thickness.ts'
import { practice } from '../../../../ramp/skin/skin-framing.ts'
import type { Book } from '../../book.ts'

/** What fills the open groove at a lip without a pipe, between the skin's ends, square to the curve, and the upright front of the deck board; mm. */
export interface LipWedge {
  /** along its upper face */
  readonly wide: number
  /** of its upright face, at the board */
  readonly high: number
  /** between that and the face at the skin's ends, radians */
  readonly angle: number
}

/** Null where a pipe or no board lies there, and where it is no wider than sheets are laid apart. */
export const lipWedge = (
  { design, deckBoard, transition }: Pick<SolvedQuarter, 'design' | 'deckBoard' | 'transition'>,
  units: Book['units'],
): LipWedge | null => {
  const { heights, lipAngle } = transition
  const wide = skinThickness(design) * Math.sin(lipAngle)
  return design.coping || !deckBoard || wide <= practice[units].gap
    ? null
    : { wide, high: Math.min(heights.deck, heights.surface) - heights.frame, angle: lipAngle }
}

export const wedgeWords = ({ wide, high, angle }: LipWedge, { fine }: Book): string =>
  `Between the skin's ends and the board's front edge a groove stays open across the whole lip, and a wheel drops into it. Plane a strip of hard wood to fill it: ${fine(wide)} wide on top, ${fine(high)} high at the board, ${showAngle(angle)} between its faces at board and skin. Try it in the groove, then glue and nail it in, heads sunk, and plane it level with both.`
