import { expect, test } from 'vitest'
import { type ScrewUse, screwDiameter, screwHead, screwSize } from '../../../src/ramp/screws/screw-sort.ts'
import { bySize } from '../../../src/stock/screws.ts'
import { assertNear } from '../../support/near.ts'

const uses: readonly ScrewUse[] = [
  'skin',
  'deck board',
  'run-out',
  'run-out strips',
  'frame',
  'plates',
  'pipe',
  'pipe blocks',
  'wheels',
]

test('gauges are as thick as the table of wood screws says', () => {
  // ASME B18.6.1, from memory: No. 8 is 0.164 in, No. 10 is 0.190 in
  assertNear(screwDiameter('skin', 'in'), 0.164 * 25.4, 1e-9)
  assertNear(screwDiameter('frame', 'in'), 0.19 * 25.4, 1e-9)
})

test('both systems name screws of nearly one thickness, all of them thicker than the hole that is drilled for them', () => {
  for (const use of uses) {
    assertNear(screwDiameter(use, 'in'), screwDiameter(use, 'mm'), 0.4)
    expect(screwDiameter(use, 'mm')).toBeGreaterThan(3)
    expect(screwDiameter(use, 'in')).toBeGreaterThan(25.4 / 8)
  }
})

test("those of the pipe pass its small hole, their heads do not, but pass the large one: twice the screw's thickness, common practice, no source", () => {
  for (const [units, small, large] of [
    ['mm', 5, 13],
    ['in', (3 / 16) * 25.4, 25.4 / 2],
  ] as const) {
    const screw = screwDiameter('pipe', units)
    expect(screw).toBeLessThan(small)
    expect(2 * screw).toBeGreaterThan(small)
    expect(2 * screw).toBeLessThan(large)
  }
})

test('a size is told as it is sold', () => {
  const show = (mm: number): string => String(mm)
  expect(screwSize('skin', 60, 'mm', show)).toBe('4.5 × 60')
  expect(screwSize('frame', 70, 'in', show)).toBe('No. 10 × 70')
})

test('screws of one length but another thickness or head are bought apart', () => {
  const line = (use: ScrewUse, length: number | null, count: number) => ({ use, length, count })
  const sorted = bySize([
    line('skin', 30, 5),
    line('frame', 70, 8),
    line('pipe', 30, 3),
    line('wheels', 30, 4),
    line('skin', null, 2),
    line('frame', 30, 1),
  ])
  expect(sorted.map(({ length, count, uses: own }) => [length, count, own])).toEqual([
    [70, 8, ['frame']],
    [30, 5, ['skin']],
    [30, 3, ['pipe']],
    [30, 4, ['wheels']],
    [30, 1, ['frame']],
    [null, 2, ['skin']],
  ])
  expect(screwHead('wheels')).not.toBe(screwHead('frame'))
  expect(screwHead('pipe')).not.toBe(screwHead('skin'))
})
