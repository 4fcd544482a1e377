import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readDesign } from '../../../src/design/read.ts'
import { sidePattern } from '../../../src/pattern/side.ts'
import type { SolvedRamp } from '../../../src/ramp/ramp.ts'
import type { EndScrews } from '../../../src/ramp/screws/end-screws.ts'
import { balancePoint } from '../../../src/stock/balance.ts'
import { handleBolts, handlePlace } from '../../../src/stock/handle.ts'
import { jointPlates } from '../../../src/stock/joint-plate.ts'
import { above } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { templates, templateText } from '../../support/templates.ts'
import { wholeDesign } from '../../support/whole.ts'
import { flatJob, level, solveLevel } from '../flats.ts'
import { job } from '../framed.ts'
import { piped, plain, sawn, sawnSeed, solve, stock, studded, wholeOf } from '../ramps.ts'
import { type Axis, axesBetween, everyScrew, meetings } from './every-screw.ts'

/** Wood between a screw in the end of a timber and any other, mm: `betweenScrews`. Others must not meet. */
const least = { ends: 3, others: 0 }

const say = ({ a, b, wood }: ReturnType<typeof meetings>['found'][number]): string =>
  `${a.of} and ${b.of}: ${wood.toFixed(2)} at ${a.from.map((v) => v.toFixed(0)).join()}`

describe('no two screws of a ramp meet in the wood', () => {
  const inTemplates = templates.flatMap((name) => {
    const reading = readDesign(templateText(name))
    if ('problems' in reading) throw new Error(name)
    const { design } = reading
    return wholeDesign(design).ramps.map((ramp) => ({ ramp, name, stock: design.stock, units: design.units }))
  })

  test('of all templates', () => {
    let [screws, pairs] = [0, 0]
    for (const { ramp, name, stock: own, units } of inTemplates) {
      const all = everyScrew(ramp, own, units)
      const { looked, found } = meetings(all, least)
      expect(found.map(say), name).toEqual([])
      screws += all.length
      pairs += looked
    }
    expect(screws).toBeGreaterThan(2000)
    expect(pairs).toBeGreaterThan(30)
  })

  test('moved back to where they were, a seventh of the longer side off its ends, they are found to meet', () => {
    for (const { ramp, name, stock: own, units } of inTemplates) {
      const timbers = [...ramp.studs, ...ramp.deckTimbers]
      const spoilt = {
        ...ramp,
        endScrews: timbers.map(({ x, y, angle, width, depth }, i): EndScrews => {
          const [first, second] = [0.14, 0.86].map((share) => {
            const [along, down] = depth >= width ? [0, share * depth] : [(share - 0.5) * width, depth / 2]
            const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
            return { along, down, at: { x: x + along * cos + down * sin, y: y + along * sin - down * cos } }
          })
          return { ...ramp.endScrews[i]!, pair: [first!, second!] }
        }),
      } as SolvedRamp
      const { found } = meetings(everyScrew(spoilt, own, units), { ends: 0, others: 0 })
      expect(found.length, name).toBeGreaterThan(10)
    }
  })

  test('of 330 ramps: quarters and flats of all sections, layers, ribs, pipes and panels, mm and in', () => {
    const seen = { screws: 0, pairs: 0, ribs: 0, off: 0, inches: 0 }
    const look = (ramp: SolvedRamp, panel: readonly [number, number], units: 'mm' | 'in'): void => {
      const all = everyScrew(ramp, { ...stock, panel }, units)
      const { looked, found } = meetings(all, least)
      expect(found.map(say), JSON.stringify(ramp.design)).toEqual([])
      expect(ramp.endScrews.every(({ clear }) => clear)).toBe(true)
      seen.screws += all.length
      seen.pairs += looked
      if (ramp.design.sides.count > 2) seen.ribs++
      if (ramp.endScrews.some(({ off }) => off !== null)) seen.off++
      if (units === 'in') seen.inches++
    }
    let skipped = 0
    const draw = <T>(from: fc.Arbitrary<T>): readonly T[] => fc.sample(from, { numRuns: 110, seed: sawnSeed })
    for (const { design, panel, units } of draw(job)) look(wholeOf(design, units, panel), panel, units)
    for (const { design, panel, units } of draw(flatJob))
      look(solveLevel(design, units, panel).ramp, panel, units)
    for (const [i, design] of draw(sawn).entries()) {
      const units = i % 2 === 0 ? 'mm' : 'in'
      const { whole } = solve(design, units)
      if (whole?.endScrews.every(({ clear }) => clear)) look(whole, stock.panel, units)
      else skipped++
    }
    // what is warned of
    expect(skipped).toBeLessThan(10)
    expect(seen.screws).toBeGreaterThan(80_000)
    expect(seen.pairs).toBeGreaterThan(2000)
    for (const count of [seen.ribs, seen.off, seen.inches]) expect(count).toBeGreaterThan(10)
  })
})

test('bolts of handles, and of plates over the joint with a flat, keep off every screw through a side', () => {
  let looked = 0
  for (const name of templates) {
    const reading = readDesign(templateText(name))
    if ('problems' in reading) throw new Error(name)
    const { ramps } = wholeDesign(reading.design)
    const plates = jointPlates(ramps, reading.design.units)
    for (const ramp of ramps) {
      const handle = ramp.kind === 'quarter' ? handlePlace(ramp, balancePoint(ramp)) : null
      const bolts = [
        ...(handle ? handleBolts(handle) : []),
        ...plates.flatMap(({ quarter, flat, holes }) =>
          (ramp.name === quarter ? holes.quarter : ramp.name === flat ? holes.flat : []).map((x) => ({
            x,
            y: holes.up,
          })),
        ),
      ]
      // holes of 9 and 5 mm, and 3 between them
      for (const bolt of bolts)
        for (const { pair } of ramp.endScrews)
          for (const { at } of pair) {
            above(Math.hypot(at.x - bolt.x, at.y - bolt.y), 4.5 + 2.5 + 3)
            looked++
          }
    }
  }
  expect(looked).toBeGreaterThan(500)
})

