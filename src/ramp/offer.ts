import { showLength, type Units } from '../length.ts'

/** Lengths this near are the same: what a builder types at a limit is not refused for the last bits of a sum. mm */
export const same = 1e-6

const steps = { mm: 1, in: 25.4 / 16 } as const

/**
 * A limit as a message offers it: whole millimetres or sixteenths of an inch on the side where it works, so that what is
 * read can be typed. `above` and `below` leave out the limit itself.
 */
export const offer = (units: Units) => {
  const step = steps[units]
  const shown = (count: number): string => showLength(count * step, units)
  return {
    atLeast: (mm: number): string => shown(Math.ceil((mm - same / 2) / step)),
    atMost: (mm: number): string => shown(Math.floor((mm + same / 2) / step)),
    above: (mm: number): string => shown(Math.floor((mm + 2 * same) / step) + 1),
    below: (mm: number): string => shown(Math.ceil((mm - 2 * same) / step) - 1),
  }
}

/** A measured length in a message, fine enough to be told from the limit beside it. */
export const measured = (mm: number, units: Units): string => showLength(mm, units, { decimals: 1 })
