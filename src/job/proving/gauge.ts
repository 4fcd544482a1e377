import { type PaperName, paperNames } from '../../design/design.ts'
import { degreesOf } from '../../geometry/degrees.ts'
import { readLength } from '../../length.ts'
import { gaugePrinter, missingReadings, type Readings, squareDiagonal } from '../../printer/gauge.ts'
import { mostMargin, type Profile } from '../../printer/profile.ts'
import { partReadings, type Reading, readReading, squareSide } from '../../printer/reading.ts'
import { fourLengths, marginsFrom } from '../four-lengths.ts'
import { shortly } from '../laying-words.ts'
import { asked, type Refusal } from '../refusal.ts'

/** What was measured on the printed square, each length in words with its unit; one text may hold several. */
export interface GaugeWords {
  readonly across?: readonly string[]
  readonly down?: readonly string[]
  /** A, B, A, B …; words of one length may stand apart */
  readonly diagonals?: readonly string[]
  /** of the combs: top, right, bottom, left */
  readonly margins?: string
  readonly paper?: string
}

/**
 * What is known of a printer once it is measured. `otherwise`: the paper where none is said. `before`: what was known of it; its
 * margins hold for the same paper until others are said.
 */
export const gaugeJob = (
  name: string,
  said: GaugeWords,
  otherwise: PaperName,
  before: Profile | null = null,
): Profile | Refusal => {
  const faults: string[] = []
  const read = (option: string, texts: readonly string[], nominal: number): readonly Reading[] =>
    texts.flatMap(partReadings).flatMap((text) => {
      const reading = readReading(text, nominal)
      if (!('error' in reading)) return [reading]
      faults.push(`${option}: ${reading.error}`)
      return []
    })
  const diagonals = read(
    '--diagonals',
    said.diagonals?.length ? [said.diagonals.join(' ')] : [],
    squareDiagonal,
  )
  if (diagonals.length % 2 === 1 && faults.length === 0)
    faults.push('--diagonals: give both, first A (lower left to upper right), then B')
  const readings: Readings = {
    across: read('--across', said.across ?? [], squareSide),
    down: read('--down', said.down ?? [], squareSide),
    diagonals: Array.from({ length: Math.floor(diagonals.length / 2) }, (_, i) => [
      diagonals[2 * i]!,
      diagonals[2 * i + 1]!,
    ]),
  }
  faults.push(...missingReadings({ across: said.across ?? [], down: said.down ?? [] }))
  const paper = paperNames.find((word) => word === (said.paper ?? otherwise).toLowerCase())
  if (paper === undefined)
    faults.push(`--paper ${shortly(said.paper ?? '')}: say one of ${paperNames.join(', ')}`)
  const known = before?.paper === paper ? (before?.margins ?? null) : null
  const margins = said.margins === undefined ? known : readMargins(said.margins, faults)
  if (faults.length > 0) return asked(faults)
  const found = gaugePrinter(readings)
  if ('faults' in found) return { refused: 'measured', faults: found.faults }
  const round = (value: number): number => Number(value.toFixed(6))
  return {
    version: 1,
    name,
    paper: paper!,
    across: round(found.distortion.across),
    down: round(found.distortion.down),
    skewDegrees: round(degreesOf(found.distortion.skew)),
    margins,
    readings,
  }
}

const readMargins = (said: string, faults: string[]): Profile['margins'] => {
  const texts = fourLengths(said, 'mm')
  const lengths = texts?.map((text) => readLength(text, 'mm')) ?? []
  const mm = lengths.map((reading) => ('mm' in reading && reading.unit !== null ? reading.mm : -1))
  if (!texts || mm.some((value) => value < 0 || value > mostMargin)) {
    faults.push(
      `--margins ${shortly(said)}: give one length or four, with units, from the combs: top, right, bottom, left, each 0 to ${mostMargin} mm: "4mm, 4mm, 12mm, 4mm"`,
    )
    return null
  }
  return marginsFrom(mm)
}
