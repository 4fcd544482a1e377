import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import { hasStop } from '../../src/ramp/check.ts'
import type { DeckTimber } from '../../src/ramp/deck-timbers.ts'
import type { Quarter } from '../../src/ramp/ramp.ts'
import type { Timber } from '../../src/ramp/timber.ts'
import { assertNear } from '../support/near.ts'
import { job, polygon } from './framed.ts'
import { notch, piped, plain, said, solve, transitionOf } from './ramps.ts'

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
  test('upright ones follow every 300 mm (12 in), the last flush with the back edge', () => {
    const deck = timbers(design, 'deck')
    ;[wall + 19 + 300, back - 19].forEach((x, i) => {
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

/** A timber a hundredth of a mm smaller all round: what only touches does not cross. */
const within = (timber: Timber): Flatten.Polygon => {
  const [sin, cos] = [Math.sin(timber.angle), Math.cos(timber.angle)]
  return polygon({
    ...timber,
    x: timber.x + 0.01 * sin,
    y: timber.y - 0.01 * cos,
    width: timber.width - 0.02,
    depth: timber.depth - 0.02,
  })
}
const edges = (of: Flatten.Polygon): readonly Flatten.Segment[] =>
  of.toArray()[0]!.vertices.map((p, i, all) => new Flatten.Segment(p, all[(i + 1) % all.length]!))
const crosses = (a: Flatten.Polygon, b: Flatten.Polygon): boolean =>
  a.box.intersect(b.box) && edges(a).some((edge) => edge.intersect(b).length > 0)
/** No edge of it crosses, and it lies on the inner side. */
const inside = (own: Flatten.Polygon, panel: Flatten.Polygon): boolean =>
  !crosses(own, panel) && panel.contains(own.vertices[0]!)
const apart = (a: Flatten.Polygon, b: Flatten.Polygon): boolean =>
  !crosses(a, b) && !a.contains(b.vertices[0]!) && !b.contains(a.vertices[0]!)

/** The panel with its notch as a polygon, the curve by chords 6 mm long: 0.005 mm off at a radius of 1 m. */
const panelOf = ({ transition, coping, side, design }: Quarter): Flatten.Polygon => {
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
  const corners: [number, number][] = [
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
  return new Flatten.Polygon(corners.map(([x, y]) => new Flatten.Point(x, y)))
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
    .sample(more, { numRuns: 700, seed: 71 })
    .map(({ one, deck, every, chamfer }) => {
      const design: QuarterDesign = {
        ...one.design,
        back: { from: 'deck', value: deck },
        chamfer,
        studs: { ...one.design.studs, deck: every },
      }
      const { ramp, drafts } = solve(design, one.units, one.panel)
      return { design, every, ramp, drafts }
    })
    .filter(({ drafts }) => !hasStop(drafts))
  expect(jobs.length).toBeGreaterThan(500)
  const met = { pipe: 0, backing: 0, deck: 0, back: 0 }
  let cut = 0
  for (const { ramp, design, every, drafts } of jobs) {
    const panel = panelOf(ramp)
    const all = [...ramp.studs, ...ramp.deckTimbers].map(within)
    for (const { role } of ramp.deckTimbers) met[role]++
    if (design.chamfer > 0) cut++
    all.forEach((own, i) => {
      expect(inside(own, panel)).toBe(true)
      for (const other of all.slice(i + 1)) expect(apart(own, other)).toBe(true)
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
      expect(x - under[i]!).toBeLessThanOrEqual(every + Math.max(...design.studs.section) + 1e-6)
    })
  }
  // mostly the lip stud lies under the pipe
  expect(met.pipe).toBeGreaterThan(10)
  for (const count of [met.backing, met.deck, met.back]) expect(count).toBeGreaterThan(400)
  expect(cut).toBeGreaterThan(100)
}, 120_000)

test('one that has no room stands where there is some within half a spacing, and that is said', () => {
  let moved = 0
  for (const { design, units, panel } of fc.sample(job, { numRuns: 400, seed: 72 })) {
    const close: QuarterDesign = { ...design, back: { from: 'deck', value: 400 } }
    const { ramp, findings } = solve(close, units, panel)
    for (const { message } of findings.filter(({ id, level }) => id === 'deck-timber' && level === 'note')) {
      const pairs = [...message.matchAll(/([\d.]+) mm to ([\d.]+) mm/g)]
      for (const [, from, to] of units === 'mm' ? pairs : []) {
        moved++
        expect(Math.abs(Number(to) - Number(from))).toBeLessThanOrEqual(close.studs.deck / 2 + 0.1)
        expect(ramp.deckTimbers.some(({ x }) => Math.abs(x - Number(to)) < 0.051)).toBe(true)
      }
    }
  }
  expect(moved).toBeGreaterThan(0)
  expect(said({ ...plain, coping: piped({}, notch(48, 33)) }, 'deck-timber')).toEqual([])
})
