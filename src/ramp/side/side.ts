import type { QuarterDesign } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { arcSegment, type Path, pathOf, segmentsPath } from '../../geometry/path.ts'
import { type Point, pointAngle } from '../../geometry/point.ts'
import type { SolvedCoping } from './coping.ts'
import type { Transition } from './transition.ts'

export type EdgeName = 'bottom' | 'chamfer' | 'back' | 'top' | 'notch' | 'curve' | 'toe'

/** One edge of the panel; counter-clockwise, each starts where the one before ends. */
export interface Edge {
  readonly name: EdgeName
  readonly path: Path
}

/** The plywood panel that carries the curve: toe at the left, origin at its bottom front corner. */
export interface Side {
  readonly edges: readonly Edge[]
  readonly outline: Path
  /** where the cut curve ends at its top: the lip, or where the notch begins */
  readonly curveEnd: number
  readonly length: number
  readonly height: number
}

/** Of the whole side, behind a curve that runs so far, mm. */
export const sideLength = ({ back }: Pick<QuarterDesign, 'back'>, run: number): number =>
  back.from === 'length' ? back.value : run + back.value

/** Inner corner of a square notch, where a saw needs a hole to turn in. */
export const notchCorner = (coping: SolvedCoping): Point => ({
  x: coping.centre.x + coping.outside / 2,
  y: coping.centre.y - coping.outside / 2,
})

/** Of that hole, mm; common practice, no source. */
export const notchDrill = { mm: 8, in: (5 * inch) / 16 } as const

interface Notch {
  /** from `top` on the side's top line down, along the seat and out to the frame's curve at `end` */
  readonly path: Path
  readonly top: Point
  readonly end: number
}

const squareNotch = (coping: SolvedCoping, { curve, heights }: Transition): Notch => {
  const corner = notchCorner(coping)
  const end = curve.placeAtHeight(corner.y)
  const top = { x: corner.x, y: heights.frame }
  if (end === null) throw new RangeError(`the curve never comes to the notch's floor at ${corner.y}`)
  return { path: pathOf(top, corner, curve.point(end)), top, end }
}

const roundNotch = (coping: SolvedCoping, { curve, heights }: Transition): Notch => {
  const { centre } = coping
  const r = coping.outside / 2
  const end = curve.placeAtDistance(centre, r)
  if (end === null || end > curve.lip) throw new RangeError('the round seat does not meet the curve')
  const mouth = curve.point(end)
  // a pipe whose middle stands above the top line is cut off there, else a straight wall rises from its back
  const from = Math.asin(Math.min(0, (heights.frame - centre.y) / r))
  const to = pointAngle(centre, mouth)
  const seat = arcSegment(centre, r, from, to > from ? to - 2 * Math.PI - from : to - from)
  const top = { x: seat.from.x, y: heights.frame }
  const wall = from < 0 ? [] : [{ kind: 'line', from: top, to: seat.from } as const]
  return {
    path: segmentsPath([...wall, { ...seat, to: mouth, ...(from < 0 ? { from: top } : {}) }]),
    top,
    end,
  }
}

/** Throws RangeError where the notch and the curve do not meet: only for a coping without a `stop`. */
export const solveSide = (
  transition: Transition,
  coping: SolvedCoping | null,
  length: number,
  chamfer: number,
): Side => {
  const { curve, heights, toe, lip } = transition
  const notch = !coping
    ? null
    : coping.seat === 'square'
      ? squareNotch(coping, transition)
      : roundNotch(coping, transition)
  const wall = notch?.top ?? lip
  const curveEnd = notch?.end ?? curve.lip
  const down = curve.segments(curveEnd, curve.toe)
  const head = down[0]!
  const curvePath = segmentsPath([{ ...head, from: notch ? segmentEnd(notch.path) : lip }, ...down.slice(1)])
  const [front, back] = [
    { x: 0, y: 0 },
    { x: length, y: heights.frame },
  ]
  const edges: Edge[] = [
    { name: 'bottom', path: pathOf(front, { x: length - chamfer, y: 0 }) },
    ...(chamfer > 0
      ? [{ name: 'chamfer', path: pathOf({ x: length - chamfer, y: 0 }, { x: length, y: chamfer }) } as const]
      : []),
    { name: 'back', path: pathOf({ x: length, y: chamfer }, back) },
    { name: 'top', path: pathOf(back, wall) },
    ...(notch ? [{ name: 'notch', path: notch.path } as const] : []),
    { name: 'curve', path: withEnd(curvePath, toe) },
    ...(toe.y > 0 ? [{ name: 'toe', path: pathOf(toe, front) } as const] : []),
  ]
  return {
    edges,
    outline: { start: front, pieces: edges.flatMap((edge) => edge.path.pieces), closed: true },
    curveEnd,
    length,
    height: heights.frame,
  }
}

const segmentEnd = (path: Path): Point => path.pieces.at(-1)?.to ?? path.start

/** The last joint put on a point that is known exactly, so that edges share their ends to the bit. */
const withEnd = (path: Path, to: Point): Path => ({
  ...path,
  pieces: path.pieces.map((piece, i) => (i === path.pieces.length - 1 ? { ...piece, to } : piece)),
})
