import { readdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Pt } from '../support/pt.ts'
import type { PdfText } from '../support/read-page.ts'
import { pathPoints } from '../support/read-pdf.ts'
import { type Plotted, plotJob } from './plot.ts'
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

/** The points that lie in the letters of a text: along its baseline, and up to the height of its capitals. */
const inLetters = ({ x, y, angle, width, size }: PdfText, points: readonly Pt[]): readonly Pt[] => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return points.filter((p) => {
    const along = (p.x - x) * cos + (p.y - y) * sin
    const up = (p.y - y) * cos - (p.x - x) * sin
    return along > 0 && along < width && up > 0 && up < 0.72 * size
  })
}

/** Words of joints that were looked at, by template and paper. */
const looked = new Map<string, number>()

describe.each(jobs)('$template on $paper, $cover', ({ template, ...job }) => {
  const set: { plotted?: Plotted } = {}
  beforeAll(async () => {
    const plotted = await plotJob(job)
    if ('stops' in plotted) throw new Error(JSON.stringify(plotted.stops))
    set.plotted = plotted
  })
  afterAll(() => {
    delete set.plotted
  })

  it('has no word of a joint overrun by the cut line', () => {
    const key = `${template} on ${job.paper}`
    for (const page of set.plotted!.read.pages) {
      const words = page.texts.filter(
        ({ layer, text }) => layer === 'joint' && /^(over|goes under|under) page/.test(text),
      )
      const cut = page.strokes
        .filter(({ layer }) => layer === 'cut')
        .flatMap(({ path }) => pathPoints(path, 400).flat())
      for (const text of words) {
        expect(inLetters(text, cut), text.text).toEqual([])
        looked.set(key, (looked.get(key) ?? 0) + 1)
      }
    }
  })

  it('joins to the line that the design asks for', () => {
    const found = tapeUp(set.plotted!)
    expect(found.faults).toEqual([])
    expect(found.measured).toBeGreaterThan(1000)
    expect(found.sought).toBeGreaterThan(700)
    expect(found.sides).toBeGreaterThan(1)
    // a page that only carries a corner of the line may have no room for one of the words
    expect(found.cramped).toBeLessThanOrEqual(1)
    expect(found.joints > 0).toBe(found.tiles > 1)
    expect(found.crosses).toBeGreaterThanOrEqual(2 * found.joints)
    // a second one where the line and the screws leave room for it
    expect(found.verniers).toBeLessThanOrEqual(2 * found.joints)
    expect(found.verniers).toBeGreaterThanOrEqual(1.2 * found.joints)
  })
})

it('many words of joints were looked at, for each template on each paper', () => {
  const asked = new Set(
    jobs
      .filter(({ paper }) => paper === 'letter' || paper === 'a4')
      .map(({ template, paper }) => `${template} on ${paper}`),
  )
  for (const key of asked) expect(looked.get(key), key).toBeGreaterThan(20)
})
