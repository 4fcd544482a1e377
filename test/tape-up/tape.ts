import type { Pt } from '../support/pt.ts'
import type { PdfSegment } from '../support/read-page.ts'
import type { PdfPageRead } from '../support/read-pdf.ts'
import type { Plotted } from './plot.ts'

export interface Rect {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

export type Map6 = readonly [number, number, number, number, number, number]
export type Side = 'left' | 'right' | 'bottom' | 'top'

export const mapPoint = (m: Map6, p: Pt): Pt => ({
  x: m[0] * p.x + m[2] * p.y + m[4],
  y: m[1] * p.x + m[3] * p.y + m[5],
})

const inverse = ([a, b, c, d, e, f]: Map6): Map6 => {
  const det = a * d - b * c
  return [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det]
}

const chain = (first: Map6, second: Map6): Map6 => {
  const o = mapPoint(second, mapPoint(first, { x: 0, y: 0 }))
  const i = mapPoint(second, mapPoint(first, { x: 1, y: 0 }))
  const j = mapPoint(second, mapPoint(first, { x: 0, y: 1 }))
  return [i.x - o.x, i.y - o.y, j.x - o.x, j.y - o.y, o.x, o.y]
}

export const mmPerPoint = 25.4 / 72

/** A polyline; consecutive points at most a millimetre apart where it came from a stroke. */
export type Run = readonly Pt[]

/**
 * The polylines of a path, joints included, each line and cubic in steps of about a millimetre, a cubic in 12 at least.
 * A lone move gives nothing.
 */
export const runsOf = (path: readonly PdfSegment[], map: Map6): readonly Run[] => {
  const runs: Pt[][] = []
  let from: Pt = { x: 0, y: 0 }
  let first = from
  for (const segment of path) {
    if (segment.kind === 'move') {
      from = segment.to
      first = from
      runs.push([mapPoint(map, from)])
      continue
    }
    const run = runs.at(-1)!
    const to = segment.kind === 'close' ? first : segment.to
    const chord = Math.hypot(to.x - from.x, to.y - from.y) * mmPerPoint
    if (segment.kind === 'cubic') {
      const { c1, c2 } = segment
      const steps = Math.max(12, Math.ceil(chord))
      for (let i = 1; i <= steps; i++) {
        const t = i / steps
        const u = 1 - t
        const [w0, w1, w2, w3] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]
        run.push(
          mapPoint(map, {
            x: w0 * from.x + w1 * c1.x + w2 * c2.x + w3 * to.x,
            y: w0 * from.y + w1 * c1.y + w2 * c2.y + w3 * to.y,
          }),
        )
      }
    } else if (chord > 0) {
      const steps = Math.ceil(chord)
      for (let i = 1; i <= steps; i++)
        run.push(
          mapPoint(map, {
            x: from.x + ((to.x - from.x) * i) / steps,
            y: from.y + ((to.y - from.y) * i) / steps,
          }),
        )
    }
    from = to
  }
  return runs.filter((run) => run.length > 1)
}

export interface Tile {
  /** of the page in the file, from 1 */
  readonly page: number
  /** in the order of taping, from 1 */
  readonly number: number
  readonly name: string
  readonly pattern: string
  readonly read: PdfPageRead
  /** page points as written to the pattern */
  readonly toPattern: Map6
  /** as the plan says, points */
  readonly written: Rect
  /** page mm as they will lie on a true print, to the pattern: a move and a turn, nothing else */
  readonly trueToPattern: Map6
  readonly patternToTrue: Map6
  readonly writtenToTrue: Map6
  /** the window on a true print, mm */
  readonly window: Rect
  readonly cuts: readonly Run[]
}

/** A neighbour at one side of a page, as the true page is read upright, and where the joint line runs. */
export interface Beside {
  readonly side: Side
  readonly tile: Tile
  /** x of an upright joint line or y of a level one, true page mm */
  readonly at: number
  /** width of the strip that both windows hold, mm */
  readonly overlap: number
}

