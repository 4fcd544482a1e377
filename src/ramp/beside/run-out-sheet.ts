import type { Sheet, Stock, Units } from '../../design/design.ts'
import { panelSizes } from '../../design/panel-sizes.ts'
import { same } from '../check/offer.ts'
import { screwLength, screwPoint, screwWithin } from '../frame/screw-lengths.ts'
import type { Stretch } from '../frame/stretch.ts'
import { timberRun } from '../frame/timber-run.ts'
import type { Quarter } from '../ramp.ts'
import { screwsAcross } from '../skin/screw-rows.ts'
import { insideStud, practice } from '../skin/skin-framing.ts'
import { runOutLap, runOutLength } from './toe-step.ts'

/** What is sawn to close the step at the toe. Lengths mm. */
export interface RunOutPieces {
  readonly sheet: Sheet
  /** from its upper end to its tail */
  readonly length: number
  /** in equal parts where no sheet is as long as the ramp is wide */
  readonly widths: readonly Stretch[]
}

/** With the screws that hold it. */
export interface RunOutSheet extends RunOutPieces {
  /** through sheet and skin into the first stud; null where that does not lie there */
  readonly row: RunOutRow | null
}

export interface RunOutRow {
  /** from the sheet's upper end */
  readonly at: number
  /** from the ramp's left outer face */
  readonly across: readonly number[]
  /** of a screw; null where no usual one is short enough */
  readonly length: number | null
}

/** null where something else closes the step, or where the curve is not solved. */
export const runOutPieces = (
  { design, transition }: Quarter,
  stock: Pick<Stock, 'panel' | 'panels'>,
  units: Units,
): RunOutPieces | null => {
  const { runOut, width } = design
  if (runOut.kind !== 'sheet' || !transition) return null
  const { sheet } = runOut
  const longest = Math.max(...panelSizes(sheet, stock, units).map(([, long]) => long))
  const count = Math.ceil((width - same) / longest)
  const widths = Array.from({ length: count }, (_, i) => ({
    from: (i * width) / count,
    length: width / count,
  }))
  return { sheet, length: runOutLength(transition, units), widths }
}

/** The same with its screws, which take far longer to find. */
export const runOutSheet = (
  ramp: Quarter,
  stock: Pick<Stock, 'panel' | 'panels'>,
  units: Units,
): RunOutSheet | null => {
  const pieces = runOutPieces(ramp, stock, units)
  return pieces && { ...pieces, row: rowOf(ramp, pieces, units) }
}

/** In the middle of what laps on the skin, beside the screws of the layers. */
const rowOf = (
  { design, transition, studs, skin, skinThickness }: Quarter,
  { sheet, widths }: RunOutPieces,
  units: Units,
): RunOutRow | null => {
  const { curve, face } = transition!
  const [stud] = studs
  if (!stud) return null
  const up = runOutLap(units) / 2
  const run = timberRun(curve, face.placeAtLength(up), stud, insideStud)
  if (!run) return null
  const through = skinThickness + sheet.thickness
  const wood = through + run.to
  const usual = screwLength(through, units)
  const fits = usual !== null && usual <= wood - screwPoint + same
  const below = skin.flatMap(({ rows }) => rows.flatMap((row) => (row.stud === 0 ? row.across : [])))
  return {
    at: runOutLap(units) - up,
    across: screwsAcross({ design, units }, widths, practice[units].top, false, below),
    length: fits ? usual : screwWithin(wood, units),
  }
}
