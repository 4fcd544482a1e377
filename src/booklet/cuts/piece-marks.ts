import { balloon, balloonRadius } from '../../drafting/balloon.ts'
import { draftStyle } from '../../drafting/line-types.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxOverlaps, pathBounds } from '../../geometry/bounds.ts'
import { polygonContains, polygonInside } from '../../geometry/contains.ts'
import { pathDistance, segmentDistance } from '../../geometry/nearest.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from '../../geometry/point.ts'
import { outerPolygon } from '../../geometry/polygon/outer-polygon.ts'
import type { PanelPiece } from '../../stock/panel/panels.ts'
import type { SheetPart } from '../../stock/sheet-part.ts'
import { markWords } from './piece-words.ts'

const { lines } = draftStyle
/** Heights of a mark where there is room, and where there is little. */
const sizes = [5, 3.5, 2.5] as const
const small = 2.2
/** From a corner to the middle of its name, the nearest first. */
const ends = [4, 5, 6.5, 8, 10, 13, 16] as const

/** The word corner stands no farther off, or goes. */
const nearCorner = 6.5

/** A piece's outline on paper with its mark, which face is up, toe and lip; apart from these the `number` of the cut that frees it. */
export const pieceMarks = (
  piece: PanelPiece,
  outline: Path,
  number: number | null,
): { readonly marks: Drawing; readonly numbers: Drawing } => {
  const mark = markWords(piece)
  const { at, free } = middleOf(outline)
  const words = faceWords(piece, free)
  const size = sizes.find((one) => one * 1.2 <= free) ?? sizes[2]
  const [half, up] = [textWidth(mark, size, 'bold') / 2, words.length > 0 ? at.y + size / 2 : at.y]
  const places: readonly Point[] = [
    { x: at.x + half + 4, y: up },
    { x: at.x - half - 4, y: up },
    { x: at.x, y: up + size / 2 + 4 },
    { x: at.x, y: up - size / 2 - 4 - words.length * 1.5 * small },
  ]
  const room = (p: Point): number =>
    polygonContains(outerPolygon(outline, 0.2), p) ? pathDistance(outline, p) : 0
  const radius = balloonRadius('0', 2) + 0.6
  const beside =
    places.find((p) => room(p) > radius) ?? places.reduce((most, p) => (room(p) > room(most) ? p : most))
  return {
    numbers: number === null ? [] : balloon(beside, String(number), { ...draftStyle, size: 2 }),
    marks: [
      stroke('mark', outline, lines.outline),
      text('note', words.length > 0 ? at : { x: at.x, y: at.y - size / 2 }, size, mark, {
        face: 'bold',
        align: 'middle',
      }),
      // in one, so that none of them goes without the others
      ...(words.length > 0
        ? [
            group(
              affineIdentity,
              words.map((line, i) =>
                text('note', { x: at.x, y: at.y - 1.2 * small - 1.5 - i * 1.4 * small }, small, line, {
                  align: 'middle',
                }),
              ),
            ),
          ]
        : []),
      ...(piece.second ? endMarks(piece.part, outline, at, wordsBox(at, size, words)) : []),
    ],
  }
}

/** In as few lines as the room beside the mark takes. */
const faceWords = ({ part, over, under }: PanelPiece, free: number): readonly string[] => {
  const way = over ? 'DOWN' : 'UP'
  const ways = [[`OUTSIDE FACE ${way}`], ['OUTSIDE FACE', way], ['OUTSIDE', 'FACE', way]]
  const wide = (words: readonly string[]): number =>
    Math.max(...words.map((line) => textWidth(line, small, 'regular')))
  const own = ways.find((words) => wide(words) <= 1.7 * free) ?? ways[2]!
  return [...(part.faced ? own : []), ...(under?.faced ? [`(${under.mark}: DOWN)`] : [])]
}

/** What a mark and the words under it take. */
const wordsBox = (at: Point, size: number, words: readonly string[]): Box => {
  const wide = Math.max(size, ...words.map((line) => textWidth(line, small, 'regular'))) / 2
  return { x0: at.x - wide, x1: at.x + wide, y0: at.y - 1.5 - words.length * 1.5 * small, y1: at.y + size }
}

/** The toe corner, or that at the joint of a piece, and LIP beside their corners, inside, clear of other words. */
const endMarks = (part: SheetPart, outline: Path, middle: Point, taken: Box): Drawing => {
  const segments = pathSegments(outline)
  const arcs = segments.filter((one) => one.kind === 'arc')
  // the ridden curve is the one of the largest radius, and runs from the lip down
  const curve = arcs.reduce<(typeof arcs)[number] | null>(
    (most, one) => (most === null || one.radius > most.radius ? one : most),
    null,
  )
  const polygon = outerPolygon(outline, 0.2)
  /** beside the corner, whole inside, as far as can be from what stands in the middle */
  const named = (words: string, on: Point, farthest: number): Drawing => {
    const [w, h] = [textWidth(words, small, 'bold') / 2 + 0.5, small / 2 + 0.5]
    const inside = ({ x, y }: Point): boolean =>
      [-w, 0, w].every((dx) => [-h, h].every((dy) => polygonContains(polygon, { x: x + dx, y: y + dy })))
    const places = ends
      .filter((off) => off <= farthest)
      .flatMap((off) => Array.from({ length: 24 }, (_, i) => pointToward(on, (i * Math.PI) / 12, off)))
      .filter((p) => inside(p) && !boxOverlaps(taken, { x0: p.x - w, x1: p.x + w, y0: p.y - h, y1: p.y + h }))
    const at = places.reduce<Point | null>(
      (most, p) =>
        most === null || pointDistance(p, middle) > pointDistance(most, middle) + pointDistance(p, on)
          ? p
          : most,
      null,
    )
    if (at === null && farthest < ends.at(-1)!) return []
    const { x, y } = at ?? pointToward(on, pointAngle(on, middle), ends[0]!)
    return [text('note', { x, y: y - small / 2 }, small, words, { face: 'bold', align: 'middle' })]
  }
  return [
    // the ring tells it too, so that the word goes where it has no room
    group(affineIdentity, named('corner', outline.start, nearCorner)),
    ...(curve && part.piece?.lip !== false ? named('LIP', curve.from, ends.at(-1)!) : []),
  ]
}

/** The point of a grid that lies farthest from the outline, inside; and how far. */
const middleOf = (outline: Path): { readonly at: Point; readonly free: number } => {
  const { x0, y0, x1, y1 } = pathBounds(outline)
  const within = polygonInside(outerPolygon(outline, 0.2))
  const segments = pathSegments(outline)
  // near which the place before lay too near: the next, beside it, most likely too
  let tight = 0
  /** how far off the outline, or no farther than the best place known, which is seen at the first piece that near */
  const freeAt = (p: Point, least: number): number => {
    let free = segmentDistance(segments[tight]!, p)
    for (let i = 0; i < segments.length && free > least; i++) {
      const own = segmentDistance(segments[i]!, p)
      if (own >= free) continue
      free = own
      tight = i
    }
    return free
  }
  const [columns, rows] = [24, 12]
  let best = { at: { x: (x0 + x1) / 2, y: (y0 + y1) / 2 }, free: 0 }
  for (let i = 1; i < columns; i++)
    for (let k = 1; k < rows; k++) {
      const at = { x: x0 + ((x1 - x0) * i) / columns, y: y0 + ((y1 - y0) * k) / rows }
      const free = freeAt(at, best.free + 1e-6)
      if (free > best.free + 1e-6 && within(at)) best = { at, free }
    }
  return best
}
