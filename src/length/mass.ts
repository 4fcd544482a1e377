import type { Units } from './units.ts'

/** kg in a pound. */
export const pound = 0.45359237

/** Least and most, kg. */
export interface MassRange {
  readonly least: number
  readonly most: number
}

const unitOf = (units: Units): string => (units === 'mm' ? 'kg' : 'lb')

const kgOf = (units: Units): number => (units === 'mm' ? 1 : pound)

/** Whole kilograms, or pounds where the design is in inches, upward: what bears it is no weaker than said. */
export const massAtMost = (kg: number, units: Units): string =>
  `${Math.ceil(kg / kgOf(units))} ${unitOf(units)}`

/** kg or pounds, so that the range is not narrower than it is; of several together the sum of what is said of each. */
export const massRange = (one: MassRange | readonly MassRange[], units: Units): string => {
  const all = 'least' in one ? [one] : one
  const sum = (of: (range: MassRange) => number): number => all.reduce((mass, range) => mass + of(range), 0)
  const least = sum((range) => Math.floor(range.least / kgOf(units)))
  const most = sum((range) => Math.ceil(range.most / kgOf(units)))
  return `${least} to ${most} ${unitOf(units)}`
}
