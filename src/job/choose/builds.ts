import type { Units } from '../../design/design.ts'
import type { StarterMap } from '../../design/starter.ts'
import { inch } from '../../geometry/inch.ts'

/** How a ramp is built, but for its curve and its deck; the first that works is taken. Common practice, no source. */
export interface Build {
  /** values as they are typed */
  readonly keys: StarterMap
  /** mm */
  readonly skin: number
  /** mm */
  readonly board: number
}

const boardKey = (board: string): string => `${board} plywood`

const withPipe: Readonly<Record<Units, StarterMap>> = {
  mm: { coping: { outside: '60.3', up: '8', out: '6', seat: 'square' } },
  in: { coping: { outside: '2 3/8', up: '5/16', out: '1/4', seat: 'square' } },
}

/** The usual skin, and a thinner one on closer studs for a curve too tight for it. */
const skins = {
  mm: [
    { sheets: ['9 plywood', '9 plywood', '6 hardboard'], mm: 24, every: '200' },
    { sheets: ['6 plywood', '6 plywood', '6 plywood'], mm: 18, every: '150' },
  ],
  in: [
    { sheets: ['3/8 plywood', '3/8 plywood', '1/4 hardboard'], mm: inch, every: '8' },
    { sheets: ['1/4 plywood', '1/4 plywood', '1/4 plywood'], mm: 0.75 * inch, every: '6' },
  ],
} as const

const boards = {
  mm: [
    { typed: '15', mm: 15 },
    { typed: '12', mm: 12 },
    { typed: '18', mm: 18 },
    { typed: '9', mm: 9 },
  ],
  in: [
    { typed: '5/8', mm: 0.625 * inch },
    { typed: '1/2', mm: 0.5 * inch },
    { typed: '23/32', mm: (23 / 32) * inch },
    { typed: '3/8', mm: 0.375 * inch },
  ],
} as const

/** With a pipe first; then without one, the deck board nearest to the skin's height at a lip of this angle (radians). */
export const buildsFor = (units: Units, lip: number): readonly Build[] => {
  const [usual] = boards[units]
  const sections = { mm: '38 x 89', in: '1 1/2 x 3 1/2' }
  const studs = (every: string): StarterMap => ({ studs: { section: sections[units], every } })
  const pipe = skins[units].map(
    ({ sheets, mm, every }): Build => ({
      keys: { ...studs(every), skin: sheets, 'deck-board': boardKey(usual.typed), ...withPipe[units] },
      skin: mm,
      board: usual.mm,
    }),
  )
  const plain = skins[units].map(({ sheets, mm, every }): Build => {
    const flush = mm * Math.cos(lip)
    const board = boards[units].reduce((a, b) =>
      Math.abs(b.mm - flush) < Math.abs(a.mm - flush) - 1e-9 ? b : a,
    )
    return {
      keys: { ...studs(every), skin: sheets, 'deck-board': boardKey(board.typed), coping: 'none' },
      skin: mm,
      board: board.mm,
    }
  })
  return [...pipe, ...plain]
}
