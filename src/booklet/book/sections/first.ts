import { curvedOf } from '../../../design/kind-traits.ts'
import { type Block, caution, check, head, part, step, table } from '../block.ts'
import type { Book } from '../book.ts'
import type { Section } from '../pages.ts'

/** Before the first cut: what was bought is measured, the pages are checked, the lip is tried. */
export const first = (book: Book): Section => {
  const { width, fine, solved, patterns } = book
  const quarters = curvedOf(solved.ramps)
  const piped = quarters.filter(({ coping }) => coping)
  const steps: Block[] = []
  let number = 0
  const next = (said: string): void => {
    steps.push(step(++number, said, width))
  }
  next(
    'Measure what you bought: every thickness, both sizes of the timber, the outside of the pipe. Write them in the table.',
  )
  next(
    'Where one differs by more than a millimetre (1/32 in), put the measured size in the design file and print anew: every layer moves with it.',
  )
  if (quarters.length > 0) {
    next(
      'Print the pages of the plot at 100 %, one-sided: a map, a test square, a lip trial where there is a pipe, the tiles to tape. Measure the test square both ways with a steel rule.',
    )
    for (const { coping } of piped.slice(0, 1))
      next(
        `Saw the lip trial in what the layout leaves of the side's panel or in any scrap as thick, lay in the pipe (${fine(coping!.outside)}) and scraps of skin and deck board. Run a hand and a wheel over it. How far the pipe stands above the deck board is called up in the design file, how far out of the ridden face is called out: change them there now, not after the first side.`,
      )
    next(
      'Measure both diagonals of each panel that a side is sawn from: equal diagonals make a square panel.',
    )
  }
  return {
    name: 'first',
    title: 'Before the first cut',
    blocks: [
      head('Before the first cut', width),
      ...steps,
      caution(
        'Cover eyes, ears and lungs. Clamp the work. Unplug the saw before you change its blade. Treated wood: gloves, a mask, and never burn it.',
        width,
      ),
      part('Sizes as bought', width),
      table(boughtTable(book), width),
      ...(patterns.length > 0
        ? [
            part('Panels of the sides', width),
            table(
              {
                columns: [
                  { head: '', kind: 'box' },
                  { head: 'panel', kind: 'words' },
                  { head: 'one diagonal', kind: 'blank' },
                  { head: 'the other', kind: 'blank' },
                ],
                rows: patterns.flatMap(({ serves }) => serves).map((name) => ['', `for ${name}`, '', '']),
              },
              width,
            ),
          ]
        : []),
      check(
        'The test square is true both ways, the lip feels right, every size in the table is written.',
        width,
      ),
    ],
  }
}

/** Every sheet, timber and pipe with its size in the design, and blanks. */
const boughtTable = ({ solved: { ramps }, fine }: Book) => {
  const rows = new Map<string, string>()
  const add = (what: string, size: string): void => {
    rows.set(`${what} ${size}`, size)
  }
  for (const ramp of ramps) {
    const { design } = ramp
    add('plywood of the sides', fine(design.sides.thickness))
    add('timber', `${fine(Math.min(...design.studs.section))} × ${fine(Math.max(...design.studs.section))}`)
    for (const { sheet } of ramp.skin) add(`${sheet.material} of the skin`, fine(sheet.thickness))
    if (ramp.deckBoard)
      add(`${ramp.deckBoard.sheet.material} of the deck`, fine(ramp.deckBoard.sheet.thickness))
    const { runOut } = design
    if (runOut?.kind === 'sheet') add(`${runOut.sheet.material} of the run-out`, fine(runOut.sheet.thickness))
    if (ramp.coping) add('pipe, outside', fine(ramp.coping.outside))
  }
  return {
    columns: [
      { head: '', kind: 'box' as const },
      { head: 'what', kind: 'words' as const },
      { head: 'in the design', kind: 'right' as const },
      { head: 'as measured', kind: 'blank' as const },
    ],
    rows: [...rows].map(([what, size]) => ['', what.slice(0, -size.length - 1), size, '']),
  }
}
