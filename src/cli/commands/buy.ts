import { listCells } from '../../booklet/list/list-cells.ts'
import { listText } from '../../booklet/list/list-text.ts'
import { buyInput, buyJob, buyRecord } from '../../job/buy.ts'
import { writeCsv } from '../../write/csv.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { askedFormat, giveOut, jsonText, outOption } from '../out-format.ts'
import type { Shell } from '../shell.ts'

const formats = { '.pdf': 'boxes to tick', '.csv': 'a spreadsheet', '.json': '', '.txt': '' } as const

const rows = [
  { name: 'paper', takes: 'name', help: `of the PDF: ${paperWords}; else as the design says` },
  outOption(formats),
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

/** The shopping list. Writes nothing where a check says stop. */
const buy = (file: string, options: BuyOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { format, sheet } = askedFormat(options, design, file, formats)
  const several = design.ramps.length > 1
  const job = done(buyJob(design), { file, several, done: 'buy for' })
  const { list } = job.facts.stock
  const record = () => buyRecord(design, job)
  return giveOut(
    options,
    format,
    {
      as: {
        '.pdf': () => buyInput(design, job, sheet),
        '.csv': () => writeCsv(listCells(list)),
        '.json': () => jsonText(record()),
        '.txt': (columns) => listText(job.facts, columns),
      },
      record,
      holds: `${list.length} lines`,
      checks: job.solved.checks,
      several,
      file,
    },
    shell,
  )
}
