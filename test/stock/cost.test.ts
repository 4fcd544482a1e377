import { expect, test } from 'vitest'
import { buyJob, buyRecord } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../booklet/said.ts'
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
