import { readLength } from '../length.ts'

/** One length on a print: what the rule said, and what it should have been; mm. */
export interface Reading {
  readonly measured: number
  readonly nominal: number
  /** as it was typed */
  readonly text: string
}

/** No smaller square is printed, and no paper of ours is longer, mm. */
const lengths = { least: 20, most: 1300 } as const

/** Side of the test square, mm: what a reading is of when it does not say. */
export const squareSide = 150

const withUnit = (text: string): number | { readonly error: string } => {
  const reading = readLength(text, 'mm')
  if ('error' in reading) return reading
  if (reading.unit === null) {
    const number = text.trim().replace(/\.$/, '')
    return {
      error: `${text.trim()} has no unit; write ${number}mm or ${number}in, so that it cannot be mistaken`,
    }
  }
  return reading.mm
}

/**
 * Several readings typed as one text: a comma, a semicolon or a blank parts them. Blanks within `5 29/32 in` or `1 ft 3 in` do not, nor
 * does the comma of `148,4mm`: who reads the length speaks of it. No lookbehind: older browsers read this too.
 */
export const partReadings = (text: string): readonly string[] =>
  text
    .replace(/((?:m|in|inch|inches|["”″]|'')\.?)\s+(?=\d)/gi, '$1;')
    .replace(/(\d)\s+(?=\d)(?!\d+\s*\/)/g, '$1;')
    .replace(/([^\d\s]\s*),|,(?!\d)/g, '$1;')
    .split(';')
    .map((part) => part.trim())
    .filter((part, i) => part !== '' || i === 0)

/**
 * `148.4mm`, or `MEASURED/NOMINAL` for a ruler: `238.1mm/240mm`. The slash of a fraction of an inch is told apart by the
 * unit before it. `nominal` is what a reading without one is of, mm.
 */
export const readReading = (text: string, nominal: number): Reading | { readonly error: string } => {
  const whole = withUnit(text)
  if (typeof whole === 'number') return { measured: whole, nominal, text: text.trim() }
  for (let i = text.indexOf('/'); i >= 0; i = text.indexOf('/', i + 1)) {
    const [measured, ideal] = [withUnit(text.slice(0, i)), withUnit(text.slice(i + 1))]
    if (typeof measured === 'number' && typeof ideal === 'number')
      return ideal >= lengths.least && ideal <= lengths.most
        ? { measured, nominal: ideal, text: text.trim() }
        : {
            error: `${text.trim()}: a true length of more than 0 is meant, here ${lengths.least} to ${lengths.most} mm`,
          }
  }
  return whole
}
