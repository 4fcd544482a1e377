import { expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { bookletJob } from '../../src/job/booklet.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import type { Check } from '../../src/ramp/check/check.ts'
import { templates, templateText } from '../support/templates.ts'
import { wordsOf } from './words.ts'

/** What a part of the booklet says, and the checks of the design. */
const told = (text: string, part: string): { readonly said: string; readonly checks: readonly Check[] } => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  const job = bookletJob(reading.design, usualLaying('a4'), {
    only: [part],
    fingerprint: () => '0123456789abcdef',
  })
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  const words = job.pages.flatMap(({ drawing }) => wordsOf(drawing).map((word) => word.text))
  return { said: words.join(' ').toLowerCase(), checks: job.solved.checks }
}

const shown = ({ message }: Check): string => message.replaceAll('`', '').toLowerCase()

/** Tips over backward, has a thin skin, ends in a step. */
const doubtful = `title: Short landing
units: mm
ramps:
  - name: short
    width: 1000
    height: { frame: 350 }
    transition: { circle: { frame: 1300 }, tangent: { frame: 0 } }
    toe: 12
    deck: 100
    sides: { thickness: 15 }
    studs: { section: 45 x 45, every: 180 }
    skin: [ 6.5 plywood, 6.5 plywood ]
    coping: { outside: 33.7, up: 4, out: 4 }
`

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

test('a ramp that a rider pushes back is told to be tied down where its rubber strip is', () => {
  const { said, checks } = told(templateText('quarter-in'), 'moving')
  const pushed = checks.find(({ id }) => id === 'pushed-back')!
  expect(said).toContain(shown(pushed))
  expect(said).toContain('helps to keep')
})
