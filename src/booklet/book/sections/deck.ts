import { curvedOf } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { wordList } from '../../../length/word-list.ts'
import { type RunOutBolts, runOutBolt, runOutBolts } from '../../../ramp/beside/run-out-bolts.ts'
import { runOutSheet } from '../../../ramp/beside/run-out-sheet.ts'
import { type StripJoints, screwedStrip, stripJoints } from '../../../ramp/beside/run-out-strips.ts'
import { runOutFloor, runOutLap } from '../../../ramp/beside/toe-step.ts'
import { sheetWords } from '../../../ramp/check/sheet-words.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { SolvedQuarter } from '../../../ramp/ramp.ts'
import { screwHead } from '../../../ramp/screws/screw-sort.ts'
import { isOfBoard } from '../../../ramp/skin/deck-board.ts'
import { ownSheets } from '../../../ramp/skin/own-sheets.ts'
import { isSteel } from '../../../stock/steel-uses.ts'
import { screwWords } from '../../screw-counts.ts'
import { sheetView } from '../../views/sheet-view.ts'
import { type Block, beside, check, head, part, stack, step } from '../block.ts'
import { type Book, leastShare, ofRamp } from '../book.ts'
import { type Figure, figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { seamWords } from './blocks.ts'
import { checksOf } from './framing.ts'
import { marked, sheetWithScrews } from './screw-table.ts'
import { freeHole, punchWords, sinkWords } from './sheets/hole-words.ts'
import { wedgeWords } from './sheets/lip-wedge.ts'
import { gapOf } from './sheets/sheet-gap.ts'
import { steelCaution } from './sheets/steel-words.ts'

/** The board behind the lip, and what closes the step at the toe. */
export const deck = (book: Book): Section | null => {
  const blocks = curvedOf(book.solved.ramps).flatMap((ramp, i, all) => [
    ...boardOf(book, ramp),
    ...toeOf(book, ramp, all.slice(0, i).find((one) => runOutAlike(book, one, ramp)) ?? null),
  ])
  return blocks.length === 0
    ? null
    : { name: 'deck', title: 'Deck and toe', blocks: [head('Deck and toe', book.width), ...blocks] }
}

/** A sheet with its screws, no stud lines on it. */
const sheetFigure = (
  book: Book,
  ramp: SolvedQuarter,
  room: number,
  name: string,
  {
    length,
    ...sheet
  }: Omit<Parameters<typeof sheetView>[0], 'width' | 'marks'> & { readonly length: number },
): Figure =>
  figure(
    ofRamp(book, name, ramp),
    (ratio) => sheetView({ ...sheet, width: ramp.width, marks: [] }, book.units, ratio),
    book,
    { width: room, height: 90 * Math.max(leastShare, book.share), unnamed: true },
    { width: ramp.width, height: length },
  )

const boardOf = (book: Book, ramp: SolvedQuarter): readonly Block[] => {
  const { width, units, show, screw } = book
  const board = ramp.deckBoard
  if (!board) return []
  const count = board.pieces.length * board.widths.length
  const first = ramp.studs.length + 1
  const steel = isSteel(board.sheet)
  const wedge = ramp.lipGroove
  const sheets = marked(
    book,
    ownSheets({ ...board, marks: [] }),
    ({ ramp: own, part: of }) => of === 'deck-board' && own === ramp.name,
  )
  const nextIn = (room: number) => {
    let number = 0
    return (said: string): Block => step(++number, said, room)
  }
  return [
    part(ofRamp(book, 'The deck board from above', ramp), width),
    ...(steel ? [steelCaution('.', width)] : []),
    ...sheetWithScrews(
      book,
      {
        sheets,
        takes: `For this: ${wordList(sheets.map(({ mark }) => mark))}; ${screwWords(board.rows, (length) => screw('deck board', length))}, ${screwHead('deck board')}${seamWords(book, ramp, board, 'deck board')}.`,
        use: 'deck board',
        into: ({ timber }) => `timber ${first + timber}`,
      },
      (room) =>
        sheetFigure(book, ramp, room, 'The deck board from above', {
          length: board.length,
          pieces: board.pieces,
          widths: board.widths,
          rows: board.rows,
          foot: ramp.coping ? 'edge at the pipe' : 'edge at the lip',
          names: sheets.length > 1 ? sheets.map(({ mark }) => mark) : [],
        }),
      (room) => {
        const next = nextIn(room)
        return [
          next(
            `${count === 1 ? 'One sheet' : `${count} sheets`} of ${sheetWords(board.sheet, units)}, ${show(board.length)} from front to back, ${show(ramp.width)} wide. It begins ${show(board.from)} behind the toe, ${ramp.coping ? 'just behind the pipe' : 'at the lip'}.`,
          ),
          ...(steel ? [next(punchWords(units))] : []),
          next(
            `${
              count === 1
                ? "Lay it with its back edge flush with the sides' back edge"
                : laidWords(
                    book,
                    board.pieces.map(({ from }) =>
                      sheets.filter(({ up }) => up.from === from).map(({ mark }) => mark),
                    ),
                    gapOf(board),
                  )
            }, and screw ${count === 1 ? 'it' : 'each'} down${steel ? `: ${sinkWords('timber', units)}` : `, ${ownUnits(pilotDrill, units)} drilled before each`}.`,
          ),
          ...(wedge ? [next(wedgeWords(wedge, book))] : []),
        ]
      },
    ),
    check('No edge of the board catches a finger.', width),
    ...checksOf(book, ramp, ['deck-seam']),
    ...checksOf(book, ramp, ['screw-through'], isOfBoard),
  ]
}

/** Where the sheets of a board lie, course by course from the back, each from the left. */
const laidWords = ({ fine }: Book, courses: readonly (readonly string[])[], gap: number): string => {
  const [back, ...others] = [...courses].reverse().map((marks) => wordList(marks))
  const beside = courses[0]!.length > 1
  return [
    `Lay ${back}${beside ? ', from left to right,' : ''} with ${beside ? 'their back edges' : 'its back edge'} flush with the sides' back edge`,
    ...others.map((marks, i) => {
      const it = i > 0 ? (beside ? 'those' : 'that') : beside ? 'them' : 'it'
      const link = others.length === 1 ? '' : i === 0 ? 'then ' : i === others.length - 1 ? 'and ' : ''
      return `${link}${marks} before ${it}`
    }),
    `outer edges flush with the outsides${gap > 0 ? `, a gap of ${fine(gap)} between sheets` : ''}`,
  ].join(', ')
}

/** Whether two run-outs are laid on and screwed alike, whatever their width. */
const runOutAlike = ({ design, units }: Book, a: SolvedQuarter, b: SolvedQuarter): boolean => {
  const [one, other] = [a, b].map((ramp) => runOutSheet(ramp, design.stock, units))
  return (
    !!one?.row &&
    !!other?.row &&
    one.sheet.material === other.sheet.material &&
    one.sheet.thickness === other.sheet.thickness &&
    one.row.into === other.row.into &&
    one.row.length === other.row.length
  )
}

/** Of the page's width for a run-out, its steps beside it; and the air between, mm. */
const runOutShare = 0.46
const between = 4

/** `told`: a ramp whose run-out was told before, which this one is laid on like. */
const toeOf = (book: Book, ramp: SolvedQuarter, told: SolvedQuarter | null): readonly Block[] => {
  const { width, units } = book
  const runOut = runOutSheet(ramp, book.design.stock, units)
  if (!runOut) return []
  const held = runOut.row ?? runOutBolts(ramp, book.design.stock, units)
  const drawing = sheetFigure(book, ramp, width * runOutShare, 'The run-out laid out, seen from above', {
    length: runOut.length,
    pieces: [{ from: 0, length: runOut.length }],
    widths: runOut.widths,
    rows: held ? [held] : [],
    foot: 'upper end, over the skin',
    names: [],
  })
  const room = width * (1 - runOutShare) - between
  return [
    part(ofRamp(book, 'The toe: the run-out from above', ramp), width),
    ...(told || !isSteel(runOut.sheet)
      ? []
      : [
          steelCaution(
            `, the one at the floor above all. Look at its ${runOut.row ? 'screws' : 'bolts'} before each session.`,
            width,
          ),
        ]),
    beside(
      drawing,
      stack(runOutWords(book, ramp, runOut, told).map((said, i) => step(i + 1, said, room))),
      width * runOutShare + between,
    ),
  ]
}

const runOutWords = (
  book: Book,
  ramp: SolvedQuarter,
  runOut: NonNullable<ReturnType<typeof runOutSheet>>,
  told: SolvedQuarter | null,
): readonly string[] => {
  const { units, show, screw } = book
  const sized = `${sheetWords(runOut.sheet, units)}, ${show(runOut.length)} long and ${show(ramp.width)} wide${runOut.widths.length > 1 ? `, in ${runOut.widths.length} parts` : ''}.`
  const lies = `It laps ${show(runOutLap(units))} over the skin, bridges ${show(ramp.transition.bridge)} from the ridden face, ${show(ramp.transition.toeStep)} up, down to the floor, and lies on the floor for ${show(runOutFloor(units))} or a little more.`
  const { row } = runOut
  const strips = stripWords(book, ramp)
  const placesOf = ({ at, across }: Pick<RunOutBolts, 'at' | 'across'>): string =>
    `${show(at)} from its upper end, ${across.map(show).join(', ')} from the left edge.`
  const lower = 'Its other end lies on the floor by its own weight.'
  if (!row) {
    const bolts = runOutBolts(ramp, book.design.stock, units)
    if (!bolts)
      return [
        `The run-out is ${sized} ${lies}`,
        ...strips,
        `No stud lies under its upper end, nor a skin that holds a screw: put a timber there. ${lower}`,
      ]
    const count = bolts.across.length
    return [
      `The run-out is ${sized} ${lies}`,
      `No stud lies under its upper end, and the skin is too thin for a screw: bolts hold it. Drill ${count} holes ${ownUnits(runOutBolt.hole, units)} wide in it, ${placesOf(bolts)}`,
      ...strips,
      `Lay it over the skin, clamp it and drill on through the skin at each hole. Sink each until a head lies level, on into the skin where the sheet is thinner than a head. Put in ${count} bolts ${ownUnits(runOutBolt.size, units)} × ${show(bolts.length)}, countersunk, a washer and a nut on each from below, the toe lifted onto blocks. ${lower}`,
    ]
  }
  const places = placesOf(row)
  const screws = screwWords([row], (length) => screw('run-out', length))
  if (told)
    return [
      `The run-out is ${sized} ${lies}`,
      ...strips,
      `Drill, lay, sink and screw it as that of ${told.name}: ${row.across.length} holes, ${places} It takes ${screws}.`,
    ]
  return [
    `The run-out is ${sized} ${lies}`,
    `Drill ${row.across.length} holes ${freeHole(units)} wide, ${places}`,
    ...strips,
    `Lay it over the skin and screw it ${row.into === 'stud' ? 'through the skin into stud 1' : 'to the skin alone, since no stud lies there'}, ${screws}, ${screwHead('run-out')}: ${sinkWords('skin', units)}. ${lower}`,
  ]
}

/** What is packed under it before it lies there: only a short stretch may hang free. */
const stripWords = (book: Book, ramp: SolvedQuarter): readonly string[] => {
  const { show, units } = book
  const joints = stripJoints(ramp, units)
  if (!joints) return []
  const { strips, pieces } = joints
  const places = strips.map(({ high, before }) => `${show(high)} high at ${show(before)}`)
  const sized = 'of offcut or board as thick as the sides and as long as the ramp is wide'
  const join = joinWords(book, joints)
  const ends = 'Shorter offcuts do end to end, two short pieces or more on each'
  return [
    strips.length === 1
      ? `Pack under it: a strip ${sized}, ${places[0]} before the sides' front edge, with ${pieces} short pieces between it and them, ${join}. ${ends}.`
      : `Pack under it: ${strips.length} strips ${sized}, ${wordList(places)} before the sides' front edge. Join them by short pieces, ${pieces} in each gap from the sides on, beside those of the gap before: ${join}. ${ends}. Push them up to the sides.`,
  ]
}

/** A low strip splits at a screw. */
const joinWords = ({ show, screw, units }: Book, { strips, screws, glued }: StripJoints): string => {
  const low = strips.length > 1 ? 'they are' : 'it is'
  if (!screws) return `glued: ${low} too low for screws`
  const screwed = `through the strip one screw of ${screw('run-out strips', screws.length)} into each end that meets one, ${screws.count} in all`
  return glued ? `${screwed}, but glued where a strip is lower than ${show(screwedStrip[units])}` : screwed
}
