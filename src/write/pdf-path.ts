import { formatNumber } from '../drawing/number.ts'
import { type Affine, affineApply } from '../geometry/affine.ts'
import { pathCubics } from '../geometry/cubics.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'

/** How far the cubic of an arc may stray, mm, on paper and in the mark's own frame, whichever is stricter. */
const arcTolerance = 0.0005

/** 1/10 000 pt is 3.5e-5 mm. */
const decimals = 4

/** The largest stretch of a map: its greater singular value. */
const stretch = ([a, b, c, d]: Affine): number => (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2

const namedCubics = (path: Path, tolerance: number, name: string): Path => {
  try {
    return pathCubics(path, tolerance)
  } catch (error) {
    throw new RangeError(`${name}: ${(error as Error).message}`)
  }
}

/** Path operators in points; `map` takes the path's frame to points. Throws RangeError on NaN, naming `name`. */
export const pathOperators = (path: Path, map: Affine, name: string): string => {
  const coordinate = `a point of ${name}`
  const at = (p: Point): string => {
    const { x, y } = affineApply(map, p)
    return `${formatNumber(x, decimals, coordinate)} ${formatNumber(y, decimals, coordinate)}`
  }
  const scale = stretch(map) / pointsPerMm
  const cubics = namedCubics(path, arcTolerance / Math.max(1, scale || 1), name)
  let out = `${at(path.start)} m\n`
  for (const piece of cubics.pieces)
    out +=
      piece.kind === 'cubic' ? `${at(piece.c1)} ${at(piece.c2)} ${at(piece.to)} c\n` : `${at(piece.to)} l\n`
  return path.closed ? `${out}h\n` : out
}
