import { curvedOf, straightOf } from '../../../design/kind-traits.ts'
import type { Pattern } from '../../../pattern/pattern.ts'
import { runOutLength } from '../../../ramp/beside/toe-step.ts'
import type { Pipe } from '../../../ramp/frame/pipe.ts'
import type { SolvedQuarter } from '../../../ramp/ramp.ts'
import { notchSizes } from '../../../ramp/side/notch-sizes.ts'
import { checkLetters, checksView } from '../../views/checks-view.ts'
import { notchView, notchWindow } from '../../views/notch-view.ts'
import { type Block, caution, check, head, part, step, table, words } from '../block.ts'
import { type Book, leastShare, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { boardBlocks } from './boards.ts'
import { joinSteps, pieceNames, shortWords } from './joining.ts'
import { panelBlocks } from './panels.ts'

/** So many sides have a column of their own to write in. */
const mostSides = 3

/** Sides by their pages, everything else by tape and square; then what is checked on the wood. */
export const cutting = (book: Book): Section => {
  const { width, fine, show, solved, patterns } = book
  const quarters = curvedOf(solved.ramps)
  const steps: Block[] = []
  let number = 0
  const next = (said: string): void => {
    steps.push(step(++number, said, width))
  }
  for (const pattern of patterns) {
    const ramp = quarters.find(({ name }) => name === pattern.ramp)!
    const { count } = ramp.design.sides
    const of = book.several ? ` of ${ramp.name}` : ''
    next(
      `Tape the pages of the side${of} in the order of their numbers and check the distances on their map. ${
        ramp.splices.length > 0
          ? `Lay them on the place of each of its pieces ${pieceNames(ramp)} in turn: each is traced with its joint.`
          : `Lay them on its place on the panel, ${fine(pattern.length)} × ${fine(pattern.height)}.`
      }`,
    )
    next(
      'Trace the curve and the marks of the first side. Go over the line once with a bent batten: no bump.',
    )
    if (ramp.coping?.seat === 'square')
      next(
        'Drill a hole in the inner corner of the notch, wide enough for the blade of the jigsaw. Then saw into it from both sides.',
      )
    next('Saw beside the line on the WASTE side, and smooth down to the line. Ease no edge yet.')
    next(
      `Check it by the table of this part. Then turn it over, so that both outside faces come outside, and trace it onto the wood of the other ${count === 2 ? 'side' : `${count - 1} sides and ribs`}; saw, clamp all together and smooth their edges as one.`,
    )
    const [, ...others] = pattern.serves
    if (others.length > 0) next(`The same pages serve ${others.join('; ')}.`)
  }
  for (const ramp of straightOf(solved.ramps))
    next(
      `${ramp.name}: saw ${ramp.design.sides.count} sides ${show(ramp.length)} × ${fine(ramp.heights.frame)}, straight cuts with a guide.`,
    )
  for (const ramp of solved.ramps.filter(({ splices }) => splices.length > 0))
    for (const said of joinSteps(book, ramp)) next(said)
  for (const ramp of quarters) {
    const of = book.several ? ` of ${ramp.name}` : ''
    if (ramp.pipe) next(pipeWords(book, ramp.pipe, of))
    const { runOut } = ramp.design
    if (runOut.kind === 'sheet' && runOut.sheet.material === 'steel')
      next(
        `Saw the run-out${of} with a metal blade in the jigsaw, or let the shop shear it: ${show(runOutLength(ramp.transition, book.units))} × ${show(ramp.width)}. File every edge round.`,
      )
  }
  for (const ramp of solved.ramps) {
    const bays = ramp.design.sides.count - 1
    next(
      `Saw the timbers${book.several ? ` of ${ramp.name}` : ''}: ${show(ramp.studLength)} long, ${bays > 1 ? 'for each bay ' : ''}as in the table of the frame. Stop block on the saw, the first one measured twice.${shortWords(book, ramp)}`,
    )
  }
  if (book.stock.list.some(({ part: of }) => of === 'finish'))
    next(
      'Paint or oil the sawn edges of every sheet, then its faces, twice in all. What is glued or screwed together is dry first.',
    )
  return {
    name: 'cutting',
    title: 'Cutting',
    blocks: [
      head('Cutting', width),
      caution(
        'Saw outside or with the dust drawn off: dust of plywood and hardboard harms lungs. Two people hold a panel. The offcut falls: keep feet away.',
        width,
      ),
      ...steps,
      check(
        quarters.length > 0
          ? 'Sides laid on each other show no light between them, along the curve, in the notch and at the back.'
          : 'Sides laid on each other are of one length and height.',
        width,
      ),
      ...quarters.flatMap((ramp) => notchBlocks(book, ramp)),
      ...panelBlocks(book),
      ...boardBlocks(book),
      ...patterns.flatMap((pattern) => {
        const ramp = quarters.find(({ name }) => name === pattern.ramp)!
        return checkBlocks(book, ramp, pattern)
      }),
    ],
  }
}

/** How the pipe is sawn to length, in pieces where no stock is long enough. */
const pipeWords = ({ show }: Book, { length, pieces }: Pipe, of: string): string =>
  `Saw the pipe${of} square with a hacksaw: ${
    pieces.length > 1
      ? `${pieces.length} pieces of ${pieces.map((one) => show(one.length)).join(', ')}, ${show(length)} together`
      : `${show(length)} long`
  }. File its ends inside and out. Its holes are drawn in the part Coping.`

/** The notch with what is measured of it, where there is one. */
const notchBlocks = (book: Book, ramp: SolvedQuarter): readonly Block[] => {
  const { width, units, fine } = book
  const { coping } = ramp
  if (!coping) return []
  const { box } = notchWindow(ramp, coping, 1)
  const { back, bottom, floor } = notchSizes(ramp.transition, coping, ramp.length)
  return [
    figure(
      ofRamp(book, 'The notch: dashed is what is sawn away', ramp),
      (ratio) => notchView(ramp, coping, units, ratio),
      units,
      { width, height: 72 * Math.max(leastShare, book.share) },
      { width: box.x1 - box.x0, height: box.y1 - box.y0 },
    ),
    words(
      `Once the notch is sawn its lip is gone: measure its wall ${fine(back)} from the back edge, its ${floor === null ? 'lowest point' : 'floor'} ${fine(bottom)} up from the bottom edge${floor === null ? '' : `, and ${fine(floor)} along the floor from the wall to the curve`}.`,
      width,
    ),
  ]
}

/** One side with its measures, and the table that they are written in. */
const checkBlocks = (book: Book, ramp: SolvedQuarter, pattern: Pattern): readonly Block[] => {
  const { width, units, fine } = book
  const blanks = Array.from({ length: Math.min(mostSides, ramp.design.sides.count) }, () => '')
  const notch = ramp.coping && notchSizes(ramp.transition, ramp.coping, ramp.length)
  const rows = [
    ...pattern.distances.map(({ words: said, value }) => [said, value] as const),
    ...(notch
      ? ([
          ["back edge to the notch's wall", notch.back],
          [
            `bottom edge up to the ${notch.floor === null ? 'lowest point of the notch' : "notch's floor"}`,
            notch.bottom,
          ],
          ...(notch.floor === null ? [] : [["along the notch's floor, wall to curve", notch.floor] as const]),
        ] as const)
      : []),
  ]
  return [
    part(ofRamp(book, 'Checks on the sawn wood', ramp), width),
    figure(
      ofRamp(book, 'What is measured, by the letters of the table', ramp),
      (ratio) => checksView(ramp, ratio),
      units,
      // its letters need all of that
      { width, height: 80 },
      { width: ramp.length, height: ramp.side.height },
    ),
    table(
      {
        columns: [
          { head: '', kind: 'box' as const },
          { head: '', kind: 'words' as const, face: 'bold' as const },
          { head: 'from … to', kind: 'words' as const },
          { head: 'wanted', kind: 'right' as const },
          ...blanks.map((_, i) => ({ head: `side ${i + 1}`, kind: 'blank' as const })),
        ],
        rows: rows.map(([said, value], i) => ['', checkLetters[i]!, said, fine(value), ...blanks]),
      },
      width,
    ),
  ]
}
