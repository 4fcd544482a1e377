import { describe, expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { answerChecks, answerLine } from '../../src/job/settle/answer-words.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import { hasStop } from '../../src/ramp/check/check.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { assertNear } from '../support/near.ts'
import { randomFrom } from '../support/random.ts'

interface Said {
  readonly height?: string
  readonly radius?: string
  readonly toe?: string
  readonly deck?: string
  readonly more?: string
}

const text = ({ height = '600', radius = '1700', toe = '40', deck = '500', more = '' }: Said): string =>
  `title: Boathouse settled
units: mm
ramps:
  - width: 1216
    height: { frame: ${height} }
    transition: { circle: { surface: ${radius} } }
    toe: ${toe}
    deck: ${deck}
    skin: [9 plywood, 9 plywood]
    run-out: { sheet: 1.5 steel }
    ${more}
`

const settled = (said: string) => {
  const reading = readSettled(said)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading
}
const problemsOf = (said: string): readonly string[] => {
  const reading = readSettled(said)
  return 'problems' in reading ? reading.problems.map(({ path, message }) => `${path}: ${message}`) : []
}
const design = (said: string) => {
  const reading = readDesign(said)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design
}
const quarterOf = (said: string) => {
  const [ramp] = solveDesign(design(said)).ramps
  if (ramp?.kind !== 'quarter') throw new Error('no quarter')
  return ramp
}
const longOf = (said: string): number => quarterOf(said).side!.length

const degree = Math.PI / 180

describe('a figure that is left to the program', () => {
  test('is the nearest in whole mm to the angle that is asked for, by the closed form', () => {
    // cos(lip) = (c − h)/R with c = surface radius and R = surface radius + 18: h = c − R cos(lip)
    const height = settled(text({ height: 'solve', more: 'lip: 48°' })).answers[0]!.mm
    assertNear(height, Math.round(1700 - 1718 * Math.cos(48 * degree)), 1e-9)
    // r − (r + 18) cos(lip) = 600
    const radius = (600 + 18 * Math.cos(48 * degree)) / (1 - Math.cos(48 * degree))
    const found = settled(text({ radius: 'solve', more: 'lip: 48°' })).answers[0]!.mm
    assertNear(found, Math.round(radius), 1e-9)
  })

  test('goes as far as its limit allows, and 1 mm more passes it', () => {
    const [answer] = settled(text({ deck: 'solve', more: 'limits: { length: 1300 }' })).answers
    expect(answer!.binds).toEqual(['length'])
    expect(longOf(text({ deck: String(answer!.mm) }))).toBeLessThanOrEqual(1300 + 1e-6)
    expect(longOf(text({ deck: String(answer!.mm + 1) }))).toBeGreaterThan(1300)
    expect(answerLine(answer!, 'mm')).toBe(`deck ${answer!.mm} mm: the most that length 1300 mm allows`)
  })

  test('keeps to the pages of paper', () => {
    const [answer] = settled(text({ height: 'solve', more: 'limits: { paper: 5 }' })).answers
    expect(answer!.measures.paper).toBeLessThanOrEqual(5)
    expect(answer!.binds).not.toEqual([])
  })

  test('keeps to the panels of its sides', () => {
    const [answer] = settled(text({ height: 'solve', more: 'limits: { panels: 1 }' })).answers
    expect(answer!.measures.panels).toBe(1)
    expect(answer!.binds).toEqual(['panels'])
    // the panel is 1220 × 2440: one side of the answer, turned end for end against the other, and 5 mm trimmed, is no wider
    expect(answer!.mm).toBeGreaterThan(700)
    expect(answer!.mm).toBeLessThanOrEqual(1210)
  })

  test('comes as near as it can where no value keeps the limit, and says which limit that is', () => {
    const { answers } = settled(text({ deck: 'solve', more: 'limits: { length: 800 }' }))
    expect(answers[0]!.passed).toEqual(['length'])
    const [check] = answerChecks(answers, 'mm')
    expect(check).toMatchObject({ id: 'limits', level: 'warn', ramp: 'ramp' })
    expect(check!.message).toMatch(
      /^no deck keeps length 800 mm: with \d+ mm, the nearest, the side is \d+ mm long/,
    )
  })

  test('is a problem of the file where nothing finds it, or two are left open, or a limit limits nothing', () => {
    const cases: readonly (readonly [Said, RegExp])[] = [
      [{ deck: 'solve' }, /^ramps\[0\]\.deck: nothing says what `deck` is found by; add/],
      [
        { deck: 'solve', toe: 'solve', more: 'limits: { length: 900 }' },
        /`toe` and `deck` are both left to the program/,
      ],
      [{ deck: 'solve', more: 'lip: 48°' }, /does not depend on `deck`/],
      [{ more: 'lip: 48°' }, /`lip` follows from height, radius and tangent/],
      [{ more: 'limits: { length: 900 }' }, /`limits` say how far/],
      [{ height: 'solve', more: 'lip: 95°' }, /`95°` is not an angle from 10° to 89°/],
      [{ height: 'solve', more: 'limits: { lip: 50..40° }' }, /is not an angle/],
    ]
    for (const [said, message] of cases) expect(problemsOf(text(said))[0]).toMatch(message)
  })

  test('is refused by whoever reads figures alone', () => {
    const reading = readDesign(text({ height: 'solve', more: 'lip: 48°' }))
    expect('problems' in reading && reading.problems[0]!.message).toBe(
      '`height.frame` is left to the program: find it first',
    )
  })
})

test('of generated designs: typed in, it gives the same design; a slow search finds no better; 1 mm beyond fails', () => {
  const next = randomFrom(29)
  const between = (low: number, high: number): number => Math.round(low + (high - low) * next())
  let [found, bound, angles] = [0, 0, 0]
  for (let i = 0; i < 60; i++) {
    const [height, radius, deck] = [between(350, 900), between(1200, 2400), between(250, 700)]
    const figure = (['height', 'radius', 'deck'] as const)[i % 3]!
    const lip = figure !== 'deck' && i % 2 === 0 ? between(40, 60) : null
    const length = between(1000, 1700)
    const more = lip === null ? `limits: { length: ${length} }` : `lip: ${lip}°`
    const said = { height: String(height), radius: String(radius), deck: String(deck) }
    const reading = readSettled(text({ ...said, [figure]: 'solve', more }))
    if ('problems' in reading) continue
    const answer = reading.answers[0]!
    const typed = (mm: number): string => text({ ...said, [figure]: String(mm) })
    expect(reading.design).toEqual(design(typed(answer.mm)))
    found++
    const lipOf = (mm: number): number => quarterOf(typed(mm)).transition!.lipAngle / degree
    if (lip !== null && answer.binds.length === 0) {
      // every whole mm about it, one by one
      for (let mm = answer.mm - 3; mm <= answer.mm + 3; mm++)
        expect(Math.abs(lipOf(mm) - lip)).toBeGreaterThanOrEqual(Math.abs(lipOf(answer.mm) - lip) - 1e-9)
      angles++
    } else if (lip === null && answer.binds.includes('length')) {
      expect(hasStop(solveDesign(design(typed(answer.mm))).checks)).toBe(false)
      expect(longOf(typed(answer.mm))).toBeLessThanOrEqual(length + 1e-6)
      expect(longOf(typed(answer.mm + 1))).toBeGreaterThan(length)
      bound++
    }
  }
  expect(found).toBeGreaterThan(45)
  expect(bound).toBeGreaterThan(12)
  expect(angles).toBeGreaterThan(10)
})
