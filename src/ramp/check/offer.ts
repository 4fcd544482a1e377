import type { Sheet } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { wordList } from '../../length/word-list.ts'
import { readLength, showLength, type Units } from '../../length.ts'

/** Lengths this near are the same: what a builder types at a limit is not refused for the last bits of a sum. mm */
export const same = 1e-6

/** What is offered comes in whole ones of these, mm. */
export const offerSteps = { mm: 1, in: inch / 16 } as const

/** So many of them, as they may be typed. */
export const shownOffer = (count: number, units: Units): string =>
  showLength(count * offerSteps[units], units, { unit: true })

/**
 * A limit as a message offers it: whole millimetres or sixteenths of an inch on the side where it works, so that what is
 * read can be typed. `above` and `below` leave out the limit itself.
 */
export const offer = (units: Units) => {
  const step = offerSteps[units]
  const shown = (count: number): string => shownOffer(count, units)
  return {
    atLeast: (mm: number): string => shown(Math.ceil((mm - same / 2) / step)),
    /** what `atLeast` is read as */
    atLeastMm: (mm: number): number => Math.ceil((mm - same / 2) / step) * step,
    atMost: (mm: number): string => shown(Math.floor((mm + same / 2) / step)),
    /** what `atMost` is read as */
    atMostMm: (mm: number): number => Math.floor((mm + same / 2) / step) * step,
    above: (mm: number): string => shown(Math.floor((mm + 2 * same) / step) + 1),
    /** the nearest that can be typed, and what it is read as */
    nearest: (mm: number): string => shown(Math.round(mm / step)),
    nearestMm: (mm: number): number => Math.round(mm / step) * step,
    below: (mm: number): string => shown(Math.ceil((mm - 2 * same) / step) - 1),
  }
}

/** A measured length in a message, to a tenth of a mm or 1/32 in. */
export const measured = (mm: number, units: Units): string => {
  const show = (length: number): string => showLength(length, units, { decimals: 1, unit: true })
  // what is there is never said to be nothing
  return Math.abs(mm) > same && show(Math.abs(mm)) === show(0) ? `under ${show(leastShown[units])}` : show(mm)
}

/** One that lies over a limit, told from the words of that limit. */
export const pastLimit = (mm: number, limit: string, units: Units): string => {
  const shown = measured(mm, units)
  return shown === limit ? `just over ${shown}` : shown
}

/** The least that is not shown as nothing. */
const leastShown = { mm: 0.1, in: inch / 32 } as const

/** A length that stands in the file already, to be typed again beside one that changes: it is read as the same. */
const again = (mm: number, units: Units): string => {
  const shown = showLength(mm, units, { decimals: 3, unit: true })
  const reading = readLength(shown, units)
  return 'mm' in reading && Math.abs(reading.mm - mm) < same ? shown : `${Number(mm.toFixed(6))} mm`
}

/** `38 mm x 89 mm`, of which the second is offered. */
export const sectionText = (thin: number, shown: string, units: Units): string =>
  `${again(thin, units)} x ${shown}`

/** `[ 9 mm plywood, 6 mm hardboard ]` */
export const sheetsText = (sheets: readonly Sheet[], units: Units): string =>
  `[ ${sheets.map(({ thickness, material }) => `${again(thickness, units)} ${material}`).join(', ')} ]`

/** One that needs no tenth of a mm. */
export const rounded = (mm: number, units: Units): string => showLength(mm, units, { unit: true })

/** Several of them, the unit once: `200, 400 and 612.5 mm`. */
export const listed = (all: readonly number[], units: Units): string =>
  wordList(all.map((mm, i) => showLength(mm, units, { decimals: 1, unit: i === all.length - 1 })))
