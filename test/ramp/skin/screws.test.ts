import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { circleCurve } from '../../../src/ramp/curve/circle.ts'
import { screwLength, screwWithin } from '../../../src/ramp/frame/screw-lengths.ts'
import type { Timber } from '../../../src/ramp/frame/timber.ts'
import { timberRun } from '../../../src/ramp/frame/timber-run.ts'
import { hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { level, solveLevel } from '../flats.ts'
import { bent, job, polygon } from '../framed.ts'
import { bare, inch, plain, plywood, said, sawnSeed, solve, studded } from '../ramps.ts'

/** Screws as they are sold: common practice, no source. mm */
const sold = {
  mm: [12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80],
  in: [1 / 2, 5 / 8, 3 / 4, 1, 1 + 1 / 4, 1 + 5 / 8, 2, 2 + 1 / 2, 3].map((inches) => inches * inch),
}
const least = { mm: 25, in: inch }
/** Those that are bought where they fit: above 30 mm whole tens alone. */
const bought = { mm: [25, 30, 40, 50, 60, 70, 80], in: sold.in.slice(3) }

describe.each(['mm', 'in'] as const)('lengths in %s', (units) => {
  const usual = bought[units]
  test('through the skin and 25 mm or 1 in into the stud, the next that is bought, for every thickness', () => {
    for (let through = 1; through < 70; through += 0.25) {
      const wanted = usual.filter((length) => length >= through + least[units] - 1e-9)
      expect(screwLength(through, units)).toBe(wanted.length > 0 ? Math.min(...wanted) : null)
    }
  })
  test('the longest that leaves 2 mm of wood, for every thickness', () => {
    for (let wood = 1; wood < 120; wood += 0.25) {
      const short = sold[units].filter((length) => length <= wood - 2 + 1e-9)
      expect(screwWithin(wood, units)).toBe(short.length > 0 ? Math.max(...short) : null)
    }
  })
})

test('where a screw runs in a timber is where its line crosses the rectangle', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  let crossed = 0
  fc.assert(
    fc.property(
      real(300, 4000),
      real(0.05, 1.3),
      real(-120, 120),
      real(-0.3, 0.3),
      real(19, 140),
      real(10, 140),
      (radius, slope, off, turn, width, depth) => {
        const curve = circleCurve({ x: 0, y: radius }, radius, 0, 1.5)
        const foot = curve.point(slope)
        const stud = curve.point(slope + off / radius)
        const timber: Timber = { ...stud, angle: slope + turn, lies: 'edge', width, depth }
        const run = timberRun(curve, slope, timber)
        const line = new Flatten.Segment(
          new Flatten.Point(foot.x, foot.y),
          new Flatten.Point(foot.x + 1000 * Math.sin(slope), foot.y - 1000 * Math.cos(slope)),
        )
        const box = polygon(timber)
        const cuts = line.intersect(box).map((p) => Math.hypot(p.x - foot.x, p.y - foot.y))
        if (box.contains(line.start)) cuts.push(0)
        if (cuts.length < 2) {
          // a corner may be touched
          expect(run === null || run.to - run.from < 1e-3).toBe(true)
          return
        }
        crossed++
        assertNear(run!.from, Math.min(...cuts), 1e-5, 'from')
        assertNear(run!.to, Math.max(...cuts), 1e-5, 'to')
      },
    ),
    { numRuns: 1000, seed: 41 },
  )
  expect(crossed).toBeGreaterThan(300)
})

test('no screw of any row comes through, and none is shorter than it must be, on 500 ramps', () => {
  let [screws, shorter] = [0, 0]
  for (const { design, units, panel } of fc.sample(job, { numRuns: 500, seed: sawnSeed })) {
    // thin ones too, ripped or sawn flat
    const thin: QuarterDesign = { ...design, studs: { ...design.studs, section: [22, 89] } }
    for (const one of [design, thin]) {
      const { ramp } = solve(one, units, panel)
      const timber = ramp.studs.map(polygon)
      ramp.skin.forEach((plan, i) => {
        const through = plan.below + plan.sheet.thickness
        const usual = bought[units].find((length) => length >= through + least[units] - 1e-9)
        hold(plan.screws.count === plan.rows.reduce((sum, row) => sum + row.across.length, 0))
        for (const row of plan.rows) {
          const { length } = row
          screws++
          /** whether wood lies under a screw so long, and 2 mm more */
          const held = (mm: number): boolean =>
            row.stud === null
              ? mm + 2 <= through
              : mm + 2 <= through || timber[row.stud]!.contains(bent(ramp, i, row.at, mm + 2 - through))
          if (length !== null) hold(held(length - 1e-6))
          if (length === usual && row.on !== 'between') continue
          shorter++
          // the next longer would come through
          const next = sold[units].find((other) => other > (length ?? 0) + 1e-9)
          if (next !== undefined) hold(!held(next + 1e-6))
        }
      })
    }
  }
  expect(screws).toBeGreaterThan(10_000)
  expect(shorter).toBeGreaterThan(500)
})

