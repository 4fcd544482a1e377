import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/design/design.ts'
import { editDesign } from '../../src/design/edit.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import type { WholeDesign } from '../../src/ramp/ramp.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { nothingLow } from '../../src/ramp/stored.ts'
import { rampSize } from '../../src/ramp/storing/size.ts'
import { balancePoint } from '../../src/stock/balance.ts'
import { freeFloor, storedSets } from '../../src/stock/floor.ts'
import { moveRamp } from '../../src/stock/moving.ts'
import { partsOf } from '../../src/stock/parts.ts'
import { weigh } from '../../src/stock/weight.ts'
import { solid } from '../ramp/storing/outlines.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'

const whole = (text: string): { readonly design: Design; readonly solved: WholeDesign } => {
  const design = designOf(text)
  const solved = solveDesign(design)
  if (solved.stopped) throw new Error(solved.checks.map(({ message }) => message).join('\n'))
  return { design, solved }
}
const single = templateText('quarter-mm')
const pair = templateText('pair-mm')

test('a ramp stands on what its outline says, and passes a door as narrow as any turn of it allows', () => {
  const { solved } = whole(single)
  const [ramp] = curvedOf(solved.ramps)
  const points = solid(ramp!).flat()
  const { standing, carried, doors } = rampSize(ramp!)!
  const span = (way: (p: readonly [number, number]) => number): number =>
    Math.max(...points.map(way)) - Math.min(...points.map(way))
  assertNear(
    standing[0],
    span(([x]) => x),
    0.05,
  )
  assertNear(
    standing[2],
    span(([, y]) => y),
    0.05,
  )
  expect(standing[1]).toBe(1216)
  expect(carried).toEqual([standing[0], standing[2], standing[1]])
  // every tenth of a degree
  const widths = Array.from({ length: 1800 }, (_, i) => {
    const angle = (i * Math.PI) / 1800
    return span(([x, y]) => x * Math.cos(angle) + y * Math.sin(angle))
  })
  assertNear(doors.edge[0], Math.min(...widths), 0.5)
  expect(doors.flat).toEqual([1216, standing[2]])
  expect(doors.edge[1]).toBe(1216)
})

test('a door is never told too narrow for a pipe that stands out', () => {
  const text = `title: Boathouse
units: in
paper: letter
ramps:
  - name: chamfered
    kind: quarter
    width: 51
    height: { deck: 29 1/2 }
    transition: { circle: { surface: 61 }, tangent: { surface: 0 } }
    toe: 2
    deck: 14
    sides: { thickness: 23/32 }
    studs: { section: 1 1/2 x 5 1/2, every: 6 }
    skin: [1/4 plywood, 1/4 plywood]
    run-out: none
    deck-board: 5/8 plywood
    coping: { outside: 2 3/8, up: 5/16, out: 1/4, seat: round }
    chamfer: { leg: 4 3/4 }
`
  const told: number[] = []
  for (const leg of ['4 1/2', '4 3/4', '5']) {
    const [ramp] = curvedOf(whole(editDesign(text, 'ramps.0.chamfer.leg', `${leg} in`)).solved.ramps)
    const { centre, outside } = ramp!.coping!
    const points = solid(ramp!).flat()
    /** the true circle, not its corners */
    const width = (angle: number): number => {
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      const on = points.map(([x, y]) => x * cos + y * sin)
      const middle = centre.x * cos + centre.y * sin
      return Math.max(...on, middle + outside / 2) - Math.min(...on, middle - outside / 2)
    }
    const steps = Array.from({ length: 1800 }, (_, i) => (i * Math.PI) / 1800)
    let best = steps.reduce((a, b) => (width(b) < width(a) ? b : a))
    for (let by = Math.PI / 3600; by > 1e-9; by /= 2)
      for (const angle of [best - by, best + by]) if (width(angle) < width(best)) best = angle
    const over = rampSize(ramp!)!.doors.edge[0] - width(best)
    expect(over).toBeGreaterThan(-0.005)
    // half a percent of its radius
    expect(over).toBeLessThan(0.005 * (outside / 2) + 0.005)
    told.push(over)
  }
  expect(Math.max(...told)).toBeGreaterThan(0.01)
})

test('a pair that is put away takes the room of the outer one and of what stands out of it', () => {
  const { solved } = whole(pair)
  const kept = solved.storings
  expect(kept.map(({ ramp, outer }) => [ramp, outer])).toEqual([['inner', 'outer']])
  const [set, ...none] = storedSets(
    solved.ramps.map((ramp) => ({ ramp: ramp.name, ...rampSize(ramp)! })),
    kept,
  )
  expect(none).toEqual([])
  expect(set!.ramps).toEqual(['outer', 'inner'])
  const own = rampSize(solved.ramps[0]!)!.standing
  const { out } = kept[0]!.slid[0]!
  assertNear(set!.size[0], own[0] + Math.max(0, out), 1e-6)
  expect(set!.size[1]).toBe(own[1])
})

