import { cutsPages } from '../booklet/cuts/cuts-pages.ts'
import { stackPages } from '../booklet/cuts/stack-pages.ts'
import { type NumberedBoard, numberedBoards } from '../booklet/cuts/timber-words.ts'
import type { Design } from '../design/design.ts'
import { codedDesign, codePart, type Fingerprint } from '../page/set/set-code.ts'
import { sheetWindow } from '../page/sheet/sheet.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { panelFigures } from '../stock/panel/panel-figures.ts'
import type { SheetPanels } from '../stock/panel/panels.ts'
import { timberFigures } from '../stock/stock-figures.ts'
import { type SectionPlan, sawTimber } from '../stock/timber/boards.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import type { SvgPicture } from '../write/svg.ts'
import type { Laying } from './laying.ts'
import { isRefusal, type Refusal } from './refusal.ts'
import { laidDesign } from './supplied.ts'

export interface CutsJob {
  readonly solved: WholeDesign
  readonly sheets: readonly SheetPanels[]
  readonly boards: readonly NumberedBoard[]
  readonly timber: readonly SectionPlan[]
}

/** Every part of a design on the panels and timber of its stock. */
export const cutsJob = (design: Design): CutsJob | Refusal => {
  const laid = laidDesign(design)
  if (isRefusal(laid)) return laid
  const { solved, parts, sheets } = laid
  // a stud longer than every timber is a stop
  const timber = sawTimber(parts.timbers, design)!
  return {
    solved,
    sheets,
    timber,
    boards: numberedBoards({ timber, parts: parts.timbers }, design.stock.kerf),
  }
}

/** As scripts read it: mm and degrees. */
export const cutsRecord = ({ title, units }: Design, { sheets, timber }: CutsJob) => ({
  title,
  units,
  panels: panelFigures(sheets),
  timber: timberFigures(timber),
})

const pagesOf = (
  design: Design,
  { sheets, boards }: CutsJob,
  sheet: Laying['sheet'],
  fingerprint: Fingerprint,
) => {
  const { title, units, ramps, stock } = design
  const code = codePart(codedDesign(design), fingerprint)
  return cutsPages(sheetWindow(sheet), {
    title,
    units,
    stock,
    several: ramps.length > 1,
    sheets,
    boards,
    code,
  })
}

/** A page for each panel, more where its tables are long; then the timber. */
export const cutsInput = (
  design: Design,
  job: CutsJob,
  sheet: Laying['sheet'],
  fingerprint: Fingerprint,
): PdfInput => {
  const { width, height } = sheet.paper
  return {
    title: design.title,
    subject: `Panels and timber with what is sawn from them, in ${design.units}`,
    pages: pagesOf(design, job, sheet, fingerprint).map(({ drawing, label }) => ({
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
export const cutsPicture = (
  design: Design,
  job: CutsJob,
  sheet: Laying['sheet'],
  fingerprint: Fingerprint,
): SvgPicture => {
  const { width, height } = sheet.paper
  const pages = pagesOf(design, job, sheet, fingerprint).map(({ drawing }) => drawing)
  return { drawing: stackPages(pages, height), width, height: height * pages.length, title: design.title }
}
