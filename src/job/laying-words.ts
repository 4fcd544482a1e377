import type { Design, PaperName, Units } from '../design/design.ts'
import { paperNames } from '../design/design.ts'
import { implausible, type Range } from '../design/plausible.ts'
import { inch } from '../geometry/inch.ts'
import { nearWord } from '../length/near.ts'
import { readLength, showLength } from '../length.ts'
import { covers } from '../page/cover/cover.ts'
import { defaultMargins, type Margins, paperOf, sidesShort } from '../page/sheet/paper.ts'
import type { Sheet } from '../page/sheet/sheet.ts'
import { pageSides } from '../printer/page-sides.ts'
import type { Profile } from '../printer/profile.ts'
import { fourLengths, marginsFrom } from './four-lengths.ts'
import { type Laying, usualLaying } from './laying.ts'
import { asked, type Refusal } from './refusal.ts'

/** How pages are to be laid, in the words of the command line or of a form. */
export interface LayingWords {
  readonly paper?: string
  readonly cover?: string
  readonly strips?: boolean
  readonly pack?: boolean
  readonly margin?: string
  readonly overlap?: string
}

/** What was said, read; and what speaks against the printer's profile being used so. */
export interface ReadLaying extends Laying {
  /** the margins are those that the printer was measured to leave, and differ from the usual ones */
  readonly gaugedMargins: boolean
  readonly warnings: readonly string[]
}

/** What a page must carry of its own after margins and overlap, mm: less holds no joint, no words and no line. */
const leastPitch = 60
const overlapRange = { least: 8, most: 60 } as const

/**
 * Lengths are read in the design's units, its paper is taken where none is said. `known`: faults that were found already; all
 * come together.
 */
export const readLaying = (
  said: LayingWords,
  profile: Profile | null,
  { units, paper: otherwise }: Pick<Design, 'units' | 'paper'>,
  known: readonly string[] = [],
): ReadLaying | Refusal => {
  const faults = [...known]
  const cover = said.cover === undefined ? null : oneOf('--cover', said.cover, covers, 'whole', faults)
  const paper = oneOf('--paper', said.paper, paperNames, otherwise, faults)
  const usual = usualLaying(paper, profile)
  const margins =
    said.margin === undefined ? usual.sheet.margins : readMargins(said.margin, units, paper, faults)
  const overlap =
    said.overlap === undefined
      ? usual.overlap
      : lengthOption('--overlap', said.overlap, units, overlapRange, faults)
  const sheet = { ...usual.sheet, margins }
  if (faults.length === 0) faults.push(...sheetFaults(sheet, overlap, units))
  if (faults.length > 0) return asked(faults)
  return {
    ...usual,
    sheet,
    overlap,
    cover,
    strips: said.strips ?? false,
    pack: said.pack ?? false,
    gaugedMargins:
      said.margin === undefined && pageSides.some((side) => margins[side] !== defaultMargins(paper)[side]),
    warnings: [
      ...(profile ? profileWarnings(profile, sheet, units) : []),
      ...(said.margin === undefined || profile?.margins ? [] : edgeDoubts(sheet, units)),
    ],
  }
}

/** What was said, as a message repeats it. */
export const shortly = (said: string, most = 60): string =>
  said.length > most ? `${said.slice(0, most - 1)}…` : said

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
      `${option} ${shortly(said)}: say one of ${allowed.join(', ')}${near === undefined ? '' : `; did you mean ${near}?`}`,
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
    faults.push(`${said === '' ? option : `${option} ${shortly(said)}`}: ${reading.error}`)
    return 0
  }
  const found = implausible(said.trim(), reading, range, units)
  if (found) faults.push(`${option} ${found.fault}`)
  return reading.mm
}

/** One length for all four, or four: top, right, bottom, left of the upright page, with commas or blanks between. */
const readMargins = (said: string, units: Units, paper: PaperName, faults: string[]): Margins => {
  const parts = fourLengths(said, units)
  if (!parts) {
    faults.push(
      `--margin ${shortly(said)}: give one length, or four with commas between: top, right, bottom, left`,
    )
    return defaultMargins(paper)
  }
  const most = Math.max(paperOf(paper).width, paperOf(paper).height)
  const option = (i: number): string => (parts.length === 1 ? '--margin' : `--margin ${pageSides[i]}`)
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

const profileWarnings = (profile: Profile, { paper, margins }: Sheet, units: Units): readonly string[] => {
  const least = profile.margins
  const small = least ? sidesShort(margins, least) : []
  return [
    ...(profile.paper === paper.name
      ? []
      : [
          `printer ${profile.name} was measured on ${profile.paper}, this is ${paper.name}; measure it again on this paper and tray`,
        ]),
    ...small.map(
      (side) =>
        `the ${side} margin of ${showLength(margins[side], units, { unit: true, decimals: 1 })} is less than printer ${profile.name} prints (${showLength(least![side], units, { unit: true, decimals: 1 })}); give it a wider margin`,
    ),
  ]
}

/** From memory: office printers leave 3 to 5 mm blank. mm */
const nearEdge = 3

/** Margins that hardly a printer prints; of a measured one it is known what it does. */
const edgeDoubts = ({ margins }: Sheet, units: Units): readonly string[] => {
  const least = Math.min(...pageSides.map((side) => margins[side]))
  if (least >= nearEdge) return []
  return [
    `a margin of ${showLength(least, units, { decimals: 1, unit: true })}: most printers do not print so near the edge, and leave out what lies there; measure your printer's margins, or give a wider margin`,
  ]
}
