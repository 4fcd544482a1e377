import { expect, test } from 'vitest'
import { buyJob, buyRecord } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'

const single = templateText('quarter-mm')
const recordOf = (more: string) => {
  const design = designOf(single.replace('units: mm', `units: mm\n${more}`))
  const job = buyJob(design)
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return buyRecord(design, job)
}

test('what the list comes to is whole cents, line by line and together', () => {
  let looked = 0
  for (let price = 1.01; price < 20; price += 0.37) {
    const { list, cost } = recordOf(
      `prices: { 18 plywood: ${price.toFixed(2)}, paint: ${(price / 3).toFixed(2)}, screws: 4.35, rubber: 0.1 }`,
    )
    const lines = list.flatMap((line) => (line.cost === null ? [] : [line.cost]))
    // in cents, as one counts
    const whole = lines.map((own) => Math.round(own * 100))
    expect(lines).toEqual(whole.map((own) => own / 100))
    expect(cost!.total).toBe(whole.reduce((sum, own) => sum + own, 0) / 100)
    looked += lines.length
  }
  expect(looked).toBeGreaterThan(200)
})

test('of plans of as little wood the one is taken that has prices, of one length', () => {
  const taken = (prices: string) =>
    recordOf(`stock: { timber: [2400, 4800] }\n${prices}`).list.flatMap(({ part, what, count, cost }) =>
      part === 'timber' ? [{ length: Number(/(\d+) mm long/.exec(what)![1]), count, cost }] : [],
    )
  // two pieces on 2400, four on 4800: the same wood
  for (const [length, count] of [
    [2400, 6],
    [4800, 3],
  ] as const)
    expect(taken(`prices: { 38 x 89 x ${length}: 5 }`)).toEqual([{ length, count, cost: 5 * count }])
  const bare = taken('prices: { paint: 5 }')
  expect(bare.reduce((sum, { length, count }) => sum + length * count, 0)).toBe(14_400)
  // where all have prices money decides
  expect(taken('prices: { 38 x 89 x 2400: 5, 38 x 89 x 4800: 11 }')[0]!.length).toBe(2400)
  expect(taken('prices: { 38 x 89 x 2400: 5, 38 x 89 x 4800: 9 }')[0]!.length).toBe(4800)
})

test('a price of a length that is not taken is told, unless all lengths have theirs and others cost less', () => {
  const unused = (prices: string) =>
    recordOf(`stock: { timber: [2400, 3000] }\nprices: { ${prices} }`).cost!.unused
  // two pieces go on either: the longer wastes more
  expect(unused('38 x 89 x 3000: 9')).toEqual(['38 x 89 x 3000'])
  expect(unused('38 x 89 x 2400: 5, 38 x 89 x 3000: 9')).toEqual([])
})

test('each size of a sheet may have its own price, before one of every size; of a size of the stock that is not taken none is told', () => {
  const both = '{ sheet: 9 plywood, size: 1250 x 2500 }, { sheet: 9 plywood, size: 1525 x 3050 }'
  const record = (panels: string, prices: string) =>
    recordOf(`stock: { panels: [${panels}] }\nprices: { ${prices} }`)
  const each = (size: string, prices: string) =>
    record(`{ sheet: 9 plywood, size: ${size} }`, prices).list.flatMap(({ what, each }) =>
      what.startsWith('9 plywood') ? [each] : [],
    )
  const prices = '9 plywood: 50, 9 plywood 1250 x 2500: 40, 9 plywood 3050 x 1525: 70'
  expect(each('1250 x 2500', prices)).toEqual([40])
  expect(each('1525 x 3050', prices)).toEqual([70])
  expect(each('1500 x 3000', prices)).toEqual([50])
  expect(each('1500 x 3000', '9 plywood 1250 x 2500: 40')).toEqual([null])
  expect(record(both, '9 plywood 1250 x 2500: 40, 9 plywood 1525 x 3050: 70').cost!.unused).toEqual([])
  expect(record(both, '9 plywood 1220 x 2440: 40').cost!.unused).toEqual(['9 plywood 1220 x 2440'])
})
