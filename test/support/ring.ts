import { type Edge, edgeRows } from './edge-rows.ts'

/** A closed outline of chords, x and y by turns, with the box around it; mm. Loops over numbers: tests ask millions of pairs. */
export interface Ring {
  readonly at: Float64Array
  readonly box: readonly [number, number, number, number]
}

export const ringOf = (corners: readonly (readonly [number, number])[]): Ring => {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)]
  return {
    at: Float64Array.from(corners.flat()),
    box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
  }
}

/** Whether an edge of the one has a point in common with an edge of the other. */
export const ringsCross = (a: Ring, b: Ring): boolean => {
  if (a.box[2] < b.box[0] || b.box[2] < a.box[0] || a.box[3] < b.box[1] || b.box[3] < a.box[1]) return false
  const [p, q] = [a.at, b.at]
  for (let i = 0; i < p.length; i += 2) {
    const x0 = p[i]!
    const y0 = p[i + 1]!
    const x1 = p[(i + 2) % p.length]!
    const y1 = p[(i + 3) % p.length]!
    const [left, right, low, high] = [Math.min(x0, x1), Math.max(x0, x1), Math.min(y0, y1), Math.max(y0, y1)]
    for (let j = 0; j < q.length; j += 2) {
      const u0 = q[j]!
      const v0 = q[j + 1]!
      const u1 = q[(j + 2) % q.length]!
      const v1 = q[(j + 3) % q.length]!
      if ((u0 < left && u1 < left) || (u0 > right && u1 > right)) continue
      if ((v0 < low && v1 < low) || (v0 > high && v1 > high)) continue
      // the ends of each lie on both sides of the other's line, or on it
      const from = (x1 - x0) * (v0 - y0) - (y1 - y0) * (u0 - x0)
      const to = (x1 - x0) * (v1 - y0) - (y1 - y0) * (u1 - x0)
      if (from * to > 0) continue
      const own = (u1 - u0) * (y0 - v0) - (v1 - v0) * (x0 - u0)
      const next = (u1 - u0) * (y1 - v0) - (v1 - v0) * (x1 - u0)
      if (own * next <= 0) return true
    }
  }
  return false
}

/** Whether a point lies inside: a ray to the right crosses an odd number of edges. */
export const ringHolds = ({ at }: Ring, x: number, y: number): boolean => {
  let odd = false
  for (let i = 0; i < at.length; i += 2) {
    const y0 = at[i + 1]!
    const y1 = at[(i + 3) % at.length]!
    if (y0 > y === y1 > y) continue
    const x0 = at[i]!
    if (x0 + ((y - y0) / (y1 - y0)) * (at[(i + 2) % at.length]! - x0) > x) odd = !odd
  }
  return odd
}

/** No edge crosses, and it lies on the inner side. */
export const ringInside = (own: Ring, around: Ring): boolean =>
  !ringsCross(own, around) && ringHolds(around, own.at[0]!, own.at[1]!)

export const ringsApart = (a: Ring, b: Ring): boolean =>
  !ringsCross(a, b) && !ringHolds(a, b.at[0]!, b.at[1]!) && !ringHolds(b, a.at[0]!, a.at[1]!)

/** The same answer as `ringHolds`, asked of the edges about a height alone: for outlines of thousands of chords. */
export const ringRows = ({ at }: Ring): ((x: number, y: number) => boolean) => {
  const edges = Array.from({ length: at.length / 2 }, (_, i): Edge => {
    const next = (2 * i + 2) % at.length
    return [at[2 * i]!, at[2 * i + 1]!, at[next]!, at[next + 1]!]
  })
  const edgesAt = edgeRows(edges, 4)
  return (x, y) => {
    let odd = false
    for (const [ax, ay, bx, by] of edgesAt(y)) {
      if (ay > y === by > y) continue
      if (ax + ((y - ay) / (by - ay)) * (bx - ax) > x) odd = !odd
    }
    return odd
  }
}
