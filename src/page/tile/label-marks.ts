import { leader, leaderDot } from '../../drafting/leader.ts'
import { type DraftStyle, lineTypes } from '../../drafting/line-types.ts'
import { type Drawing, fill, text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineApply } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { pathClip } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import { type Path, polygonOf } from '../../geometry/path.ts'
import { type Point, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { PatternLabel } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { clearUnder, type Occupancy } from '../room/occupancy.ts'
import { on } from '../room/word-room.ts'
import { type Tile, tileCell } from './tile.ts'

/** The words of a label alone, at one of its places. */
export const labelWords = ({ words, size }: PatternLabel, middle: Point) =>
  text('mark', { x: middle.x, y: middle.y - size / 2 }, size, words, { face: 'bold', align: 'middle' })

/** A stub with less of its outline on a page is named by the page that has the rest, mm. */
const leastShown = 25

/** Round the words, mm. */
const frameRoom = 1.5

/** Sizes tried on the wood, and for a label beside it that a line leads to; and how far off that one is tried, mm. */
const sizes = [1, 0.8, 0.65]
const besideSize = letters.small
const leaderStyle: DraftStyle = {
  layer: 'mark',
  size: 1.6 * letters.small,
  lines: lineTypes(pens.tick.width),
}
const distances = [7, 10, 13, 17, 22, 28]

/**
 * The name of one timber, in the window as the drawing is read: on its wood where it stands whole in what the page keeps and off
 * what words never lie on and the cut line, smaller where it must; else beside it on a leader with a dot, off other strokes too, on the
 * `wood` if it can; else not on this page.
 */
export const labelMarks = (
  label: PatternLabel,
  outline: Path,
  tile: Tile,
  room: Occupancy,
  wood: (p: Point) => boolean,
): Drawing => {
  const turn = Math.atan2(tile.toWindow[1], tile.toWindow[0])
  const at = (p: Point): Point => affineApply(tile.toWindow, p)
  // most timbers lie on other pages
  if (!boxOverlaps(boxGrow(pathBounds(outline), 1), pointsBounds(tile.cell))) return []
  const shown = pathClip(outline, tile.cell)
  if (shown.reduce((sum, path) => sum + pathLength(path), 0) < leastShown) return []
  const cell = tileCell(tile)
  const places = label.places.map(at)
  for (const size of sizes.map((share) => Math.max(label.size * share, letters.small)))
    for (const middle of places) {
      const corners = boxAt(label.words, size, middle, turn)
      if (inCell(cell, corners) && clearUnder(room, corners, on.never | on.cut))
        return boxed(label.words, size, middle, turn)
    }
  // from the middle of what is seen
  const points = shown.flatMap((path) => pathSample(path, 3)).map(at)
  const middle = pointBetween(
    points.reduce((sum, p) => ({ x: sum.x + p.x / points.length, y: sum.y + p.y / points.length }), {
      x: 0,
      y: 0,
    }),
    points[Math.floor(points.length / 2)]!,
    0.5,
  )
  const end = withDot(tile, middle)
  const half = textWidth(label.words, besideSize, 'bold') / 2
  const tries = distances.flatMap((distance) =>
    Array.from({ length: 16 }, (_, k) => {
      const direction = turn + (k * Math.PI) / 8
      return pointToward(end, direction, distance + half * Math.abs(Math.cos(direction - turn)))
    }),
  )
  /** corners of those that lie clear, each looked at once */
  const known = new Map<Point, readonly Point[] | null>()
  const clearAt = (middle: Point): readonly Point[] | null => {
    let corners = known.get(middle)
    if (corners !== undefined) return corners
    corners = boxAt(label.words, besideSize, middle, turn)
    if (!inCell(cell, corners) || !clearUnder(room, corners, on.never | on.cut | on.rather)) corners = null
    known.set(middle, corners)
    return corners
  }
  // on the side that is kept, its leader off what is measured or read, if it can
  for (const [free, kept] of [
    [true, true],
    [true, false],
    [false, true],
    [false, false],
  ])
    for (const middle of tries) {
      const corners = clearAt(middle)
      if (corners === null || (kept && !corners.every(wood))) continue
      const near = corners
        .map((p, i) => pointBetween(p, corners[(i + 1) % 4]!, 0.5))
        .reduce((a, b) => (pointDistance(b, end) < pointDistance(a, end) ? b : a))
      if (free && !clearUnder(room, [end, near], on.never)) continue
      return [...leader(end, [near], leaderStyle), ...boxed(label.words, besideSize, middle, turn)]
    }
  return []
}

/** The nearest place whose dot lies whole in what the page keeps: a timber may show no more than its edge there. */
const withDot = (tile: Tile, { x, y }: Point): Point => {
  const { x0, y0, x1, y1 } = boxGrow(tileCell(tile), -leaderDot(leaderStyle.size))
  return { x: Math.min(Math.max(x, x0), x1), y: Math.min(Math.max(y, y0), y1) }
}

const inCell = (cell: Box, corners: readonly Point[]): boolean =>
  corners.every(
    ({ x, y }) => x >= cell.x0 + 0.5 && x <= cell.x1 - 0.5 && y >= cell.y0 + 0.5 && y <= cell.y1 - 0.5,
  )

const boxAt = (words: string, size: number, middle: Point, turn: number, less = 0): readonly Point[] => {
  const half = textWidth(words, size, 'bold') / 2 + frameRoom - less
  const high = size / 2 + frameRoom - less
  const corner = (i: number, k: number): Point =>
    pointToward(pointToward(middle, turn, i * half), turn + Math.PI / 2, k * high)
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
}

const boxed = (words: string, size: number, middle: Point, turn: number): Drawing => {
  const frame = (less: number): Path => {
    const [a, ...others] = boxAt(words, size, middle, turn, less)
    return polygonOf(a!, ...others)
  }
  return [
    fill('mark', frame(0), 0),
    fill('mark', frame(pens.mark.width), 1),
    text('mark', pointToward(middle, turn - Math.PI / 2, size / 2), size, words, {
      face: 'bold',
      align: 'middle',
      angle: turn,
    }) as TextMark,
  ]
}
