import { describe, expect, test } from 'vitest'
import type { QuarterDesign, Units } from '../../../src/design/design.ts'
import { worded } from '../../../src/ramp/check/check.ts'
import {
  borneWords,
  heldWords,
  spanFindings,
  spanLoad,
  spanStiffness,
  studSpan,
} from '../../../src/ramp/frame/span.ts'
import { assertNear } from '../../support/near.ts'
import { inch, plain, solve, studded } from '../ramps.ts'

/**
 * Sag by integrating the moment's curvature twice: from one support at rest, the turn at it found so that the other support is
 * at rest too (moment-area method; no closed form). The load is half on each support, the moment F x / 2 up to the middle.
 */
const slowSag = (length: number, width: number, depth: number, load: number, stiffness: number): number => {
  // second moment of area by strips
  const strips = 2000
  let inertia = 0
  for (let i = 0; i < strips; i++) {
    const y = ((i + 0.5) / strips - 0.5) * depth
    inertia += y * y * width * (depth / strips)
  }
  const steps = 20_000
  const dx = length / steps
  let [turn, sag, middle] = [0, 0, 0]
  for (let i = 0; i < steps; i++) {
    const x = (i + 0.5) * dx
    const moment = (load / 2) * Math.min(x, length - x)
    sag += turn * dx + (moment / (stiffness * inertia)) * (dx * dx) * 0.5
    turn += (moment / (stiffness * inertia)) * dx
    if (i === steps / 2 - 1) middle = sag
  }
  // the chord from support to support is where the beam lies unbent
  return sag / 2 - middle
}

describe('the beam formula', () => {
  test.each([
    [1180, 38, 89],
    [2400, 38, 89],
    [2400, 45, 145],
    [600, 19, 60],
  ])('a stud of %s, %s × %s', (length, width, depth) => {
    const { sag, ratio } = studSpan(length, width, depth)
    const slow = slowSag(length, width, depth, 1500, 8000)
    assertNear(sag, slow, slow * 1e-4, 'sag')
    assertNear(ratio, length / slow, (length / slow) * 1e-4, 'ratio')
  })
  test('by hand: 1000 long, 40 × 100: I = 40·100³/12 = 3 333 333 mm⁴, sag 1500·10⁹/(48·8000·3 333 333) = 1.171875', () => {
    assertNear(studSpan(1000, 40, 100).sag, 1.171875, 1e-9)
    expect([spanLoad, spanStiffness]).toEqual([1500, 8000])
  })
})

// a pound of force is 4.4482216152605 N exactly: 0.45359237 kg at 9.80665 m/s²
test('a force that is borne is told no larger than it is, one to be held no smaller', () => {
  expect(borneWords(1499.9)).toBe('1490 N (330 lb)')
  expect(heldWords(1500)).toBe('1500 N (340 lb)')
  expect(heldWords(541)).toBe('550 N (130 lb)')
  for (let newton = 1; newton < 3000; newton += 0.7) {
    const [least, most] = [borneWords(newton), heldWords(newton)].map((said) => {
      const [n, lb] = said.match(/\d+/g)!.map(Number)
      return { n: n!, lb: lb! * 4.4482216152605 }
    })
    expect(Math.max(least!.n, least!.lb)).toBeLessThanOrEqual(newton)
    expect(Math.min(most!.n, most!.lb)).toBeGreaterThanOrEqual(newton)
  }
})

const wide = (width: number, count: number, rest: Partial<QuarterDesign['studs']> = {}): QuarterDesign => ({
  ...plain,
  width,
  sides: { thickness: 18, count },
  studs: studded(rest),
})
const said = (design: QuarterDesign, units: Units = 'mm'): readonly string[] =>
  spanFindings(design, units).map((f) => `${f.level} ${f.id}: ${worded(f, () => true).message}`)
/** span over sag from first principles */
const ratioOf = (length: number, b: number, h: number): number =>
  (4 * 8000 * b * h ** 3) / (1500 * length ** 2)

