import type { Asks } from '../../design/asks.ts'
import { type LimitName, limitNames, type Measures, passed } from './judge.ts'

/** Those that are read off the curve, so of every value there is. */
const isQuick = (name: LimitName): boolean => name === 'length' || name === 'lip'

/** Limits that the figure has no bearing on: all its values give the same. Panels and pages are taken of the sides, which no width changes. */
export const unmovedBy = ({ figure, limits }: Asks, values: readonly Measures[]): readonly LimitName[] =>
  limitNames.filter(
    (name) =>
      limits[name] !== null &&
      (isQuick(name)
        ? values.length > 1 && values.every((one) => Math.abs(one[name]! - values[0]![name]!) < 1e-6)
        : figure === 'width'),
  )

/**
 * Limits that no value keeps together where those that are passed can each be kept alone; empty where none can. Pages and panels are
 * not counted for it: beside others they are told with all of them.
 */
export const clashOf = (
  { limits }: Asks,
  values: readonly Measures[],
  over: readonly LimitName[],
): readonly LimitName[] => {
  const asked = limitNames.filter((name) => limits[name] !== null)
  const keeps = (names: readonly LimitName[]): boolean =>
    values.some((measures) => passed(measures, limits).every(([name]) => !names.includes(name)))
  // what no value keeps has no part in it
  const able = asked.filter((name) => !isQuick(name) || keeps([name]))
  const shared = over.filter((name) => able.includes(name))
  if (shared.length === 0 || able.length < 2) return []
  const pair = able.filter(isQuick)
  return shared.every(isQuick) && pair.length > 1 && !keeps(pair) ? pair : able
}
