import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Coping, QuarterDesign, Stock, Units } from '../../../src/design/design.ts'
import { pipeDrills, solvePipe } from '../../../src/ramp/frame/pipe.ts'
import { pipeEdges } from '../../../src/ramp/frame/pipe-timber.ts'
import { above, atLeast, atMost, below } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { inch, piped, plain, solve, stock } from '../ramps.ts'

const ramp = (
  width: number,
  holes: Coping['holes'],
  count = 2,
  more: Partial<Coping> = {},
): QuarterDesign => ({
  ...plain,
  width,
  sides: { thickness: 18, count },
  coping: piped({ holes, ...more }),
})
const lay = (design: QuarterDesign, pipe: readonly number[] = [3000], units: Units = 'mm') => {
  const laid = solvePipe(design, { ...stock, pipe } as Stock, units)
  return { ...laid, pipe: laid.pipe!, ids: laid.findings.map((f) => f.id) }
}
const message = (design: QuarterDesign, id: string, units: Units = 'mm', pipe: readonly number[] = [3000]) =>
  lay(design, pipe, units).findings.find((f) => f.id === id)?.message

test('a screw enters its timber behind the front face by the middle of the pipe less that face', () => {
  // by hand: the timber 38 thick, its middle 11 behind that of the pipe
  const { front, rear } = pipeEdges(
    { centre: { x: 1297.8, y: 0 } },
    {
      x: 1308.8,
      y: 0,
      angle: 0,
      lies: 'edge',
      width: 38,
      depth: 89,
    },
  )
  assertNear(front, 8, 1e-9)
  assertNear(rear, 30, 1e-9)
})

describe('holes', () => {
  test('3 in from the ends, then every 24 (common practice, no source)', () => {
    const { pipe } = lay(ramp(96 * inch, { ends: 3 * inch, every: 24 * inch }), [120 * inch])
    const inches = pipe.holes.map((mm) => mm / inch)
    // 3, 27, 51, 75 and 93; 75 lies 18 from the last, more than a third of 24
    ;[3, 27, 51, 75, 93].forEach((at, i) => {
      assertNear(inches[i]!, at, 1e-9)
    })
    expect(inches).toHaveLength(5)
    assertNear(pipe.length, 96 * inch, 1e-9)
  })
  test('one that comes nearer to the last than a third of the spacing is left out', () => {
    // last at 1475 and 1474; 1275 is 200 or 199 before it
    expect(lay(ramp(1550, { ends: 75, every: 600 })).pipe.holes).toEqual([75, 675, 1275, 1475])
    expect(lay(ramp(1549, { ends: 75, every: 600 })).pipe.holes).toEqual([75, 675, 1474])
  })
  test('on a pipe hardly longer than both ends the two come nearer to its ends: 160 apart, 25 off them', () => {
    expect(lay(ramp(240, { ends: 120, every: 600 })).pipe.holes).toEqual([40, 200])
    expect(lay(ramp(400, { ends: 119, every: 600 })).pipe.holes).toEqual([119, 281])
    expect(lay(ramp(400, { ends: 121, every: 600 })).pipe.holes).toEqual([120, 280])
    // off the sides' middles at 9 and 191 by 30
    expect(lay(ramp(200, { ends: 120, every: 600 })).pipe.holes).toEqual([39, 161])
  })
  test('a piece that no two screws 80 apart hold is a warning, and pipe of the whole width ends it', () => {
    const pieces = (width: number, pipe: number) =>
      lay(ramp(width, { ends: 75, every: 600 }), [pipe]).findings.filter(({ id }) => id === 'pipe-piece')
    // holes 39 off either end: at 39 and 118 are 79, at 39 and 119 are 80 apart
    expect(pieces(157, 3000).map(({ level }) => level)).toEqual(['warn'])
    expect(pieces(158, 3000)).toEqual([])
    // 3100 from 3000: the last piece is 400
    const { pipe, findings } = lay(ramp(3100, { ends: 75, every: 600 }))
    expect(pipe.pieces.map(({ length }) => length)).toEqual([2700, 400])
    expect(findings.map(({ id }) => id)).not.toContain('pipe-piece')
    expect(pieces(157, 3000)[0]!.message).toBe(
      'pipe could turn or come off: the 157 mm at its left end have two screws only 79 mm apart; strap it down to the sides as well',
    )
    const [short] = pieces(310, 110)
    expect(short!.message).toContain('buy pipe of 310 mm or more')
    expect(pieces(310, 310)).toEqual([])
  })
  test('keep 30 off the middle of a rib, moved by no more than they must', () => {
    // 1368 wide with a rib: its middle at 684, 9 beyond the hole at 675; the nearest clear place is 654
    expect(lay(ramp(1368, { ends: 75, every: 600 }, 3)).pipe.holes).toEqual([75, 654, 1293])
    // at 686 the way up is nearer: 714
    expect(lay(ramp(1368, { ends: 86, every: 600 }, 3)).pipe.holes).toEqual([86, 714, 1282])
    // and off the outer sides, whose middles lie 9 in; 1220 is too near to the last, 1348
    expect(lay(ramp(1368, { ends: 20, every: 600 })).pipe.holes).toEqual([39, 620, 1329])
  })
  test('on any ramp: in order, on the pipe, off all walls, and no farther apart than told but for that', () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        real(500, 6000),
        fc.integer({ min: 2, max: 5 }),
        real(20, 120),
        real(150, 800),
        fc.constantFrom(2000, 3000, 6000),
        (width, count, ends, every, longest) => {
          const { pipe } = lay(ramp(width, { ends, every }, count), [1000, longest])
          const walls = Array.from({ length: count }, (_, i) => 9 + (i * (width - 18)) / (count - 1))
          for (const at of pipe.holes) for (const m of walls) above(Math.abs(at - m), 29.999)
          pipe.holes.slice(1).forEach((at, i) => {
            above(at, pipe.holes[i]!)
            below(at - pipe.holes[i]!, (4 / 3) * every + 60 + 1e-6)
          })
          atLeast(pipe.holes[0]!, Math.min(ends, 39) - 1e-6)
          const { pieces } = pipe
          for (const { length } of pieces) atMost(length, longest + 1e-6)
          assertNear(
            pieces.reduce((sum, { length }) => sum + length, 0),
            width,
            1e-6,
          )
          // each piece is held by two, and long enough to be held
          for (const { from, length } of pieces) {
            const own = pipe.holes.filter((at) => at > from && at < from + length)
            above(own.at(-1)! - own[0]!, 80 - 1e-6)
            above(length, 399.999)
          }
        },
      ),
      { numRuns: 800, seed: 51 },
    )
  })
  test('the drills are said in both units', () => {
    expect(pipeDrills).toEqual({ near: '13 mm (1/2 in)', far: '5 mm (3/16 in)' })
    // 1/2 in is 12.7, 3/16 in 4.76: the drill next to them
    assertNear(0.5 * inch, 13, 0.5)
    assertNear((3 / 16) * inch, 5, 0.5)
  })
})

