import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { plotJob } from './plot.ts'
import { tapeUp } from './tape-up.ts'

const template = readFileSync(new URL('../../templates/quarter-mm.yaml', import.meta.url), 'utf8')

it('two ramps of one outline share one pattern, which names the parts of both', async () => {
  const text = `${template.replace('- kind: quarter', '- name: port\n    kind: quarter')}  - name: starboard\n    like: port\n    width: 900\n`
  const plotted = await plotJob({ text, paper: 'a3', cover: 'whole' })
  if ('stops' in plotted) throw new Error(JSON.stringify(plotted.stops))
  expect(tapeUp(plotted).faults).toEqual([])
  const tiles = plotted.plan.pages.filter((page: { kind: string }) => page.kind === 'tile')
  expect(new Set(tiles.map((page: { pattern: string }) => page.pattern))).toEqual(new Set(['port/side']))
  for (const { page } of tiles) {
    const words = plotted.read.pages[page - 1]!.texts.map((t) => t.text).join('\n')
    expect(words).toMatch(/port: 2 sides/)
    expect(words).toMatch(/starboard: 2 sides/)
  }
})
