import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineInvert } from '../../geometry/affine.ts'
import { segmentAt } from '../../geometry/at.ts'
import { type Box, boxGrow, boxOverlaps, pointsBounds } from '../../geometry/bounds.ts'
import { pathClip } from '../../geometry/clip.ts'
import { segmentLength } from '../../geometry/length.ts'
import { type ArcSegment, type Path, pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import type { Tile } from './tile.ts'

/** Where wood and waste lie in a window. */
export interface Ground {
  /** the outline in short stretches, in the pattern */
  readonly line: readonly Stretch[]
  /** the pattern to the window as the drawing is read */
  readonly toWindow: Affine
  /** whether a point of the window lies on the wood */
  readonly wood: (p: Point) => boolean
}

/** Some of a segment, which is looked at in `count` even steps: from one of them to another. */
interface Stretch {
  readonly segment: Segment
  readonly count: number
  readonly first: number
  readonly last: number
  /** no two steps that follow one another lie farther apart, mm */
  readonly step: number
  /** around it in the window */
  readonly box: Box
}

/** Points of the line lie no farther apart, mm. */
const spacing = 0.5

/** So many steps of the line are passed by together. */
const together = 160

export const groundOf = (tile: Tile, outline: Path, wood: Ground['wood']): Ground => {
  const line: Stretch[] = []
  for (const path of pathClip(outline, tile.window))
    for (const segment of pathSegments(path)) {
      const length = segmentLength(segment)
      const count = Math.max(1, Math.ceil(length / spacing))
      for (let first = 0; first < count; first += together) {
        const last = Math.min(count, first + together)
        const ends = [segmentAt(segment, first / count), segmentAt(segment, last / count)]
        // what an arc strays from its chord; a cubic no more than half of its length, but its steps are not even
        const stray =
          segment.kind === 'line'
            ? 0
            : segment.kind === 'arc'
              ? sagitta(segment, (last - first) / count)
              : length / 2
        const box = boxGrow(pointsBounds(ends.map((p) => affineApply(tile.toWindow, p))), stray)
        // those of a cubic are not even
        const step = segment.kind === 'cubic' ? length : length / count
        line.push({ segment, count, first, last, step, box })
      }
    }
  return { line, toWindow: tile.toWindow, wood }
}

const sagitta = ({ radius, sweep }: ArcSegment, share: number): number => {
  const turn = Math.abs(sweep) * share
  return turn < Math.PI ? radius * (1 - Math.cos(turn / 2)) + 1e-6 : 2 * radius
}

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
  /** how far a point lies from the box of the word and so much around it, along it or square to it; not above 0 within */
  const away = (p: Point): number => {
    const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / width
    const up = ((p.x - a.x) * (d.x - a.x) + (p.y - a.y) * (d.y - a.y)) / height
    return Math.max(-clear - along, along - (width + clear), -clear - up, up - (height + clear))
  }
  const touches = ({ segment, count, first, last, step }: Stretch): boolean => {
    for (let k = first; k <= last; ) {
      const off = away(affineApply(ground.toWindow, segmentAt(segment, k / count)))
      if (off < 0) return true
      // no step in between comes so far
      k += Math.max(1, Math.floor((off - 1e-6) / step))
    }
    return false
  }
  // however it is turned
  const around = boxGrow(pointsBounds(corners), 2 * clear)
  const touched = ground.line.some((stretch) => boxOverlaps(stretch.box, around) && touches(stretch))
  return !touched && ground.wood(pointBetween(a, c, 0.5)) === (side === 'wood')
}
