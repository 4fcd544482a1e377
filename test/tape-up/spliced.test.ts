import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { plotJob } from './plot.ts'
import { tapeUp } from './tape-up.ts'

test('the pages of a spliced side tape up to its outline; what is sawn besides is its joint', async () => {
  const text = templateText('quarter-mm').replace('deck: 500 ', 'deck: 2200 ')
  const plotted = await plotJob({ text, paper: 'a3', cover: 'whole' })
  if ('stops' in plotted) throw new Error('stopped')
  const taped = tapeUp(plotted)
  expect(taped.faults).toEqual([])
  expect(taped.measured).toBeGreaterThan(1000)
})
