import type { Design } from '../../design/design.ts'
import type { PageKind } from '../../drawing/set-plan.ts'
import type { Laying } from '../../job/laying.ts'
import { readLaying } from '../../job/laying-words.ts'
import { plotJob } from '../../job/plot.ts'
import { withAnswers } from '../../job/settle/answer-words.ts'
import { countWords } from '../../length/count-words.ts'
import { showLength } from '../../length.ts'
import { squareSideIn } from '../../page/pages/square-page.ts'
import type { LaidSet } from '../../page/set/set.ts'
import { type Sheet, sheetWindow } from '../../page/sheet/sheet.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { loadDesign, nameOf } from '../load-design.ts'
import { forceOption, layingOptions, planOption, profilesOption } from '../options.ts'
import { pdfOut } from '../pdf/pdf-out.ts'
import { writeSet } from '../pdf/write-set.ts'
import { sha256 } from '../platform.ts'
import { paceFor } from '../process/v8-flags.ts'
import { givenProfile } from '../profiles.ts'
import type { Shell } from '../shell.ts'
import { flatWords } from '../words/flat-words.ts'
import { tellBriefly } from '../words/show-checks.ts'
import { wrap } from '../words/wrap.ts'

const rows = [
  ...layingOptions,
  { name: 'printer', takes: 'name', help: 'correct for this printer, measured with `gauge`' },
  profilesOption,
  {
    name: 'out',
    takes: 'file',
    help: 'where to write the PDF, `-` for standard output; else beside you, named after the design',
  },
  { name: 'map', takes: 'file', help: 'also write the map as a PNG, to have on the phone' },
  forceOption,
  planOption,
] as const

export const plotCommand = command({
  name: 'plot',
  help: 'write the full-size pages as a PDF',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], given, shell) => plot(file, given, shell),
})

/** The whole set as a PDF. Writes nothing where a check says stop. */
const plot = async (file: string, raw: Given<typeof rows>, shell: Shell): Promise<number> => {
  const { design, text, answers } = loadDesign(file)
  const laying = done(readLaying(raw, givenProfile(raw), design))
  const out = pdfOut(raw.out ?? `${nameOf(file)}.pdf`, raw, shell, file)
  // loaded here, so that what draws no image starts without it
  const image = raw.map === undefined ? null : await import('../pictures/map-image.ts')
  image?.checkMap(raw.map!, raw.force ?? false, file)
  const several = design.ramps.length > 1
  const job = done(plotJob(design, text, laying, sha256, paceFor), { file, several, done: 'plot' })
  const { solved, covering, set } = job
  const lost = await writeSet(set, design.title, out, shell.progress)
  await image
    ?.writeMap(design.title, set, design.units, raw.map!, raw.force ?? false)
    .catch((error: unknown) => {
      throw error instanceof Failure
        ? new Failure(error.exit, `${error.message}; the pages are written: ${out.name}`)
        : error
    })
  if (raw.json) shell.out(`${JSON.stringify(set.plan, null, 2)}\n`)
  else
    out.say(
      report(
        out.name,
        design,
        set,
        laying.pack,
        laying.sheet,
        laying.gaugedMargins ? marginWords(laying) : null,
        covering.why,
        flatWords(solved, 'pattern'),
      ),
    )
  const { checks } = withAnswers(solved, answers, design.units)
  tellBriefly(shell, { checks, several, file, lost: [...laying.warnings, ...set.warnings, ...lost] })
  return 0
}

type PageUse = 'taped' | 'read first' | 'cut out'

/** What each kind of page is for. */
const uses: Readonly<Record<PageKind, PageUse>> = {
  map: 'read first',
  square: 'read first',
  trial: 'read first',
  parts: 'read first',
  tile: 'taped',
  strip: 'cut out',
}

const report = (
  out: string,
  design: Design,
  set: LaidSet,
  pack: boolean,
  { paper, ...sheet }: Sheet,
  margins: string | null,
  why: string | null,
  flats: string | null,
): string => {
  const count = (isOne: (kind: PageKind) => boolean): number =>
    set.pages.filter(({ kind }) => isOne(kind)).length
  const used = (use: PageUse): number => count((kind) => uses[kind] === use)
  const cut = used('cut out')
  const tiles = set.plan.pages.filter(({ kind }) => kind === 'tile')
  // a side on one page has nothing to join it to
  const joined = new Set(tiles.map(({ pattern }) => pattern)).size < tiles.length
  const counted = [
    `${countWords(used('taped'), 'tile')} to ${joined ? 'tape together' : 'trace from'}`,
    `${used('read first')} to read first`,
    ...(cut > 0 ? [`${cut} of strips to cut out`] : []),
  ].join(', ')
  const square = squareSideIn(sheetWindow({ paper, ...sheet }))
  const side = showLength(square, design.units, { unit: true })
  return [
    `${out}: ${countWords(set.pages.length, 'page')} on ${paper.name}, set ${set.code}: ${counted}.`,
    ...(pack ? [packedWords(set.saved)] : []),
    ...(margins === null ? [] : [wrap(margins)]),
    ...(why === null ? [] : [wrap(`Cover ${set.plan.cover}: ${why}.`)]),
    ...(flats === null ? [] : [wrap(flats)]),
    `1. Print at 100 %, never "fit to page", one-sided.`,
    `2. Measure the test square with a steel rule: ${square} mm${design.units === 'in' ? ` (${side})` : ''} both ways.`,
    count((kind) => kind === 'trial' || kind === 'parts') > 0
      ? '3. Saw the lip trial in scrap and try it with the real pipe.'
      : '3. Read the map: it shows where each page lies.',
    joined
      ? '4. Trim and tape the pages in the order of their numbers, each row to its snap line; check the distances on the map.'
      : `4. Lay ${tiles.length > 1 ? 'each' : 'the'} page by its snap line; check the distances on the map.`,
    '5. Trace, saw on the WASTE side, and use the first side as pattern for the rest.',
    '',
  ].join('\n')
}

/** The margins of a gauged printer in the order of --margin; in mm, as its combs are read. */
const marginWords = ({ printer, sheet: { margins } }: Laying): string => {
  const { top, right, bottom, left } = margins
  return `Margins as gauged for ${printer} and 1 mm more: ${top}, ${right}, ${bottom}, ${left} mm (top, right, bottom, left).`
}

const packedWords = (saved: number): string =>
  saved === 0
    ? 'Packed: no page is saved, so each small part keeps its own.'
    : `Packed: small parts share pages, which saves ${countWords(saved, 'page')}.`
