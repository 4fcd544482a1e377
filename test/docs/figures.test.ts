import { expect, it } from 'vitest'
import { figuresOf } from '../support/traceply.ts'
import { pageOf, root } from './pages.ts'

it('the figures that building.md shows are those of the demo, and of the flat among the templates', async () => {
  let out = ''
  for (const name of ['quarter-mm', 'quarter-and-flat-mm']) {
    const said = await figuresOf(`${root}templates/${name}.yaml`)
    expect(said.exit).toBe(0)
    out += said.out
  }
  const blocks = [...pageOf('docs/building.md').text.matchAll(/^```\n([\s\S]*?)^```$/gm)].map(
    (match) => match[1]!,
  )
  expect(blocks).toHaveLength(3)
  for (const block of blocks) expect(out).toContain(block)
})
