import { type Drawing, stroke, text } from '../../../drawing/drawing.ts'
import { shortened } from '../../../drawing/shortened.ts'
import { textWidth } from '../../../drawing/text-width.ts'
import { inch } from '../../../geometry/inch.ts'
import { pathOf, rectangle } from '../../../geometry/path.ts'
import type { Point } from '../../../geometry/point.ts'
import { letters, pens } from '../../../pattern/pens.ts'
import { type SquareInside, type SquareSide, squareInside } from './square-inside.ts'
import { hasInches, type SquareFacts, type SquareWords } from './square-words.ts'

/** From line to line of small words, mm. */
const leading = 1.65 * letters.small

/** The square with its lower left corner at a point, and what is read and written down in it; `room`: from there to the right, mm. */
export const squareMarks = (
  corner: Point,
  side: SquareSide,
  room: number,
  words: SquareWords,
  { title, units, set, combs }: SquareFacts,
): Drawing => {
  const inside = squareInside(side)
  const at = (u: number, v: number): Point => ({ x: corner.x + u * side, y: corner.y + v * side })
  return [
    stroke('mark', rectangle(corner.x, corner.y, corner.x + side, corner.y + side), { width: 0.35 }),
    stroke('datum', pathOf(at(0, 0), at(1, 1)), pens.tick),
    stroke('datum', pathOf(at(0, 1), at(1, 0)), pens.tick),
    text('note', { x: at(0.5, 0).x, y: at(0, 1).y - inside.edge }, inside.size, `ACROSS ${words.side}`, {
      align: 'middle',
      face: 'bold',
    }),
    text('note', { x: corner.x + inside.edge, y: at(0, 0.5).y }, inside.size, `DOWN ${words.side}`, {
      align: 'middle',
      angle: Math.PI / 2,
      face: 'bold',
    }),
    ...diagonalEnds(at, inside),
    ...inside.diagonals.flatMap(
      ({ letter, at: { x, y }, blank }): Drawing => [
        text('note', { x: corner.x + x, y: corner.y + y }, inside.size, letter, { face: 'bold' }),
        // the last one stands over the line to write on
        ...words.diagonal.map((line, i) =>
          text(
            'note',
            {
              x: corner.x + blank.x + inside.blank,
              y: corner.y + blank.y + blankRoom + (words.diagonal.length - 1 - i) * leading,
            },
            letters.small,
            line,
            { align: 'right' },
          ),
        ),
      ],
    ),
    text('note', { x: at(0.5, 0).x, y: corner.y + inside.code }, letters.small, `set ${set}`, {
      align: 'middle',
    }),
    ...(title === null
      ? []
      : [
          text(
            'note',
            { x: at(0.5, 0).x, y: corner.y + inside.code + leading },
            letters.small,
            shortened(title, letters.small, side * 0.55, 'regular'),
            { align: 'middle' },
          ),
        ]),
    ...blanks(at, inside),
    ...(hasInches(units, side) ? inchSquare(corner) : []),
    ...(combs ? combWords({ x: corner.x, y: corner.y - 5.3 }, room) : []),
  ]
}

/** Beside both ends of a diagonal stands its letter: so no one takes one for the other. */
const diagonalEnds = (at: (u: number, v: number) => Point, { size }: SquareInside): Drawing =>
  (
    [
      ['A', 0, 0],
      ['A', 1, 1],
      ['B', 0, 1],
      ['B', 1, 0],
    ] as const
  ).map(([letter, u, v]) => {
    const { x, y } = at(u, v)
    // before DOWN begins, clear of the diagonal
    const middle = { x: x + (u === 0 ? 1.1 : -1.1) * size, y: y + (v === 0 ? 2.6 : -2.6) * size }
    return text('note', { x: middle.x, y: middle.y - size / 2 }, size, letter, {
      align: 'middle',
      face: 'bold',
    })
  })

/** What is measured is written down where it is measured: lines under the names and true lengths. */
const blanks = (at: (u: number, v: number) => Point, { edge, blank, diagonals }: SquareInside): Drawing => {
  const line = (from: Point, to: Point): Drawing => [stroke('note', pathOf(from, to), pens.tick)]
  const corner = at(0, 0)
  const top = { x: at(0.5, 0).x, y: at(0, 1).y - edge - blankRoom }
  const left = { x: corner.x + edge + blankRoom, y: at(0, 0.5).y }
  return [
    ...line({ x: top.x - blank / 2, y: top.y }, { x: top.x + blank / 2, y: top.y }),
    ...line({ x: left.x, y: left.y - blank / 2 }, { x: left.x, y: left.y + blank / 2 }),
    ...diagonals.flatMap(({ blank: { x, y } }) => {
      const from = { x: corner.x + x, y: corner.y + y }
      return line(from, { x: from.x + blank, y: from.y })
    }),
  ]
}

/** Room to write a figure over a line, mm. */
const blankRoom = 7.5

/** Whole inches for an inch rule, inside the square from its corner. */
const wholeInches = 5
const inchSquare = ({ x, y }: Point): Drawing => {
  const far = wholeInches * inch
  return [
    stroke('mark', pathOf({ x: x + far, y }, { x: x + far, y: y + far }, { x, y: y + far }), pens.stud),
    text(
      'mark',
      { x: x + 0.45 * far, y: y + far + 1.2 },
      letters.small,
      `for an inch rule: ${wholeInches} in`,
      {
        align: 'middle',
      },
    ),
  ]
}

/** What the combs are for, between the square and the ruler under it: 3 mm off the line that is measured. */
const combWords = (at: Point, room: number): Drawing => {
  const tries = [
    'Combs at the edges: the first tick that is printed whole is that margin in mm, for --margins: top, right, bottom, left.',
    'Combs: the first whole tick is the margin in mm; top, right, bottom, left.',
  ]
  const fits = (words: string): boolean => textWidth(words, letters.mark, 'regular') <= room
  const words = tries.find(fits) ?? tries[1]!
  return [text('note', at, Math.min(letters.mark, room / textWidth(words, 1, 'regular')), words)]
}
