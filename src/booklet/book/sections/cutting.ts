import { curvedOf, straightOf } from '../../../design/kind-traits.ts'
import { pointDistance } from '../../../geometry/point.ts'
import { ownUnits } from '../../../length/own-units.ts'
import type { Pattern } from '../../../pattern/pattern.ts'
import { runOutLength } from '../../../ramp/beside/toe-step.ts'
import { middleRise } from '../../../ramp/curve/middle-rise.ts'
import type { Pipe } from '../../../ramp/frame/pipe.ts'
import type { SolvedQuarter, SolvedRamp } from '../../../ramp/ramp.ts'
import { notchSizes } from '../../../ramp/side/notch-sizes.ts'
import { notchDrill } from '../../../stock/list/owned-lines.ts'
import { isMirrored } from '../../../stock/panel/panels.ts'
import { checkLetters, checksView } from '../../views/checks-view.ts'
import { type Block, caution, check, head, named, part, step, table, together, words } from '../block.ts'
import { type Book, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import { onPage } from '../page-words.ts'
import type { Section } from '../pages.ts'
import { boardBlocks } from './boards.ts'
import { copied, laidSides, pagesLie } from './copied-sides.ts'
import { joinSteps, pieceNames, shortWords } from './joining.ts'
import { notches } from './notches.ts'
import { panelBlocks, sheetSteps } from './panels.ts'

/** So many sides have a column of their own to write in. */
const mostSides = 3

/** Sides by their pages, everything else by tape and square; then what is checked on the wood. */
export const cutting = (book: Book): Section => {
  const { width, solved, patterns } = book
  const quarters = curvedOf(solved.ramps)
  const own = patterns.map((pattern) => ({
    pattern,
    ramp: quarters.find(({ name }) => name === pattern.ramp)!,
  }))
  const said = [
    ...orderedSides(book, own),
    ...straightSteps(book),
    ...sheetSteps(book),
    ...solved.ramps.flatMap((ramp) => (ramp.splices.length > 0 ? joinSteps(book, ramp) : [])),
    ...quarters.flatMap((ramp) => metalSteps(book, ramp)),
    ...solved.ramps.map((ramp) => timberStep(book, ramp)),
    ...paintSteps(book),
  ]
  return {
    name: 'cutting',
    title: 'Cutting',
    blocks: [
      head('Cutting', width),
      caution(
        'Saw outside or with the dust drawn off: dust of plywood and hardboard harms lungs. Two people hold a panel, eyes, ears and lungs covered. The offcut falls: keep feet away.',
        width,
      ),
      ...said.map((one, i) => step(i + 1, one, width)),
      check(
        quarters.length > 0
          ? `Sides laid on each other: curve, notch and back edge lie within ${tolerances[book.units][0]} of each other.`
          : 'Sides laid on each other are of one length and height.',
        width,
      ),
      ...notches(book, quarters),
      ...panelBlocks(book),
      ...boardBlocks(book),
      ...own.flatMap(({ ramp }) => checkBlocks(book, ramp)),
    ],
  }
}

/** How the side that lies as the pages do is made, and those that are traced from it. */
interface SideSteps {
  readonly first: readonly string[]
  readonly copies: readonly string[]
}

/** The sides of one outline: taped, traced, sawn, checked, and copied. */
const sideSteps = (book: Book, ramp: SolvedQuarter, pattern: Pattern): SideSteps => {
  const { several } = book
  const [, ...others] = pattern.serves
  const [first, ...rest] = laidSides(book, ramp)
  const spliced = ramp.splices.length > 0
  const own = spliced || !first ? 'the first side' : first.piece.part.mark
  return {
    first: [
      `Tape the pages of the side${several ? ` of ${ramp.name}` : ''} in the order of their numbers and check the distances on their map. ${
        spliced || !first
          ? `Lay them on the place of each of its pieces ${pieceNames(ramp)} in turn: each is traced with its joint.`
          : pagesLie(first)
      }`,
      `Trace the curve, the edges and the marks of ${own}. Go over the curve once along a thin batten that is bent to it: no bump.`,
      ...(ramp.coping?.seat === 'square'
        ? [
            `Drill a hole of ${ownUnits(notchDrill, book.units)} in the inner corner of the notch: on the WASTE side, touching both of its lines, so that it takes nothing of the pipe's seat. Then saw into it from both sides.`,
          ]
        : []),
      `Saw ${own} edge by edge in the order of its panel, beside the line on the WASTE side; STOP where the order says so. A fine blade, and the line scored with a knife or taped over, keep the upper face from tearing. Smooth down to the middle of the line. Ease no edge yet.`,
      `Check ${own} by the table${onPage(`checks ${ramp.name}`)}, and lay the pages back on its edge.`,
    ],
    copies: [
      `${(spliced || !first ? ['Turn it over for the other side and trace it, so that both outside faces come outside.'] : copied(first, rest)).join(' ')} Saw, clamp all together and smooth their edges as one.`.trimStart(),
      ...(others.length > 0 ? [`The same pages serve ${others.join('; ')}.`] : []),
    ],
  }
}

/** The same for another ramp, what differs alone. */
const againSteps = (book: Book, ramp: SolvedQuarter, before: SolvedQuarter, pattern: Pattern): SideSteps => {
  const [first, ...rest] = laidSides(book, ramp)
  const [, ...others] = pattern.serves
  if (
    ramp.splices.length > 0 ||
    !first ||
    before.splices.length > 0 ||
    ramp.coping?.seat !== before.coping?.seat
  )
    return sideSteps(book, ramp, pattern)
  return {
    first: [
      `The same with ${ramp.name}: tape its pages in their order and check their distances. ${pagesLie(first)} Trace, drill, saw and check ${first.piece.part.mark} as before, by its own table${onPage(`checks ${ramp.name}`)}.`,
    ],
    copies: [
      `${copied(first, rest).join(' ')} Saw, clamp all together and smooth their edges as one.`.trimStart(),
      ...(others.length > 0 ? [`The same pages serve ${others.join('; ')}.`] : []),
    ],
  }
}

/** The first side of each ramp and what is traced from it, in the order in which the panels say their cuts. */
const orderedSides = (
  book: Book,
  own: readonly { readonly ramp: SolvedQuarter; readonly pattern: Pattern }[],
): readonly string[] => {
  const turnOf = ({ piece }: ReturnType<typeof laidSides>[number]): number =>
    book.sheets
      .flatMap(({ panels }) => panels)
      .flatMap(({ steps }) => steps)
      .findIndex((one) => one.kind === 'out' && one.mark === piece.part.mark)
  const sorted = own
    .map((one) => ({ ...one, turns: laidSides(book, one.ramp).map(turnOf) }))
    .sort((a, b) => (a.turns[0] ?? 0) - (b.turns[0] ?? 0))
  return sorted
    .flatMap(({ ramp, pattern, turns: [turn = 0, ...later] }, i) => {
      const { first, copies } =
        i === 0 ? sideSteps(book, ramp, pattern) : againSteps(book, ramp, sorted[0]!.ramp, pattern)
      return [
        { turn, said: first },
        { turn: Math.max(turn, ...later.slice(0, 1)), said: copies },
      ]
    })
    .sort((a, b) => a.turn - b.turn)
    .flatMap(({ said }) => said)
}

const straightSteps = ({ solved, show, fine }: Book): readonly string[] =>
  straightOf(solved.ramps).map(
    ({ name, design, length, heights }) =>
      `${name}: saw ${design.sides.count} sides ${show(length)} × ${fine(heights.frame)}, straight cuts with a guide. Both diagonals of each are ${fine(Math.hypot(length, heights.frame))}.`,
  )

/** The pipe, and a run-out of steel. */
const metalSteps = (book: Book, ramp: SolvedQuarter): readonly string[] => {
  const { show, units, several } = book
  const of = several ? ` of ${ramp.name}` : ''
  const { runOut } = ramp.design
  return [
    ...(ramp.pipe ? [pipeWords(book, ramp, ramp.pipe, of)] : []),
    ...(runOut.kind === 'sheet' && runOut.sheet.material === 'steel'
      ? [
          `Saw the run-out${of} with a metal blade in the jigsaw, or let the shop shear it: ${show(runOutLength(ramp.transition, units))} × ${show(ramp.width)}. File every edge round.`,
        ]
      : []),
  ]
}

const timberStep = (book: Book, ramp: SolvedRamp): string => {
  const bays = ramp.design.sides.count - 1
  return `Saw the timbers${book.several ? ` of ${ramp.name}` : ''}: ${book.show(ramp.studLength)} long, ${bays > 1 ? 'for each bay ' : ''}as in the table of the frame${onPage(`frame ${ramp.name}`)} and by board${onPage('boards')}. Stop block on the saw, the first one measured twice.${shortWords(book, ramp)}`
}

const paintSteps = ({ stock }: Book): readonly string[] =>
  stock.list.some(({ part: of }) => of === 'finish')
    ? [
        `Seal now what is hidden later: the ends of the timbers, the bottom edges of the sides. Brush paint or oil on until the wood takes no more, and let it dry. All else waits for Finishing${onPage('finishing')}.`,
      ]
    : []

/** How the pipe is sawn to length, in pieces where no stock is long enough. */
const pipeWords = ({ show }: Book, ramp: SolvedQuarter, { length, pieces }: Pipe, of: string): string =>
  `Saw the pipe${of} square with a hacksaw: ${
    pieces.length > 1
      ? `${pieces.length} pieces of ${pieces.map((one) => show(one.length)).join(', ')}, ${show(length)} together`
      : `${show(length)} long`
  }. File its ends inside and out. Its holes are drawn in the part Coping${onPage(`pipe ${ramp.name}`)}.`

/** One side with its measures, and the table that they are written in; then what is laid on each other. */
const checkBlocks = (book: Book, ramp: SolvedQuarter): readonly Block[] => {
  const { width, units, fine } = book
  const blanks = Array.from({ length: Math.min(mostSides, ramp.design.sides.count) }, () => '')
  const laid = ramp.splices.length > 0 ? [] : laidSides(book, ramp)
  const marks = laid.flatMap(({ piece: { part: own, under } }) => [own.mark, ...(under ? [under.mark] : [])])
  const sides = blanks.map((_, i) => ({ head: marks[i] ?? `side ${i + 1}`, kind: 'blank' as const }))
  const down = laid
    .filter(({ piece }) => isMirrored(piece) && !piece.under)
    .map(({ piece }) => piece.part.mark)
  const over = laid[0] && !isMirrored(laid[0].piece) ? down : []
  const [close, wide] = tolerances[units]
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
            fine(value),
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
            ['', 'the taped pages laid back on the sawn edge: curve and notch', close, ...blanks],
            [
              '',
              `the side laid on ${marks[0] ?? 'side 1'}: curve, notch, back edge`,
              close,
              ...blanks.map((_, i) => (i === 0 ? '–' : '')),
            ],
          ],
        },
        width,
      ),
      words(
        `${over.length > 0 ? `On ${over.join(' and ')} the pages lie print down. ` : ''}Lengths and diagonals may be off by ${wide}, curve and notch by ${close}. What stands proud is sanded down; where an edge is hollow by more, saw that side anew or bring all sides to it.`,
        width,
      ),
    ],
    book.tall,
  )
}

/** What a side may be off by: along its curve and notch, and in its lengths; common practice, no source. */
const tolerances = { mm: ['1', '2'], in: ['1/32', '1/16'] } as const

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
