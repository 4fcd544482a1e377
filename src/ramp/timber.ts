import type { Point } from '../geometry/point.ts'

/** A cross timber between the sides, seen from the end: a rectangle in the panel. */
export interface Timber {
  /** middle of its face: towards the skin, or its top */
  readonly x: number
  readonly y: number
  /** slope of that face, radians */
  readonly angle: number
  readonly lies: 'edge' | 'flat'
  /** along the face, and square to it into the panel, mm */
  readonly width: number
  readonly depth: number
}

/** Corners, counter-clockwise from the upper end of the face. */
export const timberCorners = ({ x, y, angle, width, depth }: Timber): readonly Point[] => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const corner = (along: number, into: number): Point => ({
    x: x + along * cos + into * sin,
    y: y + along * sin - into * cos,
  })
  const half = width / 2
  return [corner(half, 0), corner(-half, 0), corner(-half, depth), corner(half, depth)]
}
