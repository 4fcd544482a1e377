import type { Sheet } from '../design/design.ts'
import type { Path } from '../geometry/path.ts'

/** Something that is sawn from a panel. */
export interface SheetPart {
  /** its name on layout, pattern and list; no two alike in a design */
  readonly mark: string
  readonly ramp: string
  readonly part: 'side' | 'rib' | 'skin' | 'deck-board' | 'run-out' | 'plate'
  /** as the builder calls it: `left side`, `layer 1, piece 2` */
  readonly words: string
  readonly sheet: Sheet
  /** true outline in its own frame, mm, arcs kept: as seen on the face that shows in the ramp; a curved one from its toe */
  readonly outline: Path
  /** the way of `outline` along which the panel's long side, and with it the grain, must lie; null where it may lie any way */
  readonly grain: 'x' | 'y' | null
  /** of a side that is spliced: whose piece it is, and what of the side it has; null of all else */
  readonly piece: SidePiece | null
  /** whether one face shows and its outline turned over is another part: the outer sides of a curved ramp */
  readonly faced: boolean
}

/** Whether it carries the curve, or the studs of a flat: one of the two outer sides, or a rib; whole or a piece. */
export const isSide = ({ part }: Pick<SheetPart, 'part'>): boolean => part === 'side' || part === 'rib'

/** One piece of a side that no panel holds whole. */
export interface SidePiece {
  /** the side's mark, or the rib's */
  readonly of: string
  readonly toe: boolean
  readonly lip: boolean
  readonly back: boolean
}
