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
  eachPoint(corners, (x, y) => {
    for (const { columns, rows, step, taken } of maps) {
      const c = Math.floor(x / step)
      const r = Math.floor(y / step)
      if (c >= 0 && r >= 0 && c < columns && r < rows) count += taken[r * columns + c]!
    }
  })
  return count
}

/** Points over a rectangle, no farther apart than a square is wide: asked so often that none is made. */
const eachPoint = ([a, b, , d]: readonly Point[], visit: (x: number, y: number) => void): void => {
  const along = Math.ceil(Math.hypot(b!.x - a!.x, b!.y - a!.y) / fine)
  const up = Math.ceil(Math.hypot(d!.x - a!.x, d!.y - a!.y) / fine)
  const [ux, uy] = [(b!.x - a!.x) / along, (b!.y - a!.y) / along]
  const [vx, vy] = [(d!.x - a!.x) / up, (d!.y - a!.y) / up]
  for (let i = 0; i <= along; i++)
    for (let k = 0; k <= up; k++) visit(a!.x + i * ux + k * vx, a!.y + i * uy + k * vy)
}

/** The same as a list. */
const boxPoints = (corners: readonly Point[]): readonly Point[] => {
  const points: Point[] = []
  eachPoint(corners, (x, y) => points.push({ x, y }))
  return points
}
