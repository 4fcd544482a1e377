import { expect, it } from 'vitest'
import type { Pt } from '../support/pt.ts'
import { hasRoom } from './check-words.ts'
import type { Outline } from './outline.ts'

/** A board 400 long and 100 high. */
const corners: readonly Pt[] = [
  { x: 0, y: 0 },
  { x: 400, y: 0 },
  { x: 400, y: 100 },
  { x: 0, y: 100 },
]
const board: Outline = {
  pieces: corners.map((a, i) => {
    const b = corners[(i + 1) % 4]!
    return { kind: 'line', edge: 'top', at: 0, length: Math.hypot(b.x - a.x, b.y - a.y), a, b }
  }),
  length: 1000,
  polygon: corners,
}
/** A page over both long edges of the board, from 30 below it to 3 above; at its corner a stub of the upper one is to be sawn. */
const page = {
  trueToPattern: [1, 0, 0, 1, 100, -30],
  window: { x0: 0, y0: 0, x1: 150, y1: 133 },
} as const
const stub = [
  { x: 100, y: 100 },
  { x: 106, y: 100 },
]

it('a word has room near the line that is sawn, not at another edge of the piece', () => {
  expect(hasRoom({ ...page, cuts: [stub] }, board, 'KEEP')).toBe(true)
  expect(hasRoom({ ...page, cuts: [stub] }, board, 'WASTE')).toBe(false)
  expect(hasRoom({ ...page, cuts: [stub.map(({ x }) => ({ x, y: 0 }))] }, board, 'WASTE')).toBe(true)
})
