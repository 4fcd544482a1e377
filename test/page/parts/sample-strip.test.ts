import { expect, it } from 'vitest'
import { kindWords } from '../../../src/page/parts/parts-legend.ts'
import { zeroWords } from '../../../src/page/parts/sample-strip.ts'
import type { StoryStrip } from '../../../src/pattern/story-strip.ts'

const strip = (ramps: string, what: string, zero: string): StoryStrip => ({
  name: what,
  kind: 'layer',
  ramps,
  what,
  aside: null,
  straight: false,
  length: 1000,
  zero,
  rows: [{ edge: 'SHEET', words: 'lay it on the sheet', marks: [] }],
  rings: null,
  onTicks: null,
  notes: [],
})

it('where zeros differ the legend says of which layer and ramp each is, and so of an edge of two meanings; one for all is said as it is', () => {
  expect(zeroWords([strip('', 'layer 1', 'the end'), strip('', 'layer 2', 'the end')])).toEqual([
    'marks count from zero: the end',
  ])
  expect(
    zeroWords([
      strip('big', 'layer 1', 'the end'),
      strip('wee', 'layer 1', 'the end'),
      strip('big', 'layer 2', '6 mm up'),
    ]),
  ).toEqual(['zero of big, layer 1; wee, layer 1: the end', 'zero of big, layer 2: 6 mm up'])
  const meaning = (ramps: string, edge: string, words: string): StoryStrip => ({
    ...strip(ramps, edge, 'the side'),
    rows: [{ edge, words, marks: [] }],
  })
  expect(
    kindWords([
      meaning('big', 'LAYER 1', 'all rows'),
      meaning('big', 'LAYER 2', 'all but one'),
      meaning('wee', 'LAYER 2', 'all rows'),
    ]),
  ).toBe(
    'LAYER 1, LAYER 2 (wee) edge: all rows. LAYER 2 (big) edge: all but one. Marks count from zero: the side.',
  )
})
