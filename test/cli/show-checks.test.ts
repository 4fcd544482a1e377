import { expect, it } from 'vitest'
import { showChecks } from '../../src/cli/show-checks.ts'
import type { Check } from '../../src/ramp/check.ts'

const check = (ramp: string, message: string, level: Check['level'] = 'note'): Check => ({
  id: 'zinc-fume',
  level,
  ramp,
  message,
})

it('what holds for several ramps alike is said once, for all of them by name', () => {
  const said = showChecks(
    [
      check('outer', 'mind the fume', 'warn'),
      check('outer', 'one'),
      check('inner', 'two'),
      check('inner', 'one'),
    ],
    true,
  )
  expect(said).toEqual([
    'watch outer: mind the fume [zinc-fume]',
    'note  outer, inner: one [zinc-fume]',
    'note  inner: two [zinc-fume]',
  ])
})

it('the same words at another level stay apart', () => {
  expect(showChecks([check('a', 'x', 'warn'), check('b', 'x')], true)).toHaveLength(2)
})

it('a single ramp goes without its name', () => {
  expect(showChecks([check('outer', 'one')], false)).toEqual(['note  one [zinc-fume]'])
})
