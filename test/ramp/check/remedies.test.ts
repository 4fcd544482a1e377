import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { hasStop } from '../../../src/ramp/check/check.ts'
import { assertNear } from '../../support/near.ts'
import { anyRamp, circleOf, inch, piped, plain, reveals, said, solve } from '../ramps.ts'
import { remediesOf } from './remedy.ts'
import { extreme, stillSaid } from './typed-back.ts'

describe.each(['mm', 'in'] as const)('what a message offers works when it is typed, in %s', (units) => {
  test('for any ramp', () => {
    fc.assert(
      fc.property(extreme, (ramp) => {
        expect(stillSaid(ramp, units)).toBeNull()
      }),
      { numRuns: 180, seed: 20, endOnFailure: true },
    )
  })

  test('a deck that is meant in another unit, where the notch then leaves too little wood', () => {
    const [ramp] = fc.sample(extreme, { numRuns: 1, seed: 976 })
    expect(ramp!.back).toMatchObject({ from: 'deck' })
    expect(solve(ramp!, 'mm').drafts.map(({ id }) => id)).toContain('deck-short')
    expect(stillSaid(ramp!, units)).toBeNull()
  })

  test('an open groove at the lip that a wheel stops in', () => {
    const [ramp] = fc.sample(extreme, { numRuns: 1, seed: 12065 })
    const found = solve(ramp!, units).drafts.find(({ id }) => id === 'lip-groove')
    expect(found?.level).toBe('warn')
    expect(stillSaid(ramp!, units)).toBeNull()
  })
})

test('the ramps tried meet every check that has a way out', () => {
  const met = new Map<string, number>()
  const wanted = [
    'overhang height-low toe-low toe-high steep toe-step notch-level notch-floor notch-front notch-long notch-wood',
    'notch-wall pipe-behind-face pipe-under-deck chamfer length-short width panel-size stud-toe',
  ]
    .join(' ')
    .split(' ')
  const rare = () => wanted.filter((id) => (met.get(id) ?? 0) < 5)
  for (const ramp of fc.sample(anyRamp, { numRuns: 3000, seed: 20 })) {
    for (const { id, level } of solve(ramp).drafts) if (level !== 'note') met.set(id, (met.get(id) ?? 0) + 1)
    if (rare().length === 0) break
  }
  expect(rare()).toEqual([])
})

