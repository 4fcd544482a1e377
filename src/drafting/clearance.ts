import type { Drawing } from '../drawing/drawing.ts'
import { textCorners } from '../drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pointsBounds } from '../geometry/bounds.ts'
import type { Convex } from '../geometry/clip.ts'
import { convexApart } from '../geometry/overlap.ts'
import { type Path, pathSegments, segmentsPath } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import type { Ways } from './ways.ts'

/** What is drawn already: words, lines of the thing, and lines of notes, which no other note crosses. Paper mm. */
export interface Clearance {
  readonly words: readonly Words[]
  readonly lines: readonly Polyline[]
  readonly notes: readonly Polyline[]
}

interface Words {
  readonly corners: Convex
  readonly box: Box
}

interface Polyline {
  readonly points: readonly Point[]
  readonly box: Box
}

export const nothingDrawn: Clearance = { words: [], lines: [], notes: [] }

/** No darker face carries words: its grey, 1 is white. */
const pale = 0.8

/** Words keep this far off lines and each other, mm. */
const air = 0.35

/** Curves are followed in steps so long, mm. */
const step = 0.8

/** Straight pieces as they are, curves in steps. */
const polyline = (path: Path, spacing: number): readonly Point[] => {
  if (path.pieces.every(({ kind }) => kind === 'line')) return straight(path)
  return pathSegments(path).flatMap((segment, i) => {
    const points =
      segment.kind === 'line' ? [segment.from, segment.to] : pathSample(segmentsPath([segment]), spacing)
    return i === 0 ? points : points.slice(1)
  })
}

const straight = ({ start, pieces, closed }: Path): readonly Point[] => {
  const points = [start]
  for (const { to } of pieces) points.push(to)
  const { x, y } = points.at(-1)!
  if (closed && (x !== start.x || y !== start.y)) points.push(start)
  return points
}

const open = (drawing: Drawing, map: Affine): { readonly words: Words[]; readonly lines: Polyline[] } => {
  const words: Words[] = []
  const lines: Polyline[] = []
  for (const mark of drawing)
    switch (mark.kind) {
      case 'group': {
        const inner = open(mark.marks, affineThen(mark.map, map))
        words.push(...inner.words)
        lines.push(...inner.lines)
        break
      }
      case 'text': {
        const corners = textCorners(mark, map)
        words.push({ corners, box: pointsBounds(corners) })
        break
      }
      default: {
        // white and pale faces lie under words, which can be read on them
        if (mark.kind === 'fill' && mark.grey >= pale) break
        const stretch = Math.hypot(map[0], map[1]) || 1
        const points = polyline(mark.path, step / stretch).map((p) => affineApply(map, p))
        lines.push({ points, box: pointsBounds(points) })
      }
    }
  return { words, lines }
}

/** With more drawn: lines of the thing itself, or of a note. */
export const alsoDrawn = (clearance: Clearance, drawing: Drawing, as: 'thing' | 'note'): Clearance => {
  const { words, lines } = open(drawing, affineIdentity)
  return {
    words: [...clearance.words, ...words],
    lines: as === 'thing' ? [...clearance.lines, ...lines] : clearance.lines,
    notes: as === 'note' ? [...clearance.notes, ...lines] : clearance.notes,
  }
}

/** Whether a note lies inside a box, its words on nothing, its lines on no words and across no line of another note. */
export const isClear = (clearance: Clearance, note: Drawing, inside: Box | null = null): boolean => {
  const { words, lines } = open(note, affineIdentity)
  if (inside && [...words, ...lines].some(({ box }) => !within(box, inside))) return false
  for (const own of words) {
    const around = boxGrow(own.box, air)
    if (
      clearance.words.some(
        (other) => boxOverlaps(around, other.box) && !convexApart(own.corners, other.corners, -air),
      )
    )
      return false
    for (const lines of [clearance.lines, clearance.notes])
      for (const line of lines) if (boxOverlaps(around, line.box) && lineMeets(line, own)) return false
  }
  for (const line of lines) {
    const around = boxGrow(line.box, air)
    for (const other of clearance.words)
      if (boxOverlaps(around, other.box) && lineMeets(line, other)) return false
    for (const other of clearance.notes)
      if (
        boxOverlaps(around, other.box) &&
        boxOverlaps(boxGrow(line.box, 1e-9), boxGrow(other.box, 1e-9)) &&
        linesCross(line, other)
      )
        return false
  }
  return true
}

/** The first note that is clear; null where none is. */
export const firstClear = (clearance: Clearance, notes: Ways, inside: Box | null = null): Drawing | null => {
  for (const note of notes) if (isClear(clearance, note, inside)) return note
  return null
}

const within = (box: Box, inside: Box): boolean =>
  box.x0 >= inside.x0 && box.x1 <= inside.x1 && box.y0 >= inside.y0 && box.y1 <= inside.y1

/** Whether a line comes within the air of words. */
const lineMeets = ({ points }: Polyline, { corners, box }: Words): boolean => {
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1]!, points[i]!]
    if (Math.max(p.x, q.x) < box.x0 - air || Math.min(p.x, q.x) > box.x1 + air) continue
    if (Math.max(p.y, q.y) < box.y0 - air || Math.min(p.y, q.y) > box.y1 + air) continue
    if (!convexApart([p, q], corners, -air)) return true
  }
  return false
}

/** Lines that touch at an end do not cross. */
const linesCross = (a: Polyline, b: Polyline): boolean => {
  for (let i = 1; i < a.points.length; i++)
    for (let k = 1; k < b.points.length; k++)
      if (cross(a.points[i - 1]!, a.points[i]!, b.points[k - 1]!, b.points[k]!)) return true
  return false
}

const cross = (p: Point, q: Point, r: Point, s: Point): boolean => {
  if (Math.max(p.x, q.x) < Math.min(r.x, s.x) || Math.max(r.x, s.x) < Math.min(p.x, q.x)) return false
  const side = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
  return side(p, q, r) * side(p, q, s) < -1e-9 && side(r, s, p) * side(r, s, q) < -1e-9
}
