import { leader, leaderDot } from '../../drafting/leader.ts'
import { type DraftStyle, lineTypes } from '../../drafting/line-types.ts'
import { type Drawing, fill, text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineApply } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import { type Path, polygonOf } from '../../geometry/path.ts'
import { type Point, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { PatternLabel } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { clearUnder, type Occupancy } from '../room/occupancy.ts'
import { on } from '../room/word-room.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'

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
const distances = [7, 10, 13, 17, 22, 28, 36, 46]

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
  const ends = dotsOf(label, shown, tile, room)
  for (const kinds of [on.never | on.cut | on.rather, on.never | on.cut]) {
    const found = besideMarks(label, ends, kinds, turn, tile, room, wood)
    if (found.length > 0) return found
  }
  return []
}

/**
 * Beside it on none of the kinds, at the first place among the best: on the side that is kept and off other timbers, its line off
 * what is measured or read.
 */
const besideMarks = (
  { words }: PatternLabel,
  ends: readonly Point[],
  kinds: number,
  turn: number,
  tile: Tile,
  room: Occupancy,
  wood: (p: Point) => boolean,
): Drawing => {
  const half = textWidth(words, besideSize, 'bold') / 2
  const cell = tileCell(tile)
  let best: { readonly end: Point; readonly near: Point; readonly middle: Point } | undefined
  let least = 5
  for (const end of ends)
    for (const distance of distances)
      for (let k = 0; k < 16 && least > 0; k++) {
        const direction = turn + (k * Math.PI) / 8
        const middle = pointToward(end, direction, distance + half * Math.abs(Math.cos(direction - turn)))
        const corners = boxAround(half, besideSize, middle, turn)
        if (!inCell(cell, corners) || !clearUnder(room, corners, kinds)) continue
        const near = corners
          .map((p, i) => pointBetween(p, corners[(i + 1) % 4]!, 0.5))
          .reduce((a, b) => (pointDistance(b, end) < pointDistance(a, end) ? b : a))
        if (!clearUnder(room, [end, near], on.cut)) continue
        const kept = corners.every(wood) ? 0 : 2
        const faults =
          (clearUnder(room, [end, near], on.never) ? 0 : 3) +
          (kept || (clearUnder(room, corners, on.timber) ? 0 : 1))
        if (faults >= least) continue
        least = faults
        best = { end, near, middle }
      }
  return best
    ? [...leader(best.end, [best.near], leaderStyle), ...boxed(words, besideSize, best.middle, turn)]
    : []
}

/** No more of the places for a dot than this are tried. */
const mostDots = 6

/**
 * Where a line to a label may begin: off what is read and the cut line, off other strokes where it can; on what is seen of a
 * timber that shows no more than its edge.
 */
const dotsOf = (
  { dots }: PatternLabel,
  shown: readonly Path[],
  tile: Tile,
  room: Occupancy,
): readonly Point[] => {
  const radius = leaderDot(leaderStyle.size)
  const { x0, y0, x1, y1 } = boxGrow(tileCell(tile), -radius)
  const isFree = ({ x, y }: Point, kinds: number): boolean =>
    clearUnder(room, boxCorners(boxGrow({ x0: x, y0: y, x1: x, y1: y }, radius + dotAir)), kinds)
  const own = dots
    .map((p) => tilePoint(tile, p))
    .filter(({ x, y }) => x >= x0 && x <= x1 && y >= y0 && y <= y1)
  for (const kinds of [on.never | on.cut | on.rather, on.never | on.cut]) {
    const free = own.filter((p) => isFree(p, kinds)).slice(0, mostDots)
    if (free.length > 0) return free
  }
  return shown
    .flatMap((path) => pathSample(path, 3))
    .map((p) => tilePoint(tile, p))
    .map(({ x, y }) => ({ x: Math.min(Math.max(x, x0), x1), y: Math.min(Math.max(y, y0), y1) }))
    .filter((p) => isFree(p, on.never | on.cut))
    .slice(0, mostDots)
}

/** Round a dot, mm. */
const dotAir = 0.8

const inCell = (cell: Box, corners: readonly Point[]): boolean =>
  corners.every(
    ({ x, y }) => x >= cell.x0 + 0.5 && x <= cell.x1 - 0.5 && y >= cell.y0 + 0.5 && y <= cell.y1 - 0.5,
  )

const boxAt = (words: string, size: number, middle: Point, turn: number, less = 0): readonly Point[] =>
  boxAround(textWidth(words, size, 'bold') / 2, size, middle, turn, less)

/** Round words of half a width. */
const boxAround = (half: number, size: number, middle: Point, turn: number, less = 0): readonly Point[] => {
  const [wide, high] = [half + frameRoom - less, size / 2 + frameRoom - less]
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const corner = (i: number, k: number): Point => ({
    x: middle.x + i * wide * cos - k * high * sin,
    y: middle.y + i * wide * sin + k * high * cos,
  })
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
