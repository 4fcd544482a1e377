import { describe, expect, test } from 'vitest'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { pathDistance } from '../../src/geometry/nearest.ts'
import { outerPolygon } from '../../src/geometry/polygon/outer-polygon.ts'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { type Timber, timberCorners } from '../../src/ramp/frame/timber.ts'
import type { SolvedQuarter } from '../../src/ramp/ramp.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { balancePoint } from '../../src/stock/balance.ts'
import { handleBolt, handleBolts, handlePlace, handleSize } from '../../src/stock/handle.ts'
import { bookletSaid } from '../booklet/said.ts'
import { designOf } from '../support/design-of.ts'
import { above, hold } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { randomFrom } from '../support/random.ts'
import { type Ring, ringHolds, ringOf } from '../support/ring.ts'
import { templateText } from '../support/templates.ts'

const rampsOf = (text: string): readonly SolvedQuarter[] => {
  const reading = readDesign(text)
  if ('problems' in reading) return []
  const solved = solveDesign(reading.design)
  return solved.stopped ? [] : curvedOf(solved.ramps)
}
const between = (random: () => number, least: number, most: number): number =>
  Math.round(least + random() * (most - least))
const random = randomFrom(27)
const designs = [
  ...['quarter-mm', 'quarter-in', 'quarter-mm-round', 'pair-mm', 'quarter-and-flat-in'].map(templateText),
  ...Array.from({ length: 40 }, () =>
    templateText('quarter-mm')
      .replace('deck: 640', `deck: ${between(random, 330, 1100)}`)
      .replace('surface: 1700', `surface: ${between(random, 1300, 2400)}`)
      .replace('deck: 500', `deck: ${between(random, 350, 800)}`)
      .replace('every: 200', `every: ${between(random, 140, 260)}`),
  ),
]
const ramps = designs.flatMap(rampsOf)

/** With sides longer than a panel, in pieces. */
const long = (deck: number, every: number, height: number): string => `title: Spliced
units: mm
ramps:
  - width: 1216
    height: { deck: ${height} }
    transition: { circle: { surface: 1800 } }
    toe: 40
    deck: ${deck}
    studs: { section: 45 x 95, every: ${every} }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 2 steel }
    deck-board: 18 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
`

const holds = (ring: Ring, { x, y }: { readonly x: number; readonly y: number }): boolean =>
  ringHolds(ring, x, y)
const ringOfTimber = (timber: Timber): Ring =>
  ringOf(timberCorners(timber).map(({ x, y }) => [x, y] as const))
const around = <T>(count: number, at: (turn: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, i) => at((2 * Math.PI * i) / count))

/** What speaks against a handle at a place, point by point. */
const faults = (ramp: SolvedQuarter, at: { readonly x: number; readonly y: number }): readonly string[] => {
  const side = ringOf(outerPolygon(ramp.side.outline, 0.01).map(({ x, y }) => [x, y] as const))
  const timbers = [...ramp.studs, ...ramp.deckTimbers].map(ringOfTimber)
  const plate = Array.from({ length: 33 }, (_, i) => at.x - handleSize.length / 2 + 5 * i).flatMap((x) =>
    [-1, 1].map((way) => ({ x, y: at.y + (way * handleSize.height) / 2 })),
  )
  return [
    ...plate.filter((p) => !holds(side, p)).map(() => 'out of the side'),
    ...plate.filter((p) => pathDistance(ramp.side.outline, p) < 18.9).map(() => 'at an edge'),
    ...handleBolts(at)
      .flatMap(({ x, y }) =>
        [0, 7, 14.9].flatMap((r) => around(24, (a) => ({ x: x + r * Math.cos(a), y: y + r * Math.sin(a) }))),
      )
      .filter((p) => timbers.some((ring) => holds(ring, p)))
      .map(() => 'in a timber'),
  ]
}

