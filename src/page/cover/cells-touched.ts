import { affineApply } from '../../geometry/affine.ts'
import { segmentClip } from '../../geometry/clip.ts'
import { pathLength, segmentLength } from '../../geometry/length.ts'
import { type Path, pathSegments, type Segment, segmentsPath } from '../../geometry/path.ts'
import { type Point, pointDistance } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { type Cell, cellKey, cellPolygon, type Lattice, latticePitch } from './lattice.ts'

/** `length`: how much line lies in the cell, mm */
export interface TouchedCell extends Cell {
  readonly length: number
}

/** The cell that holds all corners of a path of straight lines, and so all of it; null where there is none. */
const cellWithin = (lattice: Lattice, { start, pieces }: Path): Cell | null => {
  const { x: px, y: py } = latticePitch(lattice)
  const half = lattice.overlap / 2
  const [a, b, c, d, e, f] = lattice.toFrame
  const column = Math.floor((a * start.x + c * start.y + e - half) / px)
  const row = Math.floor((b * start.x + d * start.y + f - half) / py)
  for (const { kind, to } of pieces) {
    if (kind !== 'line') return null
    if (Math.floor((a * to.x + c * to.y + e - half) / px) !== column) return null
    if (Math.floor((b * to.x + d * to.y + f - half) / py) !== row) return null
  }
  return { column, row }
}

/** Nearer than this to a joint line, or shorter than such a share of it, and a straight line must be clipped to tell its cells. */
const unsure = 1e-6

/** What of a straight line lies in which cell: between two joint lines that it crosses, in one. Null where that is not sure. */
const lineCells = (
  lattice: Lattice,
  { from, to }: { readonly from: Point; readonly to: Point },
): readonly TouchedCell[] | null => {
  const { x: px, y: py } = latticePitch(lattice)
  const half = lattice.overlap / 2
  const p = affineApply(lattice.toFrame, from)
  const q = affineApply(lattice.toFrame, to)
  const x0 = (p.x - half) / px
  const y0 = (p.y - half) / py
  const dx = (q.x - half) / px - x0
  const dy = (q.y - half) / py - y0
  const ts = [0, 1]
  for (let line = Math.ceil(Math.min(x0, x0 + dx)); line <= Math.max(x0, x0 + dx); line++)
    ts.push((line - x0) / dx)
  for (let line = Math.ceil(Math.min(y0, y0 + dy)); line <= Math.max(y0, y0 + dy); line++)
    ts.push((line - y0) / dy)
  if (ts.length > 2) ts.sort((a, b) => a - b)
  const length = pointDistance(from, to)
  const cells: TouchedCell[] = []
  for (let i = 1; i < ts.length; i++) {
    const share = ts[i]! - ts[i - 1]!
    const middle = (ts[i]! + ts[i - 1]!) / 2
    const x = x0 + middle * dx
    const y = y0 + middle * dy
    const isSure =
      share > unsure && Math.abs(x - Math.round(x)) * px > unsure && Math.abs(y - Math.round(y)) * py > unsure
    if (!isSure) return null
    cells.push({ column: Math.floor(x), row: Math.floor(y), length: share * length })
  }
  return cells
}

/** Cells that a segment may touch. */
const cellsNear = (lattice: Lattice, segment: Segment, spacing: number): Iterable<Cell> => {
  const { x: px, y: py } = latticePitch(lattice)
  const half = lattice.overlap / 2
  const near = new Map<string, Cell>()
  let seen = { left: Number.NaN, right: 0, low: 0, high: 0 }
  for (const p of pathSample(segmentsPath([segment]), spacing)) {
    const { x, y } = affineApply(lattice.toFrame, p)
    // whatever lies between two samples lies within half their spacing of one of them
    const left = Math.floor((x - spacing - half) / px)
    const right = Math.floor((x + spacing - half) / px)
    const low = Math.floor((y - spacing - half) / py)
    const high = Math.floor((y + spacing - half) / py)
    if (left === seen.left && right === seen.right && low === seen.low && high === seen.high) continue
    seen = { left, right, low, high }
    for (const column of [left, right])
      for (const row of [low, high]) near.set(cellKey({ column, row }), { column, row })
  }
  return near.values()
}

/** The cells that the paths touch, bottom row first, left to right. Exact: found by clipping, not by sampling. */
export const cellsTouched = (lattice: Lattice, paths: readonly Path[]): readonly TouchedCell[] => {
  const { x: px, y: py } = latticePitch(lattice)
  const spacing = Math.min(px, py) / 8
  const touched = new Map<string, TouchedCell>()
  const add = (cell: Cell, length: number): void => {
    const key = cellKey(cell)
    touched.set(key, { column: cell.column, row: cell.row, length: (touched.get(key)?.length ?? 0) + length })
  }
  for (const path of paths) {
    // most marks lie whole within one
    const within = cellWithin(lattice, path)
    if (within) {
      add(within, pathLength(path))
      continue
    }
    for (const segment of pathSegments(path)) {
      const lined = segment.kind === 'line' ? lineCells(lattice, segment) : null
      if (lined) for (const cell of lined) add(cell, cell.length)
      else
        for (const cell of cellsNear(lattice, segment, spacing))
          for (const part of segmentClip(segment, cellPolygon(lattice, cell))) add(cell, segmentLength(part))
    }
  }
  return [...touched.values()].sort((a, b) => a.row - b.row || a.column - b.column)
}
