import { affineScale } from '../../geometry/affine.ts'
import type { Path, Piece } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { glyphParts, partMap } from './glyph-parts.ts'
import { type GlyphPoint, glyphContours } from './glyph-points.ts'
import type { Sfnt } from './sfnt.ts'

/** The outline of a glyph as closed paths, `scale` times its units; a quadratic is a cubic with arms of two thirds, exactly. */
export const glyphPaths = (font: Sfnt, glyph: number, scale: number): readonly Path[] =>
  inUnits(font, glyph).map((path) => pathMap(path, affineScale(scale)))

const inUnits = (font: Sfnt, glyph: number): readonly Path[] => {
  const outline = font.outline(glyph)
  const parts = glyphParts(outline)
  return parts.length > 0
    ? parts.flatMap((part) => inUnits(font, part.glyph).map((path) => pathMap(path, partMap(outline, part))))
    : glyphContours(outline).flatMap((points) => (points.length > 1 ? [contourPath(points)] : []))
}

/** Between two points off the line lies one on it, in their middle. */
const contourPath = (points: readonly GlyphPoint[]): Path => {
  const first = points.findIndex(({ on }) => on)
  const ring = first < 0 ? points : [...points.slice(first), ...points.slice(0, first)]
  const start: Point = first < 0 ? pointBetween(points.at(-1)!, points[0]!, 0.5) : ring[0]!
  const rest = first < 0 ? ring : ring.slice(1)
  const pieces: Piece[] = []
  let from = start
  rest.forEach((point, i) => {
    if (point.on) {
      pieces.push({ kind: 'line', to: point })
      from = point
      return
    }
    const next = rest[i + 1]
    // a point on the line after this one ends the curve: its own turn then adds a line of no length
    const to = next === undefined ? start : next.on ? next : pointBetween(point, next, 0.5)
    pieces.push({
      kind: 'cubic',
      c1: pointBetween(from, point, 2 / 3),
      c2: pointBetween(to, point, 2 / 3),
      to,
    })
    from = to
  })
  return { start, pieces, closed: true }
}
