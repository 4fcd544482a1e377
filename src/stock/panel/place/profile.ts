import type { Box } from '../../../geometry/bounds.ts'
import type { Point } from '../../../geometry/point.ts'

/**
 * A polygon as columns: between two neighbouring stations its lower and its upper border are straight. What lies between the
 * two borders counts as taken, so a piece that is undercut loses that room.
 */
export interface Profile {
  /** one more than there are columns, rising */
  readonly stations: Float64Array
  /** of column i: [lower border at its left station, its slope, upper border there, its slope] at 4 i */
  readonly borders: Float64Array
}

/** Of a rectangle from one corner to the other. */
export const boxProfile = ({ x0, y0, x1, y1 }: Box): Profile => ({
  stations: Float64Array.of(x0, x1),
  borders: Float64Array.of(y0, 0, y1, 0),
})

/** Stations nearer than this are one, mm. */
const near = 1e-7

/** Columns of a polygon along x; `across`: along y, its borders in x. */
export const columnsOf = (polygon: readonly Point[], across = false): Profile => {
  const count = polygon.length
  // made hundreds of times in a process that is not warm: no lists
  const xs = new Float64Array(count)
  const ys = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    const { x, y } = polygon[i]!
    xs[i] = across ? y : x
    ys[i] = across ? x : y
  }
  const sorted = xs.slice().sort()
  const stations = sorted.filter((x, i) => i === 0 || x - sorted[i - 1]! > near)
  const columns = stations.length - 1
  const borders = new Float64Array(4 * columns)
  const low = new Float64Array(columns).fill(Number.POSITIVE_INFINITY)
  const high = new Float64Array(columns).fill(Number.NEGATIVE_INFINITY)
  // the column in which an edge begins: mostly beside that of the edge before
  let column = 0
  for (let k = 0; k < count; k++) {
    const next = k + 1 < count ? k + 1 : 0
    const from = xs[k]! < xs[next]! ? k : next
    const to = from === k ? next : k
    const start = xs[from]!
    const end = xs[to]!
    const slope = (ys[to]! - ys[from]!) / (end - start)
    while (column > 0 && stations[column]! > start) column--
    while (column < columns - 1 && stations[column + 1]! <= start) column++
    // an edge borders the columns whose middle it passes
    for (let i = column; i < columns; i++) {
      const left = stations[i]!
      const middle = (left + stations[i + 1]!) / 2
      if (middle <= start) continue
      if (middle > end) break
      const y = ys[k]! + slope * (middle - xs[k]!)
      const atLeft = y + slope * (left - middle)
      if (y < low[i]!) {
        low[i] = y
        borders[4 * i] = atLeft
        borders[4 * i + 1] = slope
      }
      if (y > high[i]!) {
        high[i] = y
        borders[4 * i + 2] = atLeft
        borders[4 * i + 3] = slope
      }
    }
  }
  return { stations, borders }
}

/** The column that holds x; the first or the last of what lies beside them. */
const columnAt = (stations: ArrayLike<number>, x: number): number => {
  let low = 0
  let high = stations.length - 2
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (stations[middle]! <= x) low = middle
    else high = middle - 1
  }
  return low
}

/** Places at which two are compared before all of them are, as parts of what they share: others show next to nothing more. */
const glances = [0.5, 0.06, 0.94]

/** Whether a glance shows that the second, moved `dx` along, meets the first at every rise from `low` to `high`; it may miss that. */
export const blocksAll = (
  first: Profile,
  second: Profile,
  dx: number,
  low: number,
  high: number,
): boolean => {
  const p = first.stations
  const q = second.stations
  const from = Math.max(p[0]!, q[0]! + dx)
  const to = Math.min(p[p.length - 1]!, q[q.length - 1]! + dx)
  if (to - from <= near) return false
  const own = first.borders
  const other = second.borders
  let under = false
  let over = false
  for (let glance = 0; glance < glances.length; glance++) {
    const x = from + (to - from) * glances[glance]!
    const i = columnAt(p, x)
    const k = columnAt(q, x - dx)
    const s = x - p[i]!
    const t = x - dx - q[k]!
    under ||= own[4 * i]! + own[4 * i + 1]! * s - other[4 * k + 2]! - other[4 * k + 3]! * t < low
    over ||= own[4 * i + 2]! + own[4 * i + 3]! * s - other[4 * k]! - other[4 * k + 1]! * t > high
    if (under && over) return true
  }
  return false
}

/**
 * How far the second may not be raised, when it is moved `dx` along: between these it meets the first, at them it touches;
 * null where it passes beside it. Of no use to who asks are rises below `least` and above `most`: once all between them are seen
 * to be blocked, it is not looked how much more is.
 */
export const blockedRise = (
  first: Profile,
  second: Profile,
  dx: number,
  least = Number.NEGATIVE_INFINITY,
  most = Number.POSITIVE_INFINITY,
): readonly [number, number] | null => {
  const p = first.stations
  const q = second.stations
  const from = Math.max(p[0]!, q[0]! + dx)
  const to = Math.min(p[p.length - 1]!, q[q.length - 1]! + dx)
  if (to - from <= near) return null
  let i = columnAt(p, from + near)
  let k = columnAt(q, from + near - dx)
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  let x = from
  const own = first.borders
  const other = second.borders
  const last = to - near
  let firstEnd = p[i + 1]!
  let secondEnd = q[k + 1]! + dx
  let lowSlope = own[4 * i + 1]!
  let highSlope = own[4 * i + 3]!
  let otherLowSlope = other[4 * k + 1]!
  let otherHighSlope = other[4 * k + 3]!
  // borders of both where they are looked at
  const s = x - p[i]!
  const t = x - q[k]! - dx
  let lowAt = own[4 * i]! + lowSlope * s
  let highAt = own[4 * i + 2]! + highSlope * s
  let otherLowAt = other[4 * k]! + otherLowSlope * t
  let otherHighAt = other[4 * k + 2]! + otherHighSlope * t
  // most of the time of a layout is spent here, in code that is not yet compiled: no lists are made, each number is read once
  while (low >= least || high <= most) {
    let next = firstEnd
    if (secondEnd < next) next = secondEnd
    if (to < next) next = to
    const width = next - x
    // from the one's upper border to the other's lower border at both ends of what two columns share, and the other way round
    const under = lowAt - otherHighAt
    const over = highAt - otherLowAt
    lowAt += lowSlope * width
    highAt += highSlope * width
    otherLowAt += otherLowSlope * width
    otherHighAt += otherHighSlope * width
    const underNext = lowAt - otherHighAt
    const overNext = highAt - otherLowAt
    if (under < low) low = under
    if (underNext < low) low = underNext
    if (over > high) high = over
    if (overNext > high) high = overNext
    x = next
    if (x >= last) break
    if (firstEnd <= x + near) {
      i++
      firstEnd = p[i + 1]!
      lowAt = own[4 * i]!
      lowSlope = own[4 * i + 1]!
      highAt = own[4 * i + 2]!
      highSlope = own[4 * i + 3]!
    }
    if (secondEnd <= x + near) {
      k++
      secondEnd = q[k + 1]! + dx
      otherLowAt = other[4 * k]!
      otherLowSlope = other[4 * k + 1]!
      otherHighAt = other[4 * k + 2]!
      otherHighSlope = other[4 * k + 3]!
    }
  }
  return [low, high]
}
