import { readableAngle } from '../../drafting/dimension/figure.ts'
import { text } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../../geometry/affine.ts'
import { segmentAt, segmentDirection } from '../../geometry/at.ts'
import { type Box, boxGrow } from '../../geometry/bounds.ts'
import { pathClip } from '../../geometry/clip.ts'
import { segmentLength } from '../../geometry/length.ts'
import { pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from '../../geometry/point.ts'
import { segmentPart } from '../../geometry/split.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters } from '../../pattern/pens.ts'
import { clearUnder, type Occupancy, takenUnder } from '../room/occupancy.ts'
import { keepOff, on, wordClear } from '../room/word-room.ts'
import { type Ground, groundOf, standsOn } from './ground.ts'
import { isInCell, type Tile } from './tile.ts'
import { bandReach } from './waste-band.ts'

/**
 * KEEP and WASTE on the two sides of the cut line, set along it, for a tile that carries it; empty for a tile that does not.
 * Neither ever crosses the line or stands on the other side: where a side has no room for its word, the word is left out.
 * What is already drawn is known in the window as the drawing is read.
 */
export const keepWaste = (
  tile: Tile,
  pattern: Pattern,
  wood: Ground['wood'],
  room: Occupancy,
): readonly TextMark[] => {
  // the curve before the straight edges, the nearest to the middle of a piece before its ends
  const pieces = [true, false].map((traced) => cutPieces(tile, pattern, traced))
  if (pieces.flat().length === 0) return []
  const ground = groundOf(tile, pattern.outline, wood)
  const sizes = [letters.side, 4, 3, letters.small]
  const cell = keptOf(tile)
  const kinks = kinksOf(pattern)
    .map((p) => affineApply(tile.toWindow, p))
    .filter((p) => isInCell(tile, [p], -wordReach))
  const pairOn = (piece: Segment, size: number, around: readonly Point[]): Pair | null => {
    // between the edges of a timber KEEP would be read with its name
    for (const off of [on.timber, 0])
      for (const t of shares) {
        const { from, direction } = place(tile, piece, t)
        const keep = beside('KEEP', from, direction, 1, size)
        if (!isFaultless(keep, cell, room, off)) continue
        const waste = beside('WASTE', from, direction, -1, size)
        if (
          isFaultless(waste, cell, room) &&
          !around.some((kink) => isOver(keep, kink) || isOver(waste, kink)) &&
          standsOn(ground, keep, 'wood') &&
          standsOn(ground, waste, 'waste')
        )
          return { piece, from, direction, words: [keep, waste] }
      }
    return null
  }
  const firstOf = (): Pair | null => {
    // over a kink rather than not at all
    for (const around of kinks.length > 0 ? [kinks, []] : [[]])
      for (const group of pieces)
        for (const size of sizes)
          for (const piece of group.slice(0, 6)) {
            const found = pairOn(piece, size, around)
            if (found) return found
          }
    return null
  }
  const first = firstOf()
  if (!first) {
    const cut = pathClip(pattern.cut, tile.window).flatMap(pathSegments)
    return (['KEEP', 'WASTE'] as const).flatMap((word) => alone(word, cut, tile, ground, room))
  }
  const pairs = [first]
  keepOff(room, first.words, on.never)
  for (const whole of pieces.flat())
    for (const piece of partsOf(whole)) {
      const { from, direction } = place(tile, piece, 0.5)
      // round a corner it is another line, beyond a step too
      const isSaid = pairs.some(
        (pair) =>
          pointDistance(pair.from, from) < (pair.piece === whole ? every / 2 : leastPart) &&
          Math.cos(pair.direction - direction) > corner,
      )
      if (segmentLength(piece) < leastPart || isSaid) continue
      for (const size of sizes) {
        const found = pairOn(piece, size, kinks)
        if (!found) continue
        pairs.push({ ...found, piece: whole })
        keepOff(room, found.words, on.never)
        break
      }
    }
  return pairs.flatMap(({ words }) => words)
}

/** A line that turns by more has a kink there, 20°. */
const kink = 0.94

/** Where the cut line turns: a word over such a place would be read of both sides of it. */
const kinksOf = ({ cut }: Pattern): readonly Point[] => {
  const segments = pathSegments(cut)
  return segments.slice(1).flatMap((segment, i) => {
    const turn = segmentDirection(segment, 0) - segmentDirection(segments[i]!, 1)
    return Math.cos(turn) < kink ? [segment.from] : []
  })
}

/** How far square to a word a kink matters to it, mm. */
const kinkReach = 14
/** No word reaches farther from its middle, mm. */
const wordReach = 30

const isOver = (word: TextMark, p: Point): boolean => {
  const [a, b, c] = textCorners(word, affineIdentity) as [Point, Point, Point, Point]
  const [cos, sin] = [Math.cos(word.angle), Math.sin(word.angle)]
  const [x, y] = [p.x - (a.x + c.x) / 2, p.y - (a.y + c.y) / 2]
  return (
    Math.abs(x * cos + y * sin) < pointDistance(a, b) / 2 - 0.5 && Math.abs(y * cos - x * sin) < kinkReach
  )
}

interface Pair {
  readonly piece: Segment
  /** where on the line, in the window */
  readonly from: Point
  readonly direction: number
  readonly words: readonly TextMark[]
}

/** Words stand again after so much of the line; a shorter piece needs none of its own, mm. */
const every = 250
const leastPart = 60

/** Two pieces of the line that turn by more, 60°, are told apart. */
const corner = 0.5

const partsOf = (piece: Segment): readonly Segment[] => {
  const count = Math.max(1, Math.ceil(segmentLength(piece) / (every - leastPart)))
  return Array.from({ length: count }, (_, i) => segmentPart(piece, i / count, (i + 1) / count))
}

/** Where along a piece a word is tried. */
const shares = [0.5, 0.42, 0.58, 0.35, 0.65, 0.28, 0.72, 0.2, 0.8, 0.14, 0.86, 0.08, 0.92]

/** A place on a piece of the line, in the window as the drawing is read. */
const place = (
  tile: Tile,
  piece: Segment,
  t: number,
): { readonly from: Point; readonly direction: number } => {
  const at = segmentAt(piece, t)
  const from = affineApply(tile.toWindow, at)
  const ahead = affineApply(tile.toWindow, pointToward(at, segmentDirection(piece, t), 1))
  return { from, direction: pointAngle(from, ahead) }
}

/** Middles tried for a word on its own, from the line, mm. */
const distances = [2.4, 3.4, 5, 6.2, 7.5, 10, 14]

/** One word, small, near the line or along the rows, wherever it stands right and covers least; none where it cannot stand. */
const alone = (
  words: 'KEEP' | 'WASTE',
  cut: readonly Segment[],
  tile: Tile,
  ground: Ground,
  room: Occupancy,
): readonly TextMark[] => {
  const side = words === 'KEEP' ? 1 : -1
  const cell = keptOf(tile)
  let best: { readonly word: TextMark; readonly faults: number } | undefined
  for (const piece of cut) {
    const count = Math.ceil(segmentLength(piece) / 3)
    const places = Array.from({ length: count + 1 }, (_, i) => place(tile, piece, i / count))
    for (const distance of distances) {
      // none so far off is better
      if (best && distance / 100 >= best.faults) break
      for (const { from, direction } of places) {
        const middle = pointToward(from, direction + (side * Math.PI) / 2, distance)
        for (const angle of [readableAngle(direction), 0, Math.PI / 2]) {
          const at = pointToward(middle, angle - Math.PI / 2, letters.small / 2)
          const word = sideWord(words, at, angle, letters.small)
          if (!insideWindow(word, tile) || !wordClear(room, word, on.never)) continue
          const faults = wordFaults(word, cell, room) + distance / 100
          if (best && faults >= best.faults) continue
          if (standsOn(ground, word, side === 1 ? 'wood' : 'waste')) best = { word, faults }
        }
      }
    }
  }
  return best ? [best.word] : []
}

const sideWord = (words: string, at: Point, angle: number, size: number): TextMark =>
  text('note', at, size, words, { angle, face: 'bold', align: 'middle' })

/** What a tile carries of the traced edges, or of the others, longest first. */
const cutPieces = (tile: Tile, { edges }: Pattern, traced: boolean): readonly Segment[] =>
  edges
    .filter((edge) => edge.traced === traced)
    .flatMap(({ path }) => pathClip(path, tile.cell).flatMap(pathSegments))
    .sort((a, b) => segmentLength(b) - segmentLength(a))

/** A word along the line, on its left (side 1) or its right (side −1), never upside down. */
const beside = (word: string, from: Point, direction: number, side: 1 | -1, size: number): TextMark => {
  const clear = side === 1 ? 2.5 : bandReach + 1.1
  // the baseline is the word's lower edge: the near one on the line's upper side, the far one below it
  const angle = readableAngle(direction)
  const above = Math.cos(angle - direction) > 0 === (side === 1)
  const at = pointToward(from, direction + (side * Math.PI) / 2, above ? clear : clear + size)
  return sideWord(word, at, angle, size)
}

/** 0 when the word lies in the page's own cell and on nothing else. */
const wordFaults = (word: TextMark, cell: Box, room: Occupancy): number => {
  const corners = textCorners(word, affineIdentity)
  return cornersOut(corners, cell) * 100 + takenUnder(room, corners, on.never | on.rather)
}

const isFaultless = (word: TextMark, cell: Box, room: Occupancy, more = 0): boolean => {
  const corners = textCorners(word, affineIdentity)
  return cornersOut(corners, cell) === 0 && clearUnder(room, corners, on.never | on.rather | more)
}

/** What the page keeps, less what a word keeps from its edges. */
const keptOf = (tile: Tile): Box => boxGrow(tile.kept, -1)

/** How many corners of a word lie out of what the page keeps. */
const cornersOut = (corners: readonly Point[], cell: Box): number =>
  corners.filter((p) => p.x < cell.x0 || p.y < cell.y0 || p.x > cell.x1 || p.y > cell.y1).length

const insideWindow = (word: TextMark, { width, height }: Tile): boolean =>
  textCorners(word, affineIdentity).every(
    (p) => p.x >= 0.5 && p.y >= 0.5 && p.x <= width - 0.5 && p.y <= height - 0.5,
  )
