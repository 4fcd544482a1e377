import { readFileSync } from 'node:fs'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openPage, startBrowser } from './browser.ts'
import { designOf, planOf } from './saved.ts'

const limit = 240_000
let browser: Browser

beforeAll(async () => {
  browser = await startBrowser()
}, limit)
afterAll(() => browser?.close())

describe('the page from the disk', () => {
  it('shows the starter, changes a figure in its text and saves the set that the command writes', {
    timeout: limit,
  }, async () => {
    const { page, faults, requests } = await openPage(browser)
    expect(await page.textContent('h1')).toBe('Low ramp for the boathouse')
    await page.fill('[name="ramps.0.height.deck"]', '600')
    const [design] = await Promise.all([page.waitForEvent('download'), page.click('#save-design')])
    const text = readFileSync(await design.path(), 'utf8')
    expect(text).toMatch(/deck: 600\s/)
    expect(designOf(text).title).toBe('Low ramp for the boathouse')

    const [set] = await Promise.all([
      page.waitForEvent('download', { timeout: limit }),
      page.click('#save-pages'),
    ])
    const { saved, command } = await planOf(readFileSync(await set.path()), text)
    expect(saved).toEqual(command)
    expect(faults).toEqual([])
    expect(requests).toEqual([])
  })
})
