import { extname } from 'node:path'
import { listCells } from '../../booklet/list/list-cells.ts'
import { listText } from '../../booklet/list/list-text.ts'
import type { Design } from '../../design/design.ts'
import { type BuyJob, buyInput, buyJob, buyRecord } from '../../job/buy.ts'
import type { Laying } from '../../job/laying.ts'
import { readLaying } from '../../job/laying-words.ts'
import { writeCsv } from '../../write/csv.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { platform } from '../platform.ts'
import type { Shell } from '../shell.ts'
import { showBriefly } from '../show-checks.ts'

const rows = [
  { name: 'paper', takes: 'name', help: `of the PDF: ${paperWords}; else as the design says` },
  {
    name: 'out',
    takes: 'file',
    help: 'write it instead of printing it: `.pdf` with boxes to tick, `.csv`, `.json` or `.txt`',
  },
  forceOption,
  { name: 'json', help: 'print JSON alone' },
] as const

type BuyOptions = Given<typeof rows>

export const buyCommand = command({
  name: 'buy',
  help: 'list what to buy: panels, timber, pipe, screws, fittings; with the cost where the design has `prices`',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], given, shell) => buy(file, given, shell),
})

const formats = ['.pdf', '.csv', '.json', '.txt'] as const
type Format = (typeof formats)[number]

/** The shopping list. Writes nothing where a check says stop. */
const buy = async (file: string, options: BuyOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { format, sheet } = resolve(options, design)
  if (options.out !== undefined) checkOut(options.out, options.force ?? false, file)
  const several = design.ramps.length > 1
  const job = done(buyJob(design), { file, several, done: 'buy for' })
  const lost: string[] = []
  if (options.out !== undefined)
    writeOut(options.out, await content(format, design, job, sheet, lost), options.force ?? false)
  const count = job.facts.stock.list.length
  if (options.json) shell.out(json(design, job))
  else if (options.out === undefined) shell.out(listText(job.facts))
  else shell.out(`${options.out}: ${count} lines.\n`)
  for (const line of [
    ...showBriefly(job.solved.checks, several),
    ...lost.map((warning) => `watch ${warning}`),
  ])
    shell.err(`${line}\n`)
  return 0
}

/** Fails with everything that is wrong with the options at once. */
const resolve = (
  options: BuyOptions,
  design: Design,
): { readonly format: Format; readonly sheet: Laying['sheet'] } => {
  const faults: string[] = []
  const ending = options.out === undefined ? '.txt' : extname(options.out).toLowerCase()
  const format = formats.find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${options.out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in .pdf (boxes to tick), .csv (a spreadsheet), .json or .txt`,
    )
  const { sheet } = done(
    readLaying(options.paper === undefined ? {} : { paper: options.paper }, null, design, faults),
  )
  return { format: format!, sheet }
}

const json = (design: Design, job: BuyJob): string => `${JSON.stringify(buyRecord(design, job), null, 2)}\n`

const content = async (
  format: Format,
  design: Design,
  job: BuyJob,
  sheet: Laying['sheet'],
  lost: string[],
): Promise<string | Uint8Array> => {
  switch (format) {
    case '.csv':
      return writeCsv(listCells(job.facts.stock.list))
    case '.json':
      return json(design, job)
    case '.txt':
      return listText(job.facts)
    case '.pdf': {
      // loaded here, so that what writes no PDF starts without it
      const { writePdf } = await import('../../write/pdf.ts')
      const { bytes, warnings } = await writePdf(buyInput(design, job, sheet), platform)
      lost.push(...warnings)
      return bytes
    }
    default:
      return format satisfies never
  }
}
