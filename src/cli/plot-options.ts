import type { Design, PaperName, Units } from '../design/design.ts'
import { paperNames } from '../design/design.ts'
import { implausible, type Range } from '../design/plausible.ts'
import { inch } from '../geometry/inch.ts'
import { nearWord } from '../length/near.ts'
import { readLength, showLength } from '../length.ts'
import { type Cover, covers } from '../page/cover/cover.ts'
import { defaultMargins, defaultOverlap, type Margins, paperOf } from '../page/sheet/paper.ts'
import type { Sheet } from '../page/sheet/sheet.ts'
import { type Profile, profileCorrection } from '../printer/profile.ts'
import { type PrinterUncertainty, printerUncertainty } from '../printer/uncertainty.ts'
import type { Given } from './command.ts'
import { Failure } from './failure.ts'
import { fourLengths, marginsFrom } from './four-lengths.ts'
import type { layingOptions } from './options.ts'
import { loadProfile } from './profiles.ts'

/** As they come from the command line. */
export type RawPlotOptions = Given<typeof layingOptions> & {
  readonly printer?: string
  readonly profiles?: string
}

/** Resolved once; past here nobody asks whether something was said. */
export interface SheetOptions {
  readonly sheet: Sheet
  readonly overlap: number
  /** name of the profile whose correction the sheet has; null for none */
  readonly printer: string | null
  /** how well that printer is known */
  readonly uncertainty: PrinterUncertainty
  /** the margins are those that the printer was measured to leave, and differ from the usual ones */
  readonly gaugedMargins: boolean
  /** what speaks against the printer's profile being used so */
  readonly warnings: readonly string[]
}

export interface PlotOptions extends SheetOptions {
  /** null: the way that a careful builder would take */
  readonly cover: Cover | null
  /** add the story strips */
  readonly strips: boolean
  /** lay small parts together on pages that they share */
  readonly pack: boolean
}

/** What a page must carry of its own after margins and overlap, mm: less holds no joint, no words and no line. */
const leastPitch = 60
const overlapRange = { least: 8, most: 60 } as const

/** Fails with everything that is wrong with the options at once. */
export const plotOptions = (raw: RawPlotOptions, design: Design): PlotOptions => {
  const faults: string[] = []
  const cover = raw.cover === undefined ? null : oneOf('--cover', raw.cover, covers, 'whole', faults)
  return {
    ...sheetOptions(raw, design.units, design.paper, faults),
    cover,
    strips: raw.strips ?? false,
    pack: raw.pack ?? false,
  }
}

/** Paper, margins, overlap and printer. Fails with its own faults and those that are `known` already. */
export const sheetOptions = (
  raw: Pick<RawPlotOptions, 'paper' | 'margin' | 'overlap' | 'printer' | 'profiles'>,
  units: Units,
  otherwise: PaperName,
  known: readonly string[] = [],
): SheetOptions => {
  const faults = [...known]
  const profile = raw.printer === undefined ? null : loadProfile(raw.printer, raw.profiles)
  const paper = oneOf('--paper', raw.paper, paperNames, otherwise, faults)
  const margins =
    raw.margin === undefined ? marginsOf(profile, paper) : readMargins(raw.margin, units, paper, faults)
  const overlap =
    raw.overlap === undefined
      ? defaultOverlap
      : lengthOption('--overlap', raw.overlap, units, overlapRange, faults)
  const sheet = { paper: paperOf(paper), margins, correction: profileCorrection(profile) }
  if (faults.length === 0) faults.push(...sheetFaults(sheet, overlap, units))
  if (faults.length > 0) throw new Failure(2, faults.join('\n'))
  return {
    sheet,
    overlap,
    printer: profile?.name ?? null,
    uncertainty: printerUncertainty(profile ? profile.readings : null),
    gaugedMargins:
      raw.margin === undefined && sides.some((side) => margins[side] !== defaultMargins(paper)[side]),
    warnings: profile ? profileWarnings(profile, sheet, units) : [],
  }
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
  // two letters are no slip of longer ones
  const near = said.length > 2 ? nearWord(said.toLowerCase(), allowed) : undefined
  if (found === undefined)
    faults.push(
      `${option} ${said}: say one of ${allowed.join(', ')}${near === undefined ? '' : `; did you mean ${near}?`}`,
    )
  return found ?? otherwise
}

/** The length that an option says, mm; what is wrong with it joins `faults`. */
export const lengthOption = (
  option: string,
  said: string,
  units: Units,
  range: Range,
  faults: string[],
): number => {
  const reading = readLength(said, units)
  if (!('mm' in reading)) {
    faults.push(`${said === '' ? option : `${option} ${said}`}: ${reading.error}`)
    return 0
  }
  const found = implausible(said.trim(), reading, range, units)
  if (found) faults.push(`${option} ${found.fault}`)
  return reading.mm
}

/** In the order of --margin. */
const sides = ['top', 'right', 'bottom', 'left'] as const

/** One length for all four, or four: top, right, bottom, left of the upright page, with commas or blanks between. */
const readMargins = (said: string, units: Units, paper: PaperName, faults: string[]): Margins => {
  const parts = fourLengths(said, units)
  if (!parts) {
    faults.push(`--margin ${said}: give one length, or four with commas between: top, right, bottom, left`)
    return defaultMargins(paper)
  }
  const most = Math.max(paperOf(paper).width, paperOf(paper).height)
  const option = (i: number): string => (parts.length === 1 ? '--margin' : `--margin ${sides[i]}`)
  return marginsFrom(parts.map((part, i) => lengthOption(option(i), part, units, { least: 0, most }, faults)))
}

const sheetFaults = ({ paper, margins }: Sheet, overlap: number, units: Units): readonly string[] => {
  const show = (mm: number): string => showLength(mm, units, { unit: true, decimals: 1 })
  // rounded down, so that what is offered is accepted
  const step = units === 'in' ? inch / 16 : 0.1
  const showMost = (mm: number): string => show(Math.floor(mm / step + 1e-9) * step)
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
        `for the drawing, less than ${show(leastPitch)}; margins and overlap together may take at most ${showMost(size - leastPitch)}, or take larger paper`,
    ]
  })
}

/** Without --margin: what the printer was measured to leave, and a millimetre more; else what most printers leave. */
const marginsOf = (profile: Profile | null, paper: PaperName): Margins => {
  const least = profile?.margins
  if (!least) return defaultMargins(paper)
  const room = (mm: number): number => Math.ceil(mm) + 1
  return {
    top: room(least.top),
    right: room(least.right),
    bottom: room(least.bottom),
    left: room(least.left),
  }
}

const profileWarnings = (profile: Profile, { paper, margins }: Sheet, units: Units): readonly string[] => {
  const least = profile.margins
  const small = least ? sides.filter((side) => margins[side] < least[side]) : []
  return [
    ...(profile.paper === paper.name
      ? []
      : [
          `printer ${profile.name} was measured on ${profile.paper}, this is ${paper.name}; measure it again on this paper and tray`,
        ]),
    ...small.map(
      (side) =>
        `the ${side} margin of ${showLength(margins[side], units, { unit: true, decimals: 1 })} is less than printer ${profile.name} prints (${showLength(least![side], units, { unit: true, decimals: 1 })}); raise --margin`,
    ),
  ]
}
