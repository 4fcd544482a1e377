import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { convexContains, pathClip } from '../../geometry/clip.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { isInCell, type Tile } from './tile.ts'

/**
 * The marks of a pattern that one tile carries, in the pattern: strokes are cut at the window, rings only where they lie whole in
 * it, boxes where they lie whole in what the page keeps, words too, or where their anchor lies.
 */
export const clipMarks = (marks: Drawing, tile: Tile): Drawing =>
  marks.flatMap((mark): Drawing => {
    switch (mark.kind) {
      case 'stroke':
        return isRing(mark.path)
          ? isOnPaper(mark.path, tile)
            ? [mark]
            : []
          : // a joint of pieces, or the line at a timber's face, in what is trimmed or covered alone would lie loose beside the line to
            // trim on: the next page has it
            (mark.layer === 'cut' || mark.layer === 'mark') && pathClip(mark.path, tile.cell).length === 0
            ? []
            : pathClip(mark.path, tile.window).map((path) => stroke(mark.layer, path, mark.pen))
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

/** A small closed line says nothing by a scrap of it, mm. */
const isRing = (path: Path): boolean => {
  if (!path.closed) return false
  const { x0, y0, x1, y1 } = pathBounds(path)
  return Math.hypot(x1 - x0, y1 - y0) < 15
}

const isOnPaper = (path: Path, { toWindow, width, height }: Tile): boolean => {
  const { x0, y0, x1, y1 } = pathBounds(pathMap(path, toWindow))
  return x0 >= 0 && y0 >= 0 && x1 <= width && y1 <= height
}

/** Whether words stand wholly in what the page keeps. */
const isWhole = (mark: TextMark, tile: Tile): boolean => isInCell(tile, textCorners(mark, tile.toWindow), 0)