export const tilesOf = ({ read, plan }: Plotted): readonly Tile[] => {
  const { width, height } = plan.paper
  const [a, b, c, d] = plan.correction
  const toWritten = chain(chain([1, 0, 0, 1, -width / 2, -height / 2], [a, b, c, d, 0, 0]), [
    1 / mmPerPoint,
    0,
    0,
    1 / mmPerPoint,
    width / 2 / mmPerPoint,
    height / 2 / mmPerPoint,
  ])
  const writtenToTrue = inverse(toWritten)
  let number = 0
  return plan.pages
    .filter((page: { kind: string }) => page.kind === 'tile')
    .map((page: { page: number; tile: string; pattern: string; toPattern: Map6; window: number[] }): Tile => {
      number++
      const [x0, y0, x1, y1] = page.window as [number, number, number, number]
      const trueToPattern = chain(toWritten, page.toPattern)
      // the written window is the box inside the true one
      const [boxX, boxY] = [((x1 - x0) / 2) * mmPerPoint, ((y1 - y0) / 2) * mmPerPoint]
      const det = a * d - Math.abs(b * c)
      const [u, v] = [(d * boxX + Math.abs(c) * boxY) / det, (a * boxY + Math.abs(b) * boxX) / det]
      const middle = mapPoint(writtenToTrue, { x: (x0 + x1) / 2, y: (y0 + y1) / 2 })
      const sheet = read.pages[page.page - 1]!
      return {
        page: page.page,
        number,
        name: page.tile,
        pattern: page.pattern,
        read: sheet,
        toPattern: page.toPattern,
        written: { x0, y0, x1, y1 },
        trueToPattern,
        patternToTrue: inverse(trueToPattern),
        writtenToTrue,
        window: { x0: middle.x - u, y0: middle.y - v, x1: middle.x + u, y1: middle.y + v },
        cuts: sheet.strokes
          .filter(({ layer }) => layer === 'cut')
          .flatMap(({ path }) => runsOf(path, page.toPattern)),
      }
    })
}

/** Pages of the same pattern that lie one pitch to a side: their windows share a strip as long as a whole edge. */
export const neighboursOf = (tile: Tile, tiles: readonly Tile[]): readonly Beside[] => {
  const { x0, y0, x1, y1 } = tile.window
  return tiles.flatMap((other): Beside[] => {
    if (other === tile || other.pattern !== tile.pattern) return []
    const corner = (x: number, y: number): Pt =>
      mapPoint(tile.patternToTrue, mapPoint(other.trueToPattern, { x, y }))
    const low = corner(other.window.x0, other.window.y0)
    const high = corner(other.window.x1, other.window.y1)
    const level = Math.abs(low.y - y0) < 1 && Math.abs(high.y - y1) < 1
    const upright = Math.abs(low.x - x0) < 1 && Math.abs(high.x - x1) < 1
    const beside = (side: Side, from: number, to: number): Beside[] =>
      to > from ? [{ side, tile: other, at: (from + to) / 2, overlap: to - from }] : []
    if (level && high.x < x1) return beside('left', x0, high.x)
    if (level && low.x > x0) return beside('right', low.x, x1)
    if (upright && high.y < y1) return beside('bottom', y0, high.y)
    if (upright && low.y > y0) return beside('top', low.y, y1)
    return []
  })
}

/** What is left of a page once it is trimmed, or covered, on its joint lines; true page mm. */
export const cellOf = ({ window }: Tile, beside: readonly Beside[]): Rect => {
  const at = (side: Side, otherwise: number): number => beside.find((b) => b.side === side)?.at ?? otherwise
  return {
    x0: at('left', window.x0),
    y0: at('bottom', window.y0),
    x1: at('right', window.x1),
    y1: at('top', window.y1),
  }
}

export const rectContains = (r: Rect, p: Pt, slack: number): boolean =>
  p.x >= r.x0 - slack && p.x <= r.x1 + slack && p.y >= r.y0 - slack && p.y <= r.y1 + slack

/** Length of the part of a straight that lies in a rectangle. */
export const lengthInside = (r: Rect, a: Pt, b: Pt): number => {
  let [t0, t1] = [0, 1]
  for (const [p, q, low, high] of [
    [a.x, b.x, r.x0, r.x1],
    [a.y, b.y, r.y0, r.y1],
  ] as const) {
    if (p === q) {
      if (p < low || p > high) return 0
      continue
    }
    const [u, v] = [(low - p) / (q - p), (high - p) / (q - p)]
    t0 = Math.max(t0, Math.min(u, v))
    t1 = Math.min(t1, Math.max(u, v))
  }
  return t1 > t0 ? (t1 - t0) * Math.hypot(b.x - a.x, b.y - a.y) : 0
}

export const runLengthInside = (r: Rect, run: Run, map: Map6): number => {
  let sum = 0
  let from = mapPoint(map, run[0]!)
  for (let i = 1; i < run.length; i++) {
    const to = mapPoint(map, run[i]!)
    sum += lengthInside(r, from, to)
    from = to
  }
  return sum
}
