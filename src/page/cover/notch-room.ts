import { type Box, boxGrow } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { type HeldCells, heldBy } from './column-spans.ts'
import { type Cell, cellKey, type Lattice, latticePitch, latticePlace } from './lattice.ts'
import type { LooseLattice } from './loose-lattice.ts'
import { turnedBounds } from './turned-run.ts'

/** From the notch, the hole in its corner and its back wall to any joint line, where no more pages are needed for it, mm. */
export const notchRoom = 15

/** The notch and its room in the frame of a lattice turned by an angle; null where there is none. */
export const notchBox = (notch: readonly Point[], angle: number): Box | null =>
  notch.length === 0 ? null : boxGrow(turnedBounds(notch, angle), notchRoom)

/**
 * Whether a box lies in what one page keeps: no joint line of two pages runs through it. `joint`: where an upright and a level joint line
 * cross, the lower left one of cell 0, 0; `held`: whether there is a page for a cell.
 */
const boxHeld = (
  { x0, y0, x1, y1 }: Box,
  joint: Point,
  pitch: Point,
  held: (column: number, row: number) => boolean,
): boolean => {
  let pages = 0
  const [right, top] = [Math.floor((x1 - joint.x) / pitch.x), Math.floor((y1 - joint.y) / pitch.y)]
  for (let row = Math.floor((y0 - joint.y) / pitch.y); row <= top; row++)
    for (let column = Math.floor((x0 - joint.x) / pitch.x); column <= right; column++)
      if (held(column, row)) pages++
  return pages <= 1
}

/** For the cells of a place that hold line. */
export const notchIn = (box: Box | null, cells: HeldCells, shape: LooseLattice['shape']): boolean =>
  box === null || boxHeld(box, cells.joint, latticePitch(shape), heldBy(cells))

/** For a coverage. */
export const notchOn = (notch: readonly Point[], lattice: Lattice, cells: readonly Cell[]): boolean => {
  const { angle, joint } = latticePlace(lattice)
  const box = notchBox(notch, angle)
  if (box === null) return true
  const keys = new Set(cells.map(cellKey))
  return boxHeld(box, joint, latticePitch(lattice), (column, row) => keys.has(cellKey({ column, row })))
}

/** Beyond the edge of a box, mm. */
const beyond = 0.05

/** Places of joint lines moved the least across and up so that none runs through a box smaller than a page, the nearest first. */
export const movesOff = (box: Box, joint: Point, pitch: Point): readonly Point[] => {
  const moves = (low: number, high: number, from: number, step: number): readonly number[] => {
    const line = from + Math.floor((high - from) / step) * step
    return line <= low ? [0] : [low - line - beyond, high - line + beyond]
  }
  return moves(box.x0, box.x1, joint.x, pitch.x)
    .flatMap((dx) => moves(box.y0, box.y1, joint.y, pitch.y).map((dy) => ({ dx, dy })))
    .sort((a, b) => Math.hypot(a.dx, a.dy) - Math.hypot(b.dx, b.dy))
    .map(({ dx, dy }) => ({ x: joint.x + dx, y: joint.y + dy }))
}
