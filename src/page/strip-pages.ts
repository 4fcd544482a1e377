import { type Drawing, group, stroke, text } from '../drawing/drawing.ts'
import { type Affine, affineThen, affineTranslate } from '../geometry/affine.ts'
import type { Box } from '../geometry/bounds.ts'
import { pathOf, rectangle } from '../geometry/path.ts'
import { letters, pens } from '../pattern/pens.ts'
import type { StoryStrip } from '../pattern/story-strip.ts'
import { layoutMap } from './sheet.ts'

/** One page of strip pieces, laid along the page's long side. */
export interface StripPage {
  readonly drawing: Drawing
  readonly places: readonly {
    readonly pattern: string
    /** the strip to ideal page mm */
    readonly map: Affine
    /** ideal page mm */
    readonly window: Box
  }[]
}

/** Height of a strip, the gap to the next, and what a piece carries beyond its joint lines, mm. */
const strip = { height: 22, gap: 4, over: 6 }

interface Piece {
  readonly strip: StoryStrip
  readonly number: number
  readonly count: number
  readonly from: number
  readonly to: number
}

/** Pieces one after another, as many to a page as fit. */
export const stripPages = (window: Box, strips: readonly StoryStrip[], set: string): readonly StripPage[] => {
  const long = window.y1 - window.y0
  const room = long - 2 * strip.over
  const pieces = strips.flatMap((one): Piece[] => {
    const count = Math.ceil(one.length / room)
    return Array.from({ length: count }, (_, i) => ({
      strip: one,
      number: i + 1,
      count,
      from: i * room,
      to: Math.min((i + 1) * room, one.length),
    }))
  })
  const each = Math.max(1, Math.floor((window.x1 - window.x0 - 8 + strip.gap) / (strip.height + strip.gap)))
  const pages = Array.from({ length: Math.ceil(pieces.length / each) }, (_, i) =>
    pieces.slice(i * each, (i + 1) * each),
  )
  const toPage = layoutMap(window, 'landscape')
  return pages.map((list): StripPage => {
    const placed = list.map((piece, i) => {
      const low = window.x1 - window.x0 - 8 - (i + 1) * strip.height - i * strip.gap
      const map = affineThen(affineTranslate(strip.over - piece.from, low), toPage)
      const { x0, y0, x1, y1 } = boxOf(piece)
      // a landscape layout turns the drawing: its height runs along the page's x
      return {
        piece,
        map,
        window: {
          x0: window.x1 - (low + y1),
          x1: window.x1 - (low + y0),
          y0: window.y0 + strip.over - piece.from + x0,
          y1: window.y0 + strip.over - piece.from + x1,
        },
      }
    })
    return {
      places: placed.map(({ piece, map, window: box }) => ({ pattern: piece.strip.name, map, window: box })),
      drawing: [
        group(toPage, [
          text(
            'note',
            { x: strip.over, y: window.x1 - window.x0 - 5 },
            letters.small,
            `Story strips, set ${set}: cut out, tape each strip's pieces at their dashed lines, lay its zero to the toe end.`,
          ),
        ]),
        ...placed.map(({ piece, map }) => group(map, pieceMarks(piece))),
      ],
    }
  })
}

const boxOf = ({ from, to }: Piece): Box => ({
  x0: from - strip.over,
  y0: 0,
  x1: to + strip.over,
  y1: strip.height,
})

const pieceMarks = (piece: Piece): Drawing => {
  const { from, to, number, count } = piece
  const { x0, y0, x1, y1 } = boxOf(piece)
  const title = `${piece.strip.title}${count > 1 ? `, piece ${number} of ${count}` : ''}`
  return [
    stroke('mark', rectangle(x0 + 0.2, y0, x1 - 0.2, y1), pens.tick),
    ...[from, to].map((x) =>
      stroke('joint', pathOf({ x, y: y0 }, { x, y: y1 }), x === 0 ? pens.mark : pens.joint),
    ),
    text('note', { x: from + 3, y: y1 / 2 - 1 }, 2, title),
    ...(number === 1 ? [text('note', { x: from + 1, y: y1 / 2 + 2.4 }, 1.6, 'zero: the toe end')] : []),
    ...piece.strip.rows.flatMap((row, i) => {
      const [edge, inward] = i === 0 ? [y1, -1] : [y0, 1]
      return [
        ...(number === 1
          ? [text('note', { x: from + 30, y: y1 / 2 + (i === 0 ? 2.4 : -4.4) }, 1.6, row.words)]
          : []),
        ...row.marks
          .filter(({ at }) => at >= x0 && at <= x1)
          .flatMap(({ at, label }) => [
            stroke('mark', pathOf({ x: at, y: edge }, { x: at, y: edge + inward * 6 }), pens.mark),
            text('mark', { x: at + 0.8, y: edge + (i === 0 ? -3 : 1.2) }, 1.8, label),
          ]),
      ]
    }),
  ]
}
