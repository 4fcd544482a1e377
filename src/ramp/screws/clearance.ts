import type { Point } from '../../geometry/point.ts'

/**
 * Screws of one sort that go in square to the ramp's width, one beside the other: the axis from head to point as it is seen from
 * the side, and how far each stands from the ramp's left outer face. mm
 */
export interface Driven {
  readonly from: Point
  readonly to: Point
  readonly across: readonly number[]
  /** across the thread */
  readonly thick: number
}

/** Screws that go along the ramp, through its walls into the ends of a timber: they are points as seen from the side. mm */
export interface Lengthwise {
  readonly at: Point
  readonly thick: number
  /** middles of the walls that they go through, from the ramp's left outer face */
  readonly walls: readonly number[]
  /** how far their points lie beyond such a middle */
  readonly reach: number
}

/** Wood between two screws: pilot holes drilled by hand run aside by so much together. Common practice, no source. mm */
export const betweenScrews = 3

/** How near the axes of two screws may come, mm. */
export const axesApart = (a: number, b: number): number => (a + b) / 2 + betweenScrews

/** How far one that stands so far across lies beyond the points of those along the ramp, mm; 0 beside them. */
export const beyond = ({ walls, reach }: Pick<Lengthwise, 'walls' | 'reach'>, across: number): number => {
  let nearest = Number.POSITIVE_INFINITY
  for (const middle of walls) nearest = Math.min(nearest, Math.abs(across - middle))
  return Math.max(0, nearest - reach)
}

/** Between the axes of the nearest two: each of the first lies in a plane square to the second. mm */
export const axesDistance = (driven: Driven, along: Lengthwise): number => {
  const { from, to, across } = driven
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const [px, py] = [along.at.x - from.x, along.at.y - from.y]
  const square = dx * dx + dy * dy
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / square))
  const aside = Math.hypot(px - t * dx, py - t * dy)
  let nearest = Number.POSITIVE_INFINITY
  for (const at of across) nearest = Math.min(nearest, beyond(along, at))
  return Math.hypot(aside, nearest)
}
