import type { Sheet } from '../../../design/design.ts'
import { curvedOf } from '../../../design/kind-traits.ts'
import { sideSheet } from '../../../design/panel-sizes.ts'
import { thinWide } from '../../../design/section.ts'
import type { Table } from '../../../drafting/table.ts'
import { showThickness } from '../../../length/thickness.ts'
import { numberList, wordList } from '../../../length/word-list.ts'
import { sidesAlike } from '../../../pattern/side-lines.ts'
import { revealWords } from '../../../ramp/check/reveal-words.ts'
import type { Panel } from '../../../stock/panel/panels.ts'
import { sizeWords } from '../../../stock/panel/sheet-words.ts'
import { isSide } from '../../../stock/sheet-part.ts'
import { type Block, beside, caution, check, head, part, stack, step, table } from '../block.ts'
import type { Book } from '../book.ts'
import { onPage } from '../page-words.ts'
import type { Section } from '../pages.ts'
import { warnings } from './warnings.ts'

/** Before the first cut: what was bought is measured, the pages are checked, the lip is tried. */
export const first = (book: Book): Section => {
  const { width, solved, units, tiles, paper, piped } = book
  const quarters = curvedOf(solved.ramps)
  const steps: Block[] = []
  let number = 0
  const next = (said: string): void => {
    steps.push(step(++number, said, width))
  }
  next(
    `Measure what you bought: every thickness, both sizes of the timber, ${piped ? 'the outside of the pipe, ' : ''}length and width of the panels. Write them in the tables.`,
  )
  next(
    `A thickness${piped ? ', or the outside of the pipe,' : ''} that differs by more than ${units === 'mm' ? '1 mm' : '1/32 in'}: stop. All drawings are for the sizes in this table. Have the ramp laid out anew for what you hold, and printed anew: every layer moves with it. The wide side of the timber may be off by more: set its upper edge as drawn, and plane away what stands out below. A panel too small is changed, or all are laid out anew; one too large is sawn down where a piece takes it whole.`,
  )
  if (quarters.length > 0) {
    next(
      `Print the pages of the plot at 100 %, one-sided, on ${paper} paper: a map, a test square, ${piped ? 'a lip trial where there is a pipe, ' : ''}${tiles} pages to tape. Measure the test square both ways with a steel rule.`,
    )
    for (const said of trialWords(book)) next(said)
    next(
      'Measure both diagonals of each panel that a side is sawn from: equal diagonals make a square panel.',
    )
  }
  return {
    name: 'first',
    title: 'Before the first cut',
    blocks: [
      head('Before the first cut', width),
      ...warnings(book),
      // the trial is sawn in these steps
      caution(
        'Cover eyes, ears and lungs. Clamp the work. Unplug the saw before you change its blade. Treated wood: gloves, a mask, and never burn it.',
        width,
      ),
      ...steps,
      ...tablesOf(book),
      check(
        quarters.length > 0
          ? `The test square is true both ways, ${piped ? 'the lip feels right, ' : ''}every size in the tables is written.`
          : 'Every size in the tables is written.',
        width,
      ),
    ],
  }
}

/** A lip trial for each pattern with a pipe, as the plot has them; the first in full. */
const trialWords = (book: Book): readonly string[] => {
  const { fine, solved } = book
  const trials = sidesAlike(curvedOf(solved.ramps)).filter(([ramp]) => ramp!.coping)
  return trials.map((alike, i) => {
    const { coping, design } = alike[0]!
    const layers = [...(design.skin.length > 0 ? ['skin'] : []), ...(design.deckBoard ? ['deck board'] : [])]
    const of = trials.length > 1 ? ` of ${wordList(alike.map(({ name }) => name))}` : ''
    const laid = `the pipe (${fine(coping!.outside)})${layers.length > 0 ? ` and any scraps as thick as ${wordList(layers)}` : ''}`
    const stands = `the pipe stands ${revealWords(coping!, design, fine, ' and ')}.`
    return i > 0
      ? `Saw and try the lip trial${of} in the same way, with ${laid}: ${stands}`
      : `The trial cut: saw the lip trial${of} in any scrap as thick as the sides, or in a corner of what the panel they come from leaves over${sidePage(book)}. Lay in ${laid}. Run a hand and a wheel over it: ${stands} What does not feel right is laid out anew now, not after the first side.`
  })
}

/** Between two tables, mm. */
const between = 6

