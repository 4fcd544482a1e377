import { quote } from '../length/quote.ts'
import { type LengthUnit, readLength, showLength, type Units } from '../length.ts'

/** Both ends allowed, mm. */
export interface Range {
  readonly least: number
  readonly most: number
}

/** A range in the builder's units; in inches rounded inward to 1/16, so that what is offered is accepted. */
export const showRange = ({ least, most }: Range, units: Units): string => {
  if (units === 'mm') return `${showLength(least, 'mm', { decimals: 1 })} to ${showLength(most, 'mm')} mm`
  const step = 25.4 / 16
  const inward = [Math.ceil(least / step) * step, Math.floor(most / step) * step] as const
  return `${showLength(inward[0], 'in')} to ${showLength(inward[1], 'in')} in`
}

const within = (mm: number, { least, most }: Range): boolean => mm >= least && mm <= most

/**
 * A length that can be read but cannot be meant, as a sentence; null for a good one. A bare number that would be good in
 * the other unit is most likely typed in that one.
 */
export const implausible = (
  source: string,
  reading: { readonly mm: number; readonly unit: LengthUnit | null },
  range: Range,
  units: Units,
): string | null => {
  if (within(reading.mm, range)) return null
  const bare = reading.unit === null
  const said = quote(bare ? `${source} ${units}` : source).slice(1, -1)
  const outside = `${said} is outside ${showRange(range, units)}`
  const other = units === 'mm' ? 'in' : 'mm'
  const meant = bare ? readLength(source, other) : { error: '' }
  if ('error' in meant || !within(meant.mm, range)) return outside
  const back = showLength(meant.mm, units, { unit: true })
  return `${outside}; did you mean ${quote(`${source} ${other}`).slice(1, -1)} (${back})?`
}
