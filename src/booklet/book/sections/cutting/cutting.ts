import { curvedOf, straightOf } from '../../../../design/kind-traits.ts'
import { pathBounds } from '../../../../geometry/bounds.ts'
import { capital } from '../../../../length/capital.ts'
import { numberList, wordList } from '../../../../length/word-list.ts'
import { runOutPieces, runOutSizes } from '../../../../ramp/beside/run-out-sheet.ts'
import type { Pipe } from '../../../../ramp/frame/pipe.ts'
import type { SolvedQuarter, SolvedRamp } from '../../../../ramp/ramp.ts'
import type { Panel } from '../../../../stock/panel/panels.ts'
import { isSide } from '../../../../stock/sheet-part.ts'
import { isSteel, type SteelUse, steelUses } from '../../../../stock/steel-uses.ts'
import { stopBlockView } from '../../../views/acts/tool-views.ts'
import { type Act, actBlocks, shown, told } from '../../act.ts'
import { caution, check, head, step, together } from '../../block.ts'
import { type Book, hasSkin } from '../../book.ts'
import { onPage } from '../../page-words.ts'
import type { Section } from '../../pages.ts'
import { noScale } from '../../stage.ts'
import { meetingSheets, tinRule } from '../finishing.ts'
import { boardBlocks } from './boards.ts'
import { joinSteps, shortWords } from './joining.ts'
import { notches } from './notches.ts'
import { panelBlocks, sawRules, sheetSteps, steelPanels } from './panels.ts'
import { orderedSides } from './sides.ts'
import { checkBlocks, straightChecks, tolerances } from './wood-checks.ts'

/** Sides by their pages, everything else by tape and square; then what is checked on the wood. */
export const cutting = (book: Book): Section => {
  const { width, solved, patterns } = book
  const quarters = curvedOf(solved.ramps)
  const own = patterns.map((pattern) => ({
    pattern,
    ramp: quarters.find(({ name }) => name === pattern.ramp)!,
  }))
  const acts = [
    ...orderedSides(book, own),
    ...told(
      [
        ...straightSteps(book),
        ...sheetSteps(book),
        ...solved.ramps.flatMap((ramp) => (ramp.splices.length > 0 ? joinSteps(book, ramp) : [])),
        ...metalSteps(book, quarters),
      ],
      width,
    ),
    shown([...timberSteps(book), ...gripSteps(book)], () => stopBlockView(stopWords(book)), noScale, width),
    ...paintActs(book),
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
      ...sawRules(book),
      ...actBlocks(acts),
      check(
        quarters.length > 0
          ? `Sides laid on each other${solved.ramps.some(plated) ? ', plates away from each other' : ''}: ${book.piped ? 'curve, notch' : 'curve'} and back edge lie within ${tolerances[book.units][0]} of each other.`
          : 'Sides laid on each other are of one length and height.',
        width,
      ),
      ...notches(book),
      ...panelBlocks(book),
      ...boardBlocks(book),
      ...own.flatMap(({ ramp }) => checkBlocks(book, ramp)),
      ...straightOf(solved.ramps)
        .filter(({ splices }) => splices.length === 0)
        .flatMap((ramp) => straightChecks(book, ramp)),
    ],
  }
}

/** Sides that are sawn by tape and square; of those in pieces the whole is measured once they are glued. */
const straightSteps = (book: Book): readonly string[] =>
  straightOf(book.solved.ramps).map((ramp) => {
    const { name, design, length, heights, splices } = ramp
    const { show } = book
    return splices.length > 0
      ? `Saw the pieces of the ${design.sides.count} sides of ${name}, ${piecesWords(book, name)} of each, straight cuts with a guide, in the order of their panels.`
      : `Saw the ${design.sides.count} sides of ${name}, ${show(length)} × ${show(heights.frame)}, straight cuts with a guide. Both diagonals of each are ${show(Math.hypot(length, heights.frame))}.`
  })

/** `a 1500 × 89 and b 1500 × 89`, of a side of a flat. */
const piecesWords = ({ sheets, show }: Book, ramp: string): string => {
  const own = sheets
    .flatMap(({ parts }) => parts)
    .filter((part) => part.ramp === ramp && isSide(part) && part.piece)
  return wordList(
    own
      .filter(({ piece }) => piece!.of === own[0]!.piece!.of)
      .map(({ mark, outline }) => {
        const { x0, x1, y0, y1 } = pathBounds(outline)
        return `${mark.slice(-1)} ${show(x1 - x0)} × ${show(y1 - y0)}`
      }),
  )
}

