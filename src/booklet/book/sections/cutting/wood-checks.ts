import { pointDistance } from '../../../../geometry/point.ts'
import { middleRise } from '../../../../ramp/curve/middle-rise.ts'
import type { Flat, SolvedQuarter } from '../../../../ramp/ramp.ts'
import { notchSizes } from '../../../../ramp/side/notch-sizes.ts'
import { isMirrored } from '../../../../stock/panel/panels.ts'
import { checkLetters, checksView } from '../../../views/checks-view.ts'
import { type Block, named, part, table, together, words } from '../../block.ts'
import { type Book, ofRamp } from '../../book.ts'
import { figure } from '../../figure.ts'
import { laidSides } from './copied-sides.ts'

/** So many sides have a column of their own to write in. */
const mostSides = 3

/** One side with its measures, and the table that they are written in; then what is laid on each other. */
export const checkBlocks = (book: Book, ramp: SolvedQuarter): readonly Block[] => {
  const { width, units, show } = book
  const blanks = Array.from({ length: Math.min(mostSides, ramp.design.sides.count) }, () => '')
  const laid = ramp.splices.length > 0 ? [] : laidSides(book, ramp)
  const marks = laid.flatMap(({ piece: { part: own, under } }) => [own.mark, ...(under ? [under.mark] : [])])
  const sides = blanks.map((_, i) => ({ head: marks[i] ?? `side ${i + 1}`, kind: 'blank' as const }))
  const down = laid
    .filter(({ piece }) => isMirrored(piece) && !piece.under)
    .map(({ piece }) => piece.part.mark)
  const over = laid[0] && !isMirrored(laid[0].piece) ? down : []
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
      table(
        {
          columns: [
            { head: '', kind: 'box' },
            { head: '', kind: 'words', face: 'bold' },
            { head: 'from … to', kind: 'words' },
            { head: 'wanted', kind: 'right' },
            ...sides,
          ],
          rows: sideChecks(ramp).map(([said, value], i) => [
            '',
            checkLetters[i]!,
            said,
            show(value),
            ...blanks,
          ]),
        },
        width,
      ),
      table(
        {
          columns: [
            { head: '', kind: 'box' },
            { head: 'laid on each other', kind: 'words' },
            { head: 'off by at most', kind: 'right' },
            ...sides,
          ],
          rows: [
            ['', `the taped pages laid back on the sawn edge: ${curve}`, close, ...blanks],
            [
              '',
              `the side laid on ${marks[0] ?? 'side 1'}: ${ramp.coping ? 'curve, notch, back edge' : 'curve, back edge'}`,
              close,
              ...blanks.map((_, i) => (i === 0 ? '–' : '')),
            ],
          ],
        },
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
  const { width, sheets, show, units } = book
  const marks = sheets
    .flatMap(({ parts }) => parts)
    .filter(({ part: of, ramp: name }) => of === 'side' && name === ramp.name)
    .map(({ mark }) => mark)
    .slice(0, mostSides)
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
    table(
      {
        columns: [
          { head: '', kind: 'box' },
          { head: 'of each side', kind: 'words' },
          { head: 'wanted', kind: 'right' },
          ...marks.map((mark) => ({ head: mark, kind: 'blank' as const })),
        ],
        rows: rows.map(([said, value]) => ['', said, value, ...marks.map(() => '')]),
      },
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
