import type { Sheet, Stock, Units } from '../../design/design.ts'
import { panelSizes } from '../../design/panel-sizes.ts'
import { countedSizes } from '../../length/counted-sizes.ts'
import { same } from '../check/offer.ts'
import { wallMiddles } from '../frame/bays.ts'
import { screwLength, screwPoint, screwWithin } from '../frame/screw-lengths.ts'
import type { Stretch } from '../frame/stretch.ts'
import { timberRun } from '../frame/timber-run.ts'
import type { Quarter } from '../ramp.ts'
import { offWall, screwApart, screwsAcross } from '../skin/screw-rows.ts'
import { insideStud, meets, noneCrossed, practice } from '../skin/skin-framing.ts'
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
  /** through the sheet; null where nothing is there that a screw holds in */
  readonly row: RunOutRow | null
}

export interface RunOutRow {
  /** what it ends in */
  readonly into: 'stud' | 'skin'
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

/** What these are cut to, and how many of each. */
export const runOutSizes = (sheets: readonly RunOutPieces[], units: Units): readonly string[] =>
  countedSizes(
    sheets.flatMap(({ length, widths }) => widths.map((one) => [length, one.length] as const)),
    units,
  )

/** The same with its screws, which take far longer to find. */
export const runOutSheet = (
  ramp: Quarter,
  stock: Pick<Stock, 'panel' | 'panels'>,
  units: Units,
): RunOutSheet | null => {
  const pieces = runOutPieces(ramp, stock, units)
  return pieces && { ...pieces, row: rowOf(ramp, pieces, units) }
}

/** What holds the sheet as it is seen from the side: square to the curve at a place. Lengths mm. */
interface RunOutScrew {
  readonly into: RunOutRow['into']
  /** up the ridden face from the toe */
  readonly up: number
  readonly place: number
  /** how far its head lies over the frame's curve */
  readonly over: number
  /** null where no usual one is short enough */
  readonly length: number | null
}

/** Into the first stud where that lies under what laps on the skin, else into the skin alone; null where that is too thin, or where nothing is screwed on. */
export const runOutScrew = (
  quarter: Pick<Quarter, 'design' | 'transition' | 'studs' | 'skinThickness'>,
  units: Units,
): RunOutScrew | null => {
  const { design, transition, studs, skinThickness } = quarter
  const [stud] = studs
  if (design.runOut.kind !== 'sheet' || !transition || !stud) return null
  const over = skinThickness + design.runOut.sheet.thickness
  const up = upToStud(transition, stud, units)
  if (up === null) {
    const short = skinThickness > 0 ? screwWithin(over, units) : null
    const middle = runOutLap(units) / 2
    return short === null
      ? null
      : {
          into: 'skin',
          up: middle,
          place: transition.face.placeAtLength(middle),
          over,
          length: short,
        }
  }
  const place = transition.face.placeAtLength(up)
  const wood = over + timberRun(transition.curve, place, stud, insideStud)!.to
  const usual = screwLength(over, units)
  const fits = usual !== null && usual <= wood - screwPoint + same
  return { into: 'stud', up, place, over, length: fits ? usual : screwWithin(wood, units) }
}

/** In the middle of what laps, else in the middle of what of it lies over a stud; null where none of it does. */
const upToStud = (
  { curve, face }: NonNullable<Quarter['transition']>,
  stud: Quarter['studs'][number],
  units: Units,
): number | null => {
  const lap = runOutLap(units)
  const { edge } = practice[units]
  if (timberRun(curve, face.placeAtLength(lap / 2), stud, insideStud)) return lap / 2
  const over = Array.from({ length: Math.floor(lap - 2 * edge) + 1 }, (_, i) => edge + i).filter((up) =>
    meets(curve, face.placeAtLength(up), stud, units),
  )
  return over[Math.floor(over.length / 2)] ?? null
}

const rowOf = (ramp: Quarter, { widths }: RunOutPieces, units: Units): RunOutRow | null => {
  const screw = runOutScrew(ramp, units)
  if (!screw) return null
  const offEnds = screw.into === 'stud' ? (ramp.endScrews[0]?.off ?? 0) : 0
  const keep = Math.max(offWall(ramp.design, noneCrossed, null), offEnds)
  return {
    into: screw.into,
    at: runOutLap(units) - screw.up,
    across: heldAcross(ramp, screw.place, keep, widths, units),
    length: screw.length,
  }
}

/** At a place on the ridden face, beside the screws of the layers. */
export const heldAcross = (
  { design, transition, skin }: Quarter,
  place: number,
  keep: number,
  widths: readonly Stretch[],
  units: Units,
): readonly number[] => {
  const { curve } = transition!
  const own = curve.lengthTo(place)
  const below = skin.flatMap(({ rows }) =>
    rows.flatMap(({ place: at, across }) => (Math.abs(curve.lengthTo(at) - own) < screwApart ? across : [])),
  )
  return evenAcross(design, keep, widths, below, units)
}

/** An outermost screw stands no farther from its sheet's edge; common practice, no source. mm */
const offEdge = 60

/** So many screws more than the fewest may be taken for even ones. */
const mostMore = 4

/** Evenly along each sheet, since they show, and clear of the screws below and of all walls; where no even ones are, those that would not be are moved. */
const evenAcross = (
  design: Quarter['design'],
  keep: number,
  widths: readonly Stretch[],
  below: readonly number[],
  units: Units,
): readonly number[] => {
  const { edge, top } = practice[units]
  const walls = wallMiddles(design)
  const isFree = (p: number): boolean =>
    walls.every((m) => Math.abs(p - m) >= keep - same) &&
    below.every((other) => Math.abs(other - p) >= screwApart - same)
  return widths.flatMap((sheet) => {
    for (let more = 0; more <= mostMore; more++)
      for (let off = Math.ceil(edge); off <= offEdge; off++) {
        const span = sheet.length - 2 * off
        const bays = Math.ceil((sheet.length - 2 * offEdge) / top - same) + more
        if (bays < 1 || span / bays > top + same) continue
        const even = Array.from({ length: bays + 1 }, (_, i) => sheet.from + off + (i * span) / bays)
        if (even.every(isFree)) return even
      }
    return screwsAcross({ design, units }, keep, [sheet], top, false, below)
  })
}
