import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { FlatDesign, QuarterDesign, RampDesign, Units } from '../../../src/design/design.ts'
import { curvedOf } from '../../../src/design/kind-traits.ts'
import { rowAt } from '../../../src/design/schema.ts'
import { readLength } from '../../../src/length.ts'
import { meetingFindings } from '../../../src/ramp/beside/meeting.ts'
import { meetingTrial } from '../../../src/ramp/beside/meeting-trial.ts'
import { lowestToe } from '../../../src/ramp/beside/toe-way.ts'
import { stopsOfFlat } from '../../../src/ramp/kinds/flat.ts'
import { stopsOfQuarter } from '../../../src/ramp/kinds/quarter.ts'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { atLeast, atMost, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { level, real, solveLevel } from '../flats.ts'
import { circleOf, inch, plain, plywood, solve as solveQuarter, stock } from '../ramps.ts'

const solve = (ramps: readonly RampDesign[], units: Units = 'mm') =>
  solveDesign({ title: 'boathouse', units, paper: 'a4', stock, ramps })
const said = (ramps: readonly RampDesign[], id: string, units: Units = 'mm'): readonly string[] =>
  solve(ramps, units)
    .checks.filter((check) => check.id === id)
    .map((check) => `${check.level} ${check.ramp}: ${check.message}`)

/** Ridden face of radius 1700 that runs level at a height; a skin of 24, so the frame's lowest point lies 24 under that. */
const curved = (tangent: number, toe: number, more: Partial<QuarterDesign> = {}): QuarterDesign => ({
  ...plain,
  name: 'curved',
  transition: circleOf('surface', 1700, 'surface', tangent),
  toe,
  runOut: { kind: 'flat' },
  ...more,
})
const flat = (surface: number, more: Partial<FlatDesign> = {}): FlatDesign => ({
  ...level,
  height: { layer: 'surface', value: surface },
  ...more,
})

describe('a quarter that runs out on a flat', () => {
  test('at the height of its surface, with the lowest toe, is told nothing and goes on level', () => {
    const { ramps, checks } = solve([flat(113), curved(113, 89)])
    expect(checks.filter(({ id }) => /flat|toe/.test(id))).toEqual([])
    const { toeAngle, toeStep } = curvedOf(ramps)[0]!.transition!
    assertNear(toeAngle, 0, 1e-9)
    assertNear(toeStep, 113, 1e-9)
  })

  test('by the tangent of its frame the surface is the skin higher', () => {
    const by = (tangent: number) => curved(0, 89, { transition: circleOf('surface', 1700, 'frame', tangent) })
    expect(said([flat(113), by(89)], 'flat-meets')).toEqual([])
    expect(said([flat(113), by(113 - 24 - 1.01)], 'flat-meets')).not.toEqual([])
  })

  test.each([1, -1])('within 1 mm of it and no more: %d', (way) => {
    expect(said([flat(113), curved(113 + way, 91)], 'flat-meets')).toEqual([])
    expect(said([flat(113), curved(113 + way * 1.01, 91)], 'flat-meets')).toHaveLength(1)
  })

  test('ends in a step that a hand feels, and is told the toe that lays them level', () => {
    // c = 1813: over a toe of 93 the face lies at 1813 − (1700 / 1724) · (1813 − 93) = 116.94; 89 is the frame's lowest
    expect(said([flat(113), curved(113, 93)], 'flat-step')).toEqual([
      'note curved: at the toe the ridden face ends 3.9 mm above the surface of `flat`, a hand feels it; a toe of 89 mm lays them level',
    ])
    // 1 mm over it: a toe of 1813 − (1724 / 1700) · (1813 − 114) = 90.01
    expect(said([flat(113), curved(113, 90)], 'flat-step')).toEqual([])
    expect(said([flat(113), curved(113, 90.02)], 'flat-step')).toHaveLength(1)
  })

  test('at another height is told both and what to type, here and there', () => {
    expect(said([flat(113), curved(0, 40)], 'flat-meets')).toEqual([
      'warn curved: the ridden face runs level on the floor, the surface of `flat` lies at 113 mm; ' +
        'type `tangent: { surface: 113 mm }` with a toe of 89 mm',
    ])
    // 80 less the skin is the frame's lowest
    expect(said([flat(113), curved(80, 90)], 'flat-meets')).toEqual([
      'warn curved: the ridden face runs level 80 mm above the floor, the surface of `flat` lies at 113 mm; ' +
        'type `tangent: { surface: 113 mm }`, or give `flat` a surface height of 80 mm with a toe of 56 mm',
    ])
    const frames = [
      flat(0, { height: { layer: 'frame', value: 4 * inch } }),
      curved(0, 70, { transition: circleOf('frame', 1724, 'frame', 60) }),
    ]
    // 4 in and 24 mm, less the 24 of its own skin; 60 + 24 − 24 for the flat is 2 3/8 in, and as much is the lowest toe of a frame that runs level at 60
    expect(said(frames, 'flat-meets', 'in')).toEqual([
      'warn curved: the ridden face runs level 3 5/16 in above the floor, the surface of `flat` lies at 4 15/16 in; ' +
        'type `tangent: { frame: 4 in }` with a toe of 4 in, or give `flat` a frame height of 2 3/8 in with a toe of 2 3/8 in',
    ])
  })

  test('in a file without one is told so', () => {
    expect(said([curved(113, 89)], 'flat-missing')).toEqual([
      'warn curved: the run-out is a flat, and the file has none: add one (kind: flat) with its surface where the ridden face runs level, ' +
        '113 mm above the floor now, or say what else closes the step',
    ])
    expect(said([flat(113), curved(113, 89)], 'flat-missing')).toEqual([])
    expect(said([{ ...curved(113, 89), runOut: { kind: 'none' } }], 'flat-missing')).toEqual([])
  })

  test('in a file without one, too low for any, is told the flat, the tangent and the toe that go together', () => {
    // 10 of wood under a skin of 24; the lowest toe of a face level at 34 is 10, but at it no place is left for the stud at 200
    const [least, toe] = [34, 11]
    const low = (tangent: number, toe: number) => said([curved(tangent, toe)], 'flat-missing').join()
    const way = (toe: string) =>
      `: type \`tangent: { surface: ${least} mm }\`${toe} and add a flat (kind: flat) with a surface height of ${least} mm, or say what else`
    expect(low(0, 40)).toContain(
      `level on the floor now, too low for one under a skin like this${way(` with a toe of ${toe} mm`)}`,
    )
    expect(low(0, 5)).toContain(way(' with a toe of 11 mm'))
    expect(low(0, 12)).toContain(way(''))
    expect(low(33.9, 12)).toContain('too low')
    expect(low(34, 12)).toContain('add one (kind: flat)')
    // what was offered is a good pair
    for (const toe of [11, 10, 12]) {
      const ids = solve([flat(least), curved(least, toe)]).checks.map(({ id }) => id)
      expect(ids.filter((id) => /flat-(low|meets|missing)|toe-/.test(id))).toEqual([])
    }
    // by the tangent of the frame: 34 less the skin
    const frame = curved(0, 40, { transition: circleOf('surface', 1700, 'frame', 0) })
    expect(said([frame], 'flat-missing').join()).toContain('type `tangent: { frame: 10 mm }` with a toe of')
  })

  test('is offered the lowest toe that works, no feather edge where another does', () => {
    const lowest = (most: number, works: (toe: number) => boolean): string | undefined =>
      lowestToe(plain, ({ toe }) => works(toe), { least: 3, most }, 'mm')?.words
    // a front edge up to 6 mm is a feather
    expect(lowest(30, () => true)).toBe('7 mm')
    expect(lowest(30, (toe) => toe > 9.5)).toBe('10 mm')
    expect(lowest(30, (toe) => toe < 6.5)).toBe('3 mm')
    expect(lowest(6, () => true)).toBe('3 mm')
    expect(lowest(30, () => false)).toBeUndefined()
  })

  test('in a file of one ramp without a name is told that two need names', () => {
    const [named, nameless] = [curved(113, 89), curved(113, 89, { name: 'ramp' })]
    expect(said([named], 'flat-missing').join()).not.toContain('name')
    expect(said([nameless], 'flat-missing').join()).toContain('now, and give each ramp a `name`, or say')
    expect(said([curved(113, 130)], 'flat-missing').join()).toContain(
      '113 mm above the floor now, with a toe of 89 mm,',
    )
  })

  test('at another height and ending too high over it is told both at once', () => {
    // garage pair: c = 97 in by the surface, a toe of 3 1/2: 97 − 96 · 93.5 / 97 = 4.4639 in, 3.0264 over 1 7/16
    const design = curved(inch, 3.5 * inch, {
      skin: [plywood(inch)],
      transition: circleOf('surface', 96 * inch, 'surface', inch),
    })
    const low = flat(0, { height: { layer: 'surface', value: (1 + 7 / 16) * inch } })
    // 7/16 in is the lowest toe; no place is left for a stud at it, nor at 1/2 in
    expect(said([low, design], 'flat-meets', 'in')).toEqual([
      'warn curved: the ridden face runs level 1 in above the floor, the surface of `flat` lies at 1 7/16 in, and at the toe the face ends 3+ in above it ' +
        '(a wheel stops at more than 6 mm, a shade under 1/4 in); type `tangent: { surface: 1 7/16 in }` with a toe of 9/16 in',
    ])
  })

  test('of several takes the nearest in height, then in width', () => {
    const [low, high] = [flat(60, { name: 'low' }), flat(113, { name: 'high' })]
    expect(said([low, high, curved(113, 89)], 'flat-meets')).toEqual([])
    expect(said([low, high, curved(70, 60)], 'flat-meets').join()).toContain('the surface of `low`')
    const wide = flat(113, { name: 'wide', width: 1800 })
    expect(said([wide, high, curved(113, 89)], 'flat-width')).toEqual([])
    expect(said([high, wide, curved(113, 89, { width: 1800 })], 'flat-width')).toEqual([])
  })

  test('of another width is noted', () => {
    const at = (width: number) => said([flat(113), curved(113, 89, { width })], 'flat-width')
    expect(at(1217)).toEqual([])
    expect(at(1217.1)).toHaveLength(1)
    expect(at(1500)).toEqual([
      'note curved: this ramp is 1500 mm wide and `flat` is 1216 mm: their edges do not line up',
    ])
  })
})

describe('the step at the toe counts from the surface of the flat', () => {
  // c = 1813: (c − toe) / 1724 = (c − 113 − 6) / 1700 where the face stands 6 over the flat
  const limit = 1813 - (1724 * (1813 - 119)) / 1700
  test('6 mm over it and no more', () => {
    expect(said([flat(113), curved(113, limit)], 'toe-step')).toEqual([])
    expect(said([flat(113), curved(113, limit - 0.01)], 'toe-step')).toEqual([])
    expect(said([flat(113), curved(113, limit + 0.01)], 'toe-step')).toHaveLength(1)
  })
  test('says how high it is and the toe that brings it down', () => {
    // the face over a toe of 130: 1813 − 1700 · 1683/1724
    const step = 1813 - (1700 * 1683) / 1724 - 113
    expect(said([flat(113), curved(113, 130)], 'toe-step')).toEqual([
      `warn curved: the ridden face ends ${step.toFixed(1)} mm above the surface of \`flat\` at the toe, a wheel stops at more than 6 mm; ` +
        'lower the toe to 89 mm',
    ])
    expect(said([flat(113), curved(113, 89)], 'flat-step')).toEqual([])
  })
  test('where not even a toe of 0 is low enough, both are brought up', () => {
    // at a toe of 0: (level + 1700) · 24 / 1724 − level = 6 has level = 24 − 6 · 1724 / 1700
    const least = Math.ceil(24 - (6 * 1724) / 1700)
    const step = ((13 + 1700) * 24) / 1724 - 13
    expect(said([flat(13, { skin: [plywood(3)] }), curved(13, 0)], 'toe-step')).toEqual([
      `warn curved: the ridden face ends ${step.toFixed(1)} mm above the surface of \`flat\` at the toe, a wheel stops at more than 6 mm; ` +
        `no toe is so low: bring the flat's surface and the level of the ridden face to ${least} mm or more, with a toe of 0`,
    ])
    const at = (both: number) => said([flat(both, { skin: [plywood(3)] }), curved(both, 0)], 'toe-step')
    expect(at(least)).toEqual([])
    expect(at(least - 1)).toHaveLength(1)
  })
  test('a flat within 1 mm is reckoned as it lies', () => {
    expect(said([flat(112), curved(113, limit)], 'toe-step')).toHaveLength(1)
    expect(said([flat(112), curved(113, limit - 1.02)], 'toe-step')).toEqual([])
  })
})

/** Range of a key in the design file. */
const rangeOf = (path: string): readonly [number, number] => {
  const { value } = rowAt(path)
  if (value.kind !== 'length') throw new Error(path)
  return [value.least, value.most]
}
const mayBeTyped = (path: string, mm: number): void => {
  const [least, most] = rangeOf(path)
  atLeast(mm, least - 1e-6, path)
  atMost(mm, most + 1e-6, path)
}

describe('a flat higher than any toe', () => {
  test('is to be lowered first, and then a tangent reaches it', () => {
    // a toe of 300 and its own skin of 24, less 3 for what is lost in sixteenths of an inch
    const [message, ...more] = said([flat(400), curved(20, 40)], 'flat-meets')
    expect(more).toEqual([])
    expect(message).toBe(
      'warn curved: the ridden face runs level 20 mm above the floor, the surface of `flat` lies at 400 mm; ' +
        'give `flat` a surface height of 321 mm or less, then raise the tangent to it',
    )
    expect(said([flat(321), curved(20, 40)], 'flat-meets').join()).toMatch(
      /lies at 321 mm; type `tangent: \{ surface: 321 mm \}` with a toe of 297 mm$/,
    )
    expect(said([flat(321), curved(321, 297)], 'flat-meets')).toEqual([])
    // one that can come down to the ridden face is told its own height, and the toe for that: 70 less the skin
    expect(said([flat(400), curved(70, 60)], 'flat-meets').join()).toMatch(
      /lies at 400 mm; give `flat` a surface height of 70 mm with a toe of 46 mm$/,
    )
  })
})

describe.each(['mm', 'in'] as const)('what is offered works when it is typed, in %s', (units) => {
  const typed = (message: string, form: RegExp): number | null => {
    const text = form.exec(message)?.[1]
    if (text === undefined) return null
    const reading = readLength(text, units)
    if ('error' in reading) throw new Error(`${reading.error}: ${message}`)
    return reading.mm
  }
  const pairs = fc.sample(
    fc.record({
      surface: fc.oneof({ weight: 2, arbitrary: real(30, 250) }, real(15, 500)),
      tangent: fc.oneof(real(0, 250), real(0, 40)),
      over: real(0, 40),
      layers: fc.array(fc.constantFrom('frame' as const, 'surface' as const), { minLength: 2, maxLength: 2 }),
      skins: fc.array(fc.constantFrom(6, 9, 15, 18, 24), { minLength: 2, maxLength: 2 }),
    }),
    { numRuns: 420, seed: 71 },
  )
  /** Each solved once; remedies of other findings are not looked for. */
  const pairOf = (a: FlatDesign, b: QuarterDesign) => {
    const [low, { ramp, drafts }] = [solveLevel(a, units), solveQuarter(b, units)]
    const trial = meetingTrial(ramp, [low.ramp, ramp], {
      quarter: (changed) => stopsOfQuarter(changed, units, stock),
      flat: (changed) => stopsOfFlat(changed, units, stock),
    })
    return { met: meetingFindings(ramp, [low.ramp, ramp], trial, units), others: [...low.drafts, ...drafts] }
  }
  test('for any quarter and any flat', () => {
    const tried = { tangent: 0, toe: 0, height: 0, lowered: 0, step: 0, first: 0 }
    for (const { surface, tangent, over, layers, skins } of pairs) {
      const [own, other] = skins as [number, number]
      const low: FlatDesign = {
        ...level,
        skin: [plywood(other)],
        height: {
          layer: layers[1]!,
          value: Math.max(10, surface - other) + (layers[1] === 'frame' ? 0 : other),
        },
      }
      const ramp = curved(0, Math.max(0, tangent - (layers[0] === 'frame' ? 0 : own)) + over, {
        skin: [plywood(own)],
        transition: circleOf('surface', 1700, layers[0]!, tangent),
      })
      const first = pairOf(low, ramp)
      const before = first.others.filter(({ level: l }) => l === 'stop').map(({ id }) => id)
      const works = (a: FlatDesign, b: QuarterDesign, id: string): void => {
        // neither the level nor the step that is left
        const { met, others } = pairOf(a, b)
        const all = [...met, ...others]
        for (const one of all) {
          hold(![id, 'flat-meets', 'toe-step'].includes(one.id), `${id}: without ${one.id}`)
          hold(one.level !== 'stop' || before.includes(one.id), `${id}: no new stop ${one.id}`)
        }
      }
      for (const { id, message } of first.met) {
        const height = typed(message, /a (?:surface|frame) height of ([^,]+?)(?: with a toe of [^,]+)?$/)
        if (id === 'flat-meets' && height !== null) {
          tried.height++
          mayBeTyped(`ramps[flat].height.${low.height.layer}`, height)
          const toe = typed(message, /height of [^,]+ with a toe of (.+)$/)
          if (toe !== null) {
            tried.lowered++
            mayBeTyped('ramps[quarter].toe', toe)
          }
          works(
            { ...low, height: { ...low.height, value: height } },
            toe === null ? ramp : { ...ramp, toe },
            id,
          )
        }
        const run = typed(message, /tangent: \{ (?:surface|frame): (.+?) \}/)
        if (id === 'flat-meets' && run !== null) {
          tried.tangent++
          mayBeTyped(`ramps[quarter].transition.tangent.${layers[0]}`, run)
          const toe = typed(message, /\}` with a toe of (.+?)(?:,|$)/)
          if (toe !== null) {
            tried.toe++
            mayBeTyped('ramps[quarter].toe', toe)
          }
          const { tangent: old } = ramp.transition
          works(
            low,
            {
              ...ramp,
              toe: toe ?? ramp.toe,
              transition: { ...ramp.transition, tangent: { ...old, height: run } },
            },
            id,
          )
        }
        const lowered = typed(message, /height of (.+) or less, then/)
        if (id === 'flat-meets' && lowered !== null) {
          tried.first++
          mayBeTyped(`ramps[flat].height.${low.height.layer}`, lowered)
          // the next word is a tangent that can be typed
          const next = pairOf({ ...low, height: { ...low.height, value: lowered } }, ramp).met
          expect(next.map((one) => one.message).join()).toContain('type `tangent')
        }
        // every message has a way
        if (id === 'flat-meets') hold([height, run, lowered].some((way) => way !== null))
        const lower = typed(message, /lower the toe to (.+)$/)
        if (id === 'toe-step' && lower !== null) {
          tried.step++
          works(low, { ...ramp, toe: lower }, id)
        }
      }
      // a flat at its height: the step is what is left
      const met = {
        ...low,
        height: { layer: 'surface' as const, value: tangent + (layers[0] === 'frame' ? own : 0) },
      }
      if (met.height.value < other + 10) continue
      for (const { id, message } of pairOf(met, ramp).met) {
        const lower = typed(message, /lower the toe to (.+)$/)
        if (id !== 'toe-step' || lower === null) continue
        tried.step++
        mayBeTyped('ramps[quarter].toe', lower)
        works(met, { ...ramp, toe: lower }, id)
      }
    }
    for (const [name, count] of Object.entries(tried)) expect(count, name).toBeGreaterThan(20)
  })
})
