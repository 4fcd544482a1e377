import Flatten from '@flatten-js/core'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { curvedOf } from '../../../src/design/kind-traits.ts'
import { readLength } from '../../../src/length.ts'
import type { Check } from '../../../src/ramp/check/check.ts'
import type { Quarter } from '../../../src/ramp/ramp.ts'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { polygon } from '../framed.ts'
import { piped, plain, plywood, stock, studded } from '../ramps.ts'

const outer: QuarterDesign = { ...plain, name: 'outer' }
const inner = (more: Partial<QuarterDesign>): QuarterDesign => ({
  ...plain,
  name: 'inner',
  width: 1216 - 36 - 12,
  storesInside: { ramp: 'outer', clearance: 12 },
  ...more,
})
const high = (value: number): Pick<QuarterDesign, 'height'> => ({ height: { layer: 'frame', value } })
const deck = (value: number): Pick<QuarterDesign, 'back'> => ({ back: { from: 'deck', value } })

const both = (
  around: QuarterDesign,
  own: QuarterDesign,
): { ramps: readonly Quarter[]; checks: readonly Check[] } => {
  const { ramps, checks } = solveDesign({
    title: 'pair',
    units: 'mm',
    paper: 'a4',
    stock,
    ramps: [around, own],
  })
  return { ramps: curvedOf(ramps), checks: checks.filter(({ id }) => id === 'stores-fit') }
}
const words = (around: QuarterDesign, own: QuarterDesign): readonly string[] =>
  both(around, own).checks.map(({ level, ramp, message }) => `${level} ${ramp}: ${message}`)