describe('a pipe longer than the stock', () => {
  test('is joined over the farthest rib in reach', () => {
    // 4518 wide: ribs at 1509 and 3009; 3000 reaches only the first, from there the rest is 3009: again too long
    const { pipe, ids } = lay(ramp(4518, { ends: 75, every: 600 }, 4))
    expect(pipe.joints).toEqual([
      { at: 1509, rib: true },
      { at: 3009, rib: true },
    ])
    expect(pipe.pieces.map(({ length }) => length)).toEqual([1509, 1500, 1509])
    expect(ids).toContain('pipe-joint')
    expect(message(ramp(4518, { ends: 75, every: 600 }, 4), 'pipe-joint')).toBe(
      'a pipe 4518 mm long is cut from more than one of your stock (3000 mm): it is joined 1509 mm from the left, over a rib; 3009 mm from the left, over a rib',
    )
  })
  test('or where a block must be set, and that is said', () => {
    expect(lay(ramp(4000, { ends: 75, every: 600 })).pipe.joints).toEqual([{ at: 3000, rib: false }])
    expect(message(ramp(4000, { ends: 75, every: 600 }), 'pipe-joint')).toContain(
      '3000 mm from the left, where no rib is, so set a block under it',
    )
  })
  test('each piece has its own ends', () => {
    const { pipe } = lay(ramp(3018, { ends: 75, every: 600 }, 3), [2000])
    // joint over the rib at 1509: 75 before it and behind it
    expect(pipe.holes).toContain(1509 - 75)
    expect(pipe.holes).toContain(1509 + 75)
  })
  test('the longest of the stock is what counts', () => {
    expect(lay(ramp(4000, { ends: 75, every: 600 }), [3000, 6000]).pipe.joints).toEqual([])
  })
})

describe('what is said of the stuff', () => {
  test('plastic moves 3/8 in per 100 ft and 10 °F: the movement for 36 °F', () => {
    // published: 3/8 in in 1200 in for 10 °F; 2436 mm · 0.375/1200 · 3.6 = 2.74 mm
    const plastic = ramp(2436, { ends: 75, every: 600 }, 3, { material: 'plastic' })
    assertNear(2436 * (0.375 / 1200) * 3.6, 2.74, 0.005)
    expect(message(plastic, 'pipe-moves')).toBe(
      'a plastic pipe 2436 mm long grows and shrinks by about 2.7 mm over a swing of 20 °C (36 °F); make its small holes slots along the pipe, round only the middle one',
    )
    // 100 ft · 12/1200 · 0.375 · 3.6 = 1.35 in
    const hundred = ramp(1200 * inch, { ends: 75, every: 600 }, 2, { material: 'plastic' })
    expect(message(hundred, 'pipe-moves', 'in', [1200 * inch])).toMatch(/by about 1 11\/32|1 3\/8– in/)
    expect(lay(plastic).ids).not.toContain('zinc-fume')
  })
  test('steel: zinc and heat', () => {
    const steel = ramp(2436, { ends: 75, every: 600 }, 3)
    expect(message(steel, 'zinc-fume')).toMatch(/^zinc-coated pipe gives off toxic fume when welded/)
    expect(lay(steel).ids).not.toContain('pipe-moves')
  })
  test('nothing without a pipe', () => {
    expect(solvePipe(plain, stock, 'mm')).toEqual({ pipe: null, findings: [] })
    expect(solve(plain).ramp.pipe).toBeNull()
  })
})
