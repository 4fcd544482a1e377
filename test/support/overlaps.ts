import type { Drawing } from '../../src/drawing/drawing.ts'
import { type Box, boxGrow, pointsBounds } from '../../src/geometry/bounds.ts'
import { convexContains } from '../../src/geometry/clip.ts'
import { convexOverlap } from '../../src/geometry/overlap.ts'
import { type Point, pointBetween } from '../../src/geometry/point.ts'
import { opened } from './strokes.ts'

export interface Overlaps {
  /** in words */
  readonly faults: readonly string[]
  /** what was looked at */
  readonly words: number
  readonly lines: number
}

/** Deeper than this counts, mm. */
const slack = 0.05

const apart = (a: Box, b: Box): boolean => a.x1 < b.x0 || b.x1 < a.x0 || a.y1 < b.y0 || b.y1 < a.y0

/** Whether all that lies of a line under letters lies under white as well. */
const hidden = (
  points: readonly Point[],
  corners: readonly Point[],
  box: Box,
  whites: readonly Box[],
): boolean => {
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1]!, points[i]!]
    if (apart(boxGrow(box, slack), pointsBounds([from, to]))) continue
    for (let k = 0; k <= 100; k++) {
      const p = pointBetween(from, to, k / 100)
      if (!convexContains(corners, p)) continue
      if (!whites.some(({ x0, x1, y0, y1 }) => p.x >= x0 && p.x <= x1 && p.y >= y0 && p.y <= y1)) return false
    }
  }
  return true
}

/** Words on words, lines and dark fills on words, and what leaves the page. */
export const overlaps = (drawing: Drawing, page: Box | null = null): Overlaps => {
  const { words, lines } = opened(drawing)
  const faults: string[] = []
  const texts = words.map((word) => ({ ...word, box: pointsBounds(word.corners) }))
  const strokes = lines
    .filter(({ kind, grey }) => kind === 'stroke' || grey < 0.95)
    .map((line) => ({ ...line, box: pointsBounds(line.points) }))
  const whites = lines
    .filter(({ kind, grey }) => kind === 'fill' && grey >= 0.95)
    .map((line) => ({ ...line, box: pointsBounds(line.points) }))
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1))
      if (!apart(a.box, b.box) && convexOverlap(a.corners, b.corners) > slack)
        faults.push(`"${a.text}" on "${b.text}"`)
    // white that lies under the letters hides what was drawn before it
    const over = whites.filter(({ box, order }) => order < a.order && !apart(a.box, box))
    for (const { points, box, kind, order } of strokes) {
      if (apart(a.box, box)) continue
      const hiding = over.filter((white) => white.order > order).map((white) => white.box)
      if (hiding.length > 0 && hidden(points, a.corners, a.box, hiding)) continue
      if (meets(points, a.corners, a.box)) faults.push(`a ${kind} in "${a.text}"`)
    }
  })
  if (page)
    for (const { box, what } of [
      ...texts.map(({ box, text }) => ({ box, what: `"${text}"` })),
      ...strokes.map(({ box, kind }) => ({
        box,
        what: `a ${kind} at ${Math.round(box.x0)} … ${Math.round(box.x1)}, ${Math.round(box.y0)} … ${Math.round(box.y1)}`,
      })),
    ])
      if (
        box.x0 < page.x0 - slack ||
        box.x1 > page.x1 + slack ||
        box.y0 < page.y0 - slack ||
        box.y1 > page.y1 + slack
      )
        faults.push(`${what} leaves the page`)
  return { faults, words: texts.length, lines: strokes.length }
}

const meets = (points: readonly Point[], corners: readonly Point[], box: Box): boolean => {
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1]!, points[i]!]
    if (Math.max(p.x, q.x) < box.x0 || Math.min(p.x, q.x) > box.x1) continue
    if (Math.max(p.y, q.y) < box.y0 || Math.min(p.y, q.y) > box.y1) continue
    if (convexOverlap([p, q], corners) > slack) return true
  }
  return false
}
