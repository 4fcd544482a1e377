import { expect, test } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import { solveTransition } from '../../src/ramp/side/solve-transition.ts'
import { steepChoices } from '../../src/ramp/steep-choices.ts'
import { steepnessWord } from '../../src/ramp/steepness.ts'

const design = (height: string, circle: string, tangent: string): QuarterDesign => {
  const reading = readDesign(
    `title: Boathouse\nunits: mm\nramps:\n  - width: 1216\n    height: { ${height}: 600 }\n    transition: { circle: { ${circle}: 1700 }, tangent: { ${tangent}: 20 } }\n    toe: 60\n    deck: 500\n    skin: [9 plywood, 9 plywood]\n    deck-board: 15 plywood\n`,
  )
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  return reading.design.ramps[0] as QuarterDesign
}
const wordOf = (ramp: QuarterDesign): string =>
  steepnessWord(solveTransition(ramp, 'mm').transition!.lipAngle)

test('a radius and a height of each word make a lip of that word, and a little past them the next', () => {
  let looked = 0
  for (const height of ['frame', 'deck', 'surface'])
    for (const circle of ['frame', 'surface'])
      for (const tangent of ['frame', 'surface']) {
        const ramp = design(height, circle, tangent)
        for (const { word, radius, height: value } of steepChoices(ramp)) {
          const round = (by: number): QuarterDesign => ({
            ...ramp,
            transition: {
              ...ramp.transition,
              circle: { ...ramp.transition.circle, radius: radius + by },
            },
          })
          const high = (by: number): QuarterDesign => ({
            ...ramp,
            height: { ...ramp.height, value: value + by },
          })
          expect([wordOf(round(0.01)), wordOf(high(-0.01))]).toEqual([word, word])
          expect(wordOf(round(-0.01))).not.toBe(word)
          expect(wordOf(high(0.01))).not.toBe(word)
          looked++
        }
      }
  expect(looked).toBe(72)
})
