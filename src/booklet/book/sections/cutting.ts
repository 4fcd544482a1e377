import { curvedOf, straightOf } from '../../../design/kind-traits.ts'
import { type Block, caution, check, head, part, step, table } from '../block.ts'
import { type Book, ofRamp } from '../book.ts'
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
      `Check it by the table of this part. Then trace it onto the wood of the other ${count === 2 ? 'side' : `${count - 1} sides and ribs`}, saw, clamp all together and smooth their edges as one.`,
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
  for (const ramp of solved.ramps) {
    const bays = ramp.design.sides.count - 1
    next(
      `Saw the timbers${book.several ? ` of ${ramp.name}` : ''}: ${show(ramp.studLength)} long, ${bays > 1 ? 'for each bay ' : ''}as in the table of the frame. Stop block on the saw, the first one measured twice.${shortWords(book, ramp)}`,
    )
  }
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
          ? 'Sides laid on each other show no light between them, and turned over against each other the lips meet.'
          : 'Sides laid on each other are of one length and height.',
        width,
      ),
      ...panelBlocks(book),
      ...boardBlocks(book),
      ...patterns.flatMap((pattern) => {
        const ramp = quarters.find(({ name }) => name === pattern.ramp)!
        const blanks = Array.from({ length: Math.min(mostSides, ramp.design.sides.count) }, () => '')
        return [
          part(ofRamp(book, 'Checks on the sawn wood', ramp), width),
          table(
            {
              columns: [
                { head: '', kind: 'box' as const },
                { head: 'from … to', kind: 'words' as const },
                { head: 'wanted', kind: 'right' as const },
                ...blanks.map((_, i) => ({ head: `side ${i + 1}`, kind: 'blank' as const })),
              ],
              rows: [
                ...pattern.distances.map(({ words: said, value }) => ['', said, fine(value), ...blanks]),
                ...(ramp.coping
                  ? [
                      ['', 'notch, along from the lip', fine(ramp.coping.along), ...blanks],
                      ['', "notch, down from the side's top line", fine(ramp.coping.down), ...blanks],
                    ]
                  : []),
              ],
            },
            width,
          ),
        ]
      }),
    ],
  }
}
