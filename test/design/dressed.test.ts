import { expect, test } from 'vitest'
import { dressedSize } from '../../src/design/dressed.ts'

// PS 20, dry, in its own mm; from memory
const thick = { 1: 19, 2: 38, 4: 89 }
const wide = { 2: 38, 3: 64, 4: 89, 6: 140, 8: 184, 10: 235, 12: 286 }

test('a name in inches is told in whole mm as the standard has them', () => {
  let seen = 0
  for (const [thin, thickness] of Object.entries(thick))
    for (const [broad, width] of Object.entries(wide)) {
      if (Number(broad) < Number(thin)) continue
      expect(dressedSize(`${thin}x${broad}`)?.dry).toBe(`${thickness} x ${width}`)
      expect(dressedSize(`${broad} x ${thin}`)?.dry).toBe(`${thickness} x ${width}`)
      seen++
    }
  expect(seen).toBe(19)
  for (const none of ['3 x 4', '2 x 5', '2.5 x 4', '4 x 6 cm', '38 x 89'])
    expect(dressedSize(none)).toBeNull()
})