describe('three that are put away together', () => {
  const three = (...kept: readonly (readonly [ramp: string, outer: string])[]) =>
    whole(`title: Three
units: mm
ramps:
  - name: a
    kind: quarter
    width: 1216
    height: { deck: 900 }
    transition: { circle: { surface: 2200 } }
    toe: 40
    deck: 900
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
    deck-board: 15 plywood
  - name: b
    like: a
    stores-inside: { ramp: ${kept[0]![1]}, clearance: 12 }
    height: { deck: 640 }
    deck: 500
  - name: c
    like: a
    stores-inside: { ramp: ${kept[1]![1]}, clearance: 12 }
    height: { deck: 420 }
    deck: 900
`).solved
  const sizesOf = ({ ramps }: WholeDesign) => ramps.map((ramp) => ({ ramp: ramp.name, ...rampSize(ramp)! }))
  const xs = (ramp: Parameters<typeof solid>[0]): readonly number[] =>
    solid(ramp).flatMap((one) => one.map(([x]) => x))

  test('one in one in one take what the outlines of all of them cover, each moved to where it lies', () => {
    const solved = three(['b', 'a'], ['c', 'b'])
    const [set, ...none] = storedSets(sizesOf(solved), solved.storings)
    expect(none).toEqual([])
    expect(set!.ramps).toEqual(['a', 'b', 'c'])
    const [a, b, c] = curvedOf(solved.ramps).map(xs)
    const [inA, inB] = solved.storings.map(({ slid }) => slid[0]!)
    const intoA = b!.map((x) => x - Math.min(...b!) + inA!.front)
    const moved = intoA[0]! - b![0]!
    const all = [...a!, ...intoA, ...c!.map((x) => x - Math.min(...c!) + inB!.front + moved)]
    assertNear(set!.size[0], Math.max(...all) - Math.min(...all), 0.05)
    // the last stands out behind them all
    expect(Math.max(...all)).toBeGreaterThan(Math.max(...a!, ...intoA) + 100)
  })

  test('one that lies turned round has what is in it turned with it', () => {
    const slid = (way: 'toe-first' | 'back-first', corner: number, out: number) =>
      [{ way, depth: 1, out, front: 0, corner, tight: null }] as const
    const size = (ramp: string, long: number) =>
      ({ ramp, before: 0, standing: [long, 1000, 500] as const }) as const
    const storing = (ramp: string, outer: string, long: number) => ({
      ramp,
      outer,
      behind: null,
      low: nothingLow,
      stored: [long, 1000, 500] as const,
      span: [0, long] as const,
    })
    const sizes = [size('a', 1500), size('b', 1000), size('c', 900)]
    const b = { ...storing('b', 'a', 1500), slid: slid('back-first', 1100, 0) }
    const c = { ...storing('c', 'b', 1300), slid: slid('toe-first', 400, 300) }
    // 1300 behind the corner of the second, which looks back from 1100: 200 before the first
    expect(storedSets(sizes, [b, c])[0]!.size).toEqual([1700, 1000, 500])
  })

  test('two in one lie one behind the other, and that is said', () => {
    const solved = three(['b', 'a'], ['c', 'a'])
    const [, b, c] = curvedOf(solved.ramps).map(xs)
    const [first, second] = solved.storings.map(({ slid }) => slid[0]!)
    const long = (on: readonly number[]): number => Math.max(...on) - Math.min(...on)
    assertNear(second!.front, first!.front + long(b!), 0.05)
    const [set] = storedSets(sizesOf(solved), solved.storings)
    const start = Math.min(...xs(curvedOf(solved.ramps)[0]!))
    assertNear(set!.size[0], first!.front + long(b!) + long(c!) - start, 0.1)
    const said = solved.checks.filter(({ id, ramp }) => id === 'stores-fit' && ramp === 'c')
    expect(said.map(({ level }) => level)).toEqual(['warn'])
    expect(said[0]!.message).toMatch(
      /`b` is kept in `a` too, and this ramp stops behind it: keep this one elsewhere, or in `b` if it goes in there; this one stands [\d.]+ mm out at the back of `a`/,
    )
  })
})

