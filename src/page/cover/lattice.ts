import {
  type Affine,
  affineApply,
  affineInvert,
  affineRotate,
  affineThen,
  affineTranslate,
} from '../../geometry/affine.ts'
import { boxCorners, type Convex } from '../../geometry/clip.ts'
import type { Point } from '../../geometry/point.ts'
import type { Laid } from '../../printer/effect.ts'
import type { Layout } from '../sheet/sheet.ts'

/**
 * Where pages would lie if the whole plane were covered: windows of one size in rows, each overlapping the next.
 * Column c, row r of the lattice has its window's lower left corner at (c·pitch, r·pitch) of its frame.
 */
export interface Lattice {
  readonly layout: Layout
  /** of one window, as the drawing is read, mm */
  readonly width: number
  readonly height: number
  readonly overlap: number
  /** the pattern to the lattice's frame */
  readonly toFrame: Affine
}

export interface Cell {
  readonly column: number
  readonly row: number
}

export const cellKey = ({ column, row }: Cell): string => `${column},${row}`

/** From one window to the next along a row, and from row to row, mm. */
export const latticePitch = ({
  width,
  height,
  overlap,
}: Pick<Lattice, 'width' | 'height' | 'overlap'>): Point => ({
  x: width - overlap,
  y: height - overlap,
})

export const latticeAt = (
  shape: Pick<Lattice, 'layout' | 'width' | 'height' | 'overlap'>,
  angle: number,
  offset: { readonly x: number; readonly y: number },
): Lattice => ({ ...shape, toFrame: affineThen(affineRotate(-angle), affineTranslate(-offset.x, -offset.y)) })

/** The angle of a lattice, and where the joint lines at the lower left of cell 0, 0 cross in the pattern turned back by it. */
export const latticePlace = ({
  overlap,
  toFrame: [cos, sin, , , e, f],
}: Lattice): { readonly angle: number; readonly joint: Point } => ({
  angle: -Math.atan2(sin, cos),
  joint: { x: overlap / 2 - e, y: overlap / 2 - f },
})

/** How its pages lie on the pattern, for what a printer does to them. */
export const laidOn = ({ layout, toFrame }: Lattice): Laid => ({
  rows: layout === 'portrait' ? 'across' : 'down',
  angle: Math.atan2(toFrame[2], toFrame[0]),
})

/** A rectangle of the frame as a polygon in the pattern. */
export const framePolygon = (lattice: Lattice, x0: number, y0: number, x1: number, y1: number): Convex => {
  const back = affineInvert(lattice.toFrame)
  return boxCorners({ x0, y0, x1, y1 }).map((p) => affineApply(back, p))
}

/** What a page keeps once it is trimmed on all four joint lines: these cells fill the plane without overlap. */
export const cellPolygon = (lattice: Lattice, { column, row }: Cell): Convex => {
  const { x: px, y: py } = latticePitch(lattice)
  const half = lattice.overlap / 2
  return framePolygon(
    lattice,
    column * px + half,
    row * py + half,
    (column + 1) * px + half,
    (row + 1) * py + half,
  )
}

/** Cells added so that all hang together edge to edge: the shortest bridges along rows and columns. */
export const cellsConnected = (cells: readonly Cell[]): readonly Cell[] => {
  const all = new Map(cells.map((cell) => [cellKey(cell), cell]))
  for (;;) {
    const [first, ...others] = components([...all.values()])
    if (!first || others.length === 0) break
    const rest = others.flat()
    let best: readonly [Cell, Cell] = [first[0]!, rest[0]!]
    const far = ([a, b]: readonly [Cell, Cell]): number =>
      Math.abs(a.column - b.column) + Math.abs(a.row - b.row)
    for (const a of first) for (const b of rest) if (far([a, b]) < far(best)) best = [a, b]
    const [a, b] = best
    for (let { column, row } = a; column !== b.column || row !== b.row; ) {
      if (column !== b.column) column += Math.sign(b.column - column)
      else row += Math.sign(b.row - row)
      all.set(cellKey({ column, row }), { column, row })
    }
  }
  return [...all.values()].sort((a, b) => a.row - b.row || a.column - b.column)
}

const components = (cells: readonly Cell[]): Cell[][] => {
  const left = new Map(cells.map((cell) => [cellKey(cell), cell]))
  const groups: Cell[][] = []
  while (left.size > 0) {
    const [key, seed] = left.entries().next().value!
    left.delete(key)
    const group = [seed]
    for (const { column, row } of group)
      for (const [dc, dr] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ]) {
        const next = cellKey({ column: column + dc!, row: row + dr! })
        const found = left.get(next)
        if (found) {
          left.delete(next)
          group.push(found)
        }
      }
    groups.push(group)
  }
  return groups
}
