import { expect, it } from 'vitest'
import { drawDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'

const pair = templateText('pair-mm')
const changes: readonly (readonly [what: string, text: string, kept: readonly boolean[]])[] = [
  ['nothing', pair, [true, true]],
  ['a comment', `${pair}\n# later\n`, [true, true]],
  ['the inner deck', pair.replace(/(name: inner[\s\S]*?deck: )460/, '$1455'), [true, false]],
  [
    'the clearance, and with it the inner width',
    pair.replace(/clearance: \d+/, 'clearance: 14'),
    [true, false],
  ],
  [
    'what stores in the outer one',
    pair.replace(/^ *stores-inside:.*\n.*\n.*\n/m, '    width: 2000\n'),
    [false, false],
  ],
  ['the kerf', `stock: { kerf: 5 }\n${pair}`, [false, false]],
  ['the outer toe', pair.replace('toe: 40', 'toe: 42'), [false, false]],
]

it('a ramp that is as it was before is not solved again, any other is: the drawing is that of the design either way', () => {
  const design = designOf(pair)
  const before = { design, drawn: drawDesign(design) }
  for (const [what, text, kept] of changes) {
    if (what !== 'nothing') expect(text, what).not.toBe(pair)
    const now = designOf(text)
    const drawn = drawDesign(now, before)
    expect(JSON.stringify(drawn), what).toBe(JSON.stringify(drawDesign(now)))
    expect(
      drawn.ramps.map((ramp, i) => ramp === before.drawn.ramps[i]),
      what,
    ).toEqual(kept)
  }
  const stopped = designOf(pair.replace(/(name: inner[\s\S]*?deck: )460/, '$12400'))
  const last = { design: stopped, drawn: drawDesign(stopped, before) }
  expect(last.drawn.stopped).toBe(true)
  expect(JSON.stringify(drawDesign(design, last))).toBe(JSON.stringify(before.drawn))
})
