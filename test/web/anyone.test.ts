import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { openPage, startBrowser } from './browser.ts'
import { patience } from './saved.ts'

let browser: Browser
beforeAll(async () => {
  browser = await startBrowser()
}, patience)
afterEach(async () => {
  for (const context of browser.contexts()) await context.close()
})
afterAll(() => browser?.close())

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Barriers of the two gravest kinds that axe finds. */
const barriers = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(axe)
  return page.evaluate(async () => {
    // biome-ignore lint/suspicious/noExplicitAny: what the script leaves in the page
    const found = await (globalThis as any).axe.run(document)
    return found.violations
      .filter(({ impact }: { impact: string }) => impact === 'serious' || impact === 'critical')
      .map(
        ({ id, nodes }: { id: string; nodes: readonly { html: string }[] }) =>
          `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
      )
  })
}

describe.each([
  ['a phone upright', { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }],
  ['a laptop', { viewport: { width: 1280, height: 800 } }],
  ['a large screen in the dark', { viewport: { width: 1920, height: 1080 }, colorScheme: 'dark' as const }],
])('on %s', (_, options) => {
  it('nothing bars the way, nothing runs off the side, whatever is open', { timeout: patience }, async () => {
    const { page, faults } = await openPage(browser, { ...options, bypassCSP: true })
    expect(await barriers(page)).toEqual([])
    await page.evaluate(() => {
      for (const part of document.querySelectorAll('details')) part.open = true
    })
    await page.waitForSelector('.pages button')
    expect(await barriers(page)).toEqual([])
    await page.fill('[name="ramps.0.height.deck"]', 'much')
    await page.waitForSelector('[aria-invalid]')
    expect(await barriers(page)).toEqual([])
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(wide).toBeLessThanOrEqual(0)
    expect(faults).toEqual([])
  })
})

it('everything is reached with the keyboard alone', { timeout: patience }, async () => {
  const { page, faults } = await openPage(browser)
  const focused = () =>
    page.evaluate(() => {
      const { activeElement: at } = document
      return at?.getAttribute('data-key') ?? at?.id ?? at?.getAttribute('name') ?? ''
    })
  const seen = new Set<string>()
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab')
    const name = await focused()
    seen.add(name)
    if (name === 'ramps.0.deck' && !seen.has('typed')) {
      seen.add('typed')
      await page.keyboard.press('Enter')
      await page.waitForSelector('input.over:focus')
      await page.keyboard.press('Control+A')
      await page.keyboard.type('480')
      await page.keyboard.press('Enter')
    }
    if (name === 'save-pages') break
  }
  expect(await page.inputValue('[name="ramps.0.deck"]')).toBe('480')
  for (const name of ['add-ramp', 'save-pages']) expect(seen).toContain(name)
  expect(faults).toEqual([])
})

it('a twin comes and goes, a part is taken away and put back, units and paper change', {
  timeout: patience,
}, async () => {
  const { page, faults } = await openPage(browser)
  await page.click('#add-ramp')
  await page.waitForSelector('#remove-ramp')
  await page.locator('.drawing button', { hasText: 'ramp 2' }).click()
  expect(await page.inputValue('[name="ramps.1.like"]')).toBe('ramp')
  await page.click('#remove-ramp')
  expect(await page.locator('#remove-ramp').count()).toBe(0)
  await page.click('#part-pipe summary')
  await page.uncheck('[name="ramps.0.coping"]')
  expect(await page.locator('.checks .stop').count()).toBe(0)
  await page.check('[name="ramps.0.coping"]')
  expect(await page.inputValue('[name="ramps.0.coping.outside"]')).toBe('60.3')
  await page.click('#part-the-file summary')
  await page.selectOption('[name="paper"]', 'letter')
  await page.click('#part-paper summary')
  await page.waitForFunction(() =>
    /letter, \d+ pages/.test(document.querySelector('#part-paper')?.textContent ?? ''),
  )
  await page.locator('.sheets [role="button"]').first().click()
  await page.waitForSelector('.sheet-view svg text')
  expect(await page.textContent('.sheet-view')).toMatch(/WASTE|KEEP/)
  expect(faults).toEqual([])
})
