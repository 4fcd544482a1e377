import { type Affine, affineApply } from './affine.ts'
import type { Path, Piece } from './path.ts'

/**
 * A path turned, moved, mirrored or evenly scaled: arcs stay arcs, a mirror turns their sweep round. Throws RangeError where
 * the map would make an arc an ellipse.
 */
export const pathMap = (path: Path, map: Affine): Path => {
  const [a, b, c, d] = map
  const turns = a * d - b * c < 0 ? -1 : 1
  const even = Math.abs(a - turns * d) + Math.abs(b + turns * c) <= 1e-9 * (Math.abs(a) + Math.abs(b))
  const piece = (own: Piece): Piece => {
    switch (own.kind) {
      case 'line':
        return { kind: 'line', to: affineApply(map, own.to) }
      case 'arc':
        if (!even) throw new RangeError(`the map ${map.join(' ')} makes an arc an ellipse`)
        return {
          kind: 'arc',
          to: affineApply(map, own.to),
          centre: affineApply(map, own.centre),
          sweep: own.sweep * turns,
        }
      case 'cubic':
        return {
          kind: 'cubic',
          c1: affineApply(map, own.c1),
          c2: affineApply(map, own.c2),
          to: affineApply(map, own.to),
        }
      default:
        return own satisfies never
    }
  }
  return { start: affineApply(map, path.start), pieces: path.pieces.map(piece), closed: path.closed }
}
