import type { Drawing } from '../drawing/drawing.ts'
import { type TextMark, textCorners } from '../drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity } from '../geometry/affine.ts'
import type { Path } from '../geometry/path.ts'
import { pathSegments } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import { type Occupancy, occupancyOf, occupyPoints } from './occupancy.ts'

/** Squares small enough to tell a letter from a line beside it, mm. */
const fine = 0.8

/** What words keep off on a page, in the window as the drawing is read. Filled while the page is laid out. */
export const wordRoom = (width: number, height: number): Occupancy => occupancyOf(width, height, fine)

export const keepOffPath = (map: Occupancy, path: Path, frame: Affine): void => {
  if (pathSegments(path).length > 0)
    occupyPoints(
      map,
      pathSample(path, fine).map((p) => affineApply(frame, p)),
      0.2,
    )
}

/** Strokes and words of a drawing without groups. */
export const keepOff = (map: Occupancy, drawing: Drawing, frame: Affine = affineIdentity): void => {
  for (const mark of drawing)
    if (mark.kind === 'text') occupyPoints(map, boxPoints(textCorners(mark, frame)), 0.2)
    else if (mark.kind === 'stroke') keepOffPath(map, mark.path, frame)
}

/** How much of a word's box lies on what words keep off; 0 where it is clear. */
export const wordCovers = (maps: readonly Occupancy[], word: TextMark): number =>
  boxCovers(maps, textCorners(word, affineIdentity))

/** The same of any rectangle, its corners in their order. */
export const boxCovers = (maps: readonly Occupancy[], corners: readonly Point[]): number => {
  let count = 0
  for (const { x, y } of boxPoints(corners))
    for (const { columns, rows, step, taken } of maps) {
      const [c, r] = [Math.floor(x / step), Math.floor(y / step)]
      if (c >= 0 && r >= 0 && c < columns && r < rows) count += taken[r * columns + c]!
    }
  return count
}

/** Points over a rectangle, no farther apart than a square is wide. */
const boxPoints = ([a, b, , d]: readonly Point[]): readonly Point[] => {
  const along = Math.ceil(Math.hypot(b!.x - a!.x, b!.y - a!.y) / fine)
  const up = Math.ceil(Math.hypot(d!.x - a!.x, d!.y - a!.y) / fine)
  const points: Point[] = []
  for (let i = 0; i <= along; i++)
    for (let k = 0; k <= up; k++)
      points.push({
        x: a!.x + (i / along) * (b!.x - a!.x) + (k / up) * (d!.x - a!.x),
        y: a!.y + (i / along) * (b!.y - a!.y) + (k / up) * (d!.y - a!.y),
      })
  return points
}
