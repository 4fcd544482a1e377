import { expect, it } from 'vitest'
import { type LayingWords, readDesign } from '../../src/index.ts'
import { laidAs } from '../../src/web/worker/laid-as.ts'
import { designOf } from '../../src/web/worker/lay.ts'
import { setOf } from '../../src/web/worker/make.ts'
import { templateText } from '../support/templates.ts'

const text = templateText('quarter-mm')

const planOf = (text: string, words: LayingWords) =>
  setOf({ text, lay: { words, profile: null }, design: designOf(text), answers: [] }).plan

/** Its code is the same where all that its pages depend on is. */
it.each<LayingWords>([
  {},
  { cover: 'ribbon', overlap: '15 mm' },
  { cover: 'whole', margin: '9mm, 14mm, 11mm, 16mm', strips: true },
  { margin: '1/2in' },
])('pages are laid as those of a set were: %j', (words) => {
  const plan = planOf(text, words)
  const found = laidAs(plan, text)
  expect(found.design).toBe(text)
  expect(planOf(found.design, found.words).set).toBe(plan.set)
})

it('a set on other paper than its design says brings its paper into the design', () => {
  const plan = planOf(text, { paper: 'a3', overlap: '20 mm' })
  const found = laidAs(plan, text)
  const reading = readDesign(found.design)
  expect('design' in reading && reading.design.paper).toBe('a3')
  const again = planOf(found.design, found.words)
  expect([again.paper, again.margins, again.overlap]).toEqual([plan.paper, plan.margins, plan.overlap])
})

it('of a design that cannot be read nothing is known', () => {
  expect(laidAs(planOf(text, {}), 'ramps: [')).toEqual({ design: 'ramps: [', words: {} })
})
