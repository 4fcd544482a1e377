import { inch } from '../geometry/inch.ts'
import { type LengthShowing, showLength } from './show.ts'
import type { Units } from './units.ts'

/** A thickness as it is sold and may be typed: `18`, `23/32`. Odd 32nds of an inch are sold, lengths are not shown in them. */
export const showThickness = (
  mm: number,
  units: Units,
  { unit }: Pick<LengthShowing, 'unit'> = {},
): string => {
  const text = units === 'mm' ? showLength(mm, 'mm', { decimals: 1 }) : thirtySeconds(mm)
  return unit ? `${text} ${units}` : text
}

const thirtySeconds = (mm: number): string => {
  const n = Math.max(1, Math.round((mm / inch) * 32))
  const odd = n % 2 === 1 && Math.floor(n / 32) === 0
  return odd ? `${n}/32` : showLength((n * inch) / 32, 'in')
}
