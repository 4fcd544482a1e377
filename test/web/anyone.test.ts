import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { BrowserContextOptions, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { useBrowser, withoutCheckVisibility } from './browser.ts'
import { patience, saved } from './saved.ts'
import { wordsOver } from './words-apart.ts'

const { open } = useBrowser()

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

type Rules = 'all' | 'colours' | 'all but colours'

/** Barriers of the two gravest kinds that axe finds. */
const barriers = async (page: Page, rules: Rules): Promise<readonly string[]> => {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe)
  return page.evaluate(async (asked) => {
    // biome-ignore lint/suspicious/noExplicitAny: what the script leaves in the page
    const { axe } = globalThis as any
    const contrast = 'color-contrast'
    // what a rule finds is as grave as the rule says: slight ones are not looked for
    const grave = Object.fromEntries(
      axe._audit.rules.flatMap(({ id, impact }: { id: string; impact: string | null }) =>
        impact === 'minor' || impact === 'moderate' ? [[id, { enabled: false }]] : [],
      ),
    )
    const chosen = {
      all: { rules: grave },
      colours: { runOnly: [contrast] },
      'all but colours': { rules: { ...grave, [contrast]: { enabled: false } } },
    }[asked]
    const found = await axe.run(document, { resultTypes: ['violations'], ...chosen })
    return found.violations
      .filter(({ impact }: { impact: string }) => impact === 'serious' || impact === 'critical')
      .map(
        ({ id, nodes }: { id: string; nodes: readonly { html: string }[] }) =>
          `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
      )
  }, rules)
}

interface Screen {
  readonly name: string
  readonly width: number
  readonly height: number
  readonly scale?: number
  readonly dark?: boolean
  /** colours are the same on every light screen, all else is the same in the dark */
  readonly rules: Rules
}

/** The page as it is now, on another screen; its window follows. */
const turnTo = async (page: Page, { width, height, scale = 1, dark = false }: Screen): Promise<void> => {
  const session = await page.context().newCDPSession(page)
  const features = [{ name: 'prefers-color-scheme', value: dark ? 'dark' : 'light' }]
  await session.send('Emulation.setEmulatedMedia', { features })
  const metrics = { width, height, deviceScaleFactor: scale, mobile: false }
  await session.send('Emulation.setDeviceMetricsOverride', metrics)
  await session.detach()
}

const radius = '[name="ramps.0.transition.circle.surface"]'

const laptop: Screen = { name: 'a laptop', width: 1280, height: 800, rules: 'all' }

describe.each<readonly [string, BrowserContextOptions, readonly Screen[]]>([
  ['a phone upright', { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }, []],
  [
    'a laptop, a large screen in the dark, a laptop at 200 %',
    { viewport: { width: 1280, height: 800 } },
    [
      { name: 'a large screen in the dark', width: 1920, height: 1080, dark: true, rules: 'colours' },
      { name: 'a laptop at 200 %', width: 640, height: 400, scale: 2, rules: 'all but colours' },
    ],
  ],
])('on %s', (_, options, others) => {
  it('nothing bars the way, nothing runs off the side, in any state', { timeout: patience }, async () => {
    const { page, faults } = await open({ ...options, bypassCSP: true })
    let looks = 0
    const look = async (state: string, drawn: boolean, rules: Rules): Promise<void> => {
      if (drawn) {
        const words = await wordsOver(page)
        expect(words.faults, state).toEqual([])
        expect(words.looked, state).toBeGreaterThan(8)
      }
      expect(await barriers(page, rules), state).toEqual([])
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
      expect(wide, state).toBeLessThanOrEqual(0)
      looks++
    }
    const looked = async (state: string, drawn = true): Promise<void> => {
      await look(state, drawn, 'all')
      for (const screen of others) {
        await turnTo(page, screen)
        // two frames: the drawing asks how wide it is when it was laid out
        await page.evaluate(() => new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))))
        expect(await page.evaluate(() => innerWidth)).toBe(screen.width)
        await look(`${state}, on ${screen.name}`, drawn, screen.rules)
      }
      if (others.length > 0) await turnTo(page, laptop)
    }
    await page.waitForSelector('.checks .good')
    await looked('as it opens')
    await page.evaluate(() => {
      for (const part of document.querySelectorAll('details')) part.open = true
    })
    await page.waitForSelector('.pages button')
    await looked('with all parts open')
    await page.fill(radius, '500')
    await page.locator('.checks .stop').waitFor()
    await looked('stopped')
    expect(await page.locator('.picture.old').count()).toBe(1)
    expect(await page.textContent('.answer')).toBe('drawing: last good design')
    await page.fill(radius, '720')
    await page.locator('.checks .warn').first().waitFor()
    await looked('with something to watch')
    await page.fill(radius, 'much')
    await page.waitForSelector('[aria-invalid]')
    await looked('with a figure that cannot be read')
    expect(await page.locator('.checks .stop', { hasText: 'a value is wrong' }).count()).toBe(1)
    // what is drawn is not what the field says: muted, and said so
    expect(await page.locator('.picture.old').count()).toBe(1)
    expect(await page.textContent('.answer')).toBe('drawing: last good design')
    await page.fill(radius, '1700')
    await page.waitForSelector('.pages button')
    await page.locator('.pages button').nth(4).click()
    await page.waitForSelector('.sheet-view svg text')
    await looked('with a page as it will print', false)
    const first = await page.textContent('.sheet-view h2')
    await page.click('#next-page')
    await page.waitForFunction((was) => document.querySelector('.sheet-view h2')?.textContent !== was, first)
    await page.click('#page-before')
    await page.waitForFunction((was) => document.querySelector('.sheet-view h2')?.textContent === was, first)
    await page.waitForSelector('.leaf-box:not(.turning) svg text')
    // its number stands upright, the page is as wide as there is room, and a tap brings it near
    const { turned, wide, near } = await page.evaluate(async () => {
      const leaf = document.querySelector<HTMLElement>('.leaf')!
      const texts = [...leaf.querySelectorAll('text')]
      const { a, b } = texts.find(({ textContent }) => textContent === '2')!.getScreenCTM()!
      const wide = leaf.offsetWidth / leaf.parentElement!.clientWidth
      leaf.querySelector('button')!.click()
      await new Promise(requestAnimationFrame)
      return { turned: Math.atan2(b, a), wide, near: leaf.offsetWidth / leaf.parentElement!.clientWidth }
    })
    expect(Math.abs(turned)).toBeLessThan(0.01)
    expect(wide).toBeGreaterThan(0.99)
    expect(near).toBeGreaterThan(2.5)
    await page.evaluate(withoutCheckVisibility)
    await page.click('.sheet-view >> text=back to the side')
    // one goes on where the page was asked for
    await page.waitForFunction(() => document.activeElement?.matches('[data-page="5"]'))
    await page.fill('[name="measure-across"]', '5 7/8in')
    await page.fill('[name="measure-down"]', '5 29/32 in')
    await page.fill('[name="measure-diagonals"]', '8 11/32in 8 11/32in')
    await page.click('#keep-printer')
    await page.locator('.printer .line').first().waitFor()
    expect(await page.textContent('.next [role="status"]')).toContain('corrected for my printer')
    await page.setInputFiles('input[name="file"]', {
      name: 'set.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from(await saved(page, '#save-set')),
    })
    await page.waitForSelector('[name="again-3"]')
    await page.fill('[name="wish-height"]', '640 mm')
    await page.click('#choose')
    await page.waitForSelector('[name="take-2"]')
    await looked('with a printer measured, a set opened, ramps to choose from')
    expect(looks).toBe(7 * (1 + others.length))
    expect(faults).toEqual([])
  })
})
