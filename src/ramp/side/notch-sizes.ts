import type { SolvedCoping } from './coping.ts'
import { notchCorner } from './side.ts'
import type { Transition } from './transition.ts'

/** What is measured of a sawn notch, as its lip is gone: the wall from the back edge, the floor from the bottom edge, and along a level floor. mm */
export interface NotchSizes {
  readonly back: number
  readonly bottom: number
  /** from the wall to the curve; null of a round seat */
  readonly floor: number | null
}

/** `length`: of the whole side. */
export const notchSizes = (
  { curve, heights }: Transition,
  coping: SolvedCoping,
  length: number,
): NotchSizes => {
  const wall = notchCorner(coping)
  const mouth = curve.placeAtHeight(wall.y)
  return {
    back: length - wall.x,
    bottom: heights.frame - coping.down,
    floor: coping.seat === 'square' && mouth !== null ? wall.x - curve.point(mouth).x : null,
  }
}
