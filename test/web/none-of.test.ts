import { expect, it } from 'vitest'
import { editDesign } from '../../src/index.ts'
import { noneOf } from '../../src/web/words/none-of.ts'
import { designOf } from '../../src/web/worker/lay.ts'
import { platformOf } from '../../src/web/worker/platform.ts'
import { save } from '../../src/web/worker/save.ts'
import { templateText } from '../support/templates.ts'

const piped = templateText('quarter-mm')
const plain = editDesign(piped, 'ramps.0.coping', 'none')

it('a lip trial needs a pipe, in one of the ramps; what else is full size needs a curve', () => {
  const told = (text: string) =>
    (['curve', 'pipe', undefined] as const).map((needs) => noneOf(needs, designOf(text)))
  expect(told(piped)).toEqual([null, null, null])
  expect(told(plain)).toEqual([null, 'no pipe: it has none', null])
  const pair = templateText('pair-mm')
  expect(told(editDesign(pair, 'ramps.1.coping', 'none'))[1]).toBeNull()
  const { ramps } = designOf(templateText('quarter-and-flat-mm'))
  const flat = { ramps: ramps.filter(({ kind }) => kind === 'flat') }
  expect([noneOf('curve', flat), noneOf('pipe', flat)]).toEqual(['a flat has none', 'a flat has none'])
})

it('a lip trial that there is none of is refused in words that say why', async () => {
  const platform = platformOf({} as Parameters<typeof platformOf>[0])
  const trial = (text: string, margin: string) =>
    save(
      {
        kind: 'save',
        thing: 'pages',
        format: 'pdf',
        only: 'trial',
        text,
        lay: { words: { margin }, profile: null },
      },
      () => {},
      platform,
    )
  await expect(trial(plain, '9 mm')).rejects.toThrow('there is no lip trial, as there is no pipe')
  await expect(trial(piped, '65 mm')).rejects.toThrow(/^the page is too small for the lip trial of/)
})
