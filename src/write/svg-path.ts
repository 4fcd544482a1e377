import { formatNumber } from '../drawing/number.ts'
import { type Affine, affineApply } from '../geometry/affine.ts'
import { degreesOf } from '../geometry/degrees.ts'
import { type Path, pathSegments, type Segment } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { segmentPart } from '../geometry/split.ts'

/** Past this an arc's ends come so near each other that rounding decides where it runs: it is written in two halves. */
const mostSweep = 1.5 * Math.PI

/** Half axes of the ellipse that a map makes of a circle, and the turn of the first, radians (singular values). */
const ellipse = ([a, b, c, d]: Affine): {
  readonly rx: number
  readonly ry: number
  readonly turn: number
} => {
  const [same, other] = [Math.hypot(a + d, b - c) / 2, Math.hypot(a - d, b + c) / 2]
  return {
    rx: same + other,
    ry: Math.abs(same - other),
    turn: (Math.atan2(b - c, a + d) + Math.atan2(b + c, a - d)) / 2,
  }
}

/** Path data; `map` takes the path's frame to the picture's. Arcs stay arcs. Throws RangeError on NaN, naming `name`. */
export const svgPathData = (path: Path, map: Affine, decimals: number, name: string): string => {
  const coordinate = `a point of ${name}`
  const number = (value: number): string => formatNumber(value, decimals, coordinate)
  const at = (p: Point): string => {
    const { x, y } = affineApply(map, p)
    return `${number(x)} ${number(y)}`
  }
  const mirrored = map[0] * map[3] - map[1] * map[2] < 0
  const { rx, ry, turn } = ellipse(map)
  const round = rx - ry <= 1e-12 * rx
  const command = (segment: Segment): string => {
    switch (segment.kind) {
      case 'line':
        return `L${at(segment.to)}`
      case 'cubic':
        return `C${at(segment.c1)} ${at(segment.c2)} ${at(segment.to)}`
      case 'arc': {
        const { radius, sweep } = segment
        if (Math.abs(sweep) > mostSweep)
          return [segmentPart(segment, 0, 0.5), segmentPart(segment, 0.5, 1)].map(command).join('')
        const degrees = round ? '0' : formatNumber(degreesOf(turn), 6, coordinate)
        const large = Math.abs(sweep) > Math.PI ? 1 : 0
        // counter-clockwise about a centre is the positive sense of a frame whose y goes up
        const flag = sweep > 0 !== mirrored ? 1 : 0
        return `A${number(radius * rx)} ${number(radius * ry)} ${degrees} ${large} ${flag} ${at(segment.to)}`
      }
      default:
        return segment satisfies never
    }
  }
  return `M${at(path.start)}${pathSegments(path).map(command).join('')}${path.closed ? 'Z' : ''}`
}
