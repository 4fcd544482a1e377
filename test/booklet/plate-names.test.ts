import { expect, test } from 'vitest'
import { nameRows, plateView } from '../../src/booklet/views/acts/plate-view.ts'
import { viewMarks } from '../../src/booklet/views/view.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import type { Flat } from '../../src/ramp/ramp.ts'
import { jointPlates } from '../../src/stock/joint-plate.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'
import { overlaps, wordsOf } from './words.ts'

test('a name goes over those that it reaches, and no higher', () => {
  expect(nameRows([{ at: 5, wide: 10 }])).toEqual([0])
  expect(
    nameRows([
      { at: 5, wide: 10 },
      { at: 40, wide: 10 },
    ]),
  ).toEqual([0, 0])
  expect(nameRows([5, 10, 15].map((at) => ({ at, wide: 30 })))).toEqual([2, 1, 0])
})

test('names of studs behind a plate do not cover each other', () => {
  const design = designOf(templateText('quarter-and-flat-mm').replace(/every: 200/g, 'every: 120'))
  const solved = wholeDesign(design)
  const [plate] = jointPlates(solved.ramps, 'mm')
  const flat = solved.ramps.find(({ name }) => name === plate!.flat) as Flat
  const [quarter] = curvedOf(solved.ramps)
  const words = wordsOf(viewMarks(plateView(quarter!, flat, plate!, 'mm', 0.2)))
  expect(words.filter(({ text }) => /^stud .* of quarter/.test(text)).length).toBeGreaterThan(1)
  expect(overlaps(words)).toEqual([])
})