describe('the floor that stays free', () => {
  const set = (l: number, w: number) => ({ ramps: ['a'], size: [l, w, 600] as const })

  test('is the garage less what stands on it', () => {
    const { area, rectangle } = freeFloor({ garage: [3000, 6000], door: null, ceiling: null }, [
      set(1400, 1200),
    ])!
    assertNear(area, 18 - 1.68, 1e-9)
    // across the short wall: 3000 × 4800, along the long one 1800 × 6000
    expect(rectangle).toEqual([3000, 4800])
  })

  test('has a rectangle only where all stand in a row', () => {
    const space = { garage: [2000, 2000] as const, door: null, ceiling: null }
    expect(freeFloor(space, [set(1400, 900), set(1400, 900)])!.rectangle).toEqual([2000, 600])
    expect(freeFloor(space, [set(1400, 1300), set(1400, 1300)])!.rectangle).toBeNull()
  })

  test('is not told of a garage that a ramp is larger than, or all of them together', () => {
    const space = { garage: [1300, 3000] as const, door: null, ceiling: null }
    expect(freeFloor(space, [set(1400, 1300)])!.area).toBeCloseTo(3.9 - 1.82, 9)
    expect(freeFloor(space, [set(1400, 1310)])).toBeNull()
    expect(freeFloor(space, [set(3100, 400)])).toBeNull()
    expect(freeFloor(space, [set(1400, 1300), set(1700, 1300)])).toBeNull()
  })
})

describe('what the design says of the garage', () => {
  const said = (space: string): readonly string[] =>
    whole(single.replace('units: mm', `units: mm\nspace: { ${space} }`))
      .solved.checks.filter(({ id }) => ['garage', 'door', 'ceiling'].includes(id))
      .map(({ id, level, message }) => `${level} ${id}: ${message}`)

  test('is quiet where all goes in', () => {
    expect(said('garage: 3000 x 6000, door: 2100 x 2000, ceiling: 2300')).toEqual([])
  })

  test('a garage smaller than the ramp is said, and the one that is offered holds it', () => {
    const [message] = said('garage: 1000 x 600')
    expect(message).toMatch(/^warn garage: it stands on 1389 mm × 1216 mm, on edge on 1389 mm × 648 mm/)
    const [, a, b] = /one of (\d+) mm × (\d+) mm or more has/.exec(message!)!
    expect(said(`garage: ${a} x ${b}`).join()).toContain('on edge only')
    expect(said(`garage: ${a} x ${Number(b) - 1}`).join()).toContain('has no room')
    expect(said('garage: 1390 x 1216')).toEqual([])
  })

  test('a door that lets it through neither way, with both sizes that do', () => {
    const [message] = said('garage: 3000 x 6000, door: 600 x 2000')
    expect(message).toMatch(/^warn door: .*on its feet it needs 1216 mm × 648 mm, on edge (\d+) mm × 1216 mm/)
    const edge = /on edge (\d+) mm/.exec(message!)![1]
    expect(said(`garage: 3000 x 6000, door: ${edge} x 1216`)).toEqual([])
    expect(said(`garage: 3000 x 6000, door: ${Number(edge) - 1} x 1216`)).toHaveLength(1)
  })

  test('a ceiling lower than the ramp', () => {
    expect(said('garage: 3000 x 6000, ceiling: 600').join()).toContain('warn ceiling: it is 648 mm high')
  })
})

describe('moving', () => {
  const rolling = (count: number) => {
    const { design, solved } = whole(
      single.replace('leg: 120', 'leg: 180').trimEnd() +
        `\n    wheels: { diameter: 75, height: 100, count: ${count} }\n`,
    )
    const weight = weigh(design, solved, partsOf(design, solved))
    return {
      ramp: curvedOf(solved.ramps)[0]!,
      weight,
      moving: moveRamp(curvedOf(solved.ramps)[0]!, solved, weight, 'mm'),
    }
  }

  test('four wheels are rated for a third each, two for a half', () => {
    for (const [count, share] of [
      [4, 1 / 3],
      [3, 1 / 3],
      [2, 1 / 2],
    ] as const) {
      const { weight, moving } = rolling(count)
      assertNear(moving.rolling!.rated, weight.ramps[0]!.most * share, 1e-9)
    }
  })

  test('hands hold what the levers about the axle leave them', () => {
    const { ramp, weight, moving } = rolling(4)
    const { tip, centre, hands } = moving.rolling!
    const at = (x: number, y: number): number => x * Math.cos(tip.least) + y * Math.sin(tip.least)
    const { x, y } = balancePoint(ramp)
    // moments about the axle: weight by its lever, hands by theirs
    const lever = at(centre.x, centre.y)
    assertNear(hands.usual * lever, weight.ramps[0]!.usual * (lever - at(x, y)), 1e-6)
    expect(hands.usual).toBeGreaterThan(5)
    expect(ramp.deckTimbers[moving.rolling!.timber - ramp.studs.length - 1]!.role).toBe('wheels')
  })

  test('the balance lies within the ramp, behind the middle of its side', () => {
    const { ramp, moving } = rolling(4)
    expect(moving.balance.x).toBeGreaterThan(ramp.length / 2)
    expect(moving.balance.x).toBeLessThan(ramp.length)
    expect(moving.balance.y).toBeLessThan(ramp.side.height)
    expect(moving.handle).not.toBeNull()
  })
})