/** Pipes, sheets of steel for skin and deck, and run-outs of it, each sort in one step. */
const metalSteps = (book: Book, quarters: readonly SolvedQuarter[]): readonly string[] => {
  const { design, units } = book
  const panels = steelPanels(book)
  const sheets = quarters.flatMap((ramp) => {
    const pieces = runOutPieces(ramp, design.stock, units)
    if (!pieces || !isSteel(pieces.sheet)) return []
    // parts of one run-out are alike; what lies on a panel with skin or deck is sawn with it
    const widths = pieces.widths.slice(runOutsOn(panels, ramp))
    return widths.length > 0
      ? [`${whose(book, ramp)}${wordList(runOutSizes([{ ...pieces, widths }], units))}`]
      : []
  })
  const pipes = quarters.flatMap((ramp) => (ramp.pipe ? [{ ramp, pipe: ramp.pipe }] : []))
  return [
    ...(pipes.length > 0
      ? [
          `Saw the pipe${pipes.length > 1 ? 's' : ''} square with a hacksaw: ${wordList(pipes.map(({ ramp, pipe }) => pipeWords(book, ramp, pipe)))}. File all ends inside and out. Holes are drilled later: part Coping${onPage(`pipe ${pipes[0]!.ramp.name}`)}.`,
        ]
      : []),
    ...(panels.length > 0
      ? [
          `Saw the steel sheets from ${numberList(
            'panel',
            panels.map(({ number }) => number),
          )}${onPage(`panel ${panels[0]!.number}`)} with a metal blade in the jigsaw, gloves on and all of it clamped down, or let the shop shear them. File every edge round, and write each mark on the face that comes below, with an arrow to ${quarters.length > 0 ? 'the edge at the toe' : 'its first end'}.`,
        ]
      : []),
    ...(sheets.length > 0
      ? [
          `Saw the run-out${sheets.length > 1 ? 's' : ''} with a metal blade in the jigsaw, gloves on and all of it clamped down, or let the shop shear: ${wordList(sheets)}. File every edge round.`,
        ]
      : []),
  ]
}

/** How many parts of a ramp's run-out these panels hold. */
const runOutsOn = (panels: readonly Panel[], { name }: SolvedQuarter): number =>
  panels
    .flatMap(({ pieces }) => pieces)
    .filter(({ part: { part: of, ramp } }) => of === 'run-out' && ramp === name).length

/** `outer `, where there are several. */
const whose = ({ several }: Book, { name }: SolvedRamp): string => (several ? `${name} ` : '')

/** Two lengths are set one after the other; more are read in the step. */
const stopWords = ({ solved: { ramps }, show }: Book): string => {
  const lengths = [...new Set(ramps.map(({ studLength }) => show(studLength)))]
  return lengths.length > 2 ? 'one by one' : lengths.join(', then ')
}

/** All timbers in one step: how long, and where they are listed. */
const timberSteps = (book: Book): readonly string[] => {
  const { ramps } = book.solved
  const lengths = ramps.map(
    (ramp) =>
      `${whose(book, ramp)}${book.show(ramp.studLength)} long${ramp.design.sides.count > 2 ? ', for each bay' : ''}${onPage(`timbers ${ramp.name}`)}`,
  )
  const short = ramps.flatMap((ramp) => {
    const words = shortWords(book, ramp)
    return words === '' ? [] : [` ${capital(`${whose(book, ramp)}${words}`)}`]
  })
  return [
    `Saw the timbers by board${onPage('boards')}: ${wordList(lengths)}. A stop block on the saw, the first piece measured twice.${short.join('')}`,
  ]
}

/** Whether its sides are of pieces, held by plates. */
const plated = ({ splices }: SolvedRamp): boolean => splices.length > 0

/** Holes of handles and ropes, while the wood is bare and the sides lie on each other. */
const gripSteps = ({ stock, several, solved: { ramps } }: Book): readonly string[] =>
  stock.moving.some(({ handle }) => handle) || straightOf(ramps).length > 0
    ? [
        `Clamp the sides on each other${ramps.some(plated) ? ', outside to outside where their insides have plates' : ''}; drill for handles or ropes${onPage('grips', several ? ', ramp by ramp in Storing and moving' : '')}.`,
      ]
    : []

/** Edges that no brush reaches once the ramp stands, each sealed before it is covered. */
const hiddenEdges = ({ solved: { ramps }, piped }: Book): readonly string[] => {
  const steel = steelUses(ramps)
  const ofWood = (use: SteelUse): string => (steel.includes(use) ? 'wooden ' : '')
  return [
    'the ends of the timbers',
    `all edges of the sides${piped ? ' with their notches' : ''}`,
    ...(ramps.some((ramp) => hasSkin(ramp) && ramp.skin.some(({ sheet }) => !isSteel(sheet)))
      ? [`both ends of each ${ofWood('skin')}layer of skin`]
      : []),
    ...(curvedOf(ramps).some(({ deckBoard }) => deckBoard && !isSteel(deckBoard.sheet))
      ? [`the front edge of the ${ofWood('deck board')}deck board`]
      : []),
    ...(meetingSheets(ramps) ? ['the edges where sheets meet'] : []),
  ]
}

const paintActs = (book: Book): readonly Act[] =>
  book.stock.list.some(({ part: of }) => of === 'finish')
    ? [
        {
          count: 1,
          blocks: (first) =>
            together(
              [
                caution(tinRule, book.width),
                step(
                  first,
                  `Seal now what is hidden later: ${wordList(hiddenEdges(book))}. Brush paint or oil on until the wood takes no more, and let it dry. All else waits for Finishing${onPage('finishing')}.`,
                  book.width,
                ),
              ],
              book.tall,
            ),
        },
      ]
    : []

/** How long it is sawn, in pieces where no stock is long enough. */
const pipeWords = (book: Book, ramp: SolvedQuarter, { length, pieces }: Pipe): string =>
  whose(book, ramp) +
  (pieces.length > 1
    ? `${pieces.length} pieces, ${wordList(pieces.map((one) => book.show(one.length)))} long (${book.show(length)} in all)`
    : `${book.show(length)} long`)
