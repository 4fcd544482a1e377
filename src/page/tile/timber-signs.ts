import type { Drawing } from '../../drawing/drawing.ts'
import { affineAngle } from '../../geometry/affine.ts'
import { boxGrow } from '../../geometry/bounds.ts'
import { boxCorners } from '../../geometry/clip.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { timberSign, timberX } from '../../pattern/timber-marks.ts'
import { clearUnder, type Occupancy } from '../room/occupancy.ts'
import { on } from '../room/word-room.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'

/** Round the strokes of an X, mm. */
const air = 1

/** The X of each timber, whole in what the page keeps and off all that is read there; none where the page has no room for it. */
export const timberSigns = ({ screws }: Pattern, tile: Tile, room: Occupancy): Drawing => {
  const { x0, y0, x1, y1 } = boxGrow(tileCell(tile), -timberSign - air)
  return screws.flatMap(({ angle, signs }) => {
    const at = signs
      .map((sign) => tilePoint(tile, sign))
      .find(
        (p) =>
          p.x >= x0 &&
          p.x <= x1 &&
          p.y >= y0 &&
          p.y <= y1 &&
          clearUnder(
            room,
            boxCorners(boxGrow({ x0: p.x, y0: p.y, x1: p.x, y1: p.y }, timberSign)),
            on.never | on.cut,
          ),
      )
    return at ? timberX(at, affineAngle(tile.toWindow, angle)) : []
  })
}
