import { type Affine, affineApply, affineThen, affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import type { Convex } from '../../geometry/clip.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import type { Coverage } from '../cover/coverage.ts'
import { type Cell, cellKey, framePolygon, type Lattice, latticePitch } from '../cover/lattice.ts'
import { layoutMap } from '../sheet/sheet.ts'

export type TileEdge = 'left' | 'bottom' | 'right' | 'top'

/** Where two pages meet. The page that lies over is trimmed on the line; its neighbour prints the same line. */
export interface Joint {
  readonly edge: TileEdge
  /** number of the tile beyond it */
  readonly neighbour: number
  /** this page lies over its neighbour */
  readonly over: boolean
  /** the joint line in the pattern: the same two points on both pages */
  readonly line: readonly [Point, Point]
  /** crosses on the joint line, in the pattern: the same on both pages */
  readonly crosses: readonly Point[]
  /** middles of the verniers on the joint line */
  readonly verniers: readonly Point[]
  /** middle of the pair mark on the joint line */
  readonly pair: Point
}

type JointLine = Pick<Joint, 'line' | 'crosses' | 'verniers' | 'pair'>

/** Where marks lie on a joint line, as shares of it. */
export interface JointShares {
  readonly crosses: readonly number[]
  readonly verniers: readonly number[]
  readonly pair: number
}

/** The piece of a pattern that one page carries. Polygons and points are in the pattern's mm. */
export interface Tile {
  /** its only name: its place in the order of taping, counted through the whole set from 1 */
  readonly number: number
  /** the first of its pattern */
  readonly first: boolean
  /** letter of its row, which is that of the snap line */
  readonly row: string
  /** place in the row, from the pattern's left, from 1 */
  readonly column: number
  /** the pattern to the window as the drawing is read: 0,0 at its lower left, mm */
  readonly toWindow: Affine
  /** size of the window as the drawing is read, mm */
  readonly width: number
  readonly height: number
  /** half of the overlap: from the window's edge to a joint line, mm */
  readonly half: number
  /** the window as the drawing is read to ideal page mm */
  readonly toPage: Affine
  readonly window: Convex
  /** what is left once the page is trimmed and its neighbours lie over it */
  readonly cell: Convex
  /** the same of the window, as the drawing is read */
  readonly kept: Box
  readonly joints: readonly Joint[]
  /** the row's snap line across this page */
  readonly snap: readonly [Point, Point]
}

/** Row letters A … Z, AA, AB …; `row` from 0. */
export const rowLetters = (row: number): string =>
  (row >= 26 ? rowLetters(Math.floor(row / 26) - 1) : '') + String.fromCharCode(65 + (row % 26))

const sides: readonly { readonly edge: TileEdge; readonly step: Cell }[] = [
  { edge: 'left', step: { column: -1, row: 0 } },
  { edge: 'bottom', step: { column: 0, row: -1 } },
  { edge: 'right', step: { column: 1, row: 0 } },
  { edge: 'top', step: { column: 0, row: 1 } },
]

/** Whether the first tile from below does not hold a point of the pattern, and the first one from above does. */
const startsAbove = ({ lattice, cells }: Coverage, start: Point): boolean => {
  const { x: px, y: py } = latticePitch(lattice)
  const { x, y } = affineApply(lattice.toFrame, start)
  const half = lattice.overlap / 2
  const at = cellKey({ column: Math.floor((x - half) / px), row: Math.floor((y - half) / py) })
  const highest = Math.max(...cells.map(({ row }) => row))
  return cellKey(cells[0]!) !== at && cellKey(cells.find(({ row }) => row === highest)!) === at
}

/**
 * The tiles of a coverage in the order of taping: bottom row first, left to right, so that each page lies over its left and lower
 * neighbours and is always trimmed on those two edges. Where `start` lies at the left of the top row, that row is the first, and
 * upper stands for lower.
 *
 * `sharesOf`: where the marks of a joint line between two pages lie that a snap line crosses at a share of it, or none; `snapAt`: height of a row's
 * snap line in its windows, mm.
 */
export const tilesOf = (
  coverage: Coverage,
  window: Box,
  first: { readonly row: number; readonly number: number },
  sharesOf: (
    line: readonly [Point, Point],
    snap: number | null,
    pages: readonly [number, number],
  ) => JointShares,
  snapAt: (row: number) => number,
  start: Point,
): readonly Tile[] => {
  const { lattice } = coverage
  const snaps = new Map([...new Set(coverage.cells.map(({ row }) => row))].map((row) => [row, snapAt(row)]))
  const down = startsAbove(coverage, start)
  const cells = down
    ? coverage.cells.toSorted((a, b) => b.row - a.row || a.column - b.column)
    : coverage.cells
  const before: readonly TileEdge[] = ['left', down ? 'top' : 'bottom']
  const { x: px, y: py } = latticePitch(lattice)
  const half = lattice.overlap / 2
  const firstRow = cells[0]!.row
  const leftmost = Math.min(...cells.map((cell) => cell.column))
  const tileNumbers = new Map(cells.map((cell, i) => [cellKey(cell), first.number + i]))
  /** found once, for both of its pages */
  const known = new Map<string, JointLine>()
  return cells.map((cell): Tile => {
    const { column, row } = cell
    const [x0, y0] = [column * px, row * py]
    const [x1, y1] = [x0 + lattice.width, y0 + lattice.height]
    const neighbours = sides.flatMap(({ edge, step }) => {
      const over = before.includes(edge)
      const other = { column: column + step.column, row: row + step.row }
      const neighbour = tileNumbers.get(cellKey(other))
      return neighbour === undefined ? [] : [{ edge, over, neighbour }]
    })
    const trimmed = (edge: TileEdge): number => (neighbours.some((n) => n.edge === edge) ? half : 0)
    const inner = { x0: x0 + half, y0: y0 + half, x1: x1 - half, y1: y1 - half }
    const own = tileNumbers.get(cellKey(cell))!
    return {
      number: own,
      first: own === first.number,
      row: rowLetters(first.row + Math.abs(row - firstRow)),
      column: column - leftmost + 1,
      toWindow: affineThen(lattice.toFrame, affineTranslate(-x0, -y0)),
      width: lattice.width,
      height: lattice.height,
      half,
      toPage: layoutMap(window, lattice.layout),
      window: framePolygon(lattice, x0, y0, x1, y1),
      cell: framePolygon(
        lattice,
        x0 + trimmed('left'),
        y0 + trimmed('bottom'),
        x1 - trimmed('right'),
        y1 - trimmed('top'),
      ),
      kept: {
        x0: trimmed('left'),
        y0: trimmed('bottom'),
        x1: lattice.width - trimmed('right'),
        y1: lattice.height - trimmed('top'),
      },
      joints: neighbours.map(({ edge, over, neighbour }): Joint => {
        const key = [own, neighbour].sort((a, b) => a - b).join()
        let joint = known.get(key)
        if (!joint) {
          const line = corners(lattice, frameLine(inner, edge))
          const upright = edge === 'left' || edge === 'right'
          const snap = upright ? (snaps.get(row)! - half) / (lattice.height - 2 * half) : null
          joint = { line, ...jointPoints(line, sharesOf(line, snap, [own, neighbour])) }
          known.set(key, joint)
        }
        return { edge, over, neighbour, ...joint }
      }),
      snap: corners(lattice, [x0, y0 + snaps.get(row)!, x1, y0 + snaps.get(row)!]),
    }
  })
}

/** An edge of what is left once all edges are trimmed, in the frame of the lattice. */
const frameLine = (inner: Box, edge: TileEdge): readonly [number, number, number, number] => {
  const lines: Record<TileEdge, readonly [number, number, number, number]> = {
    left: [inner.x0, inner.y0, inner.x0, inner.y1],
    right: [inner.x1, inner.y0, inner.x1, inner.y1],
    bottom: [inner.x0, inner.y0, inner.x1, inner.y0],
    top: [inner.x0, inner.y1, inner.x1, inner.y1],
  }
  return lines[edge]
}

/** The marks of a joint by their shares of its line. */
const jointPoints = (
  [a, b]: readonly [Point, Point],
  { crosses, verniers, pair }: JointShares,
): Pick<Joint, 'crosses' | 'verniers' | 'pair'> => {
  const at = (t: number): Point => pointBetween(a, b, t)
  return { crosses: crosses.map(at), verniers: verniers.map(at), pair: at(pair) }
}

const corners = (
  lattice: Lattice,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
): readonly [Point, Point] => {
  const polygon = framePolygon(lattice, x0, y0, x1, y1)
  return [polygon[0]!, polygon[2]!]
}

/** The pattern to ideal page mm. */
export const tileMap = (tile: Tile): Affine => affineThen(tile.toWindow, tile.toPage)

/** How a tile's row is turned against the panel, as the drawing is read, radians. */
export const rowTurn = ({ toWindow }: Pick<Tile, 'toWindow'>): number => Math.atan2(toWindow[1], toWindow[0])

/** Whether it is: rows along the panel are level up to what is lost in reckoning. */
export const isRowTurned = ({ toWindow }: Pick<Tile, 'toWindow'>): boolean => Math.abs(toWindow[1]) > 1e-9

/** A point of the pattern in the window as the drawing is read. */
export const tilePoint = (tile: Tile, p: Point): Point => affineApply(tile.toWindow, p)

/** Whether points of the window lie in what the page keeps, so far from its edges, mm. */
export const isInCell = ({ kept }: Tile, points: readonly Point[], air: number): boolean => {
  const { x0, y0, x1, y1 } = kept
  for (let i = 0; i < points.length; i++) {
    const { x, y } = points[i]!
    if (!(x >= x0 + air && x <= x1 - air && y >= y0 + air && y <= y1 - air)) return false
  }
  return true
}
