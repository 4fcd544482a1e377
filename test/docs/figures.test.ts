import { expect, it } from 'vitest'
import { run } from '../../src/cli/run.ts'
import { pageOf, root } from './pages.ts'

it('the figures that building.md shows are those of the demo, and of the flat among the templates', async () => {
  let out = ''
  const shell = {
    out: (text: string) => {
      out += text
    },
    err: () => {},
  }
  for (const name of ['quarter-mm', 'quarter-and-flat-mm'])
    expect(await run(['figures', `${root}templates/${name}.yaml`], shell)).toBe(0)
  const blocks = [...pageOf('docs/building.md').text.matchAll(/^```\n([\s\S]*?)^```$/gm)].map(
    (match) => match[1]!,
  )
  expect(blocks).toHaveLength(3)
  for (const block of blocks) expect(out).toContain(block)
})
