import { readDesign } from '../../src/design/read.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { sidePatterns } from '../../src/pattern/patterns.ts'
import { randomFrom } from '../support/random.ts'
import { wholeDesign } from '../support/whole.ts'

export interface Quarter {
  readonly height: number
  readonly radius: number
  readonly toe: number
  readonly deck: number
  readonly coping: string
}

/** A quarter of the boathouse, mm. */
export const quarterText = (quarters: readonly Quarter[]): string =>
  [
    'title: Boathouse covers',
    'units: mm',
    'ramps:',
    ...quarters.map(
      ({ height, radius, toe, deck, coping }, i) =>
        `  - { name: ramp ${i + 1}, kind: quarter, width: 1216, height: { frame: ${height} }, transition: { circle: { frame: ${radius} }, tangent: { frame: 0 } }, ` +
        `toe: ${toe}, deck: ${deck}, sides: { thickness: 18, count: 2 }, studs: { section: 38 x 89, every: 200 }, skin: [9 plywood, 9 plywood], ` +
        `deck-board: 15 plywood, coping: ${coping}, chamfer: none }`,
    ),
    '',
  ].join('\n')

export const patternsOf = (text: string): readonly Pattern[] => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  return sidePatterns(wholeDesign(reading.design).ramps, reading.design.units)
}

/** Low to tall, tight to wide, pipe or none. Lip angles 35° … 78°. */
export const generatedQuarter = (number: number): Quarter => {
  const next = randomFrom(number * 7919 + 3)
  const between = (low: number, high: number): number => Math.round(low + (high - low) * next())
  const angle = ((35 + 43 * next()) * Math.PI) / 180
  const height = between(300, 1400)
  return {
    height,
    radius: Math.round(Math.max(400, height / (1 - Math.cos(angle)))),
    toe: between(10, 60),
    deck: between(300, 900),
    coping: next() < 0.25 ? 'none' : '{ outside: 60.3, up: 8, out: 6, seat: square }',
  }
}
