import { expect, test } from 'vitest'
import { bookletSaid, flatAlone } from './said.ts'

test('of boards that are cut alike, more than a page holds, the table goes on on the next', () => {
  const another = '  - name: two\n    like: flat\n'
  const said = bookletSaid(
    flatAlone(6000, another)
      .replace('count: 3', 'count: 2')
      .replace('every: 250', 'every: 100')
      .replace('ramps:', 'stock: { panel: 1220 x 6000, timber: [2400] }\nramps:'),
    ['cutting'],
  )
  const counts = [...said.matchAll(/(\d+) boards 45 × 95, \d+ long;/g)].map(([, count]) => Number(count))
  const count = Math.max(...counts)
  // rows are 4 mm high or more, a page of A4 lower than 297
  expect(count).toBeGreaterThan(297 / 4)
  const own = said.split(`${count} boards 45`)[1]!.split(/ boards? 45 × /)[0]!
  expect(new Set([...own.matchAll(/ (\d+) T\d+ /g)].map(([, board]) => board)).size).toBe(count)
  expect(own.match(/its pieces, from the squared end/g)!.length).toBeGreaterThan(1)
})
