import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { convexContains } from '../../../src/geometry/clip.ts'
import { cellsTouched } from '../../../src/page/cover/cells-touched.ts'
import {
  type Cell,
  cellKey,
  cellPolygon,
  cellsConnected,
  framePolygon,
  type Lattice,
  latticeAt,
} from '../../../src/page/cover/lattice.ts'
import { below, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { anyPoint, sideOutline } from '../../support/paths.ts'

const anyLattice = fc
  .record({
    width: fc.double({ min: 90, max: 400, noNaN: true }),
    height: fc.double({ min: 90, max: 400, noNaN: true }),
    overlap: fc.double({ min: 8, max: 30, noNaN: true }),
    angle: fc.oneof(fc.constant(0), fc.double({ min: -3, max: 3, noNaN: true })),
    offset: anyPoint,
  })
  .map(({ angle, offset, ...shape }) => ({
    angle,
    offset,
    lattice: latticeAt({ layout: 'portrait', ...shape }, angle, offset),
  }))

/** Rows along `angle`, first window's corner at `offset` of the turned frame: written again from the definition. */
const cellAt = (
  { lattice, angle, offset }: { lattice: Lattice; angle: number; offset: { x: number; y: number } },
  p: { readonly x: number; readonly y: number },
) => {
  const along = p.x * Math.cos(angle) + p.y * Math.sin(angle) - offset.x
  const up = p.y * Math.cos(angle) - p.x * Math.sin(angle) - offset.y
  const { width, height, overlap } = lattice
  const [u, v] = [(along - overlap / 2) / (width - overlap), (up - overlap / 2) / (height - overlap)]
  const near = (value: number): number => Math.abs(value - Math.round(value))
  return {
    column: Math.floor(u),
    row: Math.floor(v),
    /** mm to the nearest joint line */
    clear: Math.min(near(u) * (width - overlap), near(v) * (height - overlap)),
  }
}

describe('cells of a lattice', () => {
  it('fill the plane: each point lies in one cell, and well inside that cell’s window', () => {
    fc.assert(
      fc.property(anyLattice, anyPoint, (turned, p) => {
        const { lattice } = turned
        const { column, row, clear } = cellAt(turned, p)
        fc.pre(clear > 1e-6)
        const holding: Cell[] = []
        for (let c = column - 2; c <= column + 2; c++)
          for (let r = row - 2; r <= row + 2; r++)
            if (convexContains(cellPolygon(lattice, { column: c, row: r }), p))
              holding.push({ column: c, row: r })
        expect(holding).toEqual([{ column, row }])
        const { width, height, overlap } = lattice
        const [x0, y0] = [column * (width - overlap), row * (height - overlap)]
        const window = framePolygon(lattice, x0, y0, x0 + width, y0 + height)
        hold(convexContains(window, p, -overlap / 2))
      }),
      { numRuns: 300, seed: 11 },
    )
  })

  it('share their corners to the bit of a rounding, so that no sliver is left between them', () => {
    fc.assert(
      fc.property(anyLattice, ({ lattice }) => {
        const [own, right, above] = [
          { column: 2, row: -1 },
          { column: 3, row: -1 },
          { column: 2, row: 0 },
        ].map((cell) => cellPolygon(lattice, cell))
        for (const [a, b] of [
          [own![1]!, right![0]!],
          [own![2]!, right![3]!],
          [own![3]!, above![0]!],
          [own![2]!, above![1]!],
        ] as const)
          assertNear(Math.hypot(a.x - b.x, a.y - b.y), 0, 1e-9, 'corner')
      }),
      { numRuns: 100, seed: 12 },
    )
  })
})

describe('cellsTouched', () => {
  // points every hundredth of the way through each piece, by formulas written here
  const samples = ((): readonly { readonly x: number; readonly y: number }[] => {
    const points: { x: number; y: number }[] = []
    let from = sideOutline.start
    const steps = 4000
    for (const piece of sideOutline.pieces) {
      for (let i = 1; i <= steps; i++) {
        const t = i / steps
        const u = 1 - t
        if (piece.kind === 'line')
          points.push({ x: u * from.x + t * piece.to.x, y: u * from.y + t * piece.to.y })
        else if (piece.kind === 'cubic')
          points.push({
            x:
              u ** 3 * from.x + 3 * u * u * t * piece.c1.x + 3 * u * t * t * piece.c2.x + t ** 3 * piece.to.x,
            y:
              u ** 3 * from.y + 3 * u * u * t * piece.c1.y + 3 * u * t * t * piece.c2.y + t ** 3 * piece.to.y,
          })
        else {
          const [dx, dy] = [from.x - piece.centre.x, from.y - piece.centre.y]
          const [cos, sin] = [Math.cos(piece.sweep * t), Math.sin(piece.sweep * t)]
          points.push({ x: piece.centre.x + dx * cos - dy * sin, y: piece.centre.y + dx * sin + dy * cos })
        }
      }
      from = piece.to
    }
    return points
  })()
  const lengthOf = (points: readonly { readonly x: number; readonly y: number }[]): number =>
    points.reduce((sum, p, i) => {
      const q = points[(i + points.length - 1) % points.length]!
      return sum + Math.hypot(p.x - q.x, p.y - q.y)
    }, 0)

  it('finds what dense sampling finds, no more, and shares out the whole length', () => {
    fc.assert(
      fc.property(anyLattice, (turned) => {
        const touched = cellsTouched(turned.lattice, [sideOutline])
        const found = new Map(touched.map((cell) => [cellKey(cell), cell.length]))
        const sampled = new Map<string, number>()
        for (const p of samples) {
          const { clear, ...cell } = cellAt(turned, p)
          if (clear > 1e-6) sampled.set(cellKey(cell), (sampled.get(cellKey(cell)) ?? 0) + 1)
        }
        for (const key of sampled.keys()) hold(found.has(key), `cell ${key} is missing`)
        // what sampling overlooks is shorter than two of its steps, half a millimetre here
        for (const [key, length] of found) if (!sampled.has(key)) below(length, 0.7, `cell ${key}`)
        assertNear(
          touched.reduce((sum, cell) => sum + cell.length, 0),
          lengthOf(samples),
          0.01,
          'length',
        )
      }),
      { numRuns: 60, seed: 13 },
    )
  })

  it('lists them bottom row first, left to right', () => {
    const lattice = latticeAt({ layout: 'portrait', width: 190, height: 277, overlap: 12 }, 0, {
      x: -40,
      y: -30,
    })
    const cells = cellsTouched(lattice, [sideOutline])
    const order = cells.map(({ column, row }) => row * 1000 + column)
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(new Set(order).size).toBe(order.length)
  })
})

describe('cellsConnected', () => {
  const anyCells = fc.uniqueArray(
    fc.record({ column: fc.integer({ min: -6, max: 6 }), row: fc.integer({ min: -5, max: 5 }) }),
    { minLength: 1, maxLength: 14, selector: cellKey },
  )
  /** Each cell takes the least label of its neighbours until nothing changes. */
  const groups = (cells: readonly Cell[]): number => {
    const label = cells.map((_, i) => i)
    for (let changed = true; changed; ) {
      changed = false
      cells.forEach((a, i) => {
        cells.forEach((b, k) => {
          if (Math.abs(a.column - b.column) + Math.abs(a.row - b.row) === 1 && label[k]! < label[i]!) {
            label[i] = label[k]!
            changed = true
          }
        })
      })
    }
    return new Set(label).size
  }

  it('keeps all cells, doubles none and joins them edge to edge', () => {
    fc.assert(
      fc.property(anyCells, (cells) => {
        const joined = cellsConnected(cells)
        const keys = joined.map(cellKey)
        expect(new Set(keys).size).toBe(keys.length)
        for (const cell of cells) expect(keys).toContain(cellKey(cell))
        expect(groups(joined)).toBe(1)
        if (groups(cells) === 1) expect(joined).toHaveLength(cells.length)
      }),
      { numRuns: 300, seed: 14 },
    )
  })

  it('bridges two groups with the fewest cells there can be', () => {
    fc.assert(
      fc.property(anyCells, (cells) => {
        fc.pre(groups(cells) === 2)
        // the groups lie as far apart as their nearest cells: reach one from a seed by hand
        const one: Cell[] = [cells[0]!]
        for (const a of one)
          for (const b of cells)
            if (!one.includes(b) && Math.abs(a.column - b.column) + Math.abs(a.row - b.row) === 1) one.push(b)
        const two = cells.filter((cell) => !one.includes(cell))
        const far = Math.min(
          ...one.flatMap((a) => two.map((b) => Math.abs(a.column - b.column) + Math.abs(a.row - b.row))),
        )
        expect(cellsConnected(cells)).toHaveLength(cells.length + far - 1)
      }),
      { numRuns: 300, seed: 15 },
    )
  })
})
