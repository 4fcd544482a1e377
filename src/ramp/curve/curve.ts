import type { Segment } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'

/**
 * All that the solver asks of a transition. A `place` is a number that grows from the toe to the lip and
 * is shared by a curve and its offsets: the same place lies on the same normal. The wood is on the right of the way up.
 * The curve may be asked a little beyond its toe and lip, as if it went on.
 */
export interface Curve {
  readonly toe: number
  readonly lip: number
  readonly point: (place: number) => Point
  /** radians, 0 is level */
  readonly slope: (place: number) => number
  /** of its bend there, mm; infinite where it is straight */
  readonly radiusAt: (place: number) => number
  /** length from the toe, mm; negative below the toe */
  readonly lengthTo: (place: number) => number
  readonly placeAtLength: (length: number) => number
  /** null where the curve never reaches that height */
  readonly placeAtHeight: (y: number) => number | null
  /** the lowest place that lies `distance` from `from`; null where there is none */
  readonly placeAtDistance: (from: Point, distance: number) => number | null
  /** foot of the normal through a point, and the point's distance from the curve: positive on the wood's side */
  readonly nearest: (p: Point) => { readonly place: number; readonly distance: number }
  /** the parallel curve, `distance` mm towards the rider (negative: into the wood) */
  readonly offset: (distance: number) => Curve
  /** the curve itself between two places, in the direction from the first to the second */
  readonly segments: (from: number, to: number) => readonly Segment[]
}
