import type { Point } from './point.ts'

/** [a, b, c, d, e, f]: X = a·x + c·y + e, Y = b·x + d·y + f, the order that PDF uses. */
export type Affine = readonly [number, number, number, number, number, number]

export const affineIdentity: Affine = [1, 0, 0, 1, 0, 0]

export const affineApply = (m: Affine, p: Point): Point => ({
  x: m[0] * p.x + m[2] * p.y + m[4],
  y: m[1] * p.x + m[3] * p.y + m[5],
})

/** The map that does `first`, then `second`. */
export const affineThen = (first: Affine, second: Affine): Affine => {
  // asked for each word and line: by place, as taking a list apart makes something for each of its members
  const A = second[0]
  const B = second[1]
  const C = second[2]
  const D = second[3]
  return [
    A * first[0] + C * first[1],
    B * first[0] + D * first[1],
    A * first[2] + C * first[3],
    B * first[2] + D * first[3],
    A * first[4] + C * first[5] + second[4],
    B * first[4] + D * first[5] + second[5],
  ]
}

/** Throws RangeError where the map flattens the plane (determinant 0 or not finite). */
export const affineInvert = (m: Affine): Affine => {
  const a = m[0]
  const b = m[1]
  const c = m[2]
  const d = m[3]
  const det = a * d - b * c
  if (!Number.isFinite(det) || det === 0) throw new RangeError(`a map with determinant ${det} has no inverse`)
  return [d / det, -b / det, -c / det, a / det, (c * m[5] - d * m[4]) / det, (b * m[4] - a * m[5]) / det]
}

export const affineTranslate = (x: number, y: number): Affine => [1, 0, 0, 1, x, y]

export const affineScale = (sx: number, sy = sx): Affine => [sx, 0, 0, sy, 0, 0]

/** Turn by `angle` radians counter-clockwise about the origin. Quarter turns come out exact. */
export const affineRotate = (angle: number): Affine => {
  if (angle === 0) return affineIdentity
  const quarter = angle / (Math.PI / 2)
  const exact = Number.isInteger(quarter)
  const cos = exact ? [1, 0, -1, 0][((quarter % 4) + 4) % 4]! : Math.cos(angle)
  const sin = exact ? [0, 1, 0, -1][((quarter % 4) + 4) % 4]! : Math.sin(angle)
  return [cos, sin, -sin, cos, 0, 0]
}

/** The direction that a direction (radians) points in after the map. */
export const affineAngle = (m: Affine, angle: number): number =>
  Math.atan2(m[1] * Math.cos(angle) + m[3] * Math.sin(angle), m[0] * Math.cos(angle) + m[2] * Math.sin(angle))
