import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Mark } from '../../src/drawing/drawing.ts'
import { pathBounds } from '../../src/geometry/bounds.ts'
import { lipTrial } from '../../src/pattern/lip-trial.ts'
import { pipeStrip } from '../../src/pattern/pipe-strip.ts'
import { hasStop } from '../../src/ramp/check.ts'
import { anyRamp, inch, piped, plain, solve } from '../ramp/ramps.ts'
import { assertNear } from '../support/near.ts'

describe('the strip that is wrapped round the pipe', () => {
  test('a tick for each half millimetre, at π times the diameter with the paper', () => {
    const { ticks } = pipeStrip(60.3, 1000, 'mm')!
    // 60.3 lies next to 60.5; 6 ticks on either side of it
    expect(ticks.length).toBe(13)
    ticks.forEach(({ at, label }, i) => {
      const diameter = 57.5 + i / 2
      assertNear(at, Math.PI * (diameter + 0.1), 1e-9, `${diameter}`)
      expect(label).toBe(Number.isInteger(diameter) ? `${diameter}` : null)
    })
  })

  test('a tick for each 1/32 in, sixteenths labelled', () => {
    const { ticks } = pipeStrip(2.375 * inch, 1000, 'in')!
    ticks.forEach(({ at }, i) => {
      assertNear(at, Math.PI * ((2.375 + (i - 4) / 32) * inch + 0.1), 1e-9, `tick ${i}`)
    })
    expect(ticks.map((t) => t.label)).toEqual([
      '2 1/4',
      null,
      '2 5/16',
      null,
      '2 3/8',
      null,
      '2 7/16',
      null,
      '2 1/2',
    ])
  })

  test('is left out where the page is too short for it, and ends past its last tick', () => {
    const strip = pipeStrip(60.3, 1000, 'mm')!
    expect(strip.length).toBeGreaterThan(strip.ticks.at(-1)!.at)
    expect(pipeStrip(60.3, strip.length, 'mm')).toEqual(strip)
    expect(pipeStrip(60.3, strip.length - 0.01, 'mm')).toBeNull()
  })
})

describe('the piece of scrap for the lip trial', () => {
  const { ramp } = solve({ ...plain, coping: piped() })

  test('carries the notch, the pipe and the lip, and is called by ramp and part', () => {
    const trial = lipTrial(ramp, 170, 200, 'mm')!
    const { piece } = trial
    const { centre } = ramp.coping!
    expect(trial.name).toBe('ramp/lip')
    expect(trial.outline).toBe(ramp.side!.outline)
    expect(piece.x0).toBeLessThan(ramp.transition!.lip.x)
    expect(piece.x1).toBeGreaterThan(centre.x + 30.15)
    expect(piece.y0).toBeLessThan(centre.y - 30.15)
    expect(piece.y1).toBeGreaterThan(Math.max(ramp.transition!.heights.deck, centre.y + 30.15))
    expect(trial.steps[0]).toBe(
      'The pipe should stand 8 mm above the deck board and 6 mm out of the ridden face: that is its reveal.',
    )
  })

  test('there is none without a pipe, and none for a ramp that cannot be sawn', () => {
    expect(lipTrial(solve(plain).ramp, 170, 200, 'mm')).toBeNull()
    expect(lipTrial(solve({ ...plain, coping: piped(), chamfer: 3000 }).ramp, 170, 200, 'mm')).toBeNull()
  })

  test('stays inside the room given and on the panel, whatever the ramp', () => {
    fc.assert(
      fc.property(
        anyRamp.filter((design) => design.coping !== null && !hasStop(solve(design).findings)),
        fc.double({ min: 40, max: 400, noNaN: true }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        (design, width, height) => {
          const own = solve(design).ramp
          const trial = lipTrial(own, width, height, 'mm')
          if (!trial) return
          const { piece, marks } = trial
          expect(piece.x1 - piece.x0).toBeLessThanOrEqual(width + 1e-9)
          expect(piece.y1 - piece.y0).toBeLessThanOrEqual(height + 1e-9)
          expect(piece.x0).toBeGreaterThanOrEqual(0)
          expect(piece.x1).toBeLessThanOrEqual(own.side!.length + 1e-9)
          expect(piece.y0).toBeGreaterThanOrEqual(0)
          const drawn = marks.flatMap((mark: Mark) => (mark.kind === 'stroke' ? [pathBounds(mark.path)] : []))
          expect(Math.max(...drawn.map((box) => box.y1))).toBeLessThanOrEqual(piece.y1 + 1e-6)
          expect(Math.max(...drawn.map((box) => box.x1))).toBeLessThanOrEqual(piece.x1 + 1e-6)
        },
      ),
      { numRuns: 200, seed: 13, endOnFailure: true },
    )
  })
})
