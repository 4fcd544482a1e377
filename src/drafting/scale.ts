import type { Units } from '../length/units.ts'

/** A scale of drawings and how it is said. */
export interface Scale {
  /** mm on paper for one of the thing */
  readonly ratio: number
  readonly words: string
}

/** ISO 5455 and the steps between that shops use; inches as inch shops say them. Both from memory. */
const scales: Readonly<Record<Units, readonly Scale[]>> = {
  mm: [1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 200].map((n) => ({ ratio: 1 / n, words: `1 : ${n}` })),
  in: [
    [1, 'full size'],
    [2, 'half size'],
    [4, '3 in = 1 ft'],
    [8, '1 1/2 in = 1 ft'],
    [12, '1 in = 1 ft'],
    [16, '3/4 in = 1 ft'],
    [24, '1/2 in = 1 ft'],
    [32, '3/8 in = 1 ft'],
    [48, '1/4 in = 1 ft'],
    [64, '3/16 in = 1 ft'],
    [96, '1/8 in = 1 ft'],
    [192, '1/16 in = 1 ft'],
  ].map(([n, words]) => ({ ratio: 1 / (n as number), words: words as string })),
}

/** The largest usual scale at which a thing so wide and high fits its room on paper, mm; the smallest there is where none does. */
export const chooseScale = (
  units: Units,
  thing: { readonly width: number; readonly height: number },
  room: { readonly width: number; readonly height: number },
): Scale =>
  firstScale(units, ({ ratio }) => thing.width * ratio <= room.width && thing.height * ratio <= room.height)

/** The largest usual scale that does; the smallest there is where none does. */
export const firstScale = (units: Units, fits: (scale: Scale) => boolean): Scale =>
  scales[units].find(fits) ?? scales[units].at(-1)!
