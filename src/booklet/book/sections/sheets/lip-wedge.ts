import { showAngle } from '../../../../length/show-angle.ts'
import type { LipGroove } from '../../../../ramp/skin/lip-groove.ts'
import type { Book } from '../../book.ts'

/** The strip that fills the open groove at a lip without a pipe. */
export const wedgeWords = ({ width, depth, bevel }: LipGroove, { fine }: Book): string =>
  `Between the skin's ends and the board's front edge a groove stays open across the whole lip, and a wheel drops into it. Plane a strip of hard wood to fill it: ${fine(width)} wide on top, ${fine(depth)} high at the board, ${showAngle(bevel)} between its faces at board and skin. Try it in the groove, then glue and nail it in, heads sunk, and plane it level with both.`