describe('a ramp that is stored in another', () => {
  test('does not go past its ribs, and two sides let it in', () => {
    const ribbed = { ...outer, sides: { thickness: 18, count: 3 } }
    expect(words(ribbed, inner({ ...high(300), ...deck(100) }))).toEqual([
      'warn inner: `outer` has a middle rib, 581 mm from side to side, and this ramp is 1168 mm wide: it does not go in; ' +
        'give `outer` two sides only (sides: { count: 2 })',
    ])
    expect(words(outer, inner({ ...high(300), ...deck(100) })).join()).not.toContain('does not go in')
  })

  test('is not shut out by a rib that a note offers against the sag of long studs', () => {
    const [wide, narrow] = [
      { ...outer, width: 2436 },
      inner({ ...high(300), ...deck(100), width: 2436 - 36 - 12 }),
    ]
    const sag = (ramps: readonly QuarterDesign[], name: string): string =>
      solveDesign({ title: 'pair', units: 'mm', paper: 'a4', stock, ramps })
        .checks.filter(({ id, ramp }) => id === 'span' && ramp === name)
        .map(({ message }) => message)
        .join()
    expect(sag([wide, narrow], 'outer')).toMatch(
      /span\/360: studs \d+ mm deep or more would; `inner` stores inside: a middle rib would stop that, deeper studs leave less height for it\. Judge/,
    )
    // the one that goes in may have its rib, and so may the other where it stands alone
    expect(sag([wide, narrow], 'inner')).toContain('1 middle rib (sides: { count: 3 }) or studs')
    expect(sag([wide], 'outer')).toContain('1 middle rib (sides: { count: 3 }) or studs')
  })

  test('too high and too wide is told both, and what is typed for both lets it in', () => {
    const ribbed = { ...outer, sides: { thickness: 18, count: 3 } }
    const tall = inner({ ...high(560), ...deck(100), skin: [plywood(3)] })
    const [check] = both(ribbed, tall).checks
    expect(check!.message).toMatch(
      /^this ramp is \d+(?:\.\d)? mm high, .* make its frame height \d+ mm or less, .*; besides, `outer` has a middle rib, .* two sides only \(sides: \{ count: 2 \}\) too$/,
    )
    const [offer] = check!.offers
    expect(offer!.map(({ path }) => path)).toEqual(['ramps.1.height.frame', 'ramps.0.sides.count'])
    const lower = { ...tall, ...high(Number.parseFloat(offer![0]!.value!)) }
    expect(words(outer, lower).join()).not.toContain('does not go in')
  })

  // 640 less timbers 89 deep: 551; a thin skin, so that the board 15 thick is the highest
  test('does not go under a deck lower than its own, and the height offered lets it in', () => {
    const own = (frame: number) => inner({ skin: [plywood(3)], ...high(frame), ...deck(100) })
    expect(words(outer, own(535.9)).join()).not.toContain('does not go in')
    expect(words(outer, own(536.2))).toEqual([
      'warn inner: this ramp is 551.2 mm high, and `outer` has 551 mm under the timbers of its deck: it does not go in; ' +
        'make its frame height 536 mm or less, or `outer` as much higher',
    ])
    for (const layer of ['frame', 'deck', 'surface'] as const) {
      const tall = inner({ height: { layer, value: 600 }, coping: piped(), ...deck(200) })
      const [message] = words(outer, tall)
      const offered = Number(/height (\d+) mm or less/.exec(message!)![1])
      const lower = words(outer, { ...tall, height: { layer, value: offered } }).join()
      expect(lower).not.toContain('does not go in')
    }
  })

  test('says which timber is in its way on the floor', () => {
    expect(words(outer, inner({ ...high(300), ...deck(100) }))).toEqual([
      'note inner: pushed in on the floor, toe first: lift it over the timber in the back bottom corner of `outer`, 38 mm high',
    ])
    // it comes to lie over the timber, and finds no height for it; then a lower one does
    expect(words(outer, inner({ ...high(500), ...deck(380) })).join()).toContain(
      'is in the way: leave it out',
    )
    expect(words(outer, inner({ ...high(200), ...deck(600) })).join()).toContain(
      'is in the way: leave it out, or keep this ramp on packing as high',
    )
  })

  // leg 120, wheels 75 across on plates 100 under their tread, 6 off the floor
  test('takes the timber for the wheels out with that in the corner, and is told both by their numbers', () => {
    const rolling = { ...outer, chamfer: 120, wheels: { diameter: 75, height: 100, count: 4 } }
    const own = inner({ ...high(300), ...deck(480) })
    const [outerRamp] = both(rolling, own).ramps
    const numbers = outerRamp!.deckTimbers.flatMap(({ role }, i) =>
      role === 'back' || role === 'wheels' ? [outerRamp!.studs.length + i + 1] : [],
    )
    const recess = 100 - 37.5 - Math.SQRT2 * (60 - 6 - 37.5)
    // the timber's face lies so far inside the cut, at 45 degrees; its highest corner is that of its back
    const top = 60 + (recess + 89 / 2 + 38) * Math.SQRT1_2
    expect(words(rolling, own)[0]).toMatch(
      new RegExp(
        `timbers ${numbers.join(' and ')} of \`outer\` with its wheels, ${Math.round(top)} mm high, are in the way: ` +
          'take them out, and `outer` does not roll then',
      ),
    )
    // wholly before them, and low enough to pass over
    expect(words(rolling, inner({ ...high(200), ...deck(100) }))[0]).toContain(
      `lift it over timbers ${numbers.join(' and ')} of \`outer\` with its wheels`,
    )
  })

  // 19 9/16 goes in: a limit found in columns of 2 mm would offer 19 1/2
  test('is offered the sixteenth of an inch that goes in, and the next one does not', () => {
    const around: QuarterDesign = { ...outer, width: 1219.2 }
    let told = 0
    for (const frame of [380, 400, 420, 440, 460]) {
      const own = inner({ ...high(frame), ...deck(700), width: 1219.2 - 36 - 12 })
      const of = (mm: number): string =>
        solveDesign({
          title: 'pair',
          units: 'in',
          paper: 'a4',
          stock,
          ramps: [around, { ...own, ...deck(mm) }],
        })
          .checks.filter(({ id }) => id === 'stores-fit')
          .map(({ message }) => message)
          .join()
      const offered = /a deck of (.+?) in or less goes in whole/.exec(of(700))
      if (!offered) continue
      told++
      const reading = readLength(`${offered[1]} in`, 'in')
      if ('error' in reading) throw new Error(reading.error)
      expect(of(reading.mm)).not.toContain('out at the back')
      expect(of(reading.mm + 25.4 / 16)).toContain('out at the back')
    }
    expect(told).toBeGreaterThan(3)
  })

  test('is told to sink the heads of its screws where the room beside it is less than they take', () => {
    const near = inner({ ...high(300), ...deck(100), storesInside: { ramp: 'outer', clearance: 4 } })
    expect(words(outer, near).join()).toContain("a clearance of 4 mm leaves no room for screws' heads")
    expect(words(outer, { ...near, storesInside: { ramp: 'outer', clearance: 6 } }).join()).not.toContain(
      'heads',
    )
  })

  // told apart from the other timbers by the oracle of test/ramp/storing
  test('names what is tight, and where', () => {
    expect(words(outer, inner({ ...high(445), ...deck(500) })).join()).toMatch(
      /it stands 96\.8 mm out at the back of `outer`: its skin meets stud 3 104 mm above the floor; a deck of 403 mm/,
    )
  })

  test('says nothing of a ramp that is stored nowhere', () => {
    expect(words(outer, { ...inner({}), storesInside: null })).toEqual([])
  })
})

