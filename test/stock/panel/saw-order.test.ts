import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Box } from '../../../src/geometry/bounds.ts'
import { inch } from '../../../src/geometry/inch.ts'
import { type Sawn, sawPanel } from '../../../src/stock/panel/saw-order.ts'
import { below } from '../../support/hold.ts'
import { sawnBy } from './sawn-by.ts'

const panel: Box = { x0: 0, y0: 0, x1: 2440, y1: 1220 }
const square = (mark: string, x0: number, y0: number, x1: number, y1: number): Sawn => ({
  mark,
  box: { x0, y0, x1, y1 },
  square: true,
})

describe('the order of cuts', () => {
  test('rips first, then cuts across, then trims what is square', () => {
    const { steps } = sawPanel(
      [square('A', 5, 5, 805, 605), square('B', 808, 5, 1608, 605), square('C', 5, 608, 2005, 1208)],
      panel,
      3,
      1,
    )
    expect(steps[0]).toMatchObject({ kind: 'rip', at: 605, from: 0, to: 2440, blade: 'past' })
    // the strip below A and B comes off both at once
    expect(steps[1]).toMatchObject({
      kind: 'rip',
      at: 5,
      from: 0,
      to: 2440,
      blade: 'before',
      marks: ['A', 'B'],
    })
    expect(steps[2]).toMatchObject({ kind: 'cross', at: 805, from: 5, to: 605 })
    expect(steps.every(({ kind }) => kind !== 'out')).toBe(true)
  })

  test('saws out what no straight cut parts: four round a hole, and curved pieces in each other', () => {
    const whirl = [
      square('A', 0, 0, 700, 400),
      square('B', 703, 0, 1103, 700),
      square('C', 403, 703, 1103, 1103),
      square('D', 0, 403, 400, 1103),
    ]
    expect(
      sawPanel(whirl, panel, 3, 1)
        .steps.map(({ kind }) => kind)
        .slice(-4),
    ).toEqual(['out', 'out', 'out', 'out'])
    const sides = [
      { ...square('S', 5, 5, 1400, 640), square: false },
      { ...square('T', 900, 200, 2300, 840), square: false },
    ]
    expect(sawPanel(sides, panel, 3, 1).steps).toEqual([
      { kind: 'out', mark: 'S', square: false },
      { kind: 'out', mark: 'T', square: false },
    ])
  })

  test('saws the side first that another is traced from, on whichever side of the cut it lies', () => {
    const side = (mark: string, mirrored: boolean, x0: number, outline = 'one'): Sawn => ({
      ...square(mark, x0, 5, x0 + 1000, 700),
      square: false,
      mirrored,
      outline,
    })
    const marks = (pieces: readonly Sawn[]) =>
      sawPanel(pieces, panel, 3, 1).steps.flatMap((step) => (step.kind === 'out' ? [step.mark] : []))
    expect(marks([side('S1', true, 5), side('S2', false, 1100)])).toEqual(['S2', 'S1'])
    expect(marks([side('S1', false, 5), side('S2', true, 1100)])).toEqual(['S1', 'S2'])
    // near before far where neither is traced from the other
    expect(marks([side('S1', true, 5), side('S2', true, 1100)])).toEqual(['S1', 'S2'])
    expect(marks([side('S1', true, 5), side('S2', false, 1100, 'another')])).toEqual(['S1', 'S2'])
  })

  test('leaves what lies in one part after them, not what the rips went through', () => {
    const one = [square('A', 5, 5, 1221, 1037)]
    // across at 5 and 1221 first: behind them 1216 by 1220 is left, over the piece 1216 by 180
    expect(sawPanel(one, panel, 3, 1).rest).toEqual({ x0: 1224, y0: 0, x1: 2440, y1: 1220 })
    const long = [square('A', 5, 5, 2205, 605)]
    // along at 5 and 605 first, 4880 and then 1200 to saw where across first it were 2440 and 4400: 2440 by 612 over it
    expect(sawPanel(long, panel, 3, 1).rest).toEqual({ x0: 0, y0: 608, x1: 2440, y1: 1220 })
    expect(sawPanel([], panel, 3, 1).rest).toEqual(panel)
    expect(sawPanel([square('A', 0, 0, 2440, 1220)], panel, 3, 1).rest).toBeNull()
  })

  test('one piece alone is freed by no more sawing than in any other order', () => {
    let across = 0
    const size = (most: number) => fc.integer({ min: 60, max: most })
    fc.assert(
      fc.property(size(2430), size(1210), (wide, high) => {
        const piece = square('A', 0, 0, wide, high)
        const { steps } = sawPanel([piece], panel, 3, 1)
        const kinds = steps.map(({ kind }) => kind)
        expect(sawnBy(steps, [piece], panel, 3).faults).toEqual([])
        const own = steps.reduce(
          (sum, step) => sum + (step.kind === 'out' ? Number.NaN : step.to - step.from),
          0,
        )
        // the panel's width and then the piece's length, or the panel's length and then the piece's height
        below(own, Math.min(1220 + wide, 2440 + high) + 1)
        across += Number(kinds[0] === 'cross')
      }),
      { numRuns: 200 },
    )
    expect(across).toBeGreaterThan(50)
  })

  test('frees every piece of made-up shelves by cuts that run from edge to edge and into none', () => {
    let pieces = 0
    const row = fc.record({
      high: fc.integer({ min: 60, max: 290 }),
      wide: fc.array(fc.integer({ min: 60, max: 590 }), { minLength: 1, maxLength: 4 }),
    })
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), fc.constantFrom(1.6, 3, 6), (rows, kerf) => {
        let y = 5
        const all = rows.flatMap(({ high, wide }, i) => {
          let x = 5
          const own = wide.map((w, k) => {
            const piece = square(`${i}.${k}`, x, y, x + w, y + high)
            x += w + kerf
            return piece
          })
          y += high + kerf
          return own
        })
        const { steps, rest } = sawPanel(all, panel, kerf, 1)
        const { faults, parts } = sawnBy(steps, all, panel, kerf)
        expect(faults).toEqual([])
        // what is left is the largest part with no piece in it
        const areaOf = ({ x0, y0, x1, y1 }: Box): number => (x1 - x0) * (y1 - y0)
        const empty = parts.filter((part) =>
          all.every(
            ({ box }) =>
              box.x1 <= part.x0 + 1e-6 ||
              box.x0 >= part.x1 - 1e-6 ||
              box.y1 <= part.y0 + 1e-6 ||
              box.y0 >= part.y1 - 1e-6,
          ),
        )
        below(Math.abs(areaOf(rest!) - Math.max(...empty.map(areaOf))), 1e-3)
        for (const { mark, box } of all) {
          pieces++
          const own = parts.filter(
            (part) =>
              Math.abs(part.x0 - box.x0) < 0.6 &&
              Math.abs(part.x1 - box.x1) < 0.6 &&
              Math.abs(part.y0 - box.y0) < 0.6 &&
              Math.abs(part.y1 - box.y1) < 0.6,
          )
          expect(own, mark).toHaveLength(1)
        }
      }),
      { numRuns: 100 },
    )
    expect(pieces).toBeGreaterThan(300)
  })

  test('saws no sliver off beside a cut where pieces lie on whole steps and the kerf is none, and none comes out smaller', () => {
    let [several, larger] = [0, 0]
    const row = fc.record({
      high: fc.integer({ min: 40, max: 160 }),
      wide: fc.array(fc.integer({ min: 40, max: 360 }), { minLength: 1, maxLength: 4 }),
    })
    const saws = fc.oneof(
      fc.record({
        kerf: fc.integer({ min: 16, max: 40 }).map((tenths) => tenths / 10),
        step: fc.constant(1),
      }),
      fc.record({
        kerf: fc.integer({ min: 4, max: 10 }).map((parts) => (parts * inch) / 64),
        step: fc.constant(inch / 16),
      }),
    )
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), saws, (rows, { kerf, step }) => {
        const onStep = (mm: number): number => Math.ceil(mm / step - 1e-6) * step
        let y = 5 * step
        const all = rows.flatMap(({ high, wide }, i) => {
          let x = 5 * step
          const own = wide.map((w, k) => {
            const piece = square(`${i}.${k}`, x, y, x + w * step, y + high * step)
            x = onStep(x + w * step + kerf)
            return piece
          })
          y = onStep(y + high * step + kerf)
          return own
        })
        const { steps } = sawPanel(all, panel, kerf, step)
        const { faults, thin, parts } = sawnBy(steps, all, panel, kerf)
        expect([faults, thin]).toEqual([[], []])
        for (const { mark, box } of all) {
          // each of its edges is sawn, or is the one that a cut before left
          const over = parts.map((part) => [
            box.x0 - part.x0,
            box.y0 - part.y0,
            part.x1 - box.x1,
            part.y1 - box.y1,
          ])
          const [own, ...others] = over.filter((by) => by.every((one) => one > -1e-6 && one < step))
          expect([own === undefined, others.length], mark).toEqual([false, 0])
          larger += Number(own!.some((one) => one > 0.1))
        }
        several += Number(all.length > 1)
      }),
      { numRuns: 200 },
    )
    expect(several).toBeGreaterThan(100)
    expect(larger).toBeGreaterThan(100)
  })
})
