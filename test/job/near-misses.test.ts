import { describe, expect, test } from 'vitest'
import { editDesign } from '../../src/design/edit.ts'
import { readDesign } from '../../src/design/read.ts'
import { writeStarter } from '../../src/design/starter.ts'
import { starterFor } from '../../src/design/starters.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { figuresJob } from '../../src/job/figures.ts'
import { withNearMisses } from '../../src/job/near/near-misses.ts'

const quarter = writeStarter(starterFor('quarter', 'mm'))
const designOf = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  return reading.design
}
const missesOf = (text: string): readonly string[] =>
  withNearMisses(figuresJob(designOf(text)), text, designOf(text))
    .solved.checks.filter(({ id }) => id === 'near-miss')
    .map(({ message }) => message)
const panelsOf = (text: string): number => {
  const job = cutsJob(designOf(text))
  if ('refused' in job) throw new Error(job.refused)
  return job.sheets.reduce((sum, { panels }) => sum + panels.length, 0)
}
const boardsOf = (text: string): number =>
  figuresJob(designOf(text)).stock!.timber.reduce((sum, { boards }) => sum + boards.length, 0)

describe('a near miss', () => {
  test('is told with the widest ramp whose skin comes out of one panel less, and with the trim that costs it', () => {
    // two pieces and a cut of 3 between the trimmed ends of 2440: (2440 − 2 · 5 − 3) / 2 = 1213.5
    const misses = missesOf(quarter)
    expect(misses).toEqual([
      '`width: 1213 mm` in place of 1216 mm saves 1 panel of 9 plywood; ' +
        'panels that need no trimming (`stock: { trim: 0 }`) save 1 panel of 9 plywood',
    ])
    expect(panelsOf(editDesign(quarter, 'ramps.0.width', '1213 mm'))).toBe(panelsOf(quarter) - 1)
    expect(panelsOf(editDesign(quarter, 'ramps.0.width', '1214 mm'))).toBe(panelsOf(quarter))
    expect(panelsOf(editDesign(quarter, 'stock.trim', '0'))).toBe(panelsOf(quarter) - 1)
  })

  test('is told of studs', () => {
    // two studs from 2400 squared at both ends: (2400 − 10 + 3) / 2 − 3 = 1193.5; the sides are 18 each
    const wide = editDesign(editDesign(quarter, 'stock.timber', '[2400]'), 'ramps.0.width', '1240')
    const [told] = missesOf(wide)
    expect(told).toMatch(/^`width: 1229 mm` in place of 1240 mm saves \d+ timbers/)
    expect(boardsOf(editDesign(wide, 'ramps.0.width', '1229 mm'))).toBeLessThan(boardsOf(wide))
    expect(boardsOf(editDesign(wide, 'ramps.0.width', '1230 mm'))).toBe(boardsOf(wide))
  })

  test('is not told where all fits', () => {
    const fits = editDesign(quarter, 'ramps.0.width', '1150')
    expect(missesOf(fits).filter((words) => words.includes('width') || words.includes('trim'))).toEqual([])
  })
})
