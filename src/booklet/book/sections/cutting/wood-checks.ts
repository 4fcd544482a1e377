import type { Column } from '../../../../drafting/table.ts'
import { pointDistance } from '../../../../geometry/point.ts'
import { middleRise } from '../../../../ramp/curve/middle-rise.ts'
import type { Flat, SolvedQuarter, SolvedRamp } from '../../../../ramp/ramp.ts'
import { notchSizes } from '../../../../ramp/side/notch-sizes.ts'
import { isMirrored } from '../../../../stock/panel/panels.ts'
import { isSide } from '../../../../stock/sheet-part.ts'
import { checkLetters, checksView } from '../../../views/checks-view.ts'
import { type Block, named, part, table, together, words } from '../../block.ts'
import { type Book, ofRamp } from '../../book.ts'
import { figure } from '../../figure.ts'
import { laidSides } from './copied-sides.ts'
import { splicedSides } from './spliced-sides.ts'

/** So many sides have a column to write in beside each other; more go on in a table below, evenly. */
const mostSides = 3

const tablesFor = <T>(sides: readonly T[]): readonly (readonly T[])[] => {
  const each = Math.ceil(sides.length / Math.ceil(sides.length / mostSides))
  return sides.flatMap((_, i) => (i % each === 0 ? [sides.slice(i, i + each)] : []))
}

/** The marks of a ramp's sides and ribs, of those in pieces what they are a piece of. */
const sideMarks = ({ sheets }: Book, ramp: SolvedRamp): readonly string[] => [
  ...new Set(
    sheets
      .flatMap(({ parts }) => parts)
      .filter((own) => own.ramp === ramp.name && isSide(own))
      .map(({ mark, piece }) => piece?.of ?? mark),
  ),
]

interface CheckRow {
  readonly cells: readonly string[]
  /** the side of which there is nothing to write */
  readonly but?: string
}

/** Tables of the same rows, behind them a column to write in for each side. */
const sideTables = (
  marks: readonly string[],
  columns: readonly Column[],
  rows: readonly CheckRow[],
  width: number,
): readonly Block[] =>
  tablesFor(marks).map((own) =>
    table(
      {
        columns: [
          { head: '', kind: 'box' },
          ...columns,
          ...own.map((mark) => ({ head: mark, kind: 'blank' }) as const),
        ],
        rows: rows.map(({ cells, but }) => ['', ...cells, ...own.map((mark) => (mark === but ? '–' : ''))]),
      },
      width,
    ),
  )

/** A side, and whether the pages lay print down as it was marked. */
interface CheckedSide {
  readonly mark: string
  readonly down: boolean
}

const wholeOrder = (book: Book, ramp: SolvedQuarter): readonly CheckedSide[] =>
  laidSides(book, ramp).flatMap(({ piece }) => [
    { mark: piece.part.mark, down: isMirrored(piece) && !piece.under },
    ...(piece.under ? [{ mark: piece.under.mark, down: false }] : []),
  ])

const splicedOrder = (book: Book, ramp: SolvedQuarter): readonly CheckedSide[] =>
  splicedSides(book, ramp).map(({ mark, pieces }) => {
    const { piece } = pieces[0]!
    return { mark, down: isMirrored(piece) && !piece.under }
  })

