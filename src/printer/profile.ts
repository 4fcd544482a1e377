import { type PaperName, paperNames } from '../design/design.ts'
import { radiansOf } from '../geometry/degrees.ts'
import { type Correction, noCorrection } from './correction.ts'
import { correctionOf, type Distortion } from './distortion.ts'
import type { Readings } from './gauge.ts'
import { pageSides } from './page-sides.ts'
import { readingLines, readReadingLines } from './reading-lines.ts'

/** What is known of one printer with one paper; kept in a file of its own. Lengths mm. */
export interface Profile {
  readonly version: 1
  readonly name: string
  readonly paper: PaperName
  /** printed over ideal, across and down the page */
  readonly across: number
  readonly down: number
  /** how far the upright leans to the right, degrees */
  readonly skewDegrees: number
  /** the least margins that the printer prints, of the upright page; null when not measured */
  readonly margins: {
    readonly top: number
    readonly right: number
    readonly bottom: number
    readonly left: number
  } | null
  readonly readings: Readings
}

/** A profile as its file and scripts have it: each reading a line of words, as it was typed. */
export const profileRecord = (profile: Profile) => ({
  ...profile,
  readings: readingLines(profile.readings),
})

export const profileDistortion = ({ across, down, skewDegrees }: Profile): Distortion => ({
  across,
  down,
  skew: radiansOf(skewDegrees),
})

export const profileCorrection = (profile: Profile | null): Correction =>
  profile ? correctionOf(profileDistortion(profile)) : noCorrection

/** The profile as its file holds it. */
export const writeProfile = (profile: Profile): string =>
  `${JSON.stringify(profileRecord(profile), null, 2)}\n`

/** No printer leaves more, mm. */
export const mostMargin = 50

/** A profile from its file's text, or why it is none. */
export const readProfile = (text: string): Profile | { readonly error: string } => {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return { error: 'it is not JSON any more; measure the printer again with `traceply gauge`' }
  }
  const raw = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>
  if (typeof raw.version === 'number' && raw.version > 1)
    return {
      error: `it is of version ${raw.version}, made by a newer traceply; install that one, or measure again`,
    }
  const within = (value: unknown, low: number, high: number): boolean =>
    typeof value === 'number' && value >= low && value <= high
  const good =
    raw.version === 1 &&
    typeof raw.name === 'string' &&
    paperNames.some((paper) => paper === raw.paper) &&
    within(raw.across, 0.9, 1.1) &&
    within(raw.down, 0.9, 1.1) &&
    within(raw.skewDegrees, -2, 2) &&
    (raw.margins === null || pageSides.every((side) => within(Object(raw.margins)[side], 0, mostMargin))) &&
    Array.isArray(raw.readings) &&
    raw.readings.every((line) => typeof line === 'string')
  const remedy = 'measure the printer again with `traceply gauge`'
  if (!good) return { error: `a figure in it is missing or out of its range; ${remedy}` }
  const readings = readReadingLines(raw.readings as readonly string[])
  if ('error' in readings) return { error: `${readings.error}; ${remedy}` }
  // without one each way nobody knows how good the correction is
  if (readings.across.length === 0 || readings.down.length === 0)
    return { error: `a reading across or down is missing; ${remedy}` }
  return { ...(raw as unknown as Profile), readings }
}
