import { pointsBounds } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { outerPolygon } from '../../geometry/polygon/outer-polygon.ts'
import type { SheetPart } from '../sheet-part.ts'

/** A part, and the one that is sawn with it from the panel underneath. */
export interface Couple {
  readonly part: SheetPart
  readonly under: SheetPart | null
}

/** Parts of one outline, or of one and its mirror: panels lie back to back, so that each comes out with its better face out. */
export const inPairs = (
  parts: readonly SheetPart[],
): { readonly pairs: readonly Couple[]; readonly singles: readonly SheetPart[] } => {
  const waiting: SheetPart[] = []
  const pairs: Couple[] = []
  for (const part of parts) {
    const name = eitherHand(part)
    const own = JSON.stringify(part.outline)
    const at = waiting.findIndex(
      (other) => eitherHand(other) === name && (!part.faced || JSON.stringify(other.outline) !== own),
    )
    if (at < 0) waiting.push(part)
    else pairs.push({ part: waiting.splice(at, 1)[0]!, under: part })
  }
  return { pairs, singles: waiting }
}

/** The same for an outline and its mirror image. */
const eitherHand = ({ outline, grain, faced }: SheetPart): string => {
  const polygon = outerPolygon(outline, 1)
  const { x0, y0, x1, y1 } = pointsBounds(polygon)
  const places = (points: readonly Point[]): string =>
    points
      .map(({ x, y }) => `${(x - x0).toFixed(3)} ${(y - y0).toFixed(3)}`)
      .sort()
      .join()
  const mirrored = polygon.map(({ x, y }) => ({ x: x0 + x1 - x, y }))
  return `${faced} ${grain} ${y1.toFixed(3)} ${[places(polygon), places(mirrored)].sort()[0]}`
}
