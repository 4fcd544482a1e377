import fs from 'node:fs'
import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { curvedOf } from '../../../src/design/kind-traits.ts'
import { readDesign } from '../../../src/design/read.ts'
import { hasStop } from '../../../src/ramp/check/check.ts'
import type { DeckTimber } from '../../../src/ramp/frame/deck-timbers.ts'
import { pipeAir } from '../../../src/ramp/frame/pipe-timber.ts'
import type { Timber } from '../../../src/ramp/frame/timber.ts'
import type { Quarter } from '../../../src/ramp/ramp.ts'
import { pipeScrewLength } from '../../../src/ramp/screws/driven.ts'
import { drawDesign } from '../../../src/ramp/solve.ts'
import { rampScrews } from '../../../src/stock/screws.ts'
import { atLeast, atMost, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { randomFrom } from '../../support/random.ts'
import { type Ring, ringHolds, ringInside, ringOf, ringRows, ringsApart } from '../../support/ring.ts'
import { job, polygon } from '../framed.ts'
import { notch, piped, plain, said, sawnSeed, solve, transitionOf } from '../ramps.ts'

const timbers = (design: QuarterDesign, role: DeckTimber['role']): readonly DeckTimber[] =>
  solve(design).ramp.deckTimbers.filter((timber) => timber.role === role)
/** from the timber's own front face to its back face, and from its foot to its top */
const extent = (timber: DeckTimber) => polygon(timber).box

describe('behind the lip, on a panel 640 high with a notch 48 along and 33 down', () => {
  const design: QuarterDesign = { ...plain, coping: piped({}, notch(48, 33)) }
  const wall = transitionOf(plain).run + 48
  const back = transitionOf(plain).run + 500
  test('a backing stands upright behind the notch, its top in the top line', () => {
    const [backing] = timbers(design, 'backing')
    const { xmin, xmax, ymin, ymax } = extent(backing!)
    assertNear(xmin, wall, 1e-9)
    assertNear(xmax, wall + 38, 1e-9)
    assertNear(ymin, 640 - 89, 1e-9)
    assertNear(ymax, 640, 1e-9)
  })
  test('upright ones follow evenly, no farther apart than 300 mm (12 in), the last flush with the back edge', () => {
    const deck = timbers(design, 'deck')
    // 500 − 48 − 38 from the first to the last: two bays
    ;[wall + 19 + 207, back - 19].forEach((x, i) => {
      assertNear(deck[i]!.x, x, 1e-9)
      expect([deck[i]!.lies, deck[i]!.width, deck[i]!.depth]).toEqual(['edge', 38, 89])
    })
    expect(deck).toHaveLength(2)
  })
  test('one lies flat in the back bottom corner, before the chamfer where there is one', () => {
    assertNear(extent(timbers(design, 'back')[0]!).xmax, back, 1e-9)
    assertNear(extent(timbers(design, 'back')[0]!).ymin, 0, 1e-9)
    const cut = timbers({ ...design, chamfer: 120 }, 'back')[0]!
    assertNear(extent(cut).xmax, back - 120, 1e-9)
  })
  test('a timber lies under the pipe, its top in the notch floor, where the lip stud leaves room', () => {
    // a lip stud cannot lie under a notch so long: the pipe has its own
    const long = { ...plain, coping: piped({}, notch(120, 33)) }
    const [pipe] = timbers(long, 'pipe')
    assertNear(extent(pipe!).ymax, 640 - 33, 1e-9)
    assertNear(extent(pipe!).xmax, transitionOf(plain).run + 120, 1e-9)
    expect(pipe!.lies).toBe('flat')
  })
  test('none under the deck where there is no board', () => {
    expect(solve({ ...design, deckBoard: null }).ramp.deckTimbers.map(({ role }) => role)).not.toContain(
      'deck',
    )
  })
})

/**
 * Wood on the way of a screw straight down from the pipe's middle, from the notch's floor on: before it and in it, mm. By
 * another library: the vertical cut with each timber's polygon.
 */
const underPipe = (
  { coping, studs, deckTimbers }: Quarter,
  roles: readonly string[],
): { readonly air: number; readonly wood: number } | null => {
  const { centre, outside } = coping!
  const floor = centre.y - outside / 2
  const plumb = new Flatten.Segment(
    new Flatten.Point(centre.x, floor + 1e-6),
    new Flatten.Point(centre.x, floor - 1000),
  )
  const runs = [...studs, ...deckTimbers]
    .filter(({ role }) => roles.includes(role))
    .flatMap((timber) => {
      const ys = polygon(timber)
        .intersect(plumb)
        .map((p) => floor - p.y)
      return ys.length < 2 ? [] : [{ air: Math.min(...ys), wood: Math.max(...ys) - Math.min(...ys) }]
    })
  return runs.sort((a, b) => a.air - b.air)[0] ?? null
}

describe('a screw straight down from the middle of the pipe', () => {
  const file = (name: string): readonly Quarter[] => {
    const reading = readDesign(
      fs.readFileSync(new URL(`../../../templates/${name}`, import.meta.url), 'utf8'),
    )
    if ('problems' in reading) throw new Error(name)
    return curvedOf(drawDesign(reading.design).ramps)
  }
  test.each([
    'pair-mm.yaml',
    'quarter-and-flat-in.yaml',
    'quarter-and-flat-mm.yaml',
    'quarter-in.yaml',
    'quarter-mm.yaml',
  ])('meets a timber that lies in the floor of the notch: %s', (name) => {
    for (const ramp of file(name)) {
      const met = underPipe(ramp, ['pipe'])
      assertNear(met!.air, 0, 1e-5)
      // on edge, as deep as the section is wide
      assertNear(met!.wood, Math.max(...ramp.design.studs.section), 1e-5)
    }
  })

  test('grips 25 mm (1 in) of wood within the reach of one 80 mm (3 in) long, or what it takes is said', () => {
    const met = { own: 0, lip: 0, blocks: 0 }
    for (const { design, units, panel } of fc.sample(job, { numRuns: 250, seed: sawnSeed })) {
      if (!design.coping) continue
      const { ramp, drafts } = solve(design, units, panel)
      const words = drafts.filter(({ id }) => id === 'pipe-timber').map(({ message }) => message as string)
      const [grip, reach] = units === 'mm' ? [25, 80] : [25.4, 76.2]
      const least = Math.min(grip, ...design.studs.section)
      const own = underPipe(ramp, ['pipe'])
      const lip = underPipe(ramp, ['lip'])
      const serves = lip !== null && lip.wood >= least - 1e-5 && lip.air + grip <= reach + 1e-5
      const lies = ramp.deckTimbers.find(({ role }) => role === 'pipe')
      if (lies) {
        met.own++
        assertNear(own!.air, 0, 1e-5)
        assertNear(pipeAir(ramp, units), 0, 1e-9)
        atLeast(own!.wood, least - 1e-5)
        atMost(polygon(lies).box.xmin, ramp.coping!.centre.x - 6 + 1e-6)
        expect(words).toEqual([])
      } else if (serves) {
        met.lip++
        assertNear(pipeAir(ramp, units), lip.air, 1e-5)
        if (lip.air < 0.999) expect(words).toEqual([])
        else if (units === 'mm')
          assertNear(
            Number(/last stud, ([\d.]+) mm under the notch's floor/.exec(words[0]!)![1]),
            lip.air,
            0.0501,
          )
        else expect(words[0]).toContain("in under the notch's floor; pack that")
      } else {
        met.blocks++
        assertNear(pipeAir(ramp, units), 0, 1e-9)
        expect(words[0]).toMatch(
          /where its screws go, cut blocks to fill what is free under the notch's floor/,
        )
      }
    }
    for (const [name, count] of Object.entries(met)) expect(count, name).toBeGreaterThan(20)
  })

  test.each([
    ['mm', 0, 50],
    ['mm', 5, 50],
    ['mm', 6.5, 60],
    ['mm', 12.8, 60],
    ['mm', 40, 80],
    // 3/16 in and 3/8 in, of 2, 2 1/2 and 3 in
    ['in', 4.7625, 50.8],
    ['in', 9.525, 63.5],
  ] as const)(
    'held by screws through 4 mm of wall, what is free and 40 mm (1 1/2 in) of wood, the next sold or the longest: %s %f',
    (units, air, long) => assertNear(pipeScrewLength(air, units), long, 1e-9),
  )

  test('is held by screws that reach through what is packed, as they are counted', () => {
    const reading = readDesign(
      'title: Boathouse row\nunits: mm\nramps:\n  - { kind: quarter, width: 1216, height: { frame: 700 }, ' +
        'transition: { circle: { frame: 1200 }, tangent: { frame: 0 } }, toe: 30, deck: 800, studs: { section: 38 x 89, every: 250 }, ' +
        'skin: [9 plywood, 9 plywood], deck-board: 15 plywood, coping: { outside: 60.3, up: 8, out: 6, seat: square } }\n',
    )
    if ('problems' in reading) throw new Error(reading.problems[0]?.message)
    const [ramp] = curvedOf(drawDesign(reading.design).ramps)
    const { air } = underPipe(ramp!, ['lip'])!
    expect(air).toBeGreaterThan(6)
    const line = rampScrews(ramp!, [], reading.design).find(({ use }) => use === 'pipe')
    atLeast(line!.length!, 4 + air + 40)
  })

  test('has its timber where the lip stud comes down for it, by at most 25 mm and by no more than that takes', () => {
    let [lowered, roomy] = [0, 0]
    for (const { design, units, panel } of fc.sample(job, { numRuns: 250, seed: sawnSeed })) {
      if (!design.coping) continue
      const { ramp } = solve(design, units, panel)
      const lip = ramp.studs.find(({ role }) => role === 'lip')
      const own = ramp.deckTimbers.find(({ role }) => role === 'pipe')
      if (!lip || !own) continue
      const end = ramp.transition!.curve.lengthTo(ramp.side!.curveEnd)
      const down = end - lip.at - lip.width / 2
      if (down < 0.5) continue
      lowered++
      expect(down).toBeLessThanOrEqual(25.001)
      // a millimetre higher it would lie in the way of the timber, however far back that may stand
      const { centre, radius, toeAngle } = ramp.transition!
      const angle = toeAngle + (lip.at + 1) / radius.frame
      const higher = {
        ...lip,
        angle,
        x: centre.x + radius.frame * Math.sin(angle),
        y: centre.y - radius.frame * Math.cos(angle),
      }
      // nor may it meet the pipe
      const { centre: pipe, outside } = ramp.coping!
      const near = polygon(higher).distanceTo(new Flatten.Point(pipe.x, pipe.y))[0]
      if (near < outside / 2 && polygon(higher).box.ymax > pipe.y - outside / 2) continue
      const thin = Math.min(...design.studs.section)
      const px = ramp.coping!.centre.x
      // 10 mm off its edges where 25 mm down are enough for that, else 6
      const off = Math.min(px - own.x + own.width / 2, own.x + own.width / 2 - px) >= 10 - 1e-6 ? 10 : 6
      if (off === 10) roomy++
      const back = Math.min(px + ramp.coping!.outside / 2 - thin / 2, px + thin / 2 - off)
      const last = { ...own, x: Math.max(px, back), lies: 'edge' as const, width: thin, depth: own.depth }
      expect(apart(polygon(higher), polygon(last))).toBe(false)
    }
    expect(lowered).toBeGreaterThan(20)
    expect(roomy).toBeGreaterThan(10)
  })
})

/** A timber a hundredth of a mm smaller all round: what only touches does not cross. */
const within = (timber: Timber): Timber => {
  const [sin, cos] = [Math.sin(timber.angle), Math.cos(timber.angle)]
  return {
    ...timber,
    x: timber.x + 0.01 * sin,
    y: timber.y - 0.01 * cos,
    width: timber.width - 0.02,
    depth: timber.depth - 0.02,
  }
}

/** Corners by turning a box, as `polygon` has them from the other library. */
const ringAround = ({ x, y, angle, width, depth }: Timber): Ring => {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  const corner = (u: number, v: number) => [x + u * cos - v * sin, y + u * sin + v * cos] as const
  const h = width / 2
  return ringOf([corner(-h, 0), corner(-h, -depth), corner(h, -depth), corner(h, 0)])
}

/** The same questions to the other library, which takes a hundred times as long. */
const edges = (of: Flatten.Polygon): readonly Flatten.Segment[] =>
  of.toArray()[0]!.vertices.map((p, i, all) => new Flatten.Segment(p, all[(i + 1) % all.length]!))
const crosses = (a: Flatten.Polygon, b: Flatten.Polygon): boolean =>
  a.box.intersect(b.box) && edges(a).some((edge) => edge.intersect(b).length > 0)
const inside = (own: Flatten.Polygon, panel: Flatten.Polygon): boolean =>
  !crosses(own, panel) && panel.contains(own.vertices[0]!)
const apart = (a: Flatten.Polygon, b: Flatten.Polygon): boolean =>
  !crosses(a, b) && !a.contains(b.vertices[0]!) && !b.contains(a.vertices[0]!)

/** The panel with its notch by corners, the curve by chords 6 mm long: 0.005 mm off at a radius of 1 m. */
const panelOf = ({ transition, coping, side, design }: Quarter): readonly (readonly [number, number])[] => {
  const { centre, radius, toeAngle, lipAngle, heights } = transition!
  const r = (coping?.outside ?? 0) / 2
  // the frame's edge up to the notch's floor, or the lip
  const top = coping
    ? coping.seat === 'square'
      ? Math.acos((centre.y - (coping.centre.y - r)) / radius.frame)
      : null
    : lipAngle
  if (top === null) throw new Error('square notches only')
  const steps = Math.ceil(((top - toeAngle) * radius.frame) / 6)
  const curve = Array.from({ length: steps + 1 }, (_, i): [number, number] => {
    const angle = top + ((toeAngle - top) * i) / steps
    return [centre.x + radius.frame * Math.sin(angle), centre.y - radius.frame * Math.cos(angle)]
  })
  const cut = design.chamfer
  return [
    [0, 0],
    [side!.length - cut, 0],
    ...(cut > 0 ? [[side!.length, cut] as [number, number]] : []),
    [side!.length, heights.frame],
    ...(coping
      ? [
          [coping.centre.x + r, heights.frame] as [number, number],
          [coping.centre.x + r, coping.centre.y - r] as [number, number],
        ]
      : []),
    ...curve,
  ]
}

test('on 500 ramps every timber lies whole in the panel, out of the notch and the chamfer, and meets no other', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  const more = fc.record({
    one: job,
    deck: real(120, 1500),
    every: real(150, 450),
    chamfer: fc.oneof(fc.constant(0), real(20, 250)),
  })
  const jobs = fc
    .sample(more, { numRuns: 700, seed: sawnSeed })
    .map(({ one, deck, every, chamfer }) => {
      const design: QuarterDesign = {
        ...one.design,
        back: { from: 'deck', value: deck },
        chamfer,
        wheels: chamfer > 120 ? { diameter: 50, height: 70, count: 4 } : null,
        studs: { ...one.design.studs, deck: every },
      }
      const { ramp, drafts } = solve(design, one.units, one.panel)
      return { design, every, ramp, drafts }
    })
    .filter(({ drafts }) => !hasStop(drafts))
  expect(jobs.length).toBeGreaterThan(500)
  const met = { pipe: 0, backing: 0, deck: 0, back: 0, wheels: 0 }
  let cut = 0
  for (const { ramp, design, every, drafts } of jobs) {
    const panel = ringOf(panelOf(ramp))
    const all = [...ramp.studs, ...ramp.deckTimbers].map(within).map(ringAround)
    for (const { role } of ramp.deckTimbers) met[role]++
    if (design.chamfer > 0) cut++
    all.forEach((own, i) => {
      hold(ringInside(own, panel))
      for (const other of all.slice(i + 1)) hold(ringsApart(own, other))
    })
    // the board has a timber at both ends and none farther apart than told, but where that is said
    const under = ramp.deckTimbers
      .filter(({ role }) => role === 'deck' || role === 'backing')
      .map(({ x }) => x)
      .sort((a, b) => a - b)
    if (drafts.some(({ id }) => id === 'deck-timber')) continue
    const { xmin } = polygon(ramp.deckTimbers.find(({ role }) => role === 'backing')!).box
    assertNear(
      xmin,
      ramp.coping ? ramp.coping.centre.x + ramp.coping.outside / 2 : ramp.transition!.run,
      1e-6,
    )
    under.slice(1).forEach((x, i) => {
      atMost(x - under[i]!, every + Math.max(...design.studs.section) + 1e-6)
    })
  }
  // mostly the lip stud takes the pipe's screws
  expect(met.pipe).toBeGreaterThan(10)
  for (const count of [met.backing, met.deck, met.back]) expect(count).toBeGreaterThan(400)
  expect(cut).toBeGreaterThan(100)
})

test('broken lines say of timbers, where they stand and where they do not, what another library says', () => {
  const random = randomFrom(7)
  const told = { in: 0, out: 0, apart: 0, met: 0 }
  for (const one of fc.sample(job, { numRuns: 12, seed: sawnSeed })) {
    const { ramp } = solve(one.design, one.units, one.panel)
    const corners = panelOf(ramp)
    const panel = new Flatten.Polygon(corners.map(([x, y]) => new Flatten.Point(x, y)))
    const all = [...ramp.studs, ...ramp.deckTimbers].slice(0, 8).flatMap((timber) => {
      const moved = { ...timber, x: timber.x + 120 * random() - 60, y: timber.y + 120 * random() - 60 }
      return [within(timber), moved].map((at) => ({ ring: ringAround(at), shape: polygon(at) }))
    })
    const byRows = ringRows(ringOf(corners))
    all.forEach(({ ring, shape }, i) => {
      const holds = inside(shape, panel)
      expect(ringInside(ring, ringOf(corners))).toBe(holds)
      for (let k = 0; k < ring.at.length; k += 2) {
        const [x, y] = [ring.at[k]!, ring.at[k + 1]!]
        expect(byRows(x, y)).toBe(ringHolds(ringOf(corners), x, y))
      }
      told[holds ? 'in' : 'out']++
      for (const other of all.slice(i + 1)) {
        const free = apart(shape, other.shape)
        expect(ringsApart(ring, other.ring)).toBe(free)
        told[free ? 'apart' : 'met']++
      }
    })
  }
  for (const [name, count] of Object.entries(told)) expect(count, name).toBeGreaterThan(30)
})

test('one that has no room stands where there is some within half a spacing, and that is said', () => {
  let moved = 0
  for (const { design, units, panel } of fc.sample(job, { numRuns: 400, seed: sawnSeed })) {
    const close: QuarterDesign = { ...design, back: { from: 'deck', value: 400 } }
    const { ramp, findingsOf } = solve(close, units, panel)
    for (const { message } of findingsOf('deck-timber').filter(({ level }) => level === 'note')) {
      const pairs = [...message.matchAll(/([\d.]+) mm to ([\d.]+) mm/g)]
      for (const [, from, to] of units === 'mm' ? pairs : []) {
        moved++
        atMost(Math.abs(Number(to) - Number(from)), close.studs.deck / 2 + 0.1)
        hold(ramp.deckTimbers.some(({ x }) => Math.abs(x - Number(to)) < 0.051))
      }
    }
  }
  expect(moved).toBeGreaterThan(0)
  expect(said({ ...plain, coping: piped({}, notch(48, 33)) }, 'deck-timber')).toEqual([])
})
