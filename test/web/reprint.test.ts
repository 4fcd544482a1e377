import { expect, it } from 'vitest'
import { gaugeJob, isRefusal } from '../../src/index.ts'
import { platformOf } from '../../src/web/worker/platform.ts'
import { reprint } from '../../src/web/worker/reprint.ts'
import { templates, templateText } from '../support/templates.ts'
import { plotted } from './saved.ts'

it('a test square that is asked for corrected is refused with the way that the page has, no command', async () => {
  const profile = gaugeJob(
    'hall',
    { across: ['149mm'], down: ['149mm'], diagonals: ['210.7mm', '210.7mm'] },
    'letter',
  )
  if (isRefusal(profile)) throw new Error('a plausible reading')
  const set = await plotted(templateText(templates[0]!))
  const platform = platformOf({} as Parameters<typeof platformOf>[0])
  const asked = reprint(set, ['square'], profile, platform)
  await expect(asked).rejects.toThrow(/save a new one with "save the test square" under printer$/)
  await expect(asked).rejects.not.toThrow(/traceply|--/)
  // as it was it is had once more
  expect((await reprint(set, ['square'], null, platform)).bytes.length).toBeGreaterThan(1000)
})
