import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { affineTranslate } from '../geometry/affine.ts'
import { circle, pathOf, rectangle } from '../geometry/path.ts'
import { letters, pens } from '../pattern/pens.ts'
import type { StripMark, StripRow } from '../pattern/story-strip.ts'
import type { Block } from './block.ts'
import { type StripPiece, stripDepth, stripHeight, stripOver } from './strip-pieces.ts'
import { rowWords } from './strip-words.ts'

/** From a strip's edge inward: ticks, and rings on their short ticks, mm. */
const depth = { tick: 6.6, ring: 3.5 } as const
const ringRadius = 0.9
const leading = 3.2
const size = 2.1
/** Words are not set smaller than this to fit a short piece. */
const leastSize = 1.8

/** A piece of a story strip, cut out along its frame. */
export const stripBlock = (piece: StripPiece, set: string): Block => {
  const { from, to, strip } = piece
  const height = stripHeight(strip)
  const width = to - from + 2 * stripOver
  const at = (x: number): number => x - from + stripOver
  const joints = [...(piece.number === 1 ? [] : [from]), ...(piece.number === piece.count ? [] : [to])]
  const across = (x: number) => pathOf({ x: at(x), y: 0 }, { x: at(x), y: height })
  return {
    width,
    height,
    drawing: [
      stroke('mark', rectangle(0, 0, width, height), pens.tick),
      ...(piece.number === 1 ? [stroke('joint', across(0), pens.mark)] : []),
      ...joints.map((x) => stroke('joint', across(x), pens.joint)),
      ...pieceWords(piece, set, height),
      ...strip.rows.flatMap((row, i) => (row ? rowDrawing(row, piece, i === 0 ? height : 0) : [])),
    ],
    places: [
      {
        pattern: strip.name,
        map: affineTranslate(stripOver - from, 0),
        window: { x0: 0, y0: 0, x1: width, y1: height },
      },
    ],
  }
}

/** Two lines along the middle: what the piece is, and what its edges carry. */
const pieceWords = ({ strip, number, count, from, to }: StripPiece, set: string, height: number): Drawing => {
  const room = to - from - 4
  const low = height - stripDepth.row - size - (strip.rows[1] ? 0.3 : 0.1)
  const left = stripOver + 2
  const title = `${strip.title}${count > 1 ? `, piece ${number} of ${count}` : ''}`
  const [upper, lower] = strip.rows
  const zero = number === 1 ? `zero: ${strip.zero}; ` : ''
  const edges = `${zero}${lower ? `upper edge: ${upper.words}; lower edge: ${lower.words}` : upper.words}`
  const legend = strip.rings ?? ''
  const ring = 2 * ringRadius + 1
  const wide = (words: string): number => textWidth(words, 1, 'regular')
  const fitted = Math.min(size, (room - ring) / wide(`${edges}${legend}  `))
  const titled = Math.min(size, room / textWidth(title, 1, 'bold'))
  const free = room - textWidth(title, titled, 'bold')
  const line = low - leading
  const after = left + wide(`${edges}  `) * fitted
  const shown = fitted >= leastSize || number === 1
  return [
    text('note', { x: left, y: low }, titled, title, { face: 'bold' }),
    ...(free > wide(`  set ${set}`) * size
      ? [text('note', { x: left + room, y: low }, size, `set ${set}`, { align: 'right' })]
      : []),
    ...(shown ? [text('note', { x: left, y: line }, fitted, edges)] : []),
    ...(shown && legend !== ''
      ? [
          stroke('note', circle({ x: after + ringRadius, y: line + fitted / 2 }, ringRadius), pens.tick),
          text('note', { x: after + ring, y: line }, fitted, legend),
        ]
      : []),
  ]
}

/** Marks from one edge inward, those that the piece carries beyond its joints too. */
const rowDrawing = ({ marks }: StripRow, piece: StripPiece, edge: number): Drawing => {
  const { from, to } = piece
  const inward = edge === 0 ? 1 : -1
  const reach = stripOver - ringRadius - 0.3
  const here = marks.filter(({ at }) => at > from - reach && at < to + reach)
  return [
    ...here.flatMap((mark) => signOf(mark, mark.at - from + stripOver, edge, inward)),
    ...rowWords(here, piece).map(({ x, deep, words }) =>
      text(
        'mark',
        { x: x - from + stripOver, y: edge + inward * deep - (inward < 0 ? letters.mark : 0) },
        letters.mark,
        words,
      ),
    ),
  ]
}

const signOf = ({ sign }: StripMark, x: number, edge: number, inward: number): Drawing => {
  const line = (to: number): Drawing => [
    stroke('mark', pathOf({ x, y: edge }, { x, y: edge + inward * to }), pens.mark),
  ]
  return sign === 'tick'
    ? line(depth.tick)
    : [
        ...line(depth.ring - ringRadius),
        stroke('mark', circle({ x, y: edge + inward * depth.ring }, ringRadius), pens.tick),
      ]
}
