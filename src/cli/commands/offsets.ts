import { offsetsCells } from '../../booklet/offsets/offsets-cells.ts'
import { offsetsText } from '../../booklet/offsets/offsets-text.ts'
import { lengthOption } from '../../job/laying-words.ts'
import { everyRange, offsetsInput, offsetsJob, offsetsRecord, usualEvery } from '../../job/offsets.ts'
import { writeCsv } from '../../write/csv.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { askedFormat, giveOut, outOption } from '../out-format.ts'
import type { Shell } from '../shell.ts'
import { flatWords } from '../words/flat-words.ts'

const formats = { '.pdf': 'a page', '.csv': 'a spreadsheet', '.txt': 'plain text' } as const

const rows = [
  {
    name: 'every',
    takes: 'length',
    help: 'distance of the marks along the bottom edge; else 150 mm or 6 in',
  },
  { name: 'paper', takes: 'name', help: `of the PDF: ${paperWords}; else as the design says` },
  outOption(formats),
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

/** The curve as distances to set out by hand. Writes nothing where a check says stop. */
const offsets = (file: string, options: OffsetsOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { units, title } = design
  const faults: string[] = []
  const every =
    options.every === undefined
      ? usualEvery(units)
      : lengthOption('--every', options.every, units, everyRange, faults)
  const { format, sheet } = askedFormat(options, design, file, formats, faults)
  const several = design.ramps.length > 1
  const job = done(offsetsJob(design, every), { file, several, done: 'set out' })
  const { solved, offsets: all } = job
  const flat = flatWords(solved, 'offsets')
  return giveOut(
    options,
    format,
    {
      as: {
        '.pdf': () => offsetsInput(design, job, sheet),
        '.csv': () => writeCsv(offsetsCells(all, units)),
        '.txt': (columns) => offsetsText(title, all, units, columns),
      },
      record: () => offsetsRecord(design, job),
      holds: `offsets of ${all.map((one) => one.ramp).join(', ')}`,
      checks: solved.checks,
      several,
      file,
      notes: flat ? [flat] : [],
    },
    shell,
  )
}
