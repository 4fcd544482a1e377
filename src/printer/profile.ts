import { paperNames } from '../design/design.ts'
import { type Correction, noCorrection } from './correction.ts'
import { correctionOf, type Distortion } from './distortion.ts'
import { type Readings, squareDiagonal } from './gauge.ts'
import { type Reading, readReading, squareSide } from './reading.ts'

/** What is known of one printer with one paper; kept in a file of its own. Lengths mm. */
export interface Profile {
  readonly version: 1
  readonly name: string
  readonly paper: string
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
  /** what was measured, as it was typed */
  readonly readings: readonly string[]
}

export const profileDistortion = ({ across, down, skewDegrees }: Profile): Distortion => ({
  across,
  down,
  skew: (skewDegrees * Math.PI) / 180,
})

export const profileCorrection = (profile: Profile | null): Correction =>
  profile ? correctionOf(profileDistortion(profile)) : noCorrection

/** The profile as its file holds it. */
export const writeProfile = (profile: Profile): string => `${JSON.stringify(profile, null, 2)}\n`

const sides = ['top', 'right', 'bottom', 'left'] as const

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
    (raw.margins === null || sides.every((side) => within(Object(raw.margins)[side], 0, mostMargin))) &&
    Array.isArray(raw.readings) &&
    raw.readings.every((line) => typeof line === 'string') &&
    tellsBoth(raw as unknown as Profile)
  if (!good)
    return {
      error: 'a figure in it is missing or out of its range; measure the printer again with `traceply gauge`',
    }
  return raw as unknown as Profile
}

/** Without a reading each way nobody knows how good the correction is. */
const tellsBoth = (profile: Profile): boolean => {
  const { across, down } = profileReadings(profile)
  return across.length > 0 && down.length > 0
}

/** The readings of a profile again, so that its uncertainty can be told later. */
export const profileReadings = (profile: Profile): Readings => {
  const of = (word: string, nominal: number): readonly Reading[] =>
    profile.readings
      .filter((line) => line.startsWith(`${word} `))
      .map((line) => readReading(line.slice(word.length + 1), nominal))
      .filter((reading): reading is Reading => !('error' in reading))
  const pairs = profile.readings.filter((line) => line.startsWith('diagonals ')).length
  const diagonal: Reading = { measured: squareDiagonal, nominal: squareDiagonal, text: '' }
  return {
    across: of('across', squareSide),
    down: of('down', squareSide),
    diagonals: Array.from({ length: pairs }, () => [diagonal, diagonal] as const),
  }
}
