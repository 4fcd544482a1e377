import { readFileSync } from 'node:fs'
import type { Design } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import { rectangle } from '../../src/geometry/path.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { nest } from '../../src/stock/panel/nest.ts'
import { blankOf } from '../../src/stock/panel/place/shape.ts'

/** What panels cost, ms of the processor. Argument: a pair. */
const designOf = (text: string): Design => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  return reading.design
}
const cost = (work: () => unknown): number => {
  const start = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1000
}
const pair = readFileSync(process.argv[2]!, 'utf8')

// Hopper and Turton, C1-P1: a strip 20 wide, 20 long at best
const rectangles = '2x12 7x12 8x6 3x6 3x5 5x5 3x12 3x7 5x7 2x6 3x2 4x2 3x4 4x4 9x2 11x2'
  .split(' ')
  .map((size) => {
    const [w, h] = size.split('x').map(Number) as [number, number]
    const blank = blankOf(rectangle(0, 0, w, h))
    return { blank, alike: size, grain: null, faced: false, mustFace: false }
  })
const published = cost(() => {
  const { filled } = nest(rectangles, [{ length: 21, width: 20, count: null }], { kerf: 0, trim: 0, step: 1 })
  if (filled.length !== 1) throw new Error('C1-P1 does not come out of 20 × 21')
})

// sides of some 8 ft, all their skins, and a twin: cold, as in a process of its own
const long = designOf(pair.replace(/^ {4}deck: 500/m, '    length: 2400'))
const nests = cost(() => {
  const job = cutsJob(long)
  if ('refused' in job) throw new Error('the pair is refused')
  if (job.solved.ramps[0]!.length !== 2400) throw new Error('the sides are not 8 ft')
})

console.log(JSON.stringify({ 'C1-P1 in 21': published, 'a pair of 8 ft and its skins': nests }))
