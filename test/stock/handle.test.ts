import { describe, expect, test } from 'vitest'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { pathDistance } from '../../src/geometry/nearest.ts'
import { outerPolygon } from '../../src/geometry/polygon/outer-polygon.ts'
import { type Timber, timberCorners } from '../../src/ramp/frame/timber.ts'
import type { SolvedQuarter } from '../../src/ramp/ramp.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { balancePoint } from '../../src/stock/balance.ts'
import { handleBolt, handleBolts, handlePlace, handleSize } from '../../src/stock/handle.ts'
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
})