describe('where a screw comes through, the place and the shorter screw are named', () => {
  test('1 1/4 screws come through at the toe where no timber lies (common practice, no source)', () => {
    // one sheet of 1/4 and an inch into the stud: 1 1/4; the first stud lies well up the curve
    const design = { ...plain, toe: 20, skin: [plywood(inch / 4)] }
    const { ramp } = solve(design, 'in')
    expect(ramp.skin[0]!.screws.length).toBe(1.25 * inch)
    const [first] = ramp.studs
    expect(first!.at - first!.width / 2).toBeGreaterThan(20)
    expect(said(design, 'screw-through', 'in')).toEqual([
      expect.stringMatching(
        /^note: no timber lies under the skin for [\d /–+]+ in from the toe up: a screw of 1 1\/4 in comes through there; put none$/,
      ),
    ])
    // three sheets, an inch together: 3/4 is the longest that does not come through
    const three = { ...design, skin: [3, 3, 2].map((eighths) => plywood((eighths * inch) / 8)) }
    expect(said(three, 'screw-through', 'in').join()).toMatch(
      /from the toe up: a screw of 2 in comes through there; 3\/4 in at most$/,
    )
  })
  test('from the end of a top sheet that is stepped back', () => {
    const stepped: QuarterDesign = {
      ...plain,
      toe: 20,
      skin: [plywood(6), plywood(6)],
      runOut: { kind: 'stepped', back: 20 },
    }
    const [first] = solve(stepped).ramp.studs
    // the face's radius is 1700, the frame's 1712, that of the sheet's middle 1703: 20 along it are more along the frame
    const start = (20 * 1712) / 1703
    const bare = first!.at - first!.width / 2 - start
    expect(said(stepped, 'screw-through').join()).toContain(
      `for ${bare.toFixed(1)} mm from the top sheet's lower end up, ${start.toFixed(1)} mm up the curve: a screw`,
    )
  })
  test('not where a stud lies flush with the toe', () => {
    expect(said(plain, 'screw-through')).toEqual([])
  })
  test('at a stud that is ripped to lie in the toe', () => {
    const design = { ...bare(3000, 640, 20), skin: [plywood(9), plywood(9)] }
    const { ramp } = solve(design)
    const [first] = ramp.studs
    expect(first!.depth).toBeLessThan(20)
    // skin, and the strip; 2 mm stay
    const [one, two] = [9, 18].map((skin) => Math.max(...sold.mm.filter((l) => l <= skin + first!.depth - 2)))
    const words = said(design, 'screw-through').filter((message) => message.includes('stud 1,'))
    expect(words).toHaveLength(2)
    expect(words[0]).toMatch(
      new RegExp(
        `^note: layer 1: a screw of 40 mm comes through at stud 1, ${(9 + first!.depth).toFixed(1)} mm of wood with the skin: ${one} mm at most`,
      ),
    )
    expect(words[1]).toContain(`layer 2: a screw of 50 mm comes through at stud 1,`)
    expect(words[1]).toContain(`${two} mm at most`)
  })
  test('at flat studs that are thin', () => {
    const words = said({ ...plain, studs: studded({ section: [19, 89] }) }, 'screw-through')
    // 9 + 19 = 28: 25; 18 + 19 = 37: 35; 24 + 19 = 43: 40
    expect(words.map((w) => /layer (\d).*at studs? 1\b[^;]*: (\d+) mm at most/.exec(w)?.slice(1))).toEqual([
      ['1', '25'],
      ['2', '35'],
      ['3', '40'],
    ])
  })
  test('studs with like figures are said together, as a range', () => {
    // a frame of 16 under one sheet of 9: 25 of wood, so 20; the usual one goes 25 into a stud: 40, of whole tens
    const low = { ...level, height: { layer: 'frame', value: 16 }, skin: [plywood(9)] } as const
    const { ramp, findingsOf: of } = solveLevel(low)
    expect(ramp.studs.length).toBeGreaterThan(9)
    expect(of('screw-through').map(({ message }) => message)).toEqual([
      `layer 1: a screw of 40 mm comes through at studs 1 to ${ramp.studs.length}, 25 mm of wood with the skin: 20 mm at most`,
    ])
    // thin ones on edge but for the first and the last, which lie flat
    const { ramp: curved, findingsOf } = solve({ ...plain, studs: studded({ section: [19, 89] }) })
    const flat = curved.studs.flatMap(({ lies }, i) => (lies === 'flat' ? [i + 1] : []))
    expect(flat.length).toBe(2)
    const [first] = findingsOf('screw-through')
    expect(first!.message).toBe(
      `layer 1: a screw of 40 mm comes through at studs ${flat.join(' and ')}, 28 mm of wood with the skin: 25 mm at most`,
    )
  })
  test('between the studs, where only the skin lies', () => {
    expect(said({ ...plain, fasten: 'between' }, 'screw-through')).toEqual([
      'note: layer 3: only the skin, 24 mm thick, lies between studs; screws longer than 20 mm come through',
    ])
  })
  test('and where no screw holds there the way out is said, and works', () => {
    // 6 and 6: 10 mm at most, and no such screw is usual
    const thin: QuarterDesign = { ...plain, fasten: 'between', skin: [plywood(6), plywood(6)] }
    expect(said(thin, 'screw-through')).toEqual([
      'warn: layer 2: only the skin, 12 mm thick, lies between studs, and no usual screw holds there without coming through; say `fasten: studs`',
    ])
    expect(said({ ...thin, fasten: 'studs' }, 'screw-through')).toEqual([])
  })
  test('a skin thicker than any screw is told', () => {
    const thick = { ...plain, skin: [plywood(9), plywood(50)] }
    expect(said(thick, 'screw-long')).toEqual([
      'note: layer 2: no usual screw goes through 59 mm of skin and 25 mm into a stud',
    ])
    expect(said({ ...plain, skin: [plywood(9), plywood(46)] }, 'screw-long')).toEqual([])
  })
})
