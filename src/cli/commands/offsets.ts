import { extname } from 'node:path'
import { offsetsCells } from '../../booklet/offsets/offsets-cells.ts'
import { offsetsText } from '../../booklet/offsets/offsets-text.ts'
import type { Design } from '../../design/design.ts'
import type { Laying } from '../../job/laying.ts'
import { lengthOption, readLaying } from '../../job/laying-words.ts'
import { everyRange, offsetsInput, offsetsJob, offsetsRecord, usualEvery } from '../../job/offsets.ts'
import { writeCsv } from '../../write/csv.ts'
import type { PdfInput } from '../../write/pdf-input.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { platform } from '../platform.ts'
import type { Shell } from '../shell.ts'
import { showBriefly } from '../show-checks.ts'
import { flatWords } from '../words/flat-words.ts'

const rows = [
  {
    name: 'every',
    takes: 'length',
    help: 'distance of the marks along the bottom edge; else 150 mm or 6 in',
  },
  { name: 'paper', takes: 'name', help: `of the PDF: ${paperWords}; else as the design says` },
  {
    name: 'out',
    takes: 'file',
    help: 'write it to a `.pdf`, `.csv` or `.txt` file instead of printing it',
  },
  forceOption,
  { name: 'json', help: 'print JSON alone, in mm' },
] as const

type OffsetsOptions = Given<typeof rows>

export const offsetsCommand = command({
  name: 'offsets',
  help: 'the curve as distances to set out by hand, without a printer; and the figures of a swing arm',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], given, shell) => offsets(file, given, shell),
})

const formats = ['.pdf', '.csv', '.txt'] as const
type Format = (typeof formats)[number]

/** The curve as distances to set out by hand. Writes nothing where a check says stop. */
const offsets = async (file: string, options: OffsetsOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { every, format, sheet } = resolve(options, design)
  if (options.out !== undefined) checkOut(options.out, options.force ?? false, file)
  const several = design.ramps.length > 1
  const job = done(offsetsJob(design, every), { file, several, done: 'set out' })
  const { solved, offsets: all } = job
  const lost: string[] = []
  if (options.out !== undefined) {
    const content =
      format === '.csv'
        ? writeCsv(offsetsCells(all, design.units))
        : format === '.txt'
          ? offsetsText(design.title, all, design.units)
          : await pdf(offsetsInput(design, job, sheet), lost)
    writeOut(options.out, content, options.force ?? false)
  }
  if (options.json) shell.out(`${JSON.stringify(offsetsRecord(design, job), null, 2)}\n`)
  else if (options.out === undefined) shell.out(offsetsText(design.title, all, design.units))
  else shell.out(`${options.out}: offsets of ${all.map((one) => one.ramp).join(', ')}.\n`)
  const flat = flatWords(solved, 'offsets')
  for (const line of [
    ...showBriefly(solved.checks, several),
    ...lost.map((warning) => `watch ${warning}`),
    ...(flat ? [`note  ${flat}`] : []),
  ])
    shell.err(`${line}\n`)
  return 0
}

interface Resolved {
  readonly every: number
  readonly format: Format
  readonly sheet: Laying['sheet']
}

/** Fails with everything that is wrong with the options at once. */
const resolve = (options: OffsetsOptions, design: Design): Resolved => {
  const faults: string[] = []
  const every =
    options.every === undefined
      ? usualEvery(design.units)
      : lengthOption('--every', options.every, design.units, everyRange, faults)
  const ending = options.out === undefined ? '.txt' : extname(options.out).toLowerCase()
  const format = formats.find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${options.out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in .pdf (a page), .csv (a spreadsheet) or .txt (plain text)`,
    )
  const { sheet } = done(
    readLaying(options.paper === undefined ? {} : { paper: options.paper }, null, design, faults),
  )
  return { every, format: format!, sheet }
}

const pdf = async (input: PdfInput, lost: string[]): Promise<Uint8Array> => {
  // loaded here, so that what writes no PDF starts without it
  const { writePdf } = await import('../../write/pdf.ts')
  const { bytes, warnings } = await writePdf(input, platform)
  lost.push(...warnings)
  return bytes
}
