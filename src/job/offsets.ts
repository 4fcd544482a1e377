import { offsetsPages } from '../booklet/offsets/offsets-page.ts'
import type { Design, Units } from '../design/design.ts'
import { curvedOf } from '../design/kind-traits.ts'
import { largestPanel, sideSheet } from '../design/panel-sizes.ts'
import { sheetWindow } from '../page/sheet/sheet.ts'
import { type Offsets, solveOffsets } from '../ramp/offsets.ts'
import type { SolvedQuarter, WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import type { Laying } from './laying.ts'
import type { Refusal } from './refusal.ts'

/** Closer marks than this are no help, wider ones no curve, mm. */
export const everyRange = { least: 20, most: 600 }

/** Distance of the marks along the bottom edge unless said, mm. */
export const usualEvery = (units: Units): number => (units === 'in' ? 152.4 : 150)

export interface OffsetsJob {
  readonly solved: WholeDesign
  readonly ramps: readonly SolvedQuarter[]
  /** one for each of them */
  readonly offsets: readonly Offsets[]
}

/** The curves of a design as distances to set out by hand. `every`: distance of the marks along the bottom edge, mm. */
export const offsetsJob = (design: Design, every = usualEvery(design.units)): OffsetsJob | Refusal => {
  const solved = solveDesign(design)
  if (solved.stopped) return { refused: 'stop', checks: solved.checks }
  const ramps = curvedOf(solved.ramps)
  if (ramps.length === 0) return { refused: 'no-curve' }
  const panelOf = (ramp: SolvedQuarter) => largestPanel(sideSheet(ramp.design), design.stock, design.units)
  return { solved, ramps, offsets: ramps.map((ramp) => solveOffsets(ramp, every, panelOf(ramp))) }
}

/** As scripts read it: mm. */
export const offsetsRecord = ({ title, units }: Design, { offsets }: OffsetsJob) => ({
  title,
  units,
  ramps: offsets.map(({ stations, toe, lip, ...rest }) => ({
    ...rest,
    toe: [toe.x, toe.y],
    lip: [lip.x, lip.y],
    stations: stations.map(({ x, y, by, cutAway }) => ({ x, y, by, cutAway })),
  })),
})

/** As pages: one or more for each ramp. */
export const offsetsInput = (
  { title, units }: Design,
  { ramps, offsets }: OffsetsJob,
  sheet: Laying['sheet'],
): PdfInput => {
  const window = sheetWindow(sheet)
  const { width, height } = sheet.paper
  return {
    title,
    subject: `Offsets of the side's curve, in ${units}`,
    pages: offsets.flatMap((one, i) =>
      offsetsPages(window, { title, units, offsets: one, outline: ramps[i]!.side.outline }).map(
        (drawing, k) => ({
          width,
          height,
          draw: () => drawing,
          label: k === 0 ? one.ramp : `${one.ramp} ${k + 1}`,
          bookmark: k === 0 ? `Offsets: ${one.ramp}` : `Offsets: ${one.ramp}, page ${k + 1}`,
        }),
      ),
    ),
    attachments: [],
  }
}
