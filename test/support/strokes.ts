import { type Drawing, layers, type Mark } from '../../src/drawing/drawing.ts'
import { textCorners } from '../../src/drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../src/geometry/affine.ts'
import { type Box, pointsBounds } from '../../src/geometry/bounds.ts'
import { type Path, pathSegments, segmentsPath } from '../../src/geometry/path.ts'
import type { Point } from '../../src/geometry/point.ts'
import { pathSample } from '../../src/geometry/sample.ts'

export type TextMark = Extract<Mark, { kind: 'text' }>

/** What is drawn, groups opened: lines as points, words with their corners. */
export interface Opened {
  readonly lines: readonly {
    readonly kind: 'stroke' | 'fill'
    readonly points: readonly Point[]
    readonly grey: number
    readonly width: number
    /** the larger, the later it is drawn: layer by layer */
    readonly order: number
  }[]
  readonly words: readonly {
    readonly text: string
    readonly corners: readonly Point[]
    readonly size: number
    readonly order: number
  }[]
}

/** Straight pieces by their ends. */
const points = (path: Path, spacing: number): readonly Point[] =>
  pathSegments(path).flatMap((segment, i) => {
    const all =
      segment.kind === 'line' ? [segment.from, segment.to] : pathSample(segmentsPath([segment]), spacing)
    return i === 0 ? all : all.slice(1)
  })

const openedAnew = (drawing: Drawing, map: Affine, spacing: number): Opened => {
  const lines: Opened['lines'][number][] = []
  const words: Opened['words'][number][] = []
  let count = 0
  const walk = (marks: Drawing, frame: Affine): void => {
    for (const mark of marks)
      switch (mark.kind) {
        case 'group':
          walk(mark.marks, affineThen(mark.map, frame))
          break
        case 'text':
          words.push({
            text: mark.text,
            corners: textCorners(mark, frame),
            size: mark.size,
            order: layers.indexOf(mark.layer) * 1e6 + count++,
          })
          break
        default: {
          const stretch = Math.hypot(frame[0], frame[1]) || 1
          lines.push({
            kind: mark.kind,
            points: points(mark.path, spacing / stretch).map((p) => affineApply(frame, p)),
            grey: mark.kind === 'fill' ? mark.grey : (mark.pen.grey ?? 0),
            width: mark.kind === 'fill' ? 0 : mark.pen.width,
            order: layers.indexOf(mark.layer) * 1e6 + count++,
          })
        }
      }
  }
  walk(drawing, map)
  return { lines, words }
}

const known = new WeakMap<Drawing, Opened>()

/** Curves within about 0.002 mm of themselves at 20 mm radius and a spacing of 0.5 mm. A drawing as it lies is opened once for all. */
export const opened = (drawing: Drawing, map: Affine = affineIdentity, spacing = 0.5): Opened => {
  if (map !== affineIdentity || spacing !== 0.5) return openedAnew(drawing, map, spacing)
  const before = known.get(drawing) ?? openedAnew(drawing, map, spacing)
  known.set(drawing, before)
  return before
}

/** Whether a straight line between two points runs through the inside of a box (Liang and Barsky, 1984). */
export const segmentInBox = (p: Point, q: Point, box: Box): boolean => {
  let [t0, t1] = [0, 1]
  for (const [d, low, high] of [
    [q.x - p.x, box.x0 - p.x, box.x1 - p.x],
    [q.y - p.y, box.y0 - p.y, box.y1 - p.y],
  ] as const) {
    if (d === 0) {
      if (low >= 0 || high <= 0) return false
      continue
    }
    const [a, b] = d > 0 ? [low / d, high / d] : [high / d, low / d]
    t0 = Math.max(t0, a)
    t1 = Math.min(t1, b)
  }
  return t1 - t0 > 1e-9
}

/** Where two straight lines cross between their ends, not where they touch: null where they do not. */
export const segmentsCross = (a: Point, b: Point, c: Point, d: Point): Point | null => {
  const [rx, ry, sx, sy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y]
  const det = rx * sy - ry * sx
  if (Math.abs(det) < 1e-12) return null
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / det
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / det
  const [et, eu] = [0.02 / (Math.hypot(rx, ry) || 1), 0.02 / (Math.hypot(sx, sy) || 1)]
  return t > et && t < 1 - et && u > eu && u < 1 - eu ? { x: a.x + rx * t, y: a.y + ry * t } : null
}

export const boxOf = (corners: readonly Point[]): Box => pointsBounds(corners)
