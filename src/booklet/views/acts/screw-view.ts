import { type Drawing, stroke } from '../../../drawing/drawing.ts'
import { pathOf, polygonOf } from '../../../geometry/path.ts'
import type { Point } from '../../../geometry/point.ts'
import { viewStyle } from '../view.ts'

const layer = 'note'
const { lines } = viewStyle

/** Of a head to its thread, of a thread's turns to its thickness, and the share of a screw that has it; common practice, no source. */
const shape = { head: 1.9, pitch: 0.5, thread: 0.65 } as const

/** A wood screw from the side at true size, its head's face at `at`, its point to the right; mm. */
export const screwMarks = (
  { x, y }: Point,
  length: number,
  thick: number,
  head: 'countersunk' | 'pan head',
): Drawing => {
  const [half, wide] = [thick / 2, (shape.head * thick) / 2]
  const sunk = head === 'countersunk'
  const neck = sunk ? wide - half * 0.7 : 0.4 * thick
  // one with a flat underside is measured from there
  const from = sunk ? x : x - neck
  const end = x + length
  const tip = end - 1.4 * thick
  const core = 0.7 * half
  const top: Point[] = sunk
    ? [
        { x: from, y: y + wide },
        { x: from + neck, y: y + core },
      ]
    : [
        { x: from, y: y + 0.8 * wide },
        { x: x, y: y + wide },
        { x: x, y: y + core },
      ]
  const outline = [...top, { x: tip, y: y + core }, { x: end, y }]
  const below = outline
    .slice(0, -1)
    .reverse()
    .map((p) => ({ x: p.x, y: 2 * y - p.y }))
  const turns = Math.max(0, Math.floor((length * shape.thread) / (shape.pitch * thick)))
  return [
    stroke(layer, polygonOf(outline[0]!, ...outline.slice(1), ...below), lines.outline),
    ...Array.from({ length: turns }, (_, i) => {
      const at = tip - i * shape.pitch * thick
      return stroke(layer, pathOf({ x: at, y: y - half }, { x: at + 0.3 * thick, y: y + half }), lines.thin)
    }),
  ]
}