/** Skin and board on the side, from the floor up, pushed `by` behind the outer front; arcs by chords. */
const block = (
  { transition, skinThickness, length, deckBoard, coping }: Quarter,
  by: number,
): Flatten.Polygon => {
  const { centre, radius, toeAngle, lipAngle, heights } = transition!
  const arc = Array.from({ length: 400 }, (_, i): [number, number] => {
    const angle = toeAngle + ((lipAngle - toeAngle) * i) / 399
    const r = radius.frame - skinThickness
    return [centre.x + r * Math.sin(angle), centre.y - r * Math.cos(angle)]
  })
  expect(coping).toBeNull()
  const top = deckBoard ? heights.deck : heights.frame
  const points: [number, number][] = [
    [0, 0],
    [0, transition!.toe.y],
    ...arc,
    [transition!.lip.x, top],
    [length!, top],
    [length!, 0],
  ]
  return new Flatten.Polygon(points.map(([x, y]) => new Flatten.Point(x + by, y)))
}

const meets = (own: Flatten.Polygon, around: Quarter): boolean => {
  const edges = [...own.edges].map((edge) => edge.shape as Flatten.Segment)
  return around.deckTimbers
    .filter(({ role }) => role !== 'back')

    .map(polygon)
    .concat(around.studs.map(polygon))
    .some(
      (timber) =>
        edges.some((edge) => edge.intersect(timber).length > 0) || own.contains(timber.vertices[0]!),
    )
}

test('stands out at the back by what the timbers around it leave, pushed by polygons of another library', () => {
  let told = 0
  for (const [frame, back, section, every] of [
    [445, 500, [38, 89], 200],
    [400, 650, [38, 89], 160],
    [500, 500, [38, 89], 300],
    [350, 750, [45, 70], 230],
    [300, 850, [38, 140], 250],
  ] as const) {
    const around = { ...outer, studs: studded({ section, every }) }
    const own = inner({ ...high(frame), ...deck(back), skin: [plywood(9), plywood(6)] })
    const { ramps, checks } = both(around, own)
    const [big, small] = ramps
    const out = Number(/it stands ([\d.]+) mm out/.exec(checks[0]!.message)![1])
    const by = out + big!.length! - small!.length!
    // shown in tenths
    expect(meets(block(small!, by + 0.06), big!)).toBe(false)
    expect(meets(block(small!, by - 0.06), big!)).toBe(true)
    const offered = /a deck of (\d+) mm or less/.exec(checks[0]!.message)
    if (!offered) continue
    told++
    const most = Number(offered[1])
    expect(words(around, { ...own, ...deck(most) }).join()).not.toContain('out at the back')
    expect(words(around, { ...own, ...deck(most + 1) }).join()).toContain('out at the back')
  }
  expect(told).toBeGreaterThan(2)
})
