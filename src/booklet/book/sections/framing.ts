import { isCurved } from '../../../design/kind-traits.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { planView } from '../../views/plan-view.ts'
import { studView } from '../../views/stud-view.ts'
import { type Block, caution, check, head, part, step, table, words } from '../block.ts'
import { type Book, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { liesWords, rippedWords, roleWords } from '../timber-words.ts'

export const framing = (book: Book): Section => ({
  name: 'framing',
  title: 'Framing',
  blocks: [head('Framing', book.width), ...book.solved.ramps.flatMap((ramp) => frameOf(book, ramp))],
})

const topOf = (ramp: SolvedRamp): number =>
  isCurved(ramp) ? ramp.transition.heights.frame : ramp.heights.frame

const frameOf = (book: Book, ramp: SolvedRamp): readonly Block[] => {
  const { width, units, show } = book
  const curved = isCurved(ramp)
  const where = curved ? 'up the curve' : 'from the end'
  const steps: Block[] = []
  let number = 0
  const next = (said: string): void => {
    steps.push(step(++number, said, width))
  }
  next(
    `Mark every timber on the inside of ${ramp.design.sides.count > 2 ? 'all sides and ribs' : 'both sides'}: ${curved ? 'bend a tape along the sawn edge from the toe' : 'from one end'}, half a timber to either side of the mark, an X where it goes.`,
  )
  const studs = ramp.studs.map((stud, i) => ({ stud, i }))
  const [one] = studs
  if (one)
    next(
      `Stand the sides up, bottoms down on a level floor. Screw stud 1, ${liesWords(one.stud)}, its middle ${show(one.stud.at)} ${where}: one screw in each end for now.`,
    )
  const last = studs.at(-1)
  if (last && last.i > 0)
    next(`Screw stud ${last.i + 1}, ${liesWords(last.stud)}, its middle ${show(last.stud.at)} ${where}.`)
  next(
    `Measure the frame from corner to opposite corner, both ways, along the floor and across the top. Push it until both are equal, then drive the second screw.`,
  )
  const middle = studs.slice(1, -1)
  for (const { stud, i } of middle)
    next(
      `Screw stud ${i + 1}, ${liesWords(stud)}, its middle ${show(stud.at)} ${where}${stud.role === 'seam' ? ': it carries a seam of the skin' : ''}.`,
    )
  if (curved)
    for (const [i, timber] of ramp.deckTimbers.entries())
      next(
        `Screw timber ${ramp.studs.length + i + 1} (${roleWords[timber.role]}), ${liesWords(timber)}, its middle ${show(timber.x)} behind the toe${timber.role === 'pipe' ? ", its top level with the notch's floor" : timber.role === 'back' ? ', on the floor' : ", its top level with the side's top"}.`,
      )
  return [
    part(ofRamp(book, curved ? 'Where the timbers go' : 'Where the studs go', ramp), width),
    figure(
      ofRamp(book, 'One side, timbers numbered', ramp),
      (ratio) => studView(ramp, units, ratio),
      units,
      // its dimensions need all of that
      { width, height: 105 },
      { width: ramp.length, height: topOf(ramp) },
    ),
    table(studTable(book, ramp), width),
    figure(
      ofRamp(book, 'The frame from above', ramp),
      (ratio) => planView(ramp, units, ratio),
      units,
      { width, height: 120 * book.share },
      { width: ramp.length, height: ramp.width },
    ),
    part(ofRamp(book, 'Steps', ramp), width),
    caution(
      'Drill before each screw, near the end of a timber above all. Two people lift and turn the frame; nobody stands under it.',
      width,
    ),
    ...steps,
    check(
      'Both diagonals are equal, the frame stands on all of its sides without rocking, no screw stands proud.',
      width,
    ),
    ...checksOf(book, ramp, ['stud-toe', 'stud-rip', 'span', 'deck-timber', 'pipe-timber', 'flat-studs']),
  ]
}

/** What the figures say of this ramp that bears on the work at hand. */
export const checksOf = (book: Book, ramp: SolvedRamp, ids: readonly string[]): readonly Block[] =>
  book.solved.checks
    .filter((one) => one.ramp === ramp.name && ids.includes(one.id))
    .map(({ message }) =>
      words(`${message.slice(0, 1).toUpperCase()}${message.slice(1).replaceAll('`', '')}.`, book.width),
    )

const studTable = ({ show, fine }: Book, ramp: SolvedRamp) => {
  const { section } = ramp.design.studs
  const curved = isCurved(ramp)
  return {
    columns: [
      { head: '', kind: 'box' as const },
      { head: 'number', kind: 'right' as const, face: 'bold' as const },
      { head: curved ? 'up the curve' : 'from the end', kind: 'figure' as const },
      ...(curved ? [{ head: 'behind the toe', kind: 'figure' as const }] : []),
      { head: 'lies', kind: 'words' as const },
      { head: 'what it is', kind: 'words' as const },
      { head: 'as set', kind: 'blank' as const },
    ],
    rows: [
      ...ramp.studs.map((stud, i) => [
        '',
        `${i + 1}`,
        show(stud.at),
        ...(curved ? [show(stud.x)] : []),
        liesWords(stud),
        ['stud', rippedWords(stud, section, fine), stud.role === 'seam' ? 'under a seam' : '']
          .filter((said) => said !== '')
          .join(', '),
        '',
      ]),
      ...(curved
        ? ramp.deckTimbers.map((timber, i) => [
            '',
            `${ramp.studs.length + i + 1}`,
            '',
            show(timber.x),
            liesWords(timber),
            roleWords[timber.role],
            '',
          ])
        : []),
    ],
  }
}
