import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { weighCells } from '../../../src/page/cover/cell-weights.ts'
import { offsetCounts } from '../../../src/page/cover/offset-counts.ts'
import { turnedRun } from '../../../src/page/cover/turned-run.ts'
import { atMost } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'

const pitch = { x: 100, y: 140 }
const flat = (runs: readonly (readonly Pt[])[]) =>
  runs.map((run) => turnedRun(Float64Array.from(run.flatMap(({ x, y }) => [x, y]))))

const boxOf = (runs: readonly (readonly Pt[])[]) => {
  const all = runs.flat()
  const [xs, ys] = [all.map((p) => p.x), all.map((p) => p.y)]
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) }
}

/** Line in each cell, counted in steps of a hundredth of a millimetre. */
const slowly = (runs: readonly (readonly Pt[])[], joint: Pt): ReadonlyMap<string, number> => {
  const cells = new Map<string, number>()
  for (const run of runs)
    run.slice(1).forEach((b, i) => {
      const a = run[i]!
      const length = Math.hypot(b.x - a.x, b.y - a.y)
      const parts = Math.ceil(length * 100)
      let [column, row, steps] = [Number.NaN, Number.NaN, 0]
      const leave = (): void => {
        if (steps === 0) return
        const key = `${column},${row}`
        cells.set(key, (cells.get(key) ?? 0) + (steps * length) / parts)
        steps = 0
      }
      for (let k = 0; k < parts; k++) {
        const t = (k + 0.5) / parts
        const across = Math.floor((a.x + t * (b.x - a.x) - joint.x) / pitch.x)
        const up = Math.floor((a.y + t * (b.y - a.y) - joint.y) / pitch.y)
        if (across !== column || up !== row) {
          leave()
          column = across
          row = up
        }
        steps++
      }
      leave()
    })
  return cells
}

/** Broken lines that wander up and down, back and forth, through columns that they leave and enter again. */
const anyRun = fc
  .array(fc.tuple(fc.integer({ min: -40, max: 60 }), fc.integer({ min: -60, max: 60 })), {
    minLength: 3,
    maxLength: 14,
  })
  .map((steps) => {
    let at = { x: 0.37, y: 0.73 }
    return [at, ...steps.map(([dx, dy]) => (at = { x: at.x + dx + 0.011, y: at.y + dy + 0.013 }))]
  })
const anyRuns = fc.tuple(anyRun, anyRun).map(([a, b]) => {
  // the second hangs on the middle of the first, or far above it: columns with a gap
  const from = a[Math.floor(a.length / 2)]!
  return [a, b.map(({ x, y }) => ({ x: x + from.x, y: y + from.y + (b.length % 3) * 190 }))]
})

describe('places of joint lines', () => {
  it('take as many pages as the cells that the line enters, counted slowly', () => {
    fc.assert(
      fc.property(anyRuns, (runs) => {
        const box = boxOf(runs)
        for (const { joint, pages, room } of offsetCounts(
          flat(runs),
          box,
          pitch,
          Number.POSITIVE_INFINITY,
        ).slice(0, 3)) {
          expect(slowly(runs, joint).size).toBe(pages)
          // anywhere within the room the count is the same
          for (const share of [-0.45, 0.45])
            expect(slowly(runs, { x: joint.x, y: joint.y + share * room }).size).toBe(pages)
          atMost(joint.x, box.x0)
          atMost(joint.y, box.y0)
        }
      }),
      { numRuns: 60, seed: 3 },
    )
  })

  it('are the best that every 5 mm across and every 2 mm up finds, but for one case in fifty', () => {
    let [cases, lost] = [0, 0]
    fc.assert(
      fc.property(anyRun, (run) => {
        const box = boxOf([run])
        const runs = flat([run])
        let fewest = Number.POSITIVE_INFINITY
        for (let x = 0; x < pitch.x; x += 5)
          for (let y = 0; y < pitch.y; y += 2)
            fewest = Math.min(
              fewest,
              weighCells(runs, box, pitch, { x: box.x0 - x - 0.5, y: box.y0 - y - 0.5 }).pages,
            )
        const [found] = offsetCounts(runs, box, pitch, Number.POSITIVE_INFINITY)
        cases++
        if (found!.pages > fewest) lost++
      }),
      { numRuns: 200, seed: 8 },
    )
    expect(cases).toBe(200)
    expect(lost).toBeLessThanOrEqual(4)
  })

  it('are none where fewer pages are asked for than any place takes', () => {
    const runs = flat([
      [
        { x: 0, y: 0 },
        { x: 50, y: 0 },
        { x: 90, y: 0 },
        { x: 150, y: 0 },
      ],
    ])
    const box = { x0: 0, y0: 0, x1: 150, y1: 0 }
    // 150 mm cross one joint of 100 or two
    expect(offsetCounts(runs, box, pitch, 1)).toEqual([])
    expect(offsetCounts(runs, box, pitch, 2).every(({ pages }) => pages === 2)).toBe(true)
    expect(offsetCounts(runs, box, pitch, 2).length).toBeGreaterThan(5)
  })
})

describe('the load of pages', () => {
  it('is the length of line in each cell, counted slowly', () => {
    fc.assert(
      fc.property(
        anyRuns,
        fc.integer({ min: 0, max: 99 }),
        fc.integer({ min: 0, max: 139 }),
        (runs, x, y) => {
          const box = boxOf(runs)
          const found = weighCells(flat(runs), box, pitch, { x, y })
          const cells = slowly(runs, found.joint)
          // steps of a hundredth may pass by a thinner sliver
          fc.pre(found.emptiest > 0.05)
          expect(found.pages).toBe(cells.size)
          assertNear(found.emptiest, Math.min(...cells.values()), 0.03)
        },
      ),
      { numRuns: 60, seed: 5 },
    )
  })

  it('is worked out by hand over a corner: across the joint line first, then up', () => {
    const runs = flat([
      [
        { x: 90, y: 120 },
        { x: 120, y: 150 },
      ],
    ])
    const box = { x0: 90, y0: 120, x1: 120, y1: 150 }
    // 10 of 30 to the upright line, 20 of 30 to the level one: three cells with a third each
    const { pages, emptiest, joint } = weighCells(runs, box, pitch, { x: 0, y: 0 })
    expect(pages).toBe(3)
    assertNear(emptiest, Math.hypot(10, 10), 1e-9)
    expect(joint).toEqual({ x: 0, y: 0 })
  })
})
