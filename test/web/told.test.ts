import { expect, it } from 'vitest'
import { useBrowser } from './browser.ts'
import { patience, saved } from './saved.ts'

const { open } = useBrowser()

it('after a set was saved, DANGER and STOP stand before what is old', { timeout: patience }, async () => {
  const { page, faults } = await open()
  const status = page.locator('.next [role="status"]')
  await saved(page, '#save-square')
  await page.fill('[name="ramps.0.deck"]', '120')
  await page.waitForSelector('.alarm-mark')
  expect(await status.textContent()).toMatch(
    /^Look at what stands under DANGER.* from before the last change/,
  )
  await page.fill('[name="ramps.0.deck"]', 'x')
  await page.waitForSelector('.checks .stop')
  expect(await status.textContent()).toMatch(
    /^First mend what stands under STOP.* from before the last change/,
  )
  expect(faults).toEqual([])
})
