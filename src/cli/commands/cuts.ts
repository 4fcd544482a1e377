import { cutsCells } from '../../booklet/cuts/cuts-cells.ts'
import { cutsText } from '../../booklet/cuts/cuts-text.ts'
import { cutsInput, cutsJob, cutsPicture, cutsRecord } from '../../job/cuts.ts'
import { countWords } from '../../length/count-words.ts'
import { writeCsv } from '../../write/csv.ts'
import { writeSvg } from '../../write/svg.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { askedFormat, giveOut, jsonText, outOption } from '../out-format.ts'
import { sha256 } from '../platform.ts'
import type { Shell } from '../shell.ts'

const formats = {
  '.pdf': 'drawings',
  '.svg': 'drawings',
  '.csv': 'a spreadsheet',
  '.json': '',
  '.txt': '',
} as const

const rows = [
  { name: 'paper', takes: 'name', help: `of the PDF and the SVG: ${paperWords}; else as the design says` },
  outOption(formats),
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

/** Panels with their pieces and the order of cuts. Writes nothing where a check says stop. */
const cuts = (file: string, options: CutsOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { format, sheet } = askedFormat(options, design, file, formats)
  const several = design.ramps.length > 1
  const job = done(cutsJob(design), { file, several, done: 'lay on panels' })
  const { sheets, boards, solved } = job
  const record = () => cutsRecord(design, job)
  const panels = sheets.reduce((sum, own) => sum + own.panels.length, 0)
  return giveOut(
    options,
    format,
    {
      as: {
        '.pdf': () => cutsInput(design, job, sheet, sha256),
        '.svg': () => writeSvg(cutsPicture(design, job, sheet, sha256)),
        '.csv': () => writeCsv(cutsCells(sheets, boards, design.units)),
        '.json': () => jsonText(record()),
        '.txt': (columns) => cutsText(design, sheets, boards, columns),
      },
      record,
      holds: `${countWords(panels, 'panel')}, ${countWords(boards.length, 'timber')}`,
      checks: solved.checks,
      several,
      file,
    },
    shell,
  )
}