describe('in a design in inches', () => {
  const base: QuarterDesign = {
    ...plain,
    height: { layer: 'deck', value: 24 * inch },
    transition: circleOf('surface', 84 * inch),
    toe: 1.5 * inch,
    skin: [
      { thickness: (3 / 8) * inch, material: 'plywood' },
      { thickness: (3 / 8) * inch, material: 'plywood' },
      { thickness: inch / 4, material: 'hardboard' },
    ],
    deckBoard: { thickness: (5 / 8) * inch, material: 'plywood' },
    coping: piped({ outside: 2.375 * inch, by: reveals((3 / 8) * inch, inch / 4) }),
    chamfer: 5 * inch,
  }
  const of = (design: QuarterDesign, id: string): string => said(design, id, 'in').join('\n')
  const at = (radius: number): QuarterDesign => ({ ...base, transition: circleOf('surface', radius * inch) })

  test('a height over the centre names the first radius that stops nowhere, and a sixteenth less stops', () => {
    const [, whole, top, bottom] = /radius for this height is (\d+)(?: (\d+)\/(\d+))? in/.exec(
      of(at(20), 'overhang'),
    )!
    const least = Number(whole) + (top ? Number(top) / Number(bottom) : 0)
    const stops = (radius: number): boolean => hasStop(solve(at(radius), 'in').drafts)
    expect(stops(least)).toBe(false)
    expect(stops(least - 1 / 16)).toBe(true)
  })

  test('a pipe that `up` pushes before the lip is told to come up, not to hide behind the face', () => {
    const low = { ...base, coping: piped({ outside: 2.375 * inch, by: reveals(-inch, inch / 4) }) }
    const message = of(low, 'notch-front')
    expect(message).toMatch(/`up` must be at least -?[\d /]+ in \(-1 in now\)$/)
    expect(message).not.toContain('`out`')
  })

  test('a section by the name that it is sold under is told what it measures', () => {
    const named = (a: number, b: number): string =>
      of({ ...base, studs: { ...base.studs, section: [a * inch, b * inch] } }, 'stud-nominal')
    // PS 20, dry
    expect(named(2, 4)).toContain('sold as 2x4 measures 1 1/2 x 3 1/2 in when it is dry')
    expect(named(6, 2)).toContain('(section: 1 1/2 x 5 1/2)')
    expect(named(2, 8)).toContain('(section: 1 1/2 x 7 1/4)')
    expect(named(1, 4)).toContain('(section: 3/4 x 3 1/2)')
    expect(named(1.5, 3.5)).toBe('')
    expect(said({ ...plain, studs: { ...plain.studs, section: [50.8, 101.6] } }, 'stud-nominal')).toEqual([])
  })

  test('a pipe by the name that it is sold under is told what it measures, and the remedy ends it', () => {
    const pipe = (inches: number): QuarterDesign => ({ ...base, coping: piped({ outside: inches * inch }) })
    // ASME B36.10M: outside diameters of nominal pipe sizes
    for (const [name, measures] of [
      [1.25, 1.66],
      [1.5, 1.9],
      [2, 2.375],
      [2.5, 2.875],
    ] as const) {
      const finding = solve(pipe(name), 'in').findingsOf('pipe-nominal')[0]!
      expect(finding.level).toBe('warn')
      const [{ design }] = remediesOf(pipe(name), finding, 'in') as [ReturnType<typeof remediesOf>[number]]
      assertNear(design.coping!.outside, measures * inch, 1e-9)
      expect(of(design, 'pipe-nominal')).toBe('')
    }
    expect(of(pipe(2), 'pipe-nominal')).toBe(
      'warn: the pipe is taken as 2 in thick in real; pipe sold as 2 in measures 2 3/8 in outside: type what you measure (outside: 2 3/8)',
    )
    for (const measured of [1.66, 1.9, 2.375, 2.875, 1.75])
      expect(of(pipe(measured), 'pipe-nominal')).toBe('')
    expect(said({ ...plain, coping: piped({ outside: 2 * inch }) }, 'pipe-nominal')).toEqual([])
  })

  test('the least toe of a run-out takes a whole first stud where it lies, and a sixteenth less does not', () => {
    const high = { ...base, toe: 3 * inch }
    const [, whole, top, bottom, left] =
      /a toe of (\d+)(?: (\d+)\/(\d+))? in, the least for a whole first stud, leaves ([\d /]+) in/.exec(
        of(high, 'toe-step'),
      )!
    const toe = Number(whole) + (top ? Number(top) / Number(bottom) : 0)
    expect(of({ ...base, toe: toe * inch }, 'stud-toe')).toBe('')
    expect(of({ ...base, toe: (toe - 1 / 16) * inch }, 'stud-toe')).not.toBe('')
    // c = 84, R = 85
    const [n, t, b] = left!.split(/[ /]/).map(Number)
    assertNear(n! + (t ? t / b! : 0), 84 * Math.acos((84 - toe) / 85), 1 / 32, 'left to bridge')
  })

  test('the note of a run-out says how long its sheet is cut, and what lies where', () => {
    // closed form: c = 84, R = 85: 84 · acos(82.5 / 85) = 20.42 to bridge, 2 in on the skin and 3 on the floor
    const bridge = 84 * Math.acos(82.5 / 85)
    const sheet = Math.ceil((bridge + 5) * 16) / 16
    expect(of(base, 'toe-step')).toContain(
      `cut its sheet ${Math.floor(sheet)} ${Math.round((sheet % 1) * 16)}/16 in long (2 in screwed on the skin, 3 in flat on the floor) and pack under it where over 4 in hangs free`,
    )
  })
})
