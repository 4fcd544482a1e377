import type { RampDesign, Units } from '../design/design.ts'
import { inch } from '../geometry/inch.ts'
import { type Finding, warn } from './check.ts'
import { rounded, same } from './offer.ts'

/** Thickness of dry boards by the name they are sold under, inches: American Softwood Lumber Standard PS 20; from memory but 1, 2. */
const thicknesses = new Map([
  [1, 0.75],
  [2, 1.5],
  [4, 3.5],
])

/** Width alike; PS 20, from memory but 4, 6 and 8. */
const widths = new Map([
  [2, 1.5],
  [3, 2.5],
  [4, 3.5],
  [6, 5.5],
  [8, 7.25],
  [10, 9.25],
  [12, 11.25],
])

/** A section typed by the name that timber is sold under in inches. In mm the names differ by country. */
export const nominalFindings = ({ studs: { section } }: RampDesign, units: Units): readonly Finding[] => {
  if (units !== 'in') return []
  const [thin, wide] = [Math.min(...section) / inch, Math.max(...section) / inch]
  const named = (table: ReadonlyMap<number, number>, size: number): number | undefined =>
    [...table].find(([name]) => Math.abs(name - size) < same)?.[1]
  const [thickness, width] = [named(thicknesses, thin), named(widths, wide)]
  if (thickness === undefined || width === undefined) return []
  const show = (inches: number): string => rounded(inches * inch, 'in').replace(/ in$/, '')
  return [
    warn(
      'stud-nominal',
      `the studs are taken as ${show(thin)} x ${show(wide)} in real; what is sold as ${show(thin)}x${show(wide)} measures ` +
        `${show(thickness)} x ${show(width)} in when it is dry: type what you measure (section: ${show(thickness)} x ${show(width)})`,
    ),
  ]
}