describe('a handle', () => {
  test('is held by bolts as they are sold, that reach through the thickest side, its foot, washers and nut', () => {
    const sides = (...thick: number[]) =>
      thick.map((thickness) => ({ design: { sides: { thickness } } }) as SolvedQuarter)
    // 18 and 3 of the foot, two washers of 1.6, a nut of 5 (ISO 7089, ISO 4032: from memory), some thread beyond
    assertNear(handleBolt(sides(18), 'mm'), 35, 1e-9)
    assertNear(handleBolt(sides(18, 24), 'mm'), 40, 1e-9)
    assertNear(handleBolt(sides((23 / 32) * 25.4), 'in'), 1.5 * 25.4, 1e-9)
    // just as long as is taken: no size more for the last bits of the sum
    for (const [thick, bolt] of [
      [3 / 8, 1],
      [5 / 8, 1.25],
      [7 / 8, 1.5],
    ] as const)
      assertNear(handleBolt(sides(thick * 25.4), 'in'), bolt * 25.4, 1e-9)
    for (let thick = 9; thick <= 60; thick++) {
      const least = thick + 3 + 2 * 1.6 + 5
      hold(handleBolt(sides(thick), 'mm') >= least + 1, `${thick}`)
    }
  })

  test('lies in the side, off its edges, its washers off every timber', () => {
    expect(ramps.length).toBeGreaterThan(35)
    for (const ramp of ramps) {
      const place = handlePlace(ramp, balancePoint(ramp))
      expect(place).not.toBeNull()
      expect(faults(ramp, place!)).toEqual([])
    }
  })

  test('is seen to be wrong where it meets a stud, or leaves the side', () => {
    const [ramp] = rampsOf(templateText('quarter-mm'))
    // a bolt in the middle of a stud
    const corners = timberCorners(ramp!.studs[3]!)
    const [x, y] = (['x', 'y'] as const).map((way) => corners.reduce((sum, p) => sum + p[way] / 4, 0)) as [
      number,
      number,
    ]
    expect(faults(ramp!, { x: x - 65, y: y - 12 })).toContain('in a timber')
    expect(faults(ramp!, { x: 300, y: 400 })).toContain('out of the side')
  })

  test('hangs straight under or over the balance, unless no place within 150 of its height is free there', () => {
    let beside = 0
    for (const ramp of ramps) {
      const balance = balancePoint(ramp)
      const place = handlePlace(ramp, balance)!
      if (Math.abs(place.x - balance.x) <= 20) continue
      beside++
      for (let y = balance.y - 150; y < ramp.side.height; y += 5)
        // places are tried 5 mm apart, so that room less high than that may be missed
        for (const dx of [-20, -10, 0, 10, 20])
          above(
            [-2.5, 0, 2.5].flatMap((up) => faults(ramp, { x: balance.x + dx, y: y + up })).length,
            0,
            `${balance.x + dx}, ${y}`,
          )
    }
    expect(beside).toBeLessThan(ramps.length / 3)
  })

  test('lies beside the plate over a joint of its side or wholly on it, and then has bolts through both', () => {
    const seen = { beside: 0, through: 0 }
    for (const deck of [1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850, 1900])
      for (const [every, height] of [
        [180, 640],
        [230, 500],
      ] as const) {
        const text = long(deck, every, height)
        for (const ramp of rampsOf(text)) {
          const place = handlePlace(ramp, balancePoint(ramp))
          if (ramp.splices.length === 0) continue
          if (!place) throw new Error(`${deck} ${every}: no place`)
          expect(faults(ramp, place)).toEqual([])
          const plates = ramp.splices.map(({ plate }) => ringOf(plate.corners.map(({ x, y }) => [x, y])))
          // each bolt with its washer, point by point
          const met = handleBolts(place).flatMap(({ x, y }) =>
            [0, 7, 14.9].flatMap((r) =>
              around(24, (a) =>
                plates.some((ring) => holds(ring, { x: x + r * Math.cos(a), y: y + r * Math.sin(a) })),
              ),
            ),
          )
          expect(new Set(met)).toEqual(new Set([place.plated]))
          seen[place.plated ? 'through' : 'beside']++
        }
      }
    for (const count of Object.values(seen)) above(count, 1)
  })

  test('has no bolt near a joint of its side, an edge of its plate or a timber', () => {
    type P = { readonly x: number; readonly y: number }
    const toSegment = (p: P, a: P, b: P): number => {
      const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, p.x - a.x, p.y - a.y]
      const part = (ux * vx + uy * vy) / (ux * ux + uy * uy)
      if (part <= 0) return Math.hypot(vx, vy)
      if (part >= 1) return Math.hypot(p.x - b.x, p.y - b.y)
      return Math.abs(ux * vy - uy * vx) / Math.hypot(ux, uy)
    }
    const edgesOf = (corners: readonly P[]) =>
      corners.map((from, i) => [from, corners[(i + 1) % corners.length]!] as const)
    const decks = Array.from({ length: 33 }, (_, i) => 1500 + 12 * i)
    const spliced = [
      ...decks.map((deck) => templateText('quarter-mm').replace('deck: 500', `deck: ${deck}`)),
      ...decks.map((deck) => long(deck, 150 + (deck % 90), 640)),
    ]
      .flatMap(rampsOf)
      .filter(({ splices }) => splices.length > 0)
    above(spliced.length, 30)
    let plated = 0
    for (const ramp of spliced) {
      const place = handlePlace(ramp, balancePoint(ramp))
      if (!place) throw new Error(`${ramp.length}: no place`)
      plated += place.plated ? 1 : 0
      const lines = [
        ...ramp.splices.map(({ top, foot }) => [top, foot] as const),
        ...ramp.splices.flatMap(({ plate }) => edgesOf(plate.corners)),
        ...[...ramp.studs, ...ramp.deckTimbers].flatMap((timber) => edgesOf(timberCorners(timber))),
      ]
      for (const bolt of handleBolts(place))
        for (const [a, b] of lines)
          hold(toSegment(bolt, a, b) >= 15 - 1e-6, `${ramp.length}: ${bolt.x}, ${bolt.y}`)
    }
    above(plated, 3)
  })

  test('through a plate has bolts of one length in the list and the booklet, that reach through both', () => {
    const text = long(1600, 180, 640)
    const job = buyJob(designOf(text))
    if (isRefusal(job)) throw new Error(JSON.stringify(job))
    const [line, ...others] = job.facts.stock.list!.filter(({ what }) => what.startsWith('bolts M6'))
    expect(others).toEqual([])
    // 18 of the side and 18 of the plate, a foot of 3, two washers of 1.6, a nut of 5 (as above)
    const length = Number(/× (\d+) mm/.exec(line!.what)![1])
    expect(length).toBeGreaterThanOrEqual(18 + 18 + 3 + 2 * 1.6 + 5)
    expect(line!.note).toBe('four for each handle, through the side and the plate inside it')
    expect(bookletSaid(text, ['moving']).replace(/\s+/g, ' ')).toContain(
      `four bolts M6 × ${length} through holes of 7 mm`,
    )
  })
})
