import type { Units } from './units.ts'

/** A tolerance as it may be read off a rule, never larger than it is: tenths of a mm, or 64ths of an inch (1 at the least). */
export const showTolerance = (mm: number, units: Units): string => {
  if (units === 'mm') return `±${(Math.floor(mm * 10 + 1e-9) / 10).toFixed(1)}`
  let [top, bottom] = [Math.max(1, Math.floor((mm / 25.4) * 64 + 1e-9)), 64]
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  return `±${top}/${bottom}`
}