test('two axes are as far apart as worked by hand', () => {
  const axis = (from: Axis['from'], to: Axis['to']): Axis => ({
    of: '',
    into: 'face',
    wall: null,
    from,
    to,
    thick: 4,
  })
  const level = axis([0, 0, 0], [0, 0, 50])
  assertNear(axesBetween(level, axis([3, 20, 25], [3, -20, 25])), 3, 1e-4, 'crossing 3 aside')
  assertNear(axesBetween(level, axis([3, 20, 54], [3, -20, 54])), 5, 1e-4, '3 aside and 4 beyond')
  assertNear(axesBetween(level, axis([0, 30, 25], [0, 12, 25])), 12, 1e-4, 'a point over it')
})

describe('the places of a pair, worked by hand', () => {
  const places = (ramp: SolvedRamp) =>
    [...ramp.studs, ...ramp.deckTimbers].map(({ width, depth }, i) => ({
      deep: depth >= width,
      pair: ramp.endScrews[i]!.pair.map(({ along, down }) => [along, down]),
    }))

  test('38 by 89: on edge 45 and 77 below the upper edge, flat 12 off both edges, half way down', () => {
    const all = places(wholeOf({ ...plain, coping: piped() }))
    expect(all.length).toBeGreaterThan(8)
    for (const { deep, pair } of all)
      expect(pair).toEqual(
        deep
          ? [
              [0, 45],
              [0, 77],
            ]
          : [
              [32.5, 19],
              [-32.5, 19],
            ],
      )
  })

  test('1 1/2 by 3 1/2: on edge 1 3/4 and 3 below the upper edge, flat 1/2 off both edges', () => {
    const inches = (mm: number): number => mm * 25.4
    const section: [number, number] = [inches(1.5), inches(3.5)]
    for (const { deep, pair } of places(wholeOf({ ...plain, studs: studded({ section }) }, 'in')))
      for (const [i, [along, down]] of pair.entries()) {
        assertNear(along!, inches(deep ? 0 : i === 0 ? 1.25 : -1.25), 1e-9)
        assertNear(down!, inches(deep ? [1.75, 3][i]! : 0.75), 1e-9)
      }
  })

  test('a stud ripped to 60 has them side by side near its lower edge', () => {
    const ramp = solveLevel({ ...level, height: { layer: 'frame', value: 60 } }).ramp
    for (const { deep, pair } of places(ramp)) {
      expect(deep).toBe(true)
      expect(pair).toEqual([
        [-9.5, 48],
        [9.5, 48],
      ])
    }
  })

  test('the cross on the paper is the place in the figures, on the timber, off its edges', () => {
    const ramp = wholeOf({ ...plain, coping: piped() })
    const { screws } = sidePattern(ramp, [], 'mm')
    const timbers = [...ramp.studs, ...ramp.deckTimbers]
    for (const [i, { middles }] of screws.entries()) {
      expect(middles).toEqual(ramp.endScrews[i]!.pair.map(({ at }) => at))
      const { x, y, angle, width, depth } = timbers[i]!
      for (const p of middles) {
        const [dx, dy] = [p.x - x, p.y - y]
        const along = dx * Math.cos(angle) + dy * Math.sin(angle)
        const down = dx * Math.sin(angle) - dy * Math.cos(angle)
        above(Math.min(width / 2 - Math.abs(along), down, depth - down), 11.9)
      }
    }
  })
})

describe('walls too near to each other for screws beyond the points', () => {
  const narrow = {
    ...plain,
    width: 300,
    sides: { thickness: 25, count: 5 },
    studs: studded({ section: [45, 45] }),
  }
  const { findingsOf, drafts } = solve(narrow)

  test('a warning names the timbers, their length and a width that helps, tried', () => {
    expect(drafts.filter(({ id }) => id === 'screws-meet').map(({ level: of }) => of)).toEqual(['warn'])
    const [finding] = findingsOf('screws-meet')
    expect(finding!.message).toMatch(
      /^in studs? .* long, screws from above come nearer than 3 mm to those in the ends; make it \d+ mm or more/,
    )
    const width = Number(/make it (\d+) mm/.exec(finding!.message)![1])
    expect(solve({ ...narrow, width }).drafts.some(({ id }) => id === 'screws-meet')).toBe(false)
    expect(solve({ ...narrow, width: width - 1 }).drafts.some(({ id }) => id === 'screws-meet')).toBe(true)
  })

  test('fewer sides that are offered help too', () => {
    const count = Number(/count: (\d)/.exec(findingsOf('screws-meet')[0]!.message)![1])
    expect(count).toBeLessThan(5)
    expect(
      solve({ ...narrow, sides: { thickness: 25, count } }).drafts.some(({ id }) => id === 'screws-meet'),
    ).toBe(false)
  })

  test('where they have room nothing is said', () => {
    expect(solve(plain).drafts.some(({ id }) => id === 'screws-meet')).toBe(false)
  })
})
