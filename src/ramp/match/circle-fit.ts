import type { Point } from '../../geometry/point.ts'

/** The circle nearest to points, by the sum of the squares of their distances from it; mm. */
export interface CircleFit {
  readonly centre: Point
  readonly radius: number
  /** of each point, in their order: more than 0 outside of the circle */
  readonly residuals: readonly number[]
  /** of each point, 0 to 1: the share of its own error that the circle follows */
  readonly leverage: readonly number[]
  /** of the radius, for an error of 1 mm in each point */
  readonly radiusError: number
}

/** Least number of points; with these every circle is exact and nothing is told of its error. */
export const leastPoints = 3

/** Ends when a step moves the circle by less, mm. */
const settled = 1e-10
/** A circle flatter than this over its points is a straight line, mm of middle rise. */
const leastRise = 1e-6
const mostSteps = 100

type Triple = readonly [number, number, number]

/** Null where the points lie on one line, or fewer than three differ. Source: Gauss's method of least squares, from Kåsa's start. */
export const fitCircle = (points: readonly Point[]): CircleFit | null => {
  if (points.length < leastPoints) return null
  const start = algebraicCircle(points)
  if (start === null) return null
  let circle = start
  for (let count = 0; count < mostSteps; count++) {
    const { rows, residuals } = linearised(points, circle)
    const move = solveTriple(normalOf(rows), rightSide(rows, residuals))
    if (move === null) return null
    circle = { x: circle.x + move[0], y: circle.y + move[1], radius: circle.radius + move[2] }
    if (!(circle.radius > 0) || !Number.isFinite(circle.radius)) return null
    if (Math.hypot(...move) < settled * Math.max(1, circle.radius)) break
  }
  const { rows, residuals } = linearised(points, circle)
  const covariance = inverse(normalOf(rows))
  if (covariance === null) return null
  return {
    centre: { x: circle.x, y: circle.y },
    radius: circle.radius,
    residuals,
    leverage: rows.map((row) => quadratic(covariance, row)),
    radiusError: Math.sqrt(covariance[2]![2]),
  }
}

interface Circle {
  readonly x: number
  readonly y: number
  readonly radius: number
}

/** Distances from a circle, and how each changes with centre and radius. */
const linearised = (points: readonly Point[], { x, y, radius }: Circle) => {
  const away = points.map((point) => Math.hypot(point.x - x, point.y - y))
  return {
    rows: points.map((point, i): Triple => [(x - point.x) / away[i]!, (y - point.y) / away[i]!, -1]),
    residuals: away.map((distance) => distance - radius),
  }
}

/** x² + y² = 2ax + 2by + c by least squares, about the middle of the points. Source: Kåsa 1976. */
const algebraicCircle = (points: readonly Point[]): Circle | null => {
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  }
  const rows = points.map(({ x, y }): Triple => [x - middle.x, y - middle.y, 1])
  const squares = rows.map(([x, y]) => -(x * x + y * y))
  const found = solveTriple(normalOf(rows), rightSide(rows, squares))
  if (found === null) return null
  const [a, b] = [found[0] / 2, found[1] / 2]
  const radius = Math.sqrt(found[2] + a * a + b * b)
  const reach = Math.max(...rows.map(([x, y]) => Math.hypot(x, y)))
  // rise = reach² / 2R: what bends less is straight
  if (!Number.isFinite(radius) || !(reach > 0) || (reach * reach) / (2 * radius) < leastRise) return null
  return { x: a + middle.x, y: b + middle.y, radius }
}

type Square = readonly (readonly [number, number, number])[]

const normalOf = (rows: readonly Triple[]): Square => {
  const at = (i: 0 | 1 | 2, j: 0 | 1 | 2): number => rows.reduce((sum, row) => sum + row[i] * row[j], 0)
  return [
    [at(0, 0), at(0, 1), at(0, 2)],
    [at(1, 0), at(1, 1), at(1, 2)],
    [at(2, 0), at(2, 1), at(2, 2)],
  ]
}

const rightSide = (rows: readonly Triple[], values: readonly number[]): Triple => {
  const at = (i: 0 | 1 | 2): number => -rows.reduce((sum, row, k) => sum + row[i] * values[k]!, 0)
  return [at(0), at(1), at(2)]
}

const determinant = (m: Square): number => {
  const [[a, b, c], [d, e, f], [g, h, i]] = m as [Triple, Triple, Triple]
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}

/** Cramer's rule; null where the three do not tell anything apart. */
const solveTriple = (m: Square, right: Triple): Triple | null => {
  const whole = determinant(m)
  const scale = m.reduce((product, row) => product * Math.hypot(...row), 1)
  if (!(Math.abs(whole) > 1e-14 * scale)) return null
  const withColumn = (column: number): number =>
    determinant(
      m.map((row, i) => row.map((value, j) => (j === column ? right[i]! : value)) as unknown as Triple),
    )
  return [withColumn(0) / whole, withColumn(1) / whole, withColumn(2) / whole]
}

const inverse = (m: Square): Square | null => {
  const columns = ([0, 1, 2] as const).map((i) =>
    solveTriple(m, [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0]),
  )
  if (columns.some((column) => column === null)) return null
  const [a, b, c] = columns as [Triple, Triple, Triple]
  return [
    [a[0], b[0], c[0]],
    [a[1], b[1], c[1]],
    [a[2], b[2], c[2]],
  ]
}

const quadratic = (m: Square, row: Triple): number =>
  m.reduce(
    (sum, line, i) =>
      sum + row[i as 0 | 1 | 2] * line.reduce((s, value, j) => s + value * row[j as 0 | 1 | 2], 0),
    0,
  )
