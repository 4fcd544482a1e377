import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity, affineInvert } from '../../geometry/affine.ts'
import { pointsBounds } from '../../geometry/bounds.ts'
import { pathClip } from '../../geometry/clip.ts'
import { bandContains } from '../../geometry/contains.ts'
import type { Path } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Tile } from './tile.ts'

/** Where wood and waste lie in a window. */
export interface Ground {
  /** points along the outline no more than half a millimetre apart, in the window as the drawing is read */
  readonly line: readonly Point[]
  /** whether a point of the window lies on the wood */
  readonly wood: (p: Point) => boolean
}

const spacing = 0.5

export const groundOf = (tile: Tile, outline: Path, wood: Ground['wood']): Ground => ({
  line: pathClip(outline, tile.window).flatMap((path) =>
    pathSample(path, spacing).map((p) => affineApply(tile.toWindow, p)),
  ),
  wood,
})

/** Whether a point of a window lies on the wood. `polygon`: the whole outline by points, the same for all tiles. */
export const woodOf = (tile: Tile, polygon: readonly Point[]): Ground['wood'] => {
  const back = affineInvert(tile.toWindow)
  const { y0, y1 } = pointsBounds(tile.window)
  const contains = bandContains(polygon, y0, y1)
  return (p) => contains(affineApply(back, p))
}

/** Whether a word of the window stands wholly on one side of the cut line, clear of it. */
export const standsOn = (ground: Ground, word: TextMark, side: 'wood' | 'waste'): boolean => {
  const [a, b, c, d] = textCorners(word, affineIdentity) as [Point, Point, Point, Point]
  const [width, height] = [Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(d.x - a.x, d.y - a.y)]
  const clear = spacing
  const touched = ground.line.some((p) => {
    const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / width
    const up = ((p.x - a.x) * (d.x - a.x) + (p.y - a.y) * (d.y - a.y)) / height
    return along > -clear && along < width + clear && up > -clear && up < height + clear
  })
  return !touched && ground.wood(pointBetween(a, c, 0.5)) === (side === 'wood')
}