/** What is written before the first cut: sizes, and diagonals of the panels that sides come from; side by side where there is room. */
const tablesOf = (book: Book): readonly Block[] => {
  const { width } = book
  const half = (width - between) / 2
  const sizes = (room: number) => [part('Sizes as bought', room), table(boughtTable(book), room)] as const
  const panels = (room: number) => [
    ...(book.patterns.length > 0
      ? [part('Panels of the sides', room), table(diagonalsTable(book), room)]
      : []),
    ...(book.sheets.some((own) => own.panels.length > 0)
      ? [part('Panels as bought', room), table(panelsTable(book), room)]
      : []),
  ]
  const [left, right] = [sizes(half), panels(half)]
  if (right.length === 0) return sizes(width)
  if ([...left, ...right].every((own) => own.kind !== 'table' || own.laid.width <= half + 1e-6))
    return [beside(stack(left), stack(right), half + between)]
  return [...sizes(width), ...panels(width)]
}

const diagonalsTable = (book: Book): Table => ({
  columns: [
    { head: '', kind: 'box' },
    { head: 'panel', kind: 'words' },
    { head: 'one diagonal', kind: 'blank' },
    { head: 'the other', kind: 'blank' },
  ],
  rows: sidePanels(book).map(({ number, pieces }) => [
    '',
    `panel ${number}: ${pieces.map(({ part: { mark } }) => mark).join(', ')}`,
    '',
    '',
  ]),
})

/** Length and width of the panels: some pieces take them uncut. */
const panelsTable = ({ sheets, units }: Book): Table => {
  const alike = new Map<string, Panel[]>()
  for (const panel of sheets.flatMap(({ panels }) => panels)) {
    const size = sizeWords(panel.size, units)
    alike.set(size, [...(alike.get(size) ?? []), panel])
  }
  return {
    columns: [
      { head: '', kind: 'box' },
      { head: 'panel', kind: 'words' },
      { head: 'drawn for', kind: 'right' },
      { head: 'as measured', kind: 'blank' },
    ],
    rows: [...alike].map(([size, own]) => [
      '',
      numberList(
        'panel',
        own.map(({ number }) => number),
      ),
      size,
      '',
    ]),
  }
}

/** The panels that sides with a curve come from. */
const sidePanels = ({ sheets }: Book) =>
  sheets
    .flatMap(({ panels }) => panels)
    .filter(({ pieces }) => pieces.some(({ part: own, second }) => isSide(own) && second !== null))

const sidePage = (book: Book): string => {
  const [panel] = sidePanels(book)
  return panel ? onPage(`panel ${panel.number}`) : ''
}

/** Every sheet, timber and pipe with its size in the design, and blanks. */
const boughtTable = ({ solved: { ramps }, fine, units }: Book) => {
  const thick = ({ thickness }: Sheet): string => showThickness(thickness, units)
  const rows = new Map<string, { readonly what: string; readonly size: string; readonly of: Set<string> }>()
  for (const ramp of ramps) {
    const { design } = ramp
    const add = (what: string, size: string): void => {
      const key = `${what} ${size}`
      rows.set(key, { what, size, of: new Set([...(rows.get(key)?.of ?? []), ramp.name]) })
    }
    add('plywood of the sides', thick(sideSheet(design)))
    add('timber', thinWide(design.studs.section).map(fine).join(' × '))
    for (const { sheet } of ramp.skin) add(`${sheet.material} of the skin`, thick(sheet))
    if (ramp.deckBoard) add(`${ramp.deckBoard.sheet.material} of the deck`, thick(ramp.deckBoard.sheet))
    const { runOut } = design
    if (runOut?.kind === 'sheet') add(`${runOut.sheet.material} of the run-out`, thick(runOut.sheet))
    if (ramp.coping) add('pipe, outside', fine(ramp.coping.outside))
  }
  return {
    columns: [
      { head: '', kind: 'box' as const },
      { head: 'what', kind: 'words' as const },
      { head: 'drawn for', kind: 'right' as const },
      { head: 'as measured', kind: 'blank' as const },
    ],
    rows: [...rows.values()].map(({ what, size, of }, _, all) => [
      '',
      // two sizes of one thing: whose
      all.filter((one) => one.what === what).length > 1 && of.size < ramps.length
        ? `${what}: ${wordList([...of])}`
        : what,
      size,
      '',
    ]),
  }
}
