import { expect, test } from 'vitest'
import { figuresRows } from '../../src/booklet/figures-rows.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { lipTrial } from '../../src/pattern/lip/lip-trial.ts'
import { skinStrips } from '../../src/pattern/skin-strips.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'
import { wordsOf } from './words.ts'

/** What full-size pages, booklet and list say of one design. */
const saidOf = (text: string, only: readonly string[]) => {
  const design = designOf(text)
  const solved = solveDesign(design)
  const buy = buyJob(design)
  if (solved.stopped || isRefusal(buy)) throw new Error(JSON.stringify([solved.checks, buy]))
  const [ramp] = curvedOf(solved.ramps)
  const trial = lipTrial(ramp!, 168, 200, design.units)!
  return {
    rows: figuresRows(ramp!, design.units)
      .map((row) => row.join(' '))
      .join('\n'),
    strips: skinStrips(ramp!, design.units).map(({ aside }) => aside),
    trial: [...wordsOf(trial.marks).map((word) => word.text), ...trial.steps].join(' '),
    booklet: bookletSaid(text, only),
    list: buy.facts.stock.list.map(({ what }) => what),
  }
}

test.each([
  ['quarter-mm', '8 mm'],
  ['quarter-in', '5/16 in'],
])(
  '%s: the hole in which the saw turns has one size on the full-size pages, in the booklet and on the list',
  (name, drill) => {
    const { trial, booklet, list } = saidOf(templateText(name), ['cutting'])
    expect(trial).toContain(`drill ${drill} first`)
    expect(booklet).toContain(`drill a hole of ${drill} on the WASTE side`)
    const bits = list.find((what) => what.startsWith('drill, wood bits'))!
    expect(bits.split(/bits of |, /)).toContain(drill)
  },
)

test('a run-out in two pieces is sheared to the size of each', () => {
  const wide = templateText('quarter-mm')
    .replace('width: 1216', 'width: 3600')
    .replace('count: 2 ', 'count: 4 ')
  const { booklet } = saidOf(wide, ['cutting'])
  const [, size] = /let the shop shear: 2 of (\d+ × 1800)\. /.exec(booklet)!
  // as the panel has them
  const [length, width] = size!.split(' × ')
  expect(booklet.split(`run-out sheet, 1 from the left; ${width} × ${length}`)).toHaveLength(2)
  expect(booklet.split(`run-out sheet, 2 from the left; ${width} × ${length}`)).toHaveLength(2)
})

test.each([
  ['quarter-mm', '2 mm'],
  // 2 mm are 2.5/32 in
  ['quarter-in', 'a shade under 1/8 in'],
])('%s: the skin ends as far off the pipe in the booklet as at the lip trial', (name, gap) => {
  const { trial, booklet } = saidOf(templateText(name), ['skin'])
  expect(trial).toContain(`each layer of skin ${gap} short of the pipe`)
  expect(booklet).toContain(`its upper end stays ${gap} off it`)
})

test('a sheet is called what is typed wherever it is named', () => {
  const typed = templateText('quarter-in')
    .replace('[3/8 plywood, 3/8 plywood, 1/4 hardboard]', '[11/32 plywood, 11/32 plywood, 1/4 hardboard]')
    .replace('deck-board: 5/8 plywood', 'deck-board: 23/32 plywood')
  const { rows, strips, trial, booklet, list } = saidOf(typed, ['glance', 'skin', 'deck'])
  expect(rows).toMatch(/^skin 1 11\/32 plywood, /m)
  expect(rows).toMatch(/^board 23\/32 plywood, /m)
  expect(strips).toEqual(['11/32 in plywood', '11/32 in plywood', '1/4 in hardboard'])
  for (const words of ['layer 1: 11/32 in', 'deck board 23/32']) expect(trial).toContain(words)
  for (const words of ['layer 1, 11/32 plywood: K1', 'deck board, 23/32: D1', 'One sheet of 23/32 plywood, '])
    expect(booklet).toContain(words)
  expect(booklet).toMatch(/K1[^:]*: 11\/32 plywood, /)
  for (const name of ['11/32 plywood', '23/32 plywood'])
    expect(list.some((what) => what.startsWith(`${name}, 48 × 96`))).toBe(true)
})
