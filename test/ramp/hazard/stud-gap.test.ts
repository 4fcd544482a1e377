import { expect, test } from 'vitest'
import { plain, said, solve, studded } from '../ramps.ts'

const gaps = (every: number): readonly number[] => {
  const { studs } = solve({ ...plain, studs: studded({ every }) }).ramp
  return studs.slice(1).map((stud, i) => stud.at - stud.width / 2 - studs[i]!.at - studs[i]!.width / 2)
}

test('a gap more than a tenth wider than the others is said, with how wide it is', () => {
  let [heard, silent] = [0, 0]
  for (let every = 100; every <= 300; every += 5) {
    const wide = gaps(every).filter((gap) => gap > 1.1 * (every - 38) + 1e-6)
    const message = said({ ...plain, studs: studded({ every }) }, 'stud-gap').join()
    if (wide.length === 0) {
      expect(message).toBe('')
      silent++
    } else {
      heard++
      for (const gap of wide) expect(message).toContain(`${Number(gap.toFixed(1))} mm between the studs`)
    }
  }
  expect(heard).toBeGreaterThan(3)
  expect(silent).toBeGreaterThan(3)
})
