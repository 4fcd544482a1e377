import { expect, test } from 'vitest'
import type { Check } from '../../src/ramp/check/check.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { templates, templateText } from '../support/templates.ts'
import { bookletSaid, doubtful } from './said.ts'

/** What a part of the booklet says, and the checks of the design. */
const told = (text: string, part: string): { readonly said: string; readonly checks: readonly Check[] } => ({
  said: bookletSaid(text, [part]).toLowerCase(),
  checks: solveDesign(designOf(text)).checks,
})

const shown = ({ message }: Check): string => message.replaceAll('`', '').toLowerCase()

test('all that the figures warn of stands before the first cut, what holds for two ramps once', () => {
  const twice = `${doubtful}${doubtful.slice(doubtful.indexOf('  - name')).replace('short', 'second')}`
  for (const text of [doubtful, twice]) {
    const { said, checks } = told(text, 'first')
    const warned = checks.filter(({ level }) => level === 'warn')
    expect(new Set(warned.map(({ id }) => id))).toEqual(new Set(['toe-step', 'tips', 'skin-load']))
    for (const check of warned) expect(said.split(shown(check))).toHaveLength(2)
    expect(said).toContain('is mended in the design')
  }
  expect(told(twice, 'first').said).toContain('short and second: a rider')
  for (const name of templates) {
    const { said, checks } = told(templateText(name), 'first')
    expect(said.includes('what to watch')).toBe(checks.some(({ level }) => level === 'warn'))
  }
})

test('a ramp that a rider pushes back is told to be tied down where it is moved', () => {
  const { said, checks } = told(templateText('quarter-in'), 'moving')
  const pushed = checks.find(({ id }) => id === 'pushed-back')!
  expect(said).toContain(shown(pushed))
})

test('of several ramps that are pushed back each is told by its name', () => {
  const { said } = told(templateText('pair-mm'), 'moving')
  for (const name of ['outer', 'inner']) expect(said).toMatch(new RegExp(`${name}: a rider of 80 kg`))
})

test('the first page speaks of a guard where the figures note one', () => {
  const high = (deck: number): string => `title: High
units: mm
ramps:
  - width: 1216
    height: { deck: ${deck} }
    transition: { circle: { surface: 2000 } }
    toe: 40
    deck: 600
    skin: [9 plywood, 9 plywood]
    coping: none
`
  for (const [deck, guarded] of [
    [761, false],
    [762, false],
    [763, true],
  ] as const) {
    const { said, checks } = told(high(deck), 'glance')
    expect(checks.some(({ id }) => id === 'guard-height')).toBe(guarded)
    expect(said.includes('guards are commonly required')).toBe(guarded)
  }
})
