import { basename, extname } from 'node:path'
import { inflateSync } from 'node:zlib'
import type { SetPlan } from '../../drawing/set-plan.ts'
import { reprintInput, reprintJob } from '../../job/reprint.ts'
import { countWords } from '../../length/count-words.ts'
import { harmless } from '../../length/quote.ts'
import { covers } from '../../page/cover/cover.ts'
import type { Profile } from '../../printer/profile.ts'
import { mostInflated } from '../../read/limits.ts'
import { kindWords, pickPages } from '../../read/pick-pages.ts'
import type { ReadPlatform } from '../../read/platform.ts'
import type { SetPdf, SetPdfPage } from '../../read/set-pdf.ts'
import { command, type Given, type OptionRow } from '../command.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { forceOption, layingOptions, oneOfWords, paperWords, planOption, profilesOption } from '../options.ts'
import { type PdfOut, pdfOut } from '../pdf/pdf-out.ts'
import { platform, sha256 } from '../platform.ts'
import { loadProfile } from '../profiles.ts'
import { plotAgain, readPdfBytes } from '../reprint/source.ts'
import { faultWords, pickWords, setWords } from '../reprint/words.ts'
import type { Shell } from '../shell.ts'
import { typedName } from '../words/typed-name.ts'

const words: Readonly<Record<string, string>> = { paper: paperWords, cover: oneOfWords(covers) }

/** The options of `plot` once more: they lay the same set again. */
const withSet = layingOptions.map(({ more, ...row }: OptionRow) => ({
  ...row,
  help: `with \`--set\`, as for \`plot\`${words[row.name] === undefined ? '' : `: ${words[row.name]}`}`,
})) as readonly OptionRow[] as typeof layingOptions

const rows = [
  {
    name: 'out',
    takes: 'file',
    help: 'where to write the PDF, `-` for standard output; else beside you, named after the set and its pages',
  },
  {
    name: 'printer',
    takes: 'name',
    help: 'correct the pages for this printer; with `--set`: the one it was plotted for',
  },
  profilesOption,
  {
    name: 'set',
    takes: 'code',
    help: 'lay the set out again from its design: its code, as on every page',
  },
  ...withSet,
  forceOption,
  planOption,
] as const

type ReprintOptions = Given<typeof rows>

