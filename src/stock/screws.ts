import type { Design, Units } from '../design/design.ts'
import { isCurved } from '../design/kind-traits.ts'
import { runOutSheet } from '../ramp/beside/run-out-sheet.ts'
import { stripJoints } from '../ramp/beside/run-out-strips.ts'
import { pipeAir, pipeOnBlocks } from '../ramp/frame/pipe-timber.ts'
import { screwGrip, screwLength, usualAtLeast } from '../ramp/frame/screw-lengths.ts'
import type { Quarter, Ramp } from '../ramp/ramp.ts'
import { pipeScrewLength } from '../ramp/screws/driven.ts'
import { endScrewLength } from '../ramp/screws/end-screws.ts'
import { type ScrewUse, screwDiameter, screwHead } from '../ramp/screws/screw-sort.ts'
import { plateScrews } from '../ramp/splice/plate-screws.ts'
import type { TimberPart } from './timber-parts.ts'

/** Screws of one length for one use. */
export interface ScrewLine {
  /** mm; null where no usual one is short enough */
  readonly length: number | null
  readonly count: number
  readonly use: ScrewUse
}

/** And of which ramp. */
export interface RampScrews extends ScrewLine {
  readonly ramp: string
}

/** Every screw, ramp by ramp and use by use. */
export const designScrews = (
  design: Pick<Design, 'units' | 'stock'>,
  ramps: readonly Ramp[],
  timbers: readonly TimberPart[],
): readonly RampScrews[] =>
  ramps.flatMap((ramp) => rampScrews(ramp, timbers, design).map((line) => ({ ramp: ramp.name, ...line })))

/** Screws in each end of a timber; common practice, no source. */
export const frameScrews = 2

/** Screws of a block under the pipe; common practice, no source. */
export const blockedScrews = 2

/** Of those, through a block as thick as a timber of the frame; mm. */
export const blockedLength = ({ studs }: Quarter['design'], units: Units): number =>
  usualAtLeast(Math.min(...studs.section) + screwGrip[units], units)

/** Screws of one wheel's plate; common practice, no source. */
const wheelScrews = 4

/** Every screw of a ramp. `timbers`: those of all ramps. */
export const rampScrews = (
  ramp: Ramp,
  timbers: readonly TimberPart[],
  { units, stock }: Pick<Design, 'units' | 'stock'>,
): readonly ScrewLine[] => {
  const { thickness } = ramp.design.sides
  const own = timbers.filter((timber) => timber.ramp === ramp.name)
  const lines: ScrewLine[] = ramp.skin.flatMap((layer) => [
    ...rowScrews(layer.rows, 'skin'),
    ...seamScrews(own, layer, 'skin'),
  ])
  if (ramp.deckBoard)
    lines.push(
      ...rowScrews(ramp.deckBoard.rows, 'deck board'),
      ...seamScrews(own, ramp.deckBoard, 'deck board'),
    )
  const runOut = isCurved(ramp) ? runOutSheet(ramp, stock, units)?.row : null
  if (runOut) lines.push(...rowScrews([runOut], 'run-out'))
  // where pieces of a side meet each wall has one plate between itself and the timber
  const plated = ramp.splices.length * ramp.design.sides.count
  const strips = isCurved(ramp) ? stripJoints(ramp, units)?.screws : null
  if (strips) lines.push({ use: 'run-out strips', ...strips })
  lines.push({
    use: 'frame',
    length: endScrewLength(ramp.design, 0, units),
    count: (own.length * 2 - plated) * frameScrews,
  })
  if (plated > 0) {
    lines.push({
      use: 'frame',
      length: endScrewLength(ramp.design, 1, units),
      count: plated * frameScrews,
    })
    for (const splice of ramp.splices) {
      const { count, length } = plateScrews(splice, thickness, units)
      lines.push({ use: 'plates', length, count: count * ramp.design.sides.count })
    }
  }
  if (isCurved(ramp) && ramp.pipe)
    lines.push({
      use: 'pipe',
      length: pipeScrewLength(pipeAir(ramp, units), units),
      count: ramp.pipe.holes.length,
    })
  if (isCurved(ramp) && ramp.pipe && pipeOnBlocks(ramp, units))
    lines.push({
      use: 'pipe blocks',
      length: blockedLength(ramp.design, units),
      count: ramp.pipe.holes.length * blockedScrews,
    })
  if (ramp.wheels) {
    const plate = screwLength(2, units)
    if (plate !== null)
      lines.push({ use: 'wheels', length: plate, count: ramp.wheels.across.length * wheelScrews })
  }
  return lines.filter(({ count }) => count > 0)
}

/** A shorter block takes one screw of each sheet, a longer one two; common practice, no source. mm */
export const shortBlock = 100

/** A layer, or the deck board: where its sheets meet across, and its rows. */
interface Seamed {
  readonly acrossSeams: readonly { readonly at: number; readonly rib: boolean }[]
  readonly rows: readonly { readonly length: number | null; readonly stud?: number | null }[]
}

/** Screws of sheets into the blocks under their seams, on both sides of each, as long as the others; none where no row goes into timber. */
export const seamScrews = (
  timbers: readonly TimberPart[],
  { acrossSeams, rows }: Seamed,
  use: 'skin' | 'deck board',
): readonly ScrewLine[] => {
  const row = rows.find(({ stud }) => stud !== null)
  const seams = [...new Set(acrossSeams.filter(({ rib }) => !rib).map(({ at }) => Math.round(at)))]
  const blocks = timbers.filter(({ place }) => place?.under === use && seams.includes(place.at))
  const count = blocks.reduce((sum, { length }) => sum + 2 * (length < shortBlock ? 1 : 2), 0)
  return row && count > 0 ? [{ use, length: row.length, count }] : []
}

/** How many, of every length. */
export const screwCount = (lines: readonly ScrewLine[]): number =>
  lines.reduce((all, { count }) => all + count, 0)

/** The letter of a screw's box. */
export const screwLetter = (
  lines: readonly ScrewLine[],
  { use, length }: Pick<ScrewLine, 'use' | 'length'>,
): string =>
  bySize(lines).find(
    (size) =>
      size.length === length &&
      screwDiameter(size.use, 'mm') === screwDiameter(use, 'mm') &&
      screwHead(size.use) === screwHead(use),
  )?.letter ?? ''

const rowScrews = (
  rows: readonly { readonly across: readonly number[]; readonly length: number | null }[],
  use: ScrewLine['use'],
): readonly ScrewLine[] => rows.map(({ across, length }) => ({ use, count: across.length, length }))

/** Lines of one size and head together, the longest first, those without a length last. */
export const bySize = (
  lines: readonly ScrewLine[],
): readonly {
  /** of which all are of one size */
  readonly use: ScrewUse
  readonly length: number | null
  readonly count: number
  readonly uses: readonly ScrewUse[]
  /** written on its box: steps and list call it so */
  readonly letter: string
}[] => {
  const sizeOf = ({ use, length }: ScrewLine): string =>
    `${length} ${screwDiameter(use, 'mm')} ${screwHead(use)}`
  const sorted = [...lines].sort((a, b) => (b.length ?? 0) - (a.length ?? 0))
  return [...new Set(sorted.map(sizeOf))].map((size, i) => {
    const own = sorted.filter((line) => sizeOf(line) === size)
    const [{ use, length }] = own as [ScrewLine]
    return {
      use,
      length,
      count: own.reduce((all, { count }) => all + count, 0),
      uses: [...new Set(own.map((line) => line.use))],
      letter: 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.charAt(i),
    }
  })
}