describe('a note where the sag passes span/360', () => {
  test('speaks on one side of the limit only', () => {
    // 4·8000·38·89³ / (1500 L²) = 360: L = 1259.94
    const limit = Math.sqrt((4 * 8000 * 38 * 89 ** 3) / (1500 * 360))
    expect(said(wide(limit + 36 - 0.01, 2))).toEqual([])
    expect(said(wide(limit + 36 + 0.01, 2))).toHaveLength(1)
  })
  test('says load, stiffness, the ribs and the depth that would pass, and whose judgement it is', () => {
    // 2400 between the sides: I = 38·89³/12; sag 24.19 mm; 2400/24.19 = 99.2
    assertNear(ratioOf(2400, 38, 89), 99.2, 0.05)
    expect(said(wide(2436, 2))).toEqual([
      'note span: a stud 2400 mm long sags about 24.2 mm (span/99) under 1500 N (340 lb) at rest in its middle, stiffness 8000 N/mm², both assumed; ' +
        'floors are commonly held to span/360: 1 middle rib (sides: { count: 3 }) or studs 137 mm deep or more would. ' +
        'Judge for yourself or ask who knows timber',
    ])
  })
  test('is a warning under a quarter of that', () => {
    // span/90: 4·8000·38·89³ / (1500 L²) = 90
    const limit = Math.sqrt((4 * 8000 * 38 * 89 ** 3) / (1500 * 90))
    expect(said(wide(limit + 36 - 0.01, 2)).join()).toMatch(/^note span/)
    expect(said(wide(limit + 36 + 0.01, 2)).join()).toMatch(/^warn span/)
    expect(said(wide(4036, 2)).join()).toMatch(/^warn span: a stud 4000 mm long sags about 112 mm/)
  })
  test('a warning offers only what works on the whole ramp', () => {
    // ripped deeper, studs leave the panel
    const message = solve(wide(4036, 2)).findingsOf('span')[0]!.message
    const count = Number(/count: (\d+)/.exec(message)![1])
    expect(solve(wide(4036, count)).drafts.map(({ id }) => id)).not.toContain('span')
  })
  test('never says that it is safe, or complies', () => {
    expect(said(wide(2436, 2)).join()).not.toMatch(/\bsafe|compl|approv/i)
  })
  test('reaches the figures of a ramp', () => {
    const ids = (design: QuarterDesign): readonly string[] => solve(design).drafts.map((f) => f.id)
    expect(ids(wide(2436, 2))).toContain('span')
    expect(ids(wide(2436, 3))).not.toContain('span')
  })
})

describe.each(['mm', 'in'] as const)('the ways out work when typed, and are the nearest: %s', (units) => {
  const step = units === 'mm' ? 1 : inch / 16
  test.each([1400, 1900, 2436, 3600, 4800, 9000])('a width of %s', (width) => {
    const [message] = said(wide(width, 2), units)
    const count = Number(/count: (\d+)/.exec(message!)![1])
    expect(said(wide(width, count), units)).toEqual([])
    expect(said(wide(width, count - 1), units)).toHaveLength(1)
    const [, whole, top, bottom] = /studs (\d+)(?: (\d+)\/(\d+))? (?:mm|in) deep/.exec(message!)!
    const deep = (Number(whole) + Number(top ?? 0) / Number(bottom ?? 1)) * (units === 'in' ? inch : 1)
    expect(said(wide(width, 2, { section: [38, deep] }), units)).toEqual([])
    expect(said(wide(width, 2, { section: [38, deep - step] }), units)).toHaveLength(1)
  })
  test('where no count of ribs that may be typed is enough, only the depth is offered', () => {
    const [message] = said(wide(12_000, 2, { section: [20, 40] }), units)
    expect(message).not.toContain('count:')
    expect(message).toMatch(/: studs [\d /]+ (?:mm|in) deep or more would/)
  })
})
