import { extname } from 'node:path'
import { cutsCells } from '../../booklet/cuts/cuts-cells.ts'
import { cutsText } from '../../booklet/cuts/cuts-text.ts'
import type { Design } from '../../design/design.ts'
import { type CutsJob, cutsInput, cutsJob, cutsPicture, cutsRecord } from '../../job/cuts.ts'
import type { Laying } from '../../job/laying.ts'
import { readLaying } from '../../job/laying-words.ts'
import { writeCsv } from '../../write/csv.ts'
import { writeSvg } from '../../write/svg.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { platform } from '../platform.ts'
import type { Shell } from '../shell.ts'
import { showBriefly } from '../show-checks.ts'

const rows = [
  { name: 'paper', takes: 'name', help: `of the PDF and the SVG: ${paperWords}; else as the design says` },
  {
    name: 'out',
    takes: 'file',
    help: 'write it instead of printing it: `.pdf` or `.svg` with the panels drawn to scale, `.csv`, `.json` or `.txt`',
  },
  forceOption,
  { name: 'json', help: 'print JSON alone, in mm and degrees' },
] as const

type CutsOptions = Given<typeof rows>

export const cutsCommand = command({
  name: 'cuts',
  help: 'lay every part on the panels and timber of your stock: where it lies, and what is sawn first',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], given, shell) => cuts(file, given, shell),
})

const formats = ['.pdf', '.svg', '.csv', '.json', '.txt'] as const
type Format = (typeof formats)[number]

/** Panels with their pieces and the order of cuts. Writes nothing where a check says stop. */
const cuts = async (file: string, options: CutsOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { format, sheet } = resolve(options, design)
  if (options.out !== undefined) checkOut(options.out, options.force ?? false, file)
  const several = design.ramps.length > 1
  const job = done(cutsJob(design), { file, several, done: 'lay on panels' })
  const lost: string[] = []
  if (options.out !== undefined)
    writeOut(options.out, await content(format, design, job, sheet, lost), options.force ?? false)
  const count = job.sheets.reduce((sum, { panels }) => sum + panels.length, 0)
  if (options.json) shell.out(json(design, job))
  else if (options.out === undefined) shell.out(cutsText(design, job.sheets, job.boards))
  else
    shell.out(`${options.out}: ${countWords(count, 'panel')}, ${countWords(job.boards.length, 'timber')}.\n`)
  for (const line of [
    ...showBriefly(job.solved.checks, several),
    ...lost.map((warning) => `watch ${warning}`),
  ])
    shell.err(`${line}\n`)
  return 0
}

const countWords = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`

/** Fails with everything that is wrong with the options at once. */
const resolve = (
  options: CutsOptions,
  design: Design,
): { readonly format: Format; readonly sheet: Laying['sheet'] } => {
  const faults: string[] = []
  const ending = options.out === undefined ? '.txt' : extname(options.out).toLowerCase()
  const format = formats.find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${options.out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in .pdf or .svg (drawings), .csv (a spreadsheet), .json or .txt`,
    )
  const { sheet } = done(
    readLaying(options.paper === undefined ? {} : { paper: options.paper }, null, design, faults),
  )
  return { format: format!, sheet }
}

const json = (design: Design, job: CutsJob): string => `${JSON.stringify(cutsRecord(design, job), null, 2)}\n`

const content = async (
  format: Format,
  design: Design,
  job: CutsJob,
  sheet: Laying['sheet'],
  lost: string[],
): Promise<string | Uint8Array> => {
  switch (format) {
    case '.csv':
      return writeCsv(cutsCells(job.sheets, job.boards))
    case '.json':
      return json(design, job)
    case '.txt':
      return cutsText(design, job.sheets, job.boards)
    case '.svg':
      return writeSvg(cutsPicture(design, job, sheet))
    case '.pdf': {
      // loaded here, so that what writes no PDF starts without it
      const { writePdf } = await import('../../write/pdf.ts')
      const { bytes, warnings } = await writePdf(cutsInput(design, job, sheet), platform)
      lost.push(...warnings)
      return bytes
    }
    default:
      return format satisfies never
  }
}
