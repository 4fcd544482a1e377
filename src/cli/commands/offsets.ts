import { extname } from 'node:path'
import { offsetsCells } from '../../booklet/offsets/offsets-cells.ts'
import { offsetsText } from '../../booklet/offsets/offsets-text.ts'
import type { Design } from '../../design/design.ts'
import type { Units } from '../../length.ts'
import { type Offsets, solveOffsets } from '../../ramp/offsets.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { writeCsv } from '../../write/csv.ts'
import { command, type Given } from '../command.ts'
import { curvedRamps, flatWords } from '../curves.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { platform } from '../platform.ts'
import { lengthOption, type SheetOptions, sheetOptions } from '../plot-options.ts'
import type { Shell } from '../shell.ts'
import { solveWhole } from '../solve-whole.ts'

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

/** Closer marks than this are no help, wider ones no curve, mm. */
const everyRange = { least: 20, most: 600 }

const formats = ['.pdf', '.csv', '.txt'] as const
type Format = (typeof formats)[number]

/** The curve as distances to set out by hand. Writes nothing where a check says stop. */
const offsets = async (file: string, options: OffsetsOptions, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const { every, format, sheet } = resolve(options, design)
  if (options.out !== undefined) checkOut(options.out, options.force ?? false, file)
  const { solved, checks } = solveWhole(design)
  const ramps = curvedRamps(solved, file, 'set out')
  const all = ramps.map((ramp) => solveOffsets(ramp, every, design.stock.panel))
  const lost: string[] = []
  if (options.out !== undefined) {
    const content =
      format === '.csv'
        ? writeCsv(offsetsCells(all, design.units))
        : format === '.txt'
          ? offsetsText(design.title, all, design.units)
          : await pdf(design, ramps, all, sheet, lost)
    writeOut(options.out, content, options.force ?? false)
  }
  if (options.json) shell.out(`${JSON.stringify(report(design, all), null, 2)}\n`)
  else if (options.out === undefined) shell.out(offsetsText(design.title, all, design.units))
  else shell.out(`${options.out}: offsets of ${all.map((one) => one.ramp).join(', ')}.\n`)
  const flat = flatWords(solved, 'offsets')
  for (const line of [
    ...checks,
    ...lost.map((warning) => `watch ${warning}`),
    ...(flat ? [`note  ${flat}`] : []),
  ])
    shell.err(`${line}\n`)
  return 0
}

interface Resolved {
  readonly every: number
  readonly format: Format
  readonly sheet: SheetOptions['sheet']
}

/** Fails with everything that is wrong with the options at once. */
const resolve = (options: OffsetsOptions, design: Design): Resolved => {
  const faults: string[] = []
  const every =
    options.every === undefined
      ? usual(design.units)
      : lengthOption('--every', options.every, design.units, everyRange, faults)
  const ending = options.out === undefined ? '.txt' : extname(options.out).toLowerCase()
  const format = formats.find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${options.out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in .pdf (a page), .csv (a spreadsheet) or .txt (plain text)`,
    )
  const { sheet } = sheetOptions(
    options.paper === undefined ? {} : { paper: options.paper },
    design.units,
    design.paper,
    faults,
  )
  return { every, format: format!, sheet }
}

/** 150 mm or 6 in along the bottom edge, half of that up the front. */
const usual = (units: Units): number => (units === 'in' ? 152.4 : 150)

const pdf = async (
  design: Design,
  ramps: readonly SolvedQuarter[],
  all: readonly Offsets[],
  sheet: SheetOptions['sheet'],
  lost: string[],
): Promise<Uint8Array> => {
  // loaded here, so that what writes no PDF starts without it
  const [{ writePdf }, { offsetsPages }, { sheetWindow }] = await Promise.all([
    import('../../write/pdf.ts'),
    import('../../booklet/offsets/offsets-page.ts'),
    import('../../page/sheet/sheet.ts'),
  ])
  const window = sheetWindow(sheet)
  const pages = all.flatMap((one, i) =>
    offsetsPages(window, {
      title: design.title,
      units: design.units,
      offsets: one,
      outline: ramps[i]!.side.outline,
    }).map((drawing, k) => ({
      width: sheet.paper.width,
      height: sheet.paper.height,
      draw: () => drawing,
      label: k === 0 ? one.ramp : `${one.ramp} ${k + 1}`,
      bookmark: k === 0 ? `Offsets: ${one.ramp}` : `Offsets: ${one.ramp}, page ${k + 1}`,
    })),
  )
  const { bytes, warnings } = await writePdf(
    {
      title: design.title,
      subject: `Offsets of the side's curve, in ${design.units}`,
      pages,
      attachments: [],
    },
    platform,
  )
  lost.push(...warnings)
  return bytes
}

/** As scripts read it: mm. */
const report = (design: Design, all: readonly Offsets[]) => ({
  title: design.title,
  units: design.units,
  ramps: all.map(({ stations, toe, lip, ...rest }) => ({
    ...rest,
    toe: [toe.x, toe.y],
    lip: [lip.x, lip.y],
    stations: stations.map(({ x, y, by, cutAway }) => ({ x, y, by, cutAway })),
  })),
})
