import { extname } from 'node:path'
import { panelCells } from '../../booklet/cuts/cuts-cells.ts'
import { panelsText } from '../../booklet/cuts/cuts-text.ts'
import type { Design } from '../../design/design.ts'
import { panelFigures } from '../../stock/panel/panel-figures.ts'
import type { SheetPanels } from '../../stock/panel/panels.ts'
import { sheetsOf } from '../../stock/panel/sheets.ts'
import { partsOf } from '../../stock/parts.ts'
import { writeCsv } from '../../write/csv.ts'
import { command, type Given } from '../command.ts'
import { Failure } from '../failure.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, paperWords } from '../options.ts'
import { platform } from '../platform.ts'
import { type SheetOptions, sheetOptions } from '../plot-options.ts'
import type { Shell } from '../shell.ts'
import { solveWhole } from '../solve-whole.ts'

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
  help: 'lay every part on the panels of your stock: where it lies, and what is sawn first',
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
  const { solved, checks } = solveWhole(design)
  const laid = sheetsOf(design, partsOf(design, solved))
  if ('fault' in laid) throw new Failure(1, `${laid.fault}\nnothing written`)
  const { sheets } = laid
  const lost: string[] = []
  if (options.out !== undefined)
    writeOut(options.out, await content(format, design, sheets, sheet, lost), options.force ?? false)
  if (options.json) shell.out(json(design, sheets))
  else if (options.out === undefined) shell.out(text(design, sheets))
  else shell.out(`${options.out}: ${sheets.flatMap(({ panels }) => panels).length} panels.\n`)
  for (const line of [...checks, ...lost.map((warning) => `watch ${warning}`)]) shell.err(`${line}\n`)
  return 0
}

/** Fails with everything that is wrong with the options at once. */
const resolve = (
  options: CutsOptions,
  design: Design,
): { readonly format: Format; readonly sheet: SheetOptions['sheet'] } => {
  const faults: string[] = []
  const ending = options.out === undefined ? '.txt' : extname(options.out).toLowerCase()
  const format = formats.find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${options.out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in .pdf or .svg (drawings), .csv (a spreadsheet), .json or .txt`,
    )
  const { sheet } = sheetOptions(
    options.paper === undefined ? {} : { paper: options.paper },
    design.units,
    design.paper,
    faults,
  )
  return { format: format!, sheet }
}

const text = ({ title, stock, units, ramps }: Design, sheets: readonly SheetPanels[]): string =>
  `${title}: what is sawn from which panel (lengths in ${units === 'mm' ? 'mm' : 'inches; + is 1/32 more, – is 1/32 less'})\n\n` +
  panelsText(sheets, stock.trim, ramps.length > 1, units)

const json = ({ title, units }: Design, sheets: readonly SheetPanels[]): string =>
  `${JSON.stringify({ title, units, panels: panelFigures(sheets) }, null, 2)}\n`

const content = async (
  format: Format,
  design: Design,
  sheets: readonly SheetPanels[],
  sheet: SheetOptions['sheet'],
  lost: string[],
): Promise<string | Uint8Array> => {
  switch (format) {
    case '.csv':
      return writeCsv(panelCells(sheets))
    case '.json':
      return json(design, sheets)
    case '.txt':
      return text(design, sheets)
    case '.svg':
    case '.pdf':
      return drawn(format, design, sheets, sheet, lost)
    default:
      return format satisfies never
  }
}

/** A page a panel as a PDF; as an SVG one page under the other. */
const drawn = async (
  format: '.svg' | '.pdf',
  { title, units, ramps }: Design,
  sheets: readonly SheetPanels[],
  sheet: SheetOptions['sheet'],
  lost: string[],
): Promise<string | Uint8Array> => {
  // loaded here, so that what draws nothing starts without it
  const [{ panelPages }, { sheetWindow }] = await Promise.all([
    import('../../booklet/cuts/panel-page.ts'),
    import('../../page/sheet/sheet.ts'),
  ])
  const pages = panelPages(sheetWindow(sheet), { title, units, several: ramps.length > 1, sheets })
  const { width, height } = sheet.paper
  if (format === '.svg') {
    const [{ writeSvg }, { stackPages }] = await Promise.all([
      import('../../write/svg.ts'),
      import('../../booklet/cuts/stack-pages.ts'),
    ])
    const drawing = stackPages(
      pages.map((page) => page.drawing),
      height,
    )
    return writeSvg({ drawing, width, height: height * pages.length, title })
  }
  const { writePdf } = await import('../../write/pdf.ts')
  const { bytes, warnings } = await writePdf(
    {
      title,
      subject: `Panels with what is sawn from them, in ${units}`,
      pages: pages.map(({ drawing, label }) => ({
        width,
        height,
        draw: () => drawing,
        label,
        bookmark: label[0]!.toUpperCase() + label.slice(1),
      })),
      attachments: [],
    },
    platform,
  )
  lost.push(...warnings)
  return bytes
}
