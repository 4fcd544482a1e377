import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import { circle, pathOf, rectangle } from '../../geometry/path.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { StripMark, StripRow } from '../../pattern/story-strip.ts'
import type { Block } from './block.ts'
import { linesMiddle, pieceLines } from './strip-lines.ts'
import { type StripPiece, stripDepth, stripHeight, stripOver } from './strip-pieces.ts'
import { edgeWords, type MarkWords, rowWords } from './strip-words.ts'

/** From a strip's edge inward to the middle of a ring on its short tick, mm. */
const ringDepth = 3.4
const ringRadius = 0.8

/** A mark nearer to where a piece is cut out is not drawn on it, mm. */
const offEnd = 1.2

/** Half of the slanting cross at a joint, mm across: it breaks at once when the pieces slip either way. */
const crossArm = 2

/** A piece of a story strip, cut out along its frame. */
export const stripBlock = (piece: StripPiece, set: string): Block => {
  const { from, to, strip } = piece
  const height = stripHeight(strip)
  const width = to - from + 2 * stripOver
  return {
    width,
    height,
    draw: () => pieceDrawing(piece, set, width, height),
    places: [
      {
        part: 'strip',
        pattern: strip.name,
        map: affineTranslate(stripOver - from, 0),
        window: { x0: 0, y0: 0, x1: width, y1: height },
      },
    ],
  }
}

const pieceDrawing = (piece: StripPiece, set: string, width: number, height: number): Drawing => {
  const { from, to, strip, number, count } = piece
  const at = (x: number): number => x - from + stripOver
  const joints = [...(number === 1 ? [] : [from]), ...(number === count ? [] : [to])]
  const across = (x: number) => pathOf({ x: at(x), y: 0 }, { x: at(x), y: height })
  const rows = strip.rows.flatMap((row, i) => (row ? [rowOf(row, piece, i === 0 ? height : 0)] : []))
  return [
    stroke('mark', rectangle(0, 0, width, height), pens.tick),
    ...(number === 1 ? [stroke('joint', across(0), pens.mark)] : []),
    ...joints.flatMap((x) => [
      stroke('joint', across(x), pens.joint),
      ...slantingCross(at(x), linesMiddle(piece)),
    ]),
    ...pieceLines(piece, set),
    ...rows.flatMap(({ drawing }) => drawing),
    ...endWords(
      piece,
      width,
      height,
      rows.flatMap((row) => row.taken),
    ),
  ]
}

const slantingCross = (x: number, y: number): Drawing =>
  [-1, 1].map((slant) =>
    stroke(
      'joint',
      pathOf({ x: x - crossArm, y: y - slant * crossArm }, { x: x + crossArm, y: y + slant * crossArm }),
      pens.cross,
    ),
  )

/** Beyond the joints, where the next piece covers them or the scissors take them off. */
const endWords = (
  { number, count, from, to }: StripPiece,
  width: number,
  height: number,
  taken: readonly { readonly x: number; readonly end: number }[],
): Drawing => {
  const upright = (x0: number, tries: readonly string[]): Drawing => {
    const words = tries.find((one) => textWidth(one, letters.mark, 'regular') <= height - 1.6)
    if (words === undefined || taken.some(({ x, end }) => end > x0 - 0.3 && x < x0 + stripOver + 0.3))
      return []
    // clear of the cross on the joint; read along with what else is upright where the piece lies turned
    const x = x0 < from ? 0.8 : width - 0.8 - letters.mark
    return [text('note', { x, y: height / 2 }, letters.mark, words, { angle: -Math.PI / 2, align: 'middle' })]
  }
  return [
    ...upright(from - stripOver, [number === 1 ? 'zero' : 'cut off']),
    ...(number === count
      ? []
      : upright(to, [
          `${number}–${number + 1} · under piece ${number + 1}`,
          `${number}–${number + 1} · under ${number + 1}`,
          `${number}–${number + 1} · under`,
          // a strip of one edge is lower
          `under ${number + 1}`,
        ])),
  ]
}

/** Marks from one edge inward, those that the piece carries beyond its joints too. */
const rowOf = (
  row: StripRow,
  piece: StripPiece,
  edge: number,
): {
  readonly drawing: Drawing
  readonly taken: readonly { readonly x: number; readonly end: number }[]
} => {
  const { from, to } = piece
  const inward = edge === 0 ? 1 : -1
  const reach = stripOver - offEnd
  const here = row.marks.filter(({ at }) => at > from - reach && at < to + reach)
  const words = rowWords(here, piece)
  const set = (of: readonly MarkWords[], face: 'regular' | 'bold'): Drawing =>
    of.map(({ x, deep, words: said }) =>
      text(
        'mark',
        { x: x - from + stripOver, y: edge + inward * deep - (inward < 0 ? letters.mark : 0) },
        letters.mark,
        said,
        { face },
      ),
    )
  return {
    taken: [...words, ...here.map(({ at }) => ({ x: at - ringRadius, end: at + ringRadius }))],
    drawing: [
      ...here.flatMap((mark) => signOf(mark, mark.at - from + stripOver, edge, inward)),
      ...set(words, 'regular'),
      ...set(edgeWords(row, piece, here, words), 'bold'),
    ],
  }
}

const signOf = ({ sign }: StripMark, x: number, edge: number, inward: number): Drawing => {
  const line = (to: number): Drawing => [
    stroke('mark', pathOf({ x, y: edge }, { x, y: edge + inward * to }), pens.mark),
  ]
  return sign === 'tick'
    ? line(stripDepth.tick)
    : [
        ...line(ringDepth - ringRadius),
        stroke('mark', circle({ x, y: edge + inward * ringDepth }, ringRadius), pens.tick),
      ]
}
