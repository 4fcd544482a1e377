import type { Design, PaperName, Units } from '../design/design.ts'
import { paperNames } from '../design/design.ts'
import { readLength, showLength } from '../length.ts'
import { type Cover, covers } from '../page/coverage.ts'
import { defaultMargins, defaultOverlap, type Margins, paperOf } from '../page/paper.ts'
import type { Sheet } from '../page/sheet.ts'
import { noCorrection } from '../printer/correction.ts'
import { Failure } from './failure.ts'

/** As they come from the command line. */
export interface RawPlotOptions {
  readonly paper?: string
  readonly cover?: string
  readonly margin?: string
  readonly overlap?: string
  readonly out?: string
  readonly force?: boolean
  readonly json?: boolean
}

/** Resolved once; past here nobody asks whether something was said. */
export interface PlotOptions {
  readonly sheet: Sheet
  readonly cover: Cover
  readonly overlap: number
}

/** What a page must carry of its own after margins and overlap, mm: less holds no joint, no words and no line. */
const leastPitch = 60
const overlapRange = { least: 8, most: 60 } as const

/** Fails with everything that is wrong with the options at once. */
export const plotOptions = (raw: RawPlotOptions, design: Design): PlotOptions => {
  const faults: string[] = []
  const { units } = design
  const paper = oneOf('--paper', raw.paper, paperNames, design.paper, faults)
  const cover = oneOf('--cover', raw.cover, covers, 'whole', faults)
  const margins =
    raw.margin === undefined ? defaultMargins(paper) : readMargins(raw.margin, units, paper, faults)
  const overlap =
    raw.overlap === undefined
      ? defaultOverlap
      : readOne('--overlap', raw.overlap, units, overlapRange.least, overlapRange.most, faults)
  const sheet = { paper: paperOf(paper), margins, correction: noCorrection }
  if (faults.length === 0) faults.push(...sheetFaults(sheet, overlap, units))
  if (faults.length > 0) throw new Failure(2, faults.join('\n'))
  return { sheet, cover, overlap }
}

const oneOf = <T extends string>(
  option: string,
  said: string | undefined,
  allowed: readonly T[],
  otherwise: T,
  faults: string[],
): T => {
  if (said === undefined) return otherwise
  const found = allowed.find((word) => word === said.toLowerCase())
  if (found === undefined) faults.push(`${option} ${said}: say one of ${allowed.join(', ')}`)
  return found ?? otherwise
}

const readOne = (
  option: string,
  said: string,
  units: Units,
  least: number,
  most: number,
  faults: string[],
): number => {
  const reading = readLength(said, units)
  const show = (mm: number): string => showLength(mm, units, { unit: true, decimals: 1 })
  if (!('mm' in reading)) faults.push(`${option} ${said}: ${reading.error}`)
  else if (reading.mm < least || reading.mm > most)
    faults.push(`${option} ${said}: ${show(reading.mm)} is not between ${show(least)} and ${show(most)}`)
  return 'mm' in reading ? reading.mm : 0
}

/** One length for all four, or four: top, right, bottom, left of the upright page, with commas or blanks between. */
const readMargins = (said: string, units: Units, paper: PaperName, faults: string[]): Margins => {
  const trimmed = said.trim()
  const blanks = trimmed.split(/\s+/)
  const parts = trimmed.includes(',')
    ? trimmed.split(',').map((part) => part.trim())
    : blanks.length === 4 && blanks.every((part) => 'mm' in readLength(part, units))
      ? blanks
      : [trimmed]
  if (parts.length !== 1 && parts.length !== 4) {
    faults.push(`--margin ${said}: give one length, or four with commas between: top, right, bottom, left`)
    return defaultMargins(paper)
  }
  const most = Math.max(paperOf(paper).width, paperOf(paper).height)
  const lengths = parts.map((part) => readOne('--margin', part, units, 0, most, faults))
  const [top, right = top, bottom = top, left = right] = lengths as [number, number?, number?, number?]
  return { top, right, bottom, left }
}

const sheetFaults = ({ paper, margins }: Sheet, overlap: number, units: Units): readonly string[] => {
  const show = (mm: number): string => showLength(mm, units, { unit: true, decimals: 1 })
  return (
    [
      ['wide', paper.width, margins.left, margins.right, 'left and right'],
      ['high', paper.height, margins.top, margins.bottom, 'top and bottom'],
    ] as const
  ).flatMap(([word, size, one, other, names]) => {
    const pitch = size - one - other - overlap
    if (pitch >= leastPitch) return []
    return [
      `${paper.name} is ${show(size)} ${word}: margins of ${show(one)} and ${show(other)} (${names}) and an overlap of ${show(overlap)} leave ${show(Math.max(0, pitch))} ` +
        `for the drawing, less than ${show(leastPitch)}; margins and overlap together may take at most ${show(size - leastPitch)}, or take larger paper`,
    ]
  })
}
