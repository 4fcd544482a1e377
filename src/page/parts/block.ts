import type { Drawing } from '../../drawing/drawing.ts'
import type { Affine } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'

/** A small part with all of its words, laid on a page as one: from 0,0 to its width and height, mm. */
export interface Block {
  readonly width: number
  readonly height: number
  /** called once its place is found: most of what is tried is never laid */
  readonly draw: () => Drawing
  readonly places: readonly BlockPlace[]
}

/** `pipe`: the strip that measures one. */
export type PartKind = 'trial' | 'pipe' | 'strip'

export interface BlockPlace {
  readonly part: PartKind
  readonly pattern: string
  /** the pattern to mm of the block, later of the ideal page */
  readonly map: Affine
  /** what is drawn of the pattern, in the same */
  readonly window: Box
}
