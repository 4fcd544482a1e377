import { inch } from '../geometry/inch.ts'
import { quote } from '../length/quote.ts'
import { type LengthUnit, readLength, showLength, type Units } from '../length.ts'
import type { Problem } from './problem.ts'

export interface Implausible {
  readonly code: 'range' | 'other-unit'
  readonly fault: string
  readonly meant?: string
}

/** Both ends allowed, mm. */
export interface Range {
  readonly least: number
  readonly most: number
}

/**
 * `sold`: sizes in which the trade has it, mm; a number that is one of them in another unit was meant in that. `timber`: it has names
 * in inches that are no sizes.
 */
export interface Sizes extends Range {
  readonly sold?: readonly number[]
  readonly timber?: true
}

/** A range in the builder's units; in inches rounded inward to 1/16, so that what is offered is accepted. */
export const showRange = ({ least, most }: Range, units: Units): string => {
  if (units === 'mm') return `${showLength(least, 'mm', { decimals: 1 })} to ${showLength(most, 'mm')} mm`
  const step = inch / 16
  const inward = [Math.ceil(least / step) * step, Math.floor(most / step) * step] as const
  return `${showLength(inward[0], 'in')} to ${showLength(inward[1], 'in')} in`
}

/** Sizes of the trade are a little more or less than what they are called, mm. */
const nearSold = 2

const within = (mm: number, { least, most }: Range): boolean => mm >= least && mm <= most

/**
 * A length that can be read but cannot be meant; null for a good one. A number that would be good in
 * another unit is most likely meant in that one, first of all where it is then a size that is sold.
 */
export const implausible = (
  source: string,
  reading: { readonly mm: number; readonly unit: LengthUnit | null },
  range: Sizes,
  units: Units,
): Implausible | null => {
  if (within(reading.mm, range)) return null
  const bare = reading.unit === null
  const said = quote(bare ? `${source} ${units}` : source).slice(1, -1)
  const outside = `${said} is outside ${showRange(range, units)}`
  const number = bare ? source : source.replace(/\s*(?:\p{L}+|["'])\.?$/u, '')
  // who wrote a unit of another kind than the file's may have meant the file's
  const meant = (bare ? likely(units, number) : [units]).flatMap((unit) => {
    const reread = readLength(`${number} ${unit}`, units)
    return 'error' in reread || unit === (reading.unit ?? units) || !within(reread.mm, range)
      ? []
      : [{ unit, mm: reread.mm }]
  })
  const first = meant.find(({ mm }) => range.sold?.some((size) => Math.abs(size - mm) < nearSold)) ?? meant[0]
  if (first === undefined) return { code: 'range', fault: outside }
  const back = first.unit === units ? '' : ` (${showLength(first.mm, units, { unit: true })})`
  const other = bare && meant.some(({ unit }) => unit === otherUnit[units])
  return {
    code: other ? 'other-unit' : 'range',
    fault: `${outside}; did you mean ${quote(`${number} ${first.unit}`).slice(1, -1)}${back}?`,
    meant: `${number} ${first.unit}`,
  }
}

const unitWords = { mm: 'mm', in: 'inches' } as const

const otherUnit = { mm: 'in', in: 'mm' } as const

/** Units that a bare number may have been meant in, the likeliest first: those of the file's own kind, but for a fraction. */
const likely = (units: Units, number: string): readonly LengthUnit[] =>
  units === 'in'
    ? ['mm', 'ft']
    : /[/\u00bc-\u00be\u2150-\u215e]/.test(number)
      ? ['in', 'ft']
      : ['cm', 'm', 'in', 'ft']

/** So many sizes that would be good in the other unit are no slips: the file says the wrong `units`. */
const manySlips = 3

/**
 * A whole file in the other unit, told from its problems: a sentence for `units`, or null. Where ramps make sense, lengths of the
 * stock were typed as the shop says them.
 */
export const wrongUnits = (problems: readonly Problem[], units: Units): string | null => {
  const slips = problems.filter((problem) => problem.code === 'other-unit')
  if (slips.length < manySlips || slips.every(({ path }) => !path.startsWith('ramps'))) return null
  const other = otherUnit[units]
  return `${slips.length} sizes of this file make no sense when read in ${unitWords[units]}, but do in ${unitWords[other]}; did you mean \`units: ${other}\`?`
}

/** A problem of such a file: that its number would be good in cm or m says nothing. */
export const withoutGuess = (problem: Problem): Problem =>
  problem.code === 'other-unit' && guess.test(problem.message)
    ? {
        code: problem.code,
        path: problem.path,
        place: problem.place,
        message: problem.message.replace(guess, ''),
      }
    : problem

const guess = /; did you mean \S+ c?m \([^?]*\?$/u
