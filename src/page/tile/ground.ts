import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity, affineInvert } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pointsBounds } from '../../geometry/bounds.ts'
import { pathClip } from '../../geometry/clip.ts'
import type { Path } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Tile } from './tile.ts'

/** Where wood and waste lie in a window. */
export interface Ground {
  /** points along the outline no more than half a millimetre apart, in the window as the drawing is read, and where they lie */
  readonly line: readonly Stretch[]
  /** whether a point of the window lies on the wood */
  readonly wood: (p: Point) => boolean
}

interface Stretch {
  readonly points: readonly Point[]
  readonly box: Box
}

const spacing = 0.5

/** So many points of the line are passed by together. */
const together = 40

export const groundOf = (tile: Tile, outline: Path, wood: Ground['wood']): Ground => ({
  line: pathClip(outline, tile.window).flatMap((path) => {
    const points = pathSample(path, spacing).map((p) => affineApply(tile.toWindow, p))
    return Array.from({ length: Math.ceil(points.length / together) }, (_, i): Stretch => {
      const some = points.slice(i * together, (i + 1) * together)
      return { points: some, box: pointsBounds(some) }
    })
  }),
  wood,
})

/** Whether a point of a window lies on the wood. `contains`: whether one of the pattern does. */
export const woodOf = (tile: Tile, contains: Ground['wood']): Ground['wood'] => {
  const back = affineInvert(tile.toWindow)
  return (p) => contains(affineApply(back, p))
}

/** Whether a word of the window stands wholly on one side of the cut line, clear of it. */
export const standsOn = (ground: Ground, word: TextMark, side: 'wood' | 'waste'): boolean => {
  const corners = textCorners(word, affineIdentity) as [Point, Point, Point, Point]
  const [a, b, c, d] = corners
  const [width, height] = [Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(d.x - a.x, d.y - a.y)]
  const clear = spacing
  const touches = (p: Point): boolean => {
    const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / width
    const up = ((p.x - a.x) * (d.x - a.x) + (p.y - a.y) * (d.y - a.y)) / height
    return along > -clear && along < width + clear && up > -clear && up < height + clear
  }
  // however it is turned
  const around = boxGrow(pointsBounds(corners), 2 * clear)
  const touched = ground.line.some(({ points, box }) => boxOverlaps(box, around) && points.some(touches))
  return !touched && ground.wood(pointBetween(a, c, 0.5)) === (side === 'wood')
}
