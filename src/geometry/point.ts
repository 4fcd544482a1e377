/** A point or a vector in the plane: millimetres, x to the right, y up. */
export interface Point {
  readonly x: number
  readonly y: number
}

export const point = (x: number, y: number): Point => ({ x, y })

export const pointSubtract = (p: Point, q: Point): Point => ({ x: p.x - q.x, y: p.y - q.y })

/** p moved by `distance` in the direction of `angle` (radians, counter-clockwise from x). */
export const pointToward = (p: Point, angle: number, distance: number): Point => ({
  x: p.x + distance * Math.cos(angle),
  y: p.y + distance * Math.sin(angle),
})

/** The vector of length 1 in the direction of `angle`. */
export const unitVector = (angle: number): Point => pointToward({ x: 0, y: 0 }, angle, 1)

/** p moved by so many of two vectors, for places in a frame that is turned once. */
export const pointMoved = (p: Point, across: Point, i: number, up: Point, k: number): Point => ({
  x: p.x + i * across.x + k * up.x,
  y: p.y + i * across.y + k * up.y,
})

export const pointBetween = (p: Point, q: Point, t: number): Point => ({
  x: p.x + (q.x - p.x) * t,
  y: p.y + (q.y - p.y) * t,
})

export const pointDistance = (p: Point, q: Point): number => Math.hypot(q.x - p.x, q.y - p.y)

/** Direction from p to q, radians. */
export const pointAngle = (p: Point, q: Point): number => Math.atan2(q.y - p.y, q.x - p.x)

/** z of the cross product p × q: positive when q lies counter-clockwise of p. */
export const pointCross = (p: Point, q: Point): number => p.x * q.y - p.y * q.x
