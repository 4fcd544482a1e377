import type { Point } from '../../geometry/point.ts'
import type { Curve } from '../curve/curve.ts'

/** What every curve has, solved: docs/geometry.md. Lengths mm, angles radians. */
interface SolvedCurve {
  /** the frame's edge, from the toe corner to the uncut lip */
  readonly curve: Curve
  /** the ridden face over it */
  readonly face: Curve
  /** where both, continued below the toe, run level, and how high over the floor they lie there */
  readonly level: { readonly place: number; readonly frame: number; readonly surface: number }
  /** the least radius of the frame's edge */
  readonly tightest: number
  readonly heights: { readonly frame: number; readonly deck: number; readonly surface: number }
  readonly toe: Point
  readonly lip: Point
  readonly toeAngle: number
  readonly lipAngle: number
  readonly arc: number
  readonly run: number
  /** height of the ridden face over the floor at the toe */
  readonly toeStep: number
  /** length of the ridden face that is missing between toe and floor */
  readonly bridge: number
}

/** One circle from toe to lip. */
export interface CircleTransition extends SolvedCurve {
  readonly kind: 'circle'
  readonly centre: Point
  readonly radius: { readonly frame: number; readonly surface: number }
}

/** The curved part. What only one kind has is read by kind, so that the compiler leads a new one to every such place. */
export type Transition = CircleTransition
