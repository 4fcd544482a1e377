import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { sideOfQuarter } from '../../../src/ramp/kinds/quarter.ts'
import { circleOf, piped, plain, reveals, solve } from '../ramps.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the side of a quarter alone', () => {
  test('is none where a round seat is shut, and the whole ramp has its own up to the limit', () => {
    const seats = fc.record({
      outside: real(30, 90),
      height: real(350, 900),
      ratio: real(1.4, 3),
      up: real(-15, 25),
    })
    let looked = 0
    fc.assert(
      fc.property(seats, ({ outside, height, ratio, up }) => {
        const at = (out: number): QuarterDesign => ({
          ...plain,
          height: { layer: 'deck', value: height },
          transition: circleOf('surface', ratio * height),
          coping: piped({ outside, seat: 'round' }, reveals(up, out)),
        })
        const stops = (out: number): boolean => {
          const { side } = solve(at(out)).ramp
          expect(sideOfQuarter(at(out), 'mm')).toEqual(side)
          return side === null
        }
        if (stops(0)) return
        looked++
        // `out` at which the seat shuts: the pipe goes into the wood
        let [shut, open] = [-outside, 0]
        expect(stops(shut)).toBe(true)
        while (open - shut > 1e-8) {
          const middle = (open + shut) / 2
          if (stops(middle)) shut = middle
          else open = middle
        }
        for (const near of [1e-7, 1e-5, 1e-3, 0.1, 1]) stops(shut - near)
      }),
      { numRuns: 15 },
    )
    expect(looked).toBeGreaterThan(5)
  })
})
