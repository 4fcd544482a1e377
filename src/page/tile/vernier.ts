import { type Drawing, type Shape, shared, stroke, text } from '../../drawing/drawing.ts'
import type { Affine } from '../../geometry/affine.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointMoved, pointToward, unitVector } from '../../geometry/point.ts'
import { pens } from '../../pattern/pens.ts'

/**
 * Two scales that meet at a joint line: 2.0 mm on the page that lies over, 1.9 mm on the one under it. Where two ticks run
 * through in one line stands the slip along the joint, in tenths of a millimetre: the difference of the pitches is the step.
 */
const vernierPitch = { over: 2, under: 1.9 } as const

/** Ticks on each side of the middle: the scale reads to ±0.9 mm. */
const vernierTicks = 9

/** Half of the length that a vernier takes along its joint, mm. */
export const vernierReach = vernierTicks * vernierPitch.over

/** Height of a scale's figures, mm. */
export const scaleFigure = 1.5

/** Shapes that ticks and figures of a scale lie in with so much air, mm: along its joint line from its middle, and off that line. */
export const vernierShapes = (
  over: boolean,
  air: number,
): readonly (readonly (readonly [number, number])[])[] => {
  const pitch = over ? vernierPitch.over : vernierPitch.under
  const [fifth, end] = [5 * pitch, vernierTicks * pitch + air]
  const half = scaleFigure / 2 + air
  return [
    [
      [-end, -air],
      [end, -air],
      [end, shortTick + air],
      [fifth, longTick + air],
      [0, middleTick + air],
      [-fifth, longTick + air],
      [-end, shortTick + air],
    ],
    ...(over ? [] : [-fifth, 0, fifth]).map((at): readonly (readonly [number, number])[] => [
      [at - half, 0],
      [at + half, 0],
      [at + half, figureMiddle + half],
      [at - half, figureMiddle + half],
    ]),
  ]
}

/** Lengths of ticks, and how far off the joint line figures stand, mm. */
const [shortTick, longTick, middleTick] = [2.5, 4, 5]
const figureMiddle = 5.8

/** Corners of what the ticks cover. */
export const vernierCorners = (middle: Point, along: number, inward: number): readonly Point[] => {
  const across = unitVector(along)
  const off = unitVector(inward)
  const at = (mm: number, up: number): Point => pointMoved(middle, across, mm, off, up)
  const fifth = 5 * vernierPitch.over
  return [
    at(-vernierReach, 0),
    at(-vernierReach, shortTick),
    at(-fifth, longTick),
    at(0, middleTick),
    at(fifth, longTick),
    at(vernierReach, shortTick),
    at(vernierReach, 0),
  ]
}

/** The ticks of a scale, its joint line along x and what the page keeps above it. */
const ticksOf = (pitch: number): readonly Shape[] =>
  Array.from({ length: 2 * vernierTicks + 1 }, (_, i) => {
    const n = i - vernierTicks
    const length = n === 0 ? middleTick : n % 5 === 0 ? longTick : shortTick
    return stroke('joint', pathOf({ x: n * pitch, y: 0 }, { x: n * pitch, y: length }), pens.cross)
  })

const ticks = { over: ticksOf(vernierPitch.over), under: ticksOf(vernierPitch.under) }

/** `middle` on the joint line, `along` its direction, `inward` towards what the page keeps; angles in radians. */
export const vernierMarks = (middle: Point, along: number, inward: number, over: boolean): Drawing => {
  const across = unitVector(along)
  const up = unitVector(inward)
  const map: Affine = [across.x, across.y, up.x, up.y, middle.x, middle.y]
  if (over) return [shared(map, 'joint', ticks.over)]
  const figures = [-5, 0, 5].map((n) => {
    const at = pointMoved(middle, across, n * vernierPitch.under, up, figureMiddle)
    const words = pointToward(at, along - Math.PI / 2, scaleFigure / 2)
    return text('joint', words, scaleFigure, `${Math.abs(n)}`, { angle: along, align: 'middle' })
  })
  return [shared(map, 'joint', ticks.under), ...figures]
}
