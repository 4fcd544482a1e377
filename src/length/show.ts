import { inch } from '../geometry/inch.ts'
import type { Units } from './units.ts'

export interface LengthShowing {
  /** most decimals of a mm; zeros at the end are dropped. 0 unless said */
  readonly decimals?: number
  /** put the unit behind the number */
  readonly unit?: boolean
}

/** `n` sixteenths as a carpenter says them: `17 7/16`, `1/2`, `3`, `0`. */
const sixteenths = (n: number): string => {
  const whole = Math.floor(n / 16)
  let [top, bottom] = [n % 16, 16]
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  if (top === 0) return `${whole}`
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`
}

/**
 * Inches to the nearest 1/32. An odd 32nd lies between two sixteenths, one of which is an eighth or simpler: it is shown as
 * that one, strong (`+`) or shy (`–`, an en dash, which every PDF viewer's own fonts have). No whole number is shy: `44–` reads as
 * the beginning of a range.
 */
const inches = (length: number): string => {
  const n = Math.round(Math.abs(length) * 32)
  const minus = length < 0 && n > 0 ? '-' : ''
  // nothing is stronger than nothing
  if (n === 1) return `${minus}1/32`
  if (n % 2 === 0) return minus + sixteenths(n / 2)
  const below = (n - 1) / 2
  const strong = below % 2 === 0 || below % 16 === 15
  return strong ? `${minus}${sixteenths(below)}+` : `${minus}${sixteenths(below + 1)}–`
}

const millimetres = (mm: number, decimals: number): string => {
  const text = mm.toFixed(decimals)
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text
  return short === '-0' ? '0' : short
}

/** What a whole figure says of a length, mm: what is reckoned from figures agrees with them. */
export const toldLength = (mm: number, units: Units): number => {
  const step = units === 'mm' ? 1 : inch / 32
  return Math.round(mm / step) * step
}

/** A length in mm as the builder reads it. Throws RangeError on a value that is not finite or past 1e15 mm. */
export const showLength = (mm: number, units: Units, { decimals = 0, unit }: LengthShowing = {}): string => {
  if (!(Math.abs(mm) <= 1e15)) throw new RangeError(`${mm} is not a length to show`)
  const text = units === 'mm' ? millimetres(mm, decimals) : inches(mm / inch)
  return unit ? `${text} ${units}` : text
}
