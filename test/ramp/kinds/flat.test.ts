import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { FlatDesign, Stock, Units } from '../../../src/design/design.ts'
import { readLength } from '../../../src/length.ts'
import { hasStop } from '../../../src/ramp/check/check.ts'
import { flatPanelFindings, frameFlat } from '../../../src/ramp/kinds/flat.ts'
import { wordFlatFindings } from '../../../src/ramp/kinds/flat-findings.ts'
import { seamStudsOf } from '../../../src/ramp/skin/seam-studs.ts'
import { above, atMost, below, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { flatJob, level, real, solveLevel } from '../flats.ts'
import { bays, polygon } from '../framed.ts'
import { inch, plywood, stock } from '../ramps.ts'

const said = (design: FlatDesign, id: string, units: Units = 'mm'): readonly string[] =>
  solveLevel(design, units)
    .findingsOf(id)
    .map((f) => `${f.level}: ${f.message}`)
const surface = (value: number): Pick<FlatDesign, 'height'> => ({ height: { layer: 'surface', value } })
const frame = (value: number): Pick<FlatDesign, 'height'> => ({ height: { layer: 'frame', value } })

describe('a flat worked by hand', () => {
  const { ramp, findings } = solveLevel(level)

  test('nothing is said of it', () => {
    expect(findings).toEqual([])
  })

  test('the frame is as high as the surface less the skin', () => {
    // 113 − 18 − 6
    expect(ramp.heights).toEqual({ frame: 89, surface: 113 })
    expect(solveLevel({ ...level, ...frame(89) }).ramp.heights).toEqual({ frame: 89, surface: 113 })
  })

  test('studs are as long as the room between the sides', () => {
    // 1216 − 2 × 18; with three sides (1216 − 3 × 18) / 2
    expect(ramp.studLength).toBe(1180)
    expect(solveLevel({ ...level, sides: { thickness: 18, count: 3 } }).ramp.studLength).toBe(581)
  })

  test('one stands flush with each end, the others at multiples of `every`; one that would meet an end is that one', () => {
    // 38 thick: ends at 19 and 2440 − 19; the one at 2400 would meet the last
    const wanted = [19, ...Array.from({ length: 11 }, (_, i) => 200 * (i + 1)), 2421]
    expect(ramp.studs.map(({ at }) => at)).toEqual(wanted)
    expect(ramp.studs.map(({ x, y, angle }) => [x, y, angle])).toEqual(wanted.map((at) => [at, 89, 0]))
    expect(ramp.studs.map(({ role }) => role)).toEqual(['end', ...Array(11).fill('inner'), 'end'])
    // a stud at exactly a stud's width from the end touches it and stays
    const close = solveLevel({ ...level, length: 2000 + 38 + 19 })
    expect(close.ramp.studs.map(({ at }) => at).slice(-2)).toEqual([2000, 2038])
  })

  test('every layer is as long as the flat, its marks are the studs', () => {
    for (const layer of ramp.skin) {
      expect(layer.length).toBe(2440)
      expect(layer.marks).toEqual(ramp.studs.map(({ at }) => at))
    }
    expect(ramp.skin.map(({ pieces, widths }) => [pieces, widths])).toEqual(
      Array(2).fill([[{ from: 0, length: 2440 }], [{ from: 0, length: 1216 }]]),
    )
  })
})

describe('sheets lie the way that takes the fewest', () => {
  const laid = (width: number, length: number, layers = 1) =>
    solveLevel({ ...level, width, length, skin: level.skin.slice(0, layers) }).ramp.skin
  // studs every 200, panels of 1220 × 2440
  test.each([
    // one sheet, lengthwise
    [1216, 2440, [1, 1]],
    // two either way: across, the seam lies on the joint of the stud at 1200 and its twin, 1219 along
    [2436, 2440, [2, 1]],
    // two either way: across, the seam lies on the stud at 1200
    [2436, 2400, [2, 1]],
    // two lengthwise, three across
    [1216, 3600, [2, 1]],
    // four lengthwise, three across
    [2436, 3600, [3, 1]],
    // one lengthwise would be two
    [2436, 1220, [1, 1]],
    // ends on studs do not count as seams: one sheet either way
    [1200, 1200, [1, 1]],
  ])('%d wide and %d long: %j', (width, length, expected) => {
    expect(laid(width, length).map(({ pieces, widths }) => [pieces.length, widths.length])).toEqual([
      expected,
    ])
  })

  test('all layers alike, by the sum of their sheets', () => {
    // across 2 and, as the stud at 1200 is taken, 3; lengthwise 2 and 2
    expect(laid(2000, 2400, 2).map(({ pieces, widths }) => [pieces.length, widths.length])).toEqual([
      [1, 2],
      [1, 2],
    ])
    // lengthwise the second layer would take 3, so that its seams do not lie on those of the first
    expect(laid(2436, 2400, 2).map(({ pieces, widths }) => [pieces.length, widths.length])).toEqual([
      [2, 1],
      [3, 1],
    ])
  })

  test('seams lie on studs, those of the second layer on others, its smallest piece as large as it can be', () => {
    // 1220 + 1.5 reaches the studs at 1200 and 2400; four pieces without those: 800 − 1.5 at the ends, 1000 − 3 between
    expect(laid(2436, 3600, 2).map(({ seams }) => seams.map(({ at }) => at))).toEqual([
      [1200, 2400],
      [800, 1800, 2800],
    ])
  })

  /** Fewest stretches from 0 to `length` by trying every choice of seams: `null` lets them lie anywhere. */
  const fewest = (length: number, reach: number, gap: number, seams: readonly number[] | null): number => {
    if (seams === null) return Math.ceil((length + gap - 1e-6) / (reach + gap))
    const most = (from: number, to: number): boolean =>
      (to === length ? to : to - gap / 2) - (from === 0 ? 0 : from + gap / 2) <= reach + 1e-6
    const best = new Map([[0, 0]])
    for (const to of [...seams, length])
      best.set(to, 1 + Math.min(...[...best].filter(([from]) => most(from, to)).map(([, count]) => count)))
    return best.get(length)!
  }
  test('on 500 flats of one layer no choice of seams in either way takes fewer', () => {
    const one = fc.record({
      width: real(700, 5000),
      length: real(700, 6000),
      every: real(60, 300),
      panel: fc.constantFrom([1220, 2440], [1250, 2500], [915, 2135], [1525, 1525]),
      units: fc.constantFrom('mm' as const, 'in' as const),
    })
    const ways = { along: 0, across: 0, alike: 0 }
    for (const { width, length, every, panel, units } of fc.sample(one, { numRuns: 500, seed: 63 })) {
      const design = { ...level, width, length, skin: [plywood(18)], studs: { ...level.studs, every } }
      const { ramp } = solveLevel(design, units, panel as [number, number])
      const [plan] = ramp.skin
      const gap = units === 'mm' ? 3 : inch / 8
      const studs = ramp.studs
        .slice(1, -1)
        .map(({ at }) => at)
        .filter((at) => at >= 100 && at <= length - 100)
      const [short, long] = panel as [number, number]
      const [along, across] = [
        [long, short],
        [short, long],
      ].map(([a, b]) => fewest(length, a!, gap, studs) * fewest(width, b!, gap, null))
      const count = plan!.pieces.length * plan!.widths.length
      // a twin beside a stud may save one
      expect(count).toBeLessThanOrEqual(Math.min(along!, across!))
      const any = [
        [long, short],
        [short, long],
      ].map(([a, b]) => fewest(length, a!, gap, null) * fewest(width, b!, gap, null))
      expect(count).toBeGreaterThanOrEqual(Math.min(...any))
      if (count === Math.min(along!, across!)) ways.alike++
      if (along! < across!) ways.along++
      if (across! < along!) ways.across++
    }
    expect(ways.along).toBeGreaterThan(50)
    expect(ways.across).toBeGreaterThan(50)
    expect(ways.alike).toBeGreaterThan(400)
  })
})

describe('studs deeper than the frame', () => {
  // a beam b wide and h deep is as stiff as b h³: on edge ripped to f it is 38 f³, flat 89 · 38³
  const even = Math.cbrt((89 * 38 ** 3) / 38)
  const first = (value: number) => solveLevel({ ...level, ...frame(value) }).ramp.studs[0]!
  test('are ripped to its height as long as that is the stiffer way, else laid flat', () => {
    expect(first(86)).toMatchObject({ lies: 'edge', width: 38, depth: 86 })
    expect(first(even + 0.01)).toMatchObject({ lies: 'edge', width: 38 })
    expect(first(even - 0.01)).toMatchObject({ lies: 'flat', width: 89, depth: 38 })
    expect(first(30)).toMatchObject({ lies: 'flat', width: 89, depth: 30 })
    expect(first(120)).toMatchObject({ lies: 'edge', width: 38, depth: 89 })
  })
  test('are told, with the height that takes them whole', () => {
    expect(said({ ...level, ...surface(110) }, 'flat-studs')).toEqual([
      'note: studs 89 mm deep do not stand in a frame 86 mm high: rip them to 86 mm and stand them on edge; a surface height of 113 mm takes them whole',
    ])
    expect(said({ ...level, ...frame(45) }, 'flat-studs')).toEqual([
      'note: studs 89 mm deep do not stand in a frame 45 mm high: lay them flat; a frame height of 89 mm takes them whole',
    ])
    expect(said({ ...level, ...frame(30.5) }, 'flat-studs')).toEqual([
      'note: studs 89 mm deep do not stand in a frame 30.5 mm high: lay them flat, ripped to 30 mm; a frame height of 89 mm takes them whole',
    ])
    expect(said(level, 'flat-studs')).toEqual([])
    const inches: FlatDesign = {
      ...level,
      ...surface(4.25 * inch),
      skin: [plywood(inch)],
      studs: { section: [1.5 * inch, 3.5 * inch], every: 8 * inch },
    }
    expect(said(inches, 'flat-studs', 'in')).toEqual([
      'note: studs 3 1/2 in deep do not stand in a frame 3 1/4 in high: rip them to 3 1/4 in and stand them on edge; a surface height of 4 1/2 in takes them whole',
    ])
  })
  test('thin ones make screws short', () => {
    // 10 of stud under 24 of skin: a screw of 24 + 25 = 49, so 50, comes through; 32 leaves 2, so 30
    const thin = { ...level, ...frame(10) }
    expect(solveLevel(thin).ramp.skin[1]!.screws.length).toBe(50)
    expect(new Set(solveLevel(thin).ramp.skin[1]!.rows.map(({ length }) => length))).toEqual(new Set([30]))
    expect(said(thin, 'screw-through').join()).toContain(
      'layer 2: a screw of 50 mm comes through at studs 1 to 13, 34 mm of wood with the skin: 30 mm at most',
    )
  })
})

describe('studs that hang clear of the floor', () => {
  const wide = { ...level, width: 2436 }
  test('may sag; a packing or a rib helps', () => {
    // 2400 between the sides, 38 × 89: F L³ / (48 E I) = 1500 · 2400³ / (48 · 8000 · 38 · 89³ / 12)
    const sag = (1500 * 2400 ** 3) / ((48 * 8000 * 38 * 89 ** 3) / 12)
    const [message, ...more] = said({ ...wide, ...frame(101) }, 'span')
    expect(more).toEqual([])
    expect(message).toContain(`sags about ${sag.toFixed(1)} mm (span/${Math.floor(2400 / sag)})`)
    expect(message).toContain('a packing of 12 mm between its middle and the floor')
    const ribs = Number(/sides: \{ count: (\d) \}/.exec(message!)![1])
    expect(said({ ...wide, ...frame(101), sides: { thickness: 18, count: ribs } }, 'span')).toEqual([])
    expect(said({ ...wide, ...frame(101), sides: { thickness: 18, count: ribs - 1 } }, 'span')).not.toEqual(
      [],
    )
  })
  test('those that stand on it do not', () => {
    expect(said({ ...wide, ...frame(89) }, 'span')).toEqual([])
    expect(said({ ...wide, ...frame(60) }, 'span')).toEqual([])
  })
})

/** Limits worked out by hand; `bad` lies on the side where the check speaks. mm */
const limits: readonly (readonly [string, string, string, number, 1 | -1, (v: number) => FlatDesign])[] = [
  ['a frame of 10 under the skin', 'flat-low', 'stop', 24 + 10, -1, (v) => ({ ...level, ...surface(v) })],
  [
    'bays of 40 mm between the sides',
    'width',
    'stop',
    3 * 60 + 2 * 40,
    -1,
    (v) => ({ ...level, width: v, sides: { thickness: 60, count: 3 } }),
  ],
  [
    'a length of two studs',
    'length-short',
    'stop',
    2 * 120,
    -1,
    (v) => ({ ...level, ...frame(30), length: v, studs: { section: [38, 120], every: 200 } }),
  ],
  [
    'studs side by side',
    'flat-studs',
    'stop',
    89,
    -1,
    (v) => ({ ...level, ...frame(40), studs: { section: [38, 89], every: v } }),
  ],
  ['a side as long as a panel', 'panel-size', 'warn', 2440, 1, (v) => ({ ...level, length: v })],
  // 4 E b h³ / (F L²) = 360 between sides of 18: a stud that hangs in a frame of 120
  [
    'a stud that hangs',
    'span',
    'note',
    Math.sqrt((4 * 8000 * 38 * 89 ** 3) / (1500 * 360)) + 36,
    1,
    (v) => ({ ...level, ...frame(120), width: v }),
  ],
  [
    'a flat stud that hangs',
    'span',
    'note',
    Math.sqrt((4 * 8000 * 89 * 38 ** 3) / (1500 * 360)) + 36,
    1,
    (v) => ({ ...level, ...frame(39), width: v }),
  ],
]

describe('each check speaks just past its limit, and not on it or before', () => {
  test.each(limits)('%s', (_, id, wanted, limit, bad, at) => {
    const levels = (v: number) =>
      solveLevel(at(v)).drafts.flatMap((draft) => (draft.id === id ? [draft.level] : []))
    expect(levels(limit - bad * 0.01)).not.toContain(wanted)
    expect(levels(limit + bad * 0.01)).toContain(wanted)
    if (id !== 'width' && id !== 'span') expect(levels(limit)).not.toContain(wanted)
  })

  test('with the words of a builder', () => {
    expect(said({ ...level, ...surface(20) }, 'flat-low')).toEqual([
      'stop: a surface height of 20 mm leaves no frame under the skin; make it 34 mm or more',
    ])
    expect(said({ ...level, ...surface(30) }, 'flat-low')).toEqual([
      'stop: a surface height of 30 mm leaves only 6 mm of frame under the skin; make it 34 mm or more',
    ])
    expect(said({ ...level, length: 3000.4 }, 'panel-size')).toEqual([
      'warn: a side needs 3001 mm × 89 mm, a panel of your stock is 2440 mm × 1220 mm; make it 2440 mm long or less, two end to end for more, or let each side be pieces that meet over a stud',
    ])
  })

  test('a side may stand in the panel, and where it does neither the panel to buy is told', () => {
    const at = (panel: readonly [number, number], length: number) =>
      solveLevel({ ...level, ...frame(450), length }, 'mm', panel)
        .findingsOf('panel-size')
        .map((f) => f.message)
    expect(at([300, 600], 300)).toEqual([])
    expect(at([300, 600], 301)).toEqual([
      'a side needs 301 mm × 450 mm, a panel of your stock is 600 mm × 300 mm; make it 300 mm long or less, two end to end for more, or let each side be pieces that meet over a stud',
    ])
    expect(at([300, 440], 700)).toEqual([
      'a side needs 700 mm × 450 mm, a panel of your stock is 440 mm × 300 mm; buy panels of 2440 mm × 1220 mm, or let each side be pieces that meet over a stud',
    ])
    expect(at([450, 700], 700)).toEqual([])
  })

  /** What is typed for each, from the message as it is read. */
  const remedies: readonly (readonly [string, RegExp, (d: FlatDesign, v: number) => FlatDesign])[] = [
    ['flat-low', /make it (.+) or more/, (d, value) => ({ ...d, height: { ...d.height, value } })],
    ['width', /make it (.+) or more/, (d, width) => ({ ...d, width })],
    ['length-short', /make it (.+) or more/, (d, length) => ({ ...d, length })],
    ['flat-studs', /make `every` (.+) or more/, (d, every) => ({ ...d, studs: { ...d.studs, every } })],
    ['flat-studs', /height of (.+) takes/, (d, value) => ({ ...d, height: { ...d.height, value } })],
    ['panel-size', /make it (.+) long or less/, (d, length) => ({ ...d, length })],
  ]
  const offering = remedies.map(([id]) => id)
  /** Where sheets meet stops nothing, and is not asked: it takes most of the time. */
  const draftsOf = (design: FlatDesign, panel: Stock['panel'], units: Units) => {
    const all = { ...stock, panel }
    const { findings, frame: high } = frameFlat(design, all, units)
    return hasStop(findings) ? findings : [...findings, ...flatPanelFindings(design, high, all, units)]
  }
  const offered = (design: FlatDesign, panel: Stock['panel'], units: Units) =>
    wordFlatFindings(
      draftsOf(design, panel, units).map((draft) =>
        offering.includes(draft.id) ? draft : { ...draft, message: '' },
      ),
      design,
      units,
      { ...stock, panel },
    )
  test.each(['mm', 'in'] as const)('what is offered works when it is typed, in %s', (units) => {
    const jobs = [
      ...limits.map(([, , , limit, bad, at]) => ({ design: at(limit + bad * 5.3), panel: stock.panel })),
      ...fc.sample(flatJob, { numRuns: 150, seed: 61 }),
    ]
    const tried = new Set<string>()
    for (const { design, panel } of jobs)
      for (const { id, level: at, message } of offered(design, panel, units))
        for (const [name, form, change] of remedies) {
          const typed = name === id ? form.exec(message)?.[1] : undefined
          if (typed === undefined) continue
          const reading = readLength(typed, units)
          if ('error' in reading) throw new Error(`${reading.error}: ${message}`)
          tried.add(`${id} ${at}`)
          const changed = change(design, reading.mm)
          expect(draftsOf(changed, panel, units).filter((f) => f.id === id && f.level === at)).toEqual([])
        }
    expect([...tried].sort()).toEqual([
      'flat-low stop',
      'flat-studs note',
      'flat-studs stop',
      'length-short stop',
      'panel-size warn',
      'width stop',
    ])
  })
})

describe('on 500 flats that can be sawn', () => {
  const jobs = fc.sample(flatJob, { numRuns: 500, seed: 62 })
  const solved = jobs.map((one) => ({ ...one, ...solveLevel(one.design, one.units, one.panel) }))
  const gap = { mm: 3, in: 3.175 }

  test('the flats meet what is tested', () => {
    const studs = solved.map(({ ramp }) => ramp.studs[0]!)
    expect(studs.filter(({ lies }) => lies === 'flat').length).toBeGreaterThan(50)
    expect(studs.filter(({ lies }) => lies === 'edge').length).toBeGreaterThan(200)
    const plans = solved.flatMap(({ ramp }) => ramp.skin)
    expect(plans.filter(({ seams }) => seams.length > 0).length).toBeGreaterThan(300)
    expect(plans.filter(({ acrossSeams }) => acrossSeams.length > 0).length).toBeGreaterThan(300)
    expect(plans.filter(({ rows }) => rows.some(({ on }) => on === 'between')).length).toBeGreaterThan(80)
  })

  test('the studs lie in the frame, flush with its ends and its top, no two on each other, none too far apart', () => {
    for (const { ramp, design } of solved) {
      const { length } = design
      const boxes = ramp.studs.map((stud) => polygon(stud).box)
      assertNear(boxes[0]!.xmin, 0, 1e-6)
      assertNear(boxes.at(-1)!.xmax, length, 1e-6)
      for (const box of boxes) {
        assertNear(box.ymax, ramp.heights.frame, 1e-6)
        above(box.ymin, -1e-6)
      }
      boxes.slice(1).forEach((box, i) => {
        above(box.xmin, boxes[i]!.xmax - 1e-6)
      })
      ramp.studs.slice(1).forEach(({ at, width }, i) => {
        below(at - ramp.studs[i]!.at, design.studs.every + width + 1e-6)
      })
    }
  })

  test('all but the ends stand at multiples of `every`, and only those are left out that would meet an end', () => {
    for (const { ramp, design } of solved) {
      const { width } = ramp.studs[0]!
      const wanted: number[] = []
      for (let k = 1; k * design.studs.every <= design.length; k++) {
        const at = k * design.studs.every
        if (at - width >= width / 2 - 1e-9 && at + width <= design.length - width / 2 + 1e-9) wanted.push(at)
      }
      const inner = ramp.studs.filter(({ role }) => role === 'inner').map(({ at }) => at)
      expect(inner).toHaveLength(wanted.length)
      inner.forEach((at, k) => {
        assertNear(at, wanted[k]!, 1e-6)
      })
    }
  })

  test('each layer on studs has a row on each of them and two on a seam, off the edges of its sheets and the screws below', () => {
    let [kept, nearest] = [0, Number.POSITIVE_INFINITY]
    for (const { ramp, design, units } of solved) {
      const edge = { mm: 10.5, in: 11.1125 }[units]
      ramp.skin.forEach((plan, i) => {
        const inside = (p: number, of: readonly { readonly from: number; readonly length: number }[]) =>
          of.some(({ from, length }) => p >= from + edge - 1e-6 && p <= from + length - edge + 1e-6)
        for (const row of plan.rows) {
          hold(inside(row.at, plan.pieces))
          hold(row.across.every((p) => inside(p, plan.widths)))
          for (const lower of ramp.skin.slice(0, i).flatMap(({ rows }) => rows)) {
            if (Math.abs(lower.at - row.at) >= 15) continue
            for (const p of row.across)
              for (const q of lower.across) nearest = Math.min(nearest, Math.abs(p - q))
          }
        }
        if (design.fasten === 'between' && i > 0 && i === ramp.skin.length - 1) return
        ramp.studs.forEach(({ at }, j) => {
          if (plan.seams.some((s) => s.stud === null && Math.abs(s.at - at) < 20)) return
          const rows = plan.rows.filter(({ stud }) => stud === j)
          const single = plan.seams.some(({ stud, second }) => stud === j && second === null)
          hold(rows.length === (single ? 2 : 1), `rows on stud ${j + 1}`)
          kept++
        })
      })
    }
    above(kept, 5000)
    above(nearest, 15 - 1e-6)
  })

  test('no other way to lay the section is stiffer', () => {
    for (const { ramp, design } of solved) {
      const [thin, wide] = [...design.studs.section].sort((a, b) => a - b) as [number, number]
      const f = ramp.heights.frame
      const { width, depth } = ramp.studs[0]!
      const ways = [thin * Math.min(wide, f) ** 3, wide * Math.min(thin, f) ** 3]
      assertNear(width * depth ** 3, Math.max(...ways), 1e-6 * Math.max(...ways))
    }
  })

  test('sheets fit a panel one way and make up the flat; seams lie on studs, not on those of the layer below, or that is said', () => {
    for (const { ramp, design, panel, units, drafts } of solved) {
      const lost = ramp.skin.flatMap(({ seams }) => seams.filter((s) => s.stud === null || s.shared))
      hold(lost.length > 0 === drafts.some((f) => f.id === 'seam-stud'))
      ramp.skin.forEach((plan, i) => {
        const sum = (of: readonly { readonly length: number }[]): number =>
          of.reduce((total, { length }) => total + length, 0) + gap[units] * (of.length - 1)
        assertNear(sum(plan.pieces), design.length, 1e-6)
        assertNear(sum(plan.widths), design.width, 1e-6)
        const [along, across] = [plan.pieces, plan.widths].map((of) => Math.max(...of.map((p) => p.length)))
        const ways = [panel, [panel[1], panel[0]]]
        hold(ways.some(([a, b]) => along! <= a! + 1e-6 && across! <= b! + 1e-6))
        const below = ramp.skin[i - 1]?.seams.flatMap(seamStudsOf) ?? []
        for (const seam of plan.seams) {
          const on = seamStudsOf(seam)
          on.forEach((stud, k) => {
            // on a joint each half of the gap has a stud of its own
            const at = seam.at + (on.length === 1 ? 0 : 2 * k - 1)
            hold(polygon(ramp.studs[stud]!).contains(new Flatten.Point(at, ramp.heights.frame - 2)))
          })
          hold(on.some((stud) => below.includes(stud)) === seam.shared)
        }
      })
    }
  })

  test('every screw meets the stud that it should and does not come through, or misses all of them', () => {
    let screws = 0
    for (const { ramp, design } of solved) {
      const top = ramp.heights.frame
      const boxes = ramp.studs.map(polygon)
      ramp.skin.forEach((plan) => {
        const through = plan.below + plan.sheet.thickness
        plan.rows.forEach((row) => {
          screws += row.across.length
          for (const p of row.across) hold(bays(design).some(([a, b]) => p >= a + 19.9 && p <= b - 19.9))
          const screw = row.length
          if (row.stud === null) {
            for (const box of boxes) above(new Flatten.Point(row.at, top).distanceTo(box)[0], 24.9)
            if (screw != null) below(screw, through)
            return
          }
          hold(boxes[row.stud]!.contains(new Flatten.Point(row.at, top - 1)))
          if (screw != null) atMost(screw, through + ramp.studs[row.stud]!.depth - 2 + 1e-6)
        })
      })
    }
    above(screws, 20_000)
  })
})
