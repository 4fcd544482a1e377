import { expect, it } from 'vitest'
import { outlineMoved } from '../../src/web/drawing/glow.ts'

const box = (wide: number, high: number): string => `<path d="M0 0L${wide} 0L${wide} ${high}Z" fill="none"/>`

it('an outline that is drawn to another scale has not moved, one with another corner has', () => {
  expect(outlineMoved(box(40, 20), box(40, 20), 1)).toBe(false)
  expect(outlineMoved(box(40, 20), box(44, 22), 1.1)).toBe(false)
  expect(outlineMoved(box(40, 20), box(44, 25), 1.1)).toBe(true)
  expect(outlineMoved(box(40, 20), box(40, 20.5), 1)).toBe(true)
  expect(outlineMoved(box(40, 20), `${box(40, 20)}${box(3, 3)}`, 1)).toBe(true)
})
