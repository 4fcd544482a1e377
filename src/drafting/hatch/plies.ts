import { type Drawing, stroke } from '../../drawing/drawing.ts'
import type { Path } from '../../geometry/path.ts'
import type { DraftStyle } from '../line-types.ts'

/** Plies of a plywood so thick, an odd number: about one for 3 mm. Common practice, no source. */
export const plyCount = (thickness: number): number =>
  Math.max(3, 2 * Math.round((thickness / 3 - 1) / 2) + 1)

/** The glue lines of a sheet that is cut across: `at` gives its line at a share of the thickness. */
export const plies = (at: (share: number) => Path, count: number, { layer, lines }: DraftStyle): Drawing =>
  Array.from({ length: count - 1 }, (_, i) =>
    stroke(layer, at((i + 1) / count), { width: lines.thin.width / 2 }),
  )