export const reprintCommand = command({
  name: 'reprint',
  help: 'write some pages of a set once more, exactly as they were',
  args: [
    { name: 'set', help: "the set's PDF; or, with `--set`, the design that it was plotted from" },
    {
      name: 'pages',
      many: true,
      optional: true,
      help: `tiles by their numbers (\`7\`); ${kindWords.map((word) => `\`${word}\``).join(', ')}`,
    },
  ],
  options: rows,
  run: ([file, pages], given, shell) => reprint(file, pages, given, shell),
})

const reading: ReadPlatform = {
  inflate: (bytes) => inflateSync(bytes, { maxOutputLength: mostInflated }),
  fingerprint: sha256,
}

/** Some pages of a set once more, as they were. Writes nothing where the set is not whole. */
const reprint = async (
  file: string,
  said: readonly string[],
  raw: ReprintOptions,
  shell: Shell,
): Promise<number> => {
  // `2,3` is said as often as `2 3`
  const wanted = said.flatMap((words) => words.split(',')).filter((word) => word !== '')
  const askOut = (): PdfOut | null =>
    wanted.length === 0 ? null : pdfOut(raw.out ?? `${outName(file, wanted)}.pdf`, raw, shell, file)
  const { bytes, warnings } =
    raw.set === undefined ? fromPdf(file, raw) : await plotAgain(file, raw.set, raw, askOut)
  // loaded here, so that what reads no PDF starts without it
  const [{ pageContent, readSetPdf }, { copyPdf }] = await Promise.all([
    import('../../read/set-pdf.ts'),
    import('../../write/pdf-copy.ts'),
  ])
  const set = await readSetPdf(bytes, reading)
  if ('fault' in set) throw new Failure(1, `${faultWords(file, set.fault)}; nothing written`)
  if (wanted.length === 0)
    throw new Failure(2, `say which pages to print again, e.g. 7 or map\n${setWords(set.plan)}`)
  const pages = picked(file, set, wanted)
  const out = askOut()!
  const profile =
    raw.set === undefined && raw.printer !== undefined ? loadProfile(raw.printer, raw.profiles) : null
  const contents = contentsOf(file, pages, pageContent)
  const job = done(
    reprintJob(set.plan, pages, contents, profile, sha256, raw.profiles && typedName(raw.profiles)),
  )
  const copy = await copyPdf(reprintInput(set, job), platform)
  out.write(copy)
  if (raw.json) shell.out(`${JSON.stringify(job.plan, null, 2)}\n`)
  else out.say(report(out.name, set.plan, job.plan, pages, profile))
  for (const warning of [...warnings, ...job.warnings]) shell.err(`watch ${warning}\n`)
  return 0
}

/** Of the design alone: the PDF knows its own. */
const designOptions = ['paper', 'cover', 'margin', 'overlap', 'strips', 'pack'] as const

/** More pages than these are not told in the name of a file, nor longer words: no disk takes a name without end. */
const named = { pages: 8, letters: 20 } as const

/** The set and its pages, in the name of a file. */
const outName = (file: string, pages: readonly string[]): string => {
  const words = pages.map((word) => word.replace(/[^\p{L}\p{N}]/gu, '').slice(0, named.letters))
  const more = words.length - named.pages
  return [
    file === '-' ? 'set' : basename(file, extname(file)),
    ...words.slice(0, named.pages),
    ...(more > 0 ? [`and-${more}-more`] : []),
  ].join('-')
}

const fromPdf = (file: string, raw: ReprintOptions) => {
  const given = designOptions.filter((option) => raw[option] !== undefined)
  if (given.length > 0)
    throw new Failure(
      2,
      `${given.map((option) => `--${option}`).join(', ')}: only with a design file and --set CODE; a PDF knows how it was plotted`,
    )
  return { bytes: readPdfBytes(file), warnings: [] }
}

const picked = (file: string, set: SetPdf, said: readonly string[]): readonly SetPdfPage[] => {
  const here = set.pages.map(({ planned }) => planned.page)
  const labels = new Map(set.pages.map(({ planned, label }) => [planned.page, label]))
  const found = pickPages(set.plan, here, said, labels)
  if (found.absent.length > 0 && set.damaged)
    throw new Failure(1, `${faultWords(file, { kind: 'torn' })}; nothing written`)
  const wrong = pickWords(file, set.plan, found)
  if (wrong !== null) throw new Failure(1, wrong)
  return set.pages.filter(({ planned }) => found.numbers.includes(planned.page))
}

/** The contents, inflated: a page that is damaged fails here and not on paper. */
const contentsOf = (
  file: string,
  pages: readonly SetPdfPage[],
  contentOf: (page: SetPdfPage, platform: ReadPlatform) => Uint8Array,
): readonly Uint8Array[] => {
  try {
    return pages.map((page) => contentOf(page, reading))
  } catch {
    throw new Failure(1, `${faultWords(file, { kind: 'torn' })}; nothing written`)
  }
}

const report = (
  out: string,
  before: SetPlan,
  plan: SetPlan,
  pages: readonly SetPdfPage[],
  profile: Profile | null,
): string => {
  const count = countWords(pages.length, 'page')
  return [
    `${out}: ${count} of set ${plan.set} on ${plan.paper.name}: ${harmless(pages.map(({ label }) => label).join(', '))}${profile ? `; corrected for ${profile.name}` : ''}.`,
    `Print at 100 %, never "fit to page", one-sided${profile ? '' : ', on the printer that printed the set'}${whereWords(pages)}.`,
    ...(plan.set === before.set
      ? []
      : [
          `${pages.length === 1 ? 'It fits' : 'They fit'} the pages of set ${before.set}, and of no other set.`,
        ]),
    '',
  ].join('\n')
}

/** Of the pages to tape. */
const whereWords = (pages: readonly SetPdfPage[]): string => {
  const tiles = pages.filter(({ planned }) => planned.kind === 'tile').length
  if (tiles === 0) return ''
  const what = pages.length === 1 ? 'it' : tiles === pages.length ? 'them' : 'those with a number'
  return `; tape ${what} where the old page${tiles === 1 ? '' : 's'} lay`
}
