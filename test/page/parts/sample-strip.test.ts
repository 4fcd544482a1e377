import { expect, it } from 'vitest'
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

it('where zeros differ the legend says of which layer and ramp each is; one for all is said as it is', () => {
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
})
