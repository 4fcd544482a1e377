import { panelPages } from '../booklet/cuts/panel-page.ts'
import { stackPages } from '../booklet/cuts/stack-pages.ts'
import type { Design } from '../design/design.ts'
import { sheetWindow } from '../page/sheet/sheet.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import { panelFigures } from '../stock/panel/panel-figures.ts'
import type { SheetPanels } from '../stock/panel/panels.ts'
import { sheetsOf } from '../stock/panel/sheets.ts'
import { partsOf } from '../stock/parts.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import type { SvgPicture } from '../write/svg.ts'
import type { Laying } from './laying.ts'
import type { Refusal } from './refusal.ts'

export interface CutsJob {
  readonly solved: WholeDesign
  readonly sheets: readonly SheetPanels[]
}

/** Every part of a design on the panels of its stock. */
export const cutsJob = (design: Design): CutsJob | Refusal => {
  const solved = solveDesign(design)
  if (solved.stopped) return { refused: 'stop', checks: solved.checks }
  const laid = sheetsOf(design, partsOf(design, solved))
  return 'faults' in laid ? { refused: 'stock', faults: laid.faults } : { solved, sheets: laid.sheets }
}

/** As scripts read it: mm and degrees. */
export const cutsRecord = ({ title, units }: Design, { sheets }: CutsJob) => ({
  title,
  units,
  panels: panelFigures(sheets),
})

const pagesOf = ({ title, units, ramps }: Design, { sheets }: CutsJob, sheet: Laying['sheet']) =>
  panelPages(sheetWindow(sheet), { title, units, several: ramps.length > 1, sheets })

/** A page for each panel; more where its tables are long. */
export const cutsInput = (design: Design, job: CutsJob, sheet: Laying['sheet']): PdfInput => {
  const { width, height } = sheet.paper
  return {
    title: design.title,
    subject: `Panels with what is sawn from them, in ${design.units}`,
    pages: pagesOf(design, job, sheet).map(({ drawing, label }) => ({
      width,
      height,
      draw: () => drawing,
      label,
      bookmark: label[0]!.toUpperCase() + label.slice(1),
    })),
    attachments: [],
  }
}

/** The same pages, one under the other. */
export const cutsPicture = (design: Design, job: CutsJob, sheet: Laying['sheet']): SvgPicture => {
  const { width, height } = sheet.paper
  const pages = pagesOf(design, job, sheet).map(({ drawing }) => drawing)
  return { drawing: stackPages(pages, height), width, height: height * pages.length, title: design.title }
}
