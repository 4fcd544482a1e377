import type { Point } from '../../../geometry/point.ts'
import { letters } from '../../../pattern/pens.ts'

/** What stands in a square and where, mm from its lower left corner, clear of its sides and diagonals. */
export interface SquareInside {
  /** capitals of the names of its sides and diagonals, and how far from its side such a name stands */
  readonly size: number
  readonly edge: number
  /** foot of the set's code */
  readonly code: number
  /** the true lengths stand beside what is measured, in inches too; else in the words over the square alone */
  readonly told: boolean
  /** lines to write on are so long */
  readonly blank: number
  readonly diagonals: readonly DiagonalPlace[]
}

interface DiagonalPlace {
  readonly letter: 'A' | 'B'
  readonly at: Point
  /** left end of the line to write on */
  readonly blank: Point
}

/** By the side: beside DOWN in the usual square, in the triangle across from it where that has no room. */
const insides = {
  150: {
    size: letters.word,
    edge: 8,
    code: 6,
    told: true,
    blank: 28,
    diagonals: [
      { letter: 'A', at: { x: 51, y: 61.5 }, blank: { x: 21, y: 54 } },
      { letter: 'B', at: { x: 51, y: 85.5 }, blank: { x: 21, y: 78 } },
    ],
  },
  100: {
    size: letters.word,
    edge: 8,
    code: 6,
    told: true,
    blank: 20,
    diagonals: [
      { letter: 'A', at: { x: 66, y: 59.5 }, blank: { x: 72, y: 52 } },
      { letter: 'B', at: { x: 66, y: 42.5 }, blank: { x: 72, y: 35 } },
    ],
  },
  50: {
    size: 2.8,
    edge: 4.8,
    code: 2.5,
    told: false,
    blank: 10,
    diagonals: [
      { letter: 'A', at: { x: 31, y: 26 }, blank: { x: 36, y: 26 } },
      { letter: 'B', at: { x: 31, y: 21.2 }, blank: { x: 36, y: 16.4 } },
    ],
  },
} as const satisfies Record<SquareSide, SquareInside>

export type SquareSide = (typeof squareSides)[number]

/** The usual one first, mm. */
export const squareSides = [150, 100, 50] as const

export const squareInside = (side: SquareSide): SquareInside => insides[side]
