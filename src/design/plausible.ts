import { inch } from '../geometry/inch.ts'
import { quote } from '../length/quote.ts'
import { type LengthUnit, readLength, showLength, type Units } from '../length.ts'
import type { Problem } from './problem.ts'

export interface Implausible {
  readonly code: 'range' | 'other-unit'
  readonly fault: string
}

/** Both ends allowed, mm. */
export interface Range {
  readonly least: number
  readonly most: number
}

/** A range in the builder's units; in inches rounded inward to 1/16, so that what is offered is accepted. */
export const showRange = ({ least, most }: Range, units: Units): string => {
  if (units === 'mm') return `${showLength(least, 'mm', { decimals: 1 })} to ${showLength(most, 'mm')} mm`
  const step = inch / 16
  const inward = [Math.ceil(least / step) * step, Math.floor(most / step) * step] as const
  return `${showLength(inward[0], 'in')} to ${showLength(inward[1], 'in')} in`
}

const within = (mm: number, { least, most }: Range): boolean => mm >= least && mm <= most

/**
 * A length that can be read but cannot be meant; null for a good one. A number that would be good in
 * another unit is most likely meant in that one.
 */
export const implausible = (
  source: string,
  reading: { readonly mm: number; readonly unit: LengthUnit | null },
  range: Range,
  units: Units,
): Implausible | null => {
  if (within(reading.mm, range)) return null
  const bare = reading.unit === null
  const said = quote(bare ? `${source} ${units}` : source).slice(1, -1)
  const outside = `${said} is outside ${showRange(range, units)}`
  const number = bare ? source : source.replace(/\s*(?:\p{L}+|["'])\.?$/u, '')
  // who wrote a unit of another kind than the file's may have meant the file's
  for (const unit of bare ? likely[units] : [units]) {
    const meant = readLength(`${number} ${unit}`, units)
    if ('error' in meant || unit === (reading.unit ?? units) || !within(meant.mm, range)) continue
    const back = unit === units ? '' : ` (${showLength(meant.mm, units, { unit: true })})`
    const fault = `${outside}; did you mean ${quote(`${number} ${unit}`).slice(1, -1)}${back}?`
    return { code: bare && unit === (units === 'mm' ? 'in' : 'mm') ? 'other-unit' : 'range', fault }
  }
  return { code: 'range', fault: outside }
}

/** Units that a bare number may have been meant in, the likeliest first. */
const likely: Readonly<Record<Units, readonly LengthUnit[]>> = {
  mm: ['in', 'm', 'cm', 'ft'],
  in: ['mm', 'ft'],
}

/** So many sizes that would be good in the other unit are no slips: the file says the wrong `units`. */
const manySlips = 3

/** A whole file in the other unit, told from its problems: a sentence for `units`, or null. */
export const wrongUnits = (problems: readonly Problem[], units: Units): string | null => {
  const slips = problems.filter((problem) => problem.code === 'other-unit').length
  if (slips < manySlips) return null
  const other = units === 'mm' ? 'in' : 'mm'
  return `${slips} sizes of this file make no sense when read in ${units}, but do in ${other}; did you mean \`units: ${other}\`?`
}
