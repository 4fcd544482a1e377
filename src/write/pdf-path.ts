import { type Affine, affineApply } from '../geometry/affine.ts'
import { hasArc, pathCubics } from '../geometry/cubics.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { ByteSink } from './byte-sink.ts'

/** How far the cubic of an arc may stray, mm, on paper and in the mark's own frame, whichever is stricter. */
const arcTolerance = 0.0005

/** 1/10 000 pt is 3.5e-5 mm. */
const decimals = 4

/** The largest stretch of a map: its greater singular value. */
const stretch = ([a, b, c, d]: Affine): number => (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2

const namedCubics = (path: Path, map: Affine, name: string): Path => {
  const scale = stretch(map) / pointsPerMm
  try {
    return pathCubics(path, arcTolerance / Math.max(1, scale || 1))
  } catch (error) {
    throw new RangeError(`${name}: ${(error as Error).message}`)
  }
}

/** Path operators in points; `map` takes the path's frame to points. Throws RangeError on NaN, naming `name`. */
export const pathOperators = (sink: ByteSink, path: Path, map: Affine, name: string): void => {
  const { start, closed } = path
  // open ones of straight lines, most that is drawn, go as they are
  const { pieces } = closed || hasArc(path) ? namedCubics(path, map, name) : path
  pointOperand(sink, start, map, name)
  sink.words('m\n')
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i]!
    if (piece.kind === 'cubic') {
      pointOperand(sink, piece.c1, map, name)
      pointOperand(sink, piece.c2, map, name)
    }
    pointOperand(sink, piece.to, map, name)
    sink.words(piece.kind === 'cubic' ? 'c\n' : 'l\n')
  }
  if (closed) sink.words('h\n')
}

const pointOperand = (sink: ByteSink, p: Point, map: Affine, name: string): void => {
  const { x, y } = affineApply(map, p)
  sink.operand(x, decimals, 'a point', name)
  sink.operand(y, decimals, 'a point', name)
}