/** One side with its measures, and the table that they are written in; then what is laid on each other. */
export const checkBlocks = (book: Book, ramp: SolvedQuarter): readonly Block[] => {
  const { width, units, show } = book
  // first the one that the others are laid on
  const sides = ramp.splices.length > 0 ? splicedOrder(book, ramp) : wholeOrder(book, ramp)
  const marks = sides.length > 0 ? sides.map(({ mark }) => mark) : sideMarks(book, ramp)
  const over = sides[0]?.down ? [] : sides.filter(({ down }) => down).map(({ mark }) => mark)
  const [close, wide] = tolerances[units]
  const curve = ramp.coping ? 'curve and notch' : 'curve'
  return together(
    [
      named(`checks ${ramp.name}`, part(ofRamp(book, 'Checks on the sawn wood', ramp), width)),
      figure(
        ofRamp(book, 'What is measured, by the letters of the table', ramp),
        (ratio) => checksView(ramp, ratio),
        book,
        // its letters need all of that
        { width, height: 80 },
        { width: ramp.length, height: ramp.side.height },
      ),
      ...sideTables(
        marks,
        [
          { head: '', kind: 'words', face: 'bold' },
          { head: 'from … to', kind: 'words' },
          { head: 'wanted', kind: 'right' },
        ],
        sideChecks(ramp).map(([said, value], i) => ({ cells: [checkLetters[i]!, said, show(value)] })),
        width,
      ),
      ...sideTables(
        marks,
        [
          { head: 'laid on each other', kind: 'words' },
          { head: 'off by at most', kind: 'right' },
        ],
        [
          { cells: [`the taped pages laid back on the sawn edge: ${curve}`, close] },
          {
            cells: [
              `the side laid on ${marks[0]!}: ${ramp.coping ? 'curve, notch, back edge' : 'curve, back edge'}`,
              close,
            ],
            but: marks[0]!,
          },
        ],
        width,
      ),
      words(
        `${over.length > 0 ? `On ${over.join(' and ')} the pages lie print down. ` : ''}Lengths and diagonals may be off by ${wide}, ${curve} by ${close}. What stands proud is sanded down; where an edge is hollow by more, saw that side anew or bring all sides to it.`,
        width,
      ),
    ],
    book.tall,
  )
}

/** The sides of a flat: sizes and both diagonals, with blanks. */
export const straightChecks = (book: Book, ramp: Flat): readonly Block[] => {
  const { width, show, units } = book
  const marks = sideMarks(book, ramp)
  const { length, heights } = ramp
  const diagonal = show(Math.hypot(length, heights.frame))
  const rows = [
    ['along the bottom edge', show(length)],
    ['height at either end', show(heights.frame)],
    ['one diagonal', diagonal],
    ['the other', diagonal],
  ] as const
  return [
    part(ofRamp(book, 'Checks on the sawn wood', ramp), width),
    ...sideTables(
      marks,
      [
        { head: 'of each side', kind: 'words' },
        { head: 'wanted', kind: 'right' },
      ],
      rows.map((cells) => ({ cells })),
      width,
    ),
    words(
      `Length and diagonals may be off by ${tolerances[units][1]}, the height by ${tolerances[units][0]}: more is a step to ride over.`,
      width,
    ),
  ]
}

/** What a side may be off by: along its curve and notch, and in its lengths; common practice, no source. */
export const tolerances = { mm: ['1', '2'], in: ['1/32', '1/16'] } as const

/** What is measured on the wood, in the order of its letters. A notch takes the lip away: the curve is measured to where it meets the notch. */
const sideChecks = (ramp: SolvedQuarter): readonly (readonly [said: string, mm: number])[] => {
  const { transition, coping, side, length } = ramp
  const { curve, toe } = transition
  const { chamfer } = ramp.design
  const notch = coping && notchSizes(transition, coping, length)
  const round = notch?.floor === null
  return [
    [
      coping ? `TOE to where the curve meets the notch${round ? '' : "'s floor"}` : 'TOE to LIP, straight',
      pointDistance(toe, curve.point(side.curveEnd)),
    ],
    ['from the middle of that line square to the curve', middleRise(curve, side.curveEnd)],
    ['bottom edge to top line', side.height],
    chamfer > 0
      ? ['along the bottom edge, to where the back corner is cut', side.length - chamfer]
      : ['front edge to back edge', side.length],
    ['front bottom corner to back top corner', Math.hypot(side.length, side.height)],
    ['TOE to back top corner', Math.hypot(side.length, side.height - toe.y)],
    ...(notch
      ? ([
          ["back edge to the notch's wall", notch.back],
          [`bottom edge up to the ${round ? 'lowest point of the notch' : "notch's floor"}`, notch.bottom],
          ...(notch.floor === null ? [] : [["along the notch's floor, wall to curve", notch.floor] as const]),
        ] as const)
      : []),
    ...(chamfer > 0 ? [['along the cut of the back corner', chamfer * Math.SQRT2] as const] : []),
  ]
}
