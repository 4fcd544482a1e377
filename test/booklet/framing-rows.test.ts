import { expect, test } from 'vitest'
import { framingRows } from '../../src/booklet/framing-rows.ts'
import { plain, plywood, wholeOf } from '../ramp/ramps.ts'

test.each([1, 2])('of %d layers the screws are said to stand as far apart as they do', (layers) => {
  const ramp = wholeOf({ ...plain, skin: Array.from({ length: layers }, () => plywood(9)) })
  const words = framingRows(ramp, 'mm')
    .find(([name]) => name === 'screws')!
    .join(' ')
  expect(words).toContain('250 apart at most')
  // rows of the only layer are no top sheet's
  expect(words.includes('top sheet')).toBe(layers > 1)
  ramp.skin.forEach(({ rows }, i) => {
    const most = layers > 1 && i === layers - 1 ? 175 : 250
    for (const { across } of rows)
      across.slice(1).forEach((at, k) => {
        expect(at - across[k]!).toBeLessThanOrEqual(most + 1e-6)
      })
  })
})
