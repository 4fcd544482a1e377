import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Job, plotJob } from './plot.ts'
import { tapeUp } from './tape-up.ts'

const folder = new URL('../../templates/', import.meta.url)
const templates = readdirSync(folder).filter((name) => name.endsWith('.yaml'))

const jobs = templates.flatMap((template) =>
  [
    ...(['letter', 'a4'] as const),
    ...(template === 'quarter-mm.yaml' ? (['a3', 'a0'] as const) : []),
  ].flatMap((paper) =>
    (['whole', 'line', 'ribbon'] as const).map((cover) => ({
      template,
      paper,
      cover,
      text: readFileSync(new URL(template, folder), 'utf8'),
    })),
  ),
)

describe.each(jobs)('$template on $paper, $cover', (job: Job) => {
  it('joins to the line that the design asks for', async () => {
    const plotted = await plotJob(job)
    if ('stops' in plotted) throw new Error(JSON.stringify(plotted.stops))
    const found = tapeUp(plotted)
    expect(found.faults).toEqual([])
    expect(found.measured).toBeGreaterThan(1000)
    expect(found.sought).toBeGreaterThan(700)
    expect(found.sides).toBeGreaterThan(1)
    // a page that only carries a corner of the line may have no room for one of the words
    expect(found.cramped).toBeLessThanOrEqual(1)
    expect(found.joints > 0).toBe(found.tiles > 1)
    expect(found.crosses).toBeGreaterThanOrEqual(2 * found.joints)
    expect(found.verniers).toBe(2 * found.joints)
  })
})
