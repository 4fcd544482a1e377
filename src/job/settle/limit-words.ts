import type { Asks } from '../../design/asks.ts'
import { countWords } from '../../length/count-words.ts'
import { showDegrees } from '../../length/show-angle.ts'
import { showLength, type Units } from '../../length.ts'
import { type LimitName, type Measures, onNoPanel } from './judge.ts'

/** A limit as it is said. */
export const limitWords = (name: LimitName, { limits }: Asks, units: Units): string => {
  switch (name) {
    case 'length':
      return `length ${showLength(limits.length!, units, { unit: true })}`
    case 'lip':
      return `lip ${limits.lip![0]}..${limits.lip![1]}°`
    case 'panels':
      return countWords(limits.panels!, 'panel')
    case 'paper':
      return countWords(limits.paper!, 'page')
    default:
      return name satisfies never
  }
}

/** What came out for it. */
export const measureWords = (
  name: LimitName,
  { measures, asks }: { readonly measures: Measures; readonly asks: Asks },
  units: Units,
): string => {
  const value = measures[name]!
  const { limits } = asks
  switch (name) {
    case 'length':
      return `the side is ${besideLimit(value, limits.length, (mm, decimals) => showLength(mm, units, { decimals, unit: true }), 0)} long`
    case 'lip':
      return `the lip is ${besideLimit(value, limits.lip?.[value > limits.lip[1] ? 1 : 0] ?? null, showDegrees, 1)}`
    case 'panels':
      return value === onNoPanel
        ? 'the sides fit on no panel of your stock'
        : `the sides take ${value} panels`
    case 'paper':
      return `the side takes ${value} pages`
    default:
      return name satisfies never
  }
}

const mostDecimals = 3

/** With so many decimals that it does not read as the limit that it passes. */
const besideLimit = (
  value: number,
  limit: number | null,
  show: (value: number, decimals: number) => string,
  least: number,
): string => {
  if (limit === null || Math.abs(value - limit) < 1e-6) return show(value, least)
  for (let decimals = least; decimals <= mostDecimals; decimals++)
    if (show(value, decimals) !== show(limit, decimals)) return show(value, decimals)
  return `a hair ${value > limit ? 'over' : 'under'} ${show(limit, least)}`
}

/** A limit that is passed whatever the figure is. */
export const unmovedWords = (
  name: LimitName,
  answer: { readonly key: string; readonly measures: Measures; readonly asks: Asks },
  units: Units,
): string =>
  `\`${answer.key}\` has no bearing on ${limitWords(name, answer.asks, units)}: ${measureWords(name, answer, units)} at any value`
