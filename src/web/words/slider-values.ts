import { showLength, type Units } from '../../index.ts'
import { unitLength } from './unit-length.ts'

/** The least and the most that a drag types, mm. */
export interface Ends {
  readonly least: number
  readonly most: number
}

/** The figures of a slider in the design's unit. The ends reach as far as what was typed. */
export const sliderValues = (mm: number, { least, most }: Ends, units: Units) => {
  const figure = (length: number): number => Number((length / unitLength[units]).toFixed(3))
  return {
    now: figure(mm),
    least: figure(Math.min(least, mm)),
    most: figure(Math.max(most, mm)),
  }
}

/** What a slider is said to stand at: `deck height 640 mm`. */
export const sliderWords = (label: string, mm: number, units: Units): string =>
  `${label} ${showLength(mm, units, { decimals: 1, unit: true })}`
