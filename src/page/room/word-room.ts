import type { Drawing } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity } from '../../geometry/affine.ts'
import type { Path } from '../../geometry/path.ts'
import { pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
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
  taken(maps, textCorners(word, affineIdentity), Number.POSITIVE_INFINITY)

/** Whether it lies on none of that: quicker asked than how much. */
export const wordClear = (maps: readonly Occupancy[], word: TextMark): boolean =>
  boxClear(maps, textCorners(word, affineIdentity))

/** The same of any rectangle, its corners in their order. */
export const boxClear = (maps: readonly Occupancy[], corners: readonly Point[]): boolean =>
  taken(maps, corners, 1) === 0

/** Squares taken under a rectangle's points, counted until there are `enough`; asked so often that no point is made. */
const taken = (maps: readonly Occupancy[], corners: readonly Point[], enough: number): number => {
  const { start, along, up, u, v } = pointsOver(corners)
  let count = 0
  for (let i = 0; i <= along; i++)
    for (let k = 0; k <= up; k++) {
      const [x, y] = [start.x + i * u.x + k * v.x, start.y + i * u.y + k * v.y]
      for (const { columns, rows, step, taken: squares } of maps) {
        const c = Math.floor(x / step)
        const r = Math.floor(y / step)
        if (c >= 0 && r >= 0 && c < columns && r < rows) count += squares[r * columns + c]!
      }
      if (count >= enough) return count
    }
  return count
}

/** Steps over a rectangle, no longer than a square is wide. */
const pointsOver = (corners: readonly Point[]) => {
  const [a, b, , d] = corners as readonly [Point, Point, Point, Point]
  const along = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / fine)
  const up = Math.ceil(Math.hypot(d.x - a.x, d.y - a.y) / fine)
  return {
    start: a,
    along,
    up,
    u: { x: (b.x - a.x) / along, y: (b.y - a.y) / along },
    v: { x: (d.x - a.x) / up, y: (d.y - a.y) / up },
  }
}

/** The same as a list. */
const boxPoints = (corners: readonly Point[]): readonly Point[] => {
  const { start, along, up, u, v } = pointsOver(corners)
  const points: Point[] = []
  for (let i = 0; i <= along; i++)
    for (let k = 0; k <= up; k++)
      points.push({ x: start.x + i * u.x + k * v.x, y: start.y + i * u.y + k * v.y })
  return points
}
