import { type Drawing, type Mark, stroke, text } from '../../drawing/drawing.ts'
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
  return [
    at(-vernierReach, 0),
    at(-vernierReach, 2.5),
    at(-10, 4),
    at(0, 5),
    at(10, 4),
    at(vernierReach, 2.5),
    at(vernierReach, 0),
  ]
}

/** `middle` on the joint line, `along` its direction, `inward` towards what the page keeps; angles in radians. */
export const vernierMarks = (middle: Point, along: number, inward: number, over: boolean): Drawing => {
  const pitch = over ? vernierPitch.over : vernierPitch.under
  // turned once, not for each tick
  const across = unitVector(along)
  const up = unitVector(inward)
  const marks: Mark[] = []
  for (let n = -vernierTicks; n <= vernierTicks; n++) {
    const above = (mm: number): Point => pointMoved(middle, across, n * pitch, up, mm)
    const length = n === 0 ? middleTick : n % 5 === 0 ? longTick : shortTick
    marks.push(stroke('joint', pathOf(above(0), above(length)), pens.cross))
    if (n % 5 !== 0 || over) continue
    const words = pointToward(above(figureMiddle), along - Math.PI / 2, scaleFigure / 2)
    marks.push(text('joint', words, scaleFigure, `${Math.abs(n)}`, { angle: along, align: 'middle' }))
  }
  return marks
}
