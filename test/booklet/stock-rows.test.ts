import { expect, test } from 'vitest'
import { stockLines } from '../../src/booklet/stock-rows.ts'
import { partsOf } from '../../src/stock/parts.ts'
import { takeStock } from '../../src/stock/stock.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'
import { bookletSaid } from './said.ts'

test('how many wheels there are is told apart from where they are', () => {
  const rolling = templateText('quarter-mm').replace('# wheels:', 'wheels:')
  expect(bookletSaid(rolling, ['moving'])).toMatch(
    /Wheels: 4 wheels, at \d+, \d+, \d+ and \d+ from the left, \d+ off the floor/,
  )
})

test('the timbers with the wheels come out where a ramp is put away behind them', () => {
  const paired = `${templateText('quarter-mm')
    .replace('# wheels:', 'wheels:')
    .replace('- kind:', '- name: quarter\n    kind:')
    .trimEnd()}
  - name: inner
    like: quarter
    stores-inside: { ramp: quarter, clearance: 12 }
    height: { deck: 460 }
    deck: 300
    chamfer: none
    wheels: none
`
  const said = bookletSaid(paired, ['moving', 'glance'])
  expect(said).toMatch(
    /take out timbers (\d+) and (\d+) of quarter with its wheels, low at its back, and do not roll it/,
  )
  expect(said).toMatch(/Screw the timbers in again once inner is out/)
  expect(said).toMatch(/dashed are the timbers that come out with the wheels/)
  const design = designOf(paired)
  const solved = wholeDesign(design)
  const stock = takeStock(design, solved, partsOf(design, solved))
  expect(stockLines(stock, design).join('; ')).toMatch(
    /high, without timbers \d+ and \d+ of quarter with its wheels/,
  )
  // two in the same one: its timbers come out once
  const once = stockLines(stock, design)
  const twice = { ...stock, storings: [...stock.storings, ...stock.storings] }
  expect(stockLines(twice, design)).toEqual(once)
  const plain = (of: typeof stock): typeof stock => ({
    ...of,
    storings: of.storings.map((one) => ({ ...one, low: { ...one.low, wheels: false } })),
  })
  expect(stockLines(plain(twice), design)).toEqual(stockLines(plain(stock), design))
})
