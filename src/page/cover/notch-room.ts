import { type Box, boxGrow } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { type CellGrid, isHeld } from './cell-grid.ts'
import type { HeldCells } from './column-spans.ts'
import type { Lattice } from './lattice.ts'
import { turnedBounds } from './turned-run.ts'

type Shape = Pick<Lattice, 'width' | 'height' | 'overlap'>

/** From the notch, the hole in its corner and its back wall to any joint line, where no more pages are needed for it, mm. */
const notchRoom = 15

/** The notch and its room in the frame of a lattice turned by an angle; null where there is none. */
export const notchWithRoom = (notch: readonly Point[], angle: number): Box | null =>
  notch.length === 0 ? null : boxGrow(turnedBounds(notch, angle), notchRoom)

/**
 * Whether a box lies in what one page keeps: no joint line of two pages runs through it. An upright and a level joint line cross at
 * `x`, `y`, the lower left one of cell 0, 0.
 */
const boxHeld = (
  { x0, y0, x1, y1 }: Box,
  x: number,
  y: number,
  { width, height, overlap }: Shape,
  grid: CellGrid,
): boolean => {
  const px = width - overlap
  const py = height - overlap
  const right = Math.floor((x1 - x) / px)
  const top = Math.floor((y1 - y) / py)
  let pages = 0
  for (let row = Math.floor((y0 - y) / py); row <= top; row++)
    for (let column = Math.floor((x0 - x) / px); column <= right; column++)
      if (isHeld(grid, column, row)) pages++
  return pages <= 1
}

/** For the cells of a place that hold line, its level joint lines at `level` or as they are. */
export const notchIn = (box: Box | null, cells: HeldCells, shape: Shape, level = cells.joint.y): boolean =>
  box === null || boxHeld(box, cells.joint.x, level, shape, cells)

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
