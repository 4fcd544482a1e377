import type { Drawing, Mark } from '../../drawing/drawing.ts'
import { textCorners } from '../../drawing/text-box.ts'
import { affineApply } from '../../geometry/affine.ts'
import { convexContains, pathClip } from '../../geometry/clip.ts'
import { pathSegments } from '../../geometry/path.ts'
import { textInside } from './keep-waste.ts'
import { type Tile, tileCell } from './tile.ts'

/**
 * The marks of a pattern that one tile carries, in the pattern: strokes are cut at the window, boxes only where they lie whole in what
 * the page keeps, words too, or where their anchor lies, then moved into the window.
 */
export const clipMarks = (marks: Drawing, tile: Tile): Drawing =>
  marks.flatMap((mark): Drawing => {
    switch (mark.kind) {
      case 'stroke':
        return pathClip(mark.path, tile.window).map((path) => ({ ...mark, path }))
      case 'fill':
        return pathSegments(mark.path).every((s) => convexContains(tile.cell, s.from)) ? [mark] : []
      case 'text':
        return clipText(mark, tile)
      case 'group':
        throw new RangeError('a pattern holds its marks without groups')
      default:
        return mark satisfies never
    }
  })

const clipText = (mark: Extract<Mark, { kind: 'text' }>, tile: Tile): Drawing => {
  const corners = textCorners(mark, tile.toWindow)
  const cell = tileCell(tile)
  if (corners.every((p) => p.x >= cell.x0 && p.y >= cell.y0 && p.x <= cell.x1 && p.y <= cell.y1))
    return [mark]
  if (!convexContains(tile.cell, mark.at)) return []
  // a pattern's words lie along the rows or along its own axes: move in the window's frame, then take the move back
  const at = affineApply(tile.toWindow, mark.at)
  const turn = Math.atan2(tile.toWindow[1], tile.toWindow[0])
  const moved = textInside({ ...mark, at, angle: mark.angle + turn }, tile.width, tile.height).at
  const [dx, dy] = [moved.x - at.x, moved.y - at.y]
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return [{ ...mark, at: { x: mark.at.x + dx * cos + dy * sin, y: mark.at.y - dx * sin + dy * cos } }]
}
