import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { narrowest } from '../../../src/ramp/hazard/narrowest.ts'
import { assertNear } from '../../support/near.ts'
import { bare, notch, piped, plain, said, solve } from '../ramps.ts'
import { woodByPoints } from './wood-by-points.ts'

const deck = (value: number): Pick<QuarterDesign, 'back'> => ({ back: { from: 'deck', value } })
const chamfered: QuarterDesign = { ...bare(700, 640, 40), ...deck(60) }
const cases: readonly (readonly [string, QuarterDesign])[] = [
  ['curve and chamfer', { ...chamfered, chamfer: 440 }],
  ['notch and chamfer', { ...plain, ...deck(140), coping: piped({}, notch(48, 100)), chamfer: 600 }],
  [
    'notch and chamfer, round',
    { ...plain, ...deck(90), coping: piped({ seat: 'round', by: notch(48, 50) }), chamfer: 600 },
  ],
  ['top and chamfer', { ...plain, chamfer: 625 }],
  ['toe and chamfer', { ...bare(300, 290, 250), ...deck(240), chamfer: 230 }],
  [
    'notch and bottom',
    { ...plain, height: { layer: 'frame', value: 320 }, toe: 20, coping: piped({}, notch(48, 290)) },
  ],
]

describe('the narrowest wood of a side', () => {
  test.each(cases)('%s: is what many points find', (words, design) => {
    const { side } = solve(design).ramp
    const found = narrowest(side!)!
    const step = 4
    const least = woodByPoints(side!, step)
    expect(found.distance).toBeLessThanOrEqual(least + 1e-9)
    assertNear(found.distance, least, step, words)
    const [one, other] = words.split(',')[0]!.split(' and ')
    expect(found.edges).toEqual([one, other])
  })
})

/** R = c = 700: the curve stands at 45° where x − y = 700 (√2 − 1) − R sin a0; the cut runs along x − y = length − leg. */
const run = Math.sqrt(700 ** 2 - 60 ** 2)
const x0 = Math.sqrt(700 ** 2 - 660 ** 2)
const cut = run - x0 + 60 - (700 * (Math.SQRT2 - 1) - x0)

describe('too little wood between two edges', () => {
  // an oblique gap is its run along either axis over √2
  const at = (wood: number): QuarterDesign => ({ ...chamfered, chamfer: cut - wood * Math.SQRT2 })
  const levels = (design: QuarterDesign): readonly string[] =>
    solve(design)
      .drafts.filter(({ id }) => id === 'wood-narrow')
      .map(({ level }) => level)
  test('is a warning under 40 mm, a stop under 10', () => {
    expect(levels(at(40.01))).toEqual([])
    expect(levels(at(40))).toEqual([])
    expect(levels(at(39.99))).toEqual(['warn'])
    expect(levels(at(10))).toEqual(['warn'])
    expect(levels(at(9.99))).toEqual(['stop'])
  })
  test('says how much, where, and what gives it more', () => {
    expect(said(at(20.04), 'wood-narrow').join()).toMatch(
      /^warn: only 20 mm of wood is left between the curve and the chamfer, \d+ mm behind the toe and \d+ mm above the floor; 40 mm or more is stronger: a chamfer of \d+ mm or less, or a deck of \d+ mm or more$/,
    )
    const leg = Number(/a chamfer of (\d+) mm/.exec(said(at(20.04), 'wood-narrow').join())![1])
    // less than the wood alone asks for where it would fall over
    expect(leg).toBeLessThanOrEqual(cut - 40 * Math.SQRT2)
    const stops = (chamfer: number) =>
      solve({ ...chamfered, chamfer }).drafts.filter(({ level }) => level === 'stop')
    expect(stops(leg)).toEqual([])
    expect(stops(leg + 1).map(({ id }) => id)).toEqual(['tips'])
  })
  test('no remedy of another check leads there', () => {
    // under the top line: 640 less 40
    expect(said({ ...plain, chamfer: 640 }, 'chamfer')).toEqual([
      'stop: a chamfer with a leg of 640 mm cuts into the top line; it may be at most 600 mm',
    ])
  })
})
