import type { Drawing } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { convexContains, pathClip } from '../../geometry/clip.ts'
import { pathSegments } from '../../geometry/path.ts'
import { type Tile, tileCell } from './tile.ts'

/**
 * The marks of a pattern that one tile carries, in the pattern: strokes are cut at the window, boxes only where they lie whole in what
 * the page keeps, words too, or where their anchor lies.
 */
export const clipMarks = (marks: Drawing, tile: Tile): Drawing =>
  marks.flatMap((mark): Drawing => {
    switch (mark.kind) {
      case 'stroke':
        return pathClip(mark.path, tile.window).map((path) => ({ ...mark, path }))
      case 'fill':
        return pathSegments(mark.path).every((s) => convexContains(tile.cell, s.from)) ? [mark] : []
      case 'text':
        return convexContains(tile.cell, mark.at) || isWhole(mark, tile) ? [mark] : []
      case 'group':
        throw new RangeError('a pattern holds its marks without groups')
      default:
        return mark satisfies never
    }
  })

/** Whether words stand wholly in what the page keeps. */
const isWhole = (mark: TextMark, tile: Tile): boolean => {
  const { x0, y0, x1, y1 } = tileCell(tile)
  return textCorners(mark, tile.toWindow).every(({ x, y }) => x >= x0 && y >= y0 && x <= x1 && y <= y1)
}
