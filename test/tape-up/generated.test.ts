import { describe, expect, it } from 'vitest'
import { jobOf } from './jobs.ts'
import { plotJob } from './plot.ts'
import { tapeUp } from './tape-up.ts'

/** `npm run hard` looks at as many more in the same way as it is asked for. */
const jobs = 80
const batch = 10
const batches = Array.from({ length: jobs / batch }, (_, i) => i * batch)

describe('generated designs on any paper', () => {
  const stopped = new Map<string, number>()
  let skipped = 0
  let [crosses, verniers, tiles, cramped] = [0, 0, 0, 0]

  it.each(batches)('jobs from %i join to their lines', async (first) => {
    for (let number = first; number < first + batch; number++) {
      const plotted = await plotJob(jobOf(number))
      if ('stops' in plotted) {
        skipped++
        for (const { id } of plotted.stops) stopped.set(id, (stopped.get(id) ?? 0) + 1)
        continue
      }
      const found = tapeUp(plotted)
      expect({ number, faults: found.faults }).toEqual({ number, faults: [] })
      expect(found.measured).toBeGreaterThan(500)
      expect(found.sought).toBeGreaterThan(400)
      expect(found.inOverlaps > 0).toBe(found.joints > 0)
      crosses += found.crosses
      verniers += found.verniers
      tiles += found.tiles
      cramped += found.cramped
    }
  })

  it('few of them cannot be built', () => {
    expect(skipped, JSON.stringify([...stopped])).toBeLessThan(0.4 * jobs)
    expect(jobs - skipped).toBeGreaterThanOrEqual(55)
  })

  it('much was looked at', () => {
    expect(crosses).toBeGreaterThan(550)
    expect(verniers).toBeGreaterThan(280)
    expect(tiles).toBeGreaterThan(420)
    // a page where the line runs so near to the edge that a word has no room
    expect(cramped).toBeLessThan(0.01 * tiles)
  })
})

describe('the generator of jobs', () => {
  const many = 260
  const texts = Array.from({ length: many }, (_, number) => jobOf(number))

  it('gives the same job for the same number', () => {
    expect(jobOf(17)).toEqual(jobOf(17))
    expect(new Set(texts.map(({ text }) => text)).size).toBe(many)
  })

  it('says lengths and layers in every way that a builder can', () => {
    for (const said of [
      /units: mm/,
      /units: in/,
      /height: { frame/,
      /height: { deck/,
      /height: { surface/,
      /circle: { frame/,
      /circle: { surface/,
      /tangent: { frame: -?[1-9]/,
      /tangent: { surface: [1-9]/,
      /toe: 0$/m,
      /deck: /,
      /length: /,
      /deck-board: none/,
      /coping: none/,
      /notch: {.*seat: square/,
      /notch: {.*seat: round/,
      /up: .*seat: square/,
      /up: .*seat: round/,
      /chamfer: none/,
      /chamfer: { leg/,
    ])
      expect(texts.filter(({ text }) => said.test(text)).length, String(said)).toBeGreaterThan(2)
    const margins = texts.flatMap((job) => (job.margins ? [new Set(Object.values(job.margins)).size] : []))
    expect(new Set(margins)).toContain(1)
    expect(new Set(margins)).toContain(4)
  })
})
