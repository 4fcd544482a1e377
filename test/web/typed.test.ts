import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { useBrowser } from './browser.ts'
import { patience } from './saved.ts'

const { open } = useBrowser()

const parts = [
  ['buy-and-saw', 'stock.kerf', '2.2'],
  ['buy-and-saw', 'stock.panel', '2500 x 1250'],
  ['the-ramp', 'ramps.0.name', 'the shed'],
  ['the-ramp', 'ramps.0.limits.length', '2400'],
] as const

/** Opens the fold of a part's fields that the file does not say. */
const unfold = (page: Page, part: string): Promise<void> =>
  page.evaluate((id) => {
    const box = document.querySelector<HTMLDetailsElement>(`#part-${id}`)!
    box.open = true
    box.querySelector<HTMLDetailsElement>('.more')!.open = true
  }, part)

const fieldOf = (path: string): string => `[name="${path}"]`

it.each([
  ['keys', {}],
  ['a finger', { hasTouch: true, isMobile: true, viewport: { width: 390, height: 844 } }],
])(
  'what is typed letter by letter in a field under more is all there: %s',
  { timeout: patience },
  async (hand, options) => {
    const { page, faults } = await open(options)
    const type = async (path: string, value: string): Promise<void> => {
      if (hand === 'keys') await page.click(fieldOf(path))
      else await page.tap(fieldOf(path))
      await page.keyboard.type(value, { delay: 20 })
      expect(await page.inputValue(fieldOf(path)), path).toBe(value)
      expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe(path)
    }
    for (const [part, path, value] of parts) {
      await unfold(page, part)
      await type(path, value)
    }
    const text = await page.inputValue('[name="text"]')
    expect(text).toMatch(/kerf: 2.2\n/)
    // folded, what the file says stands above
    const more = page.locator('#part-buy-and-saw .more')
    expect(await more.locator(fieldOf('stock.kerf')).count()).toBe(1)
    await more.locator('summary').click()
    await page.waitForSelector(`#part-buy-and-saw > .field ${fieldOf('stock.kerf')}`)
    expect(faults).toEqual([])
  },
)

it('a twin is typed letter by letter where it was empty', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.click('#add-ramp')
  await page.locator('.tabs button', { hasText: 'ramp 2' }).click()
  const deck = fieldOf('ramps.1.height.deck')
  await page.waitForSelector(deck, { state: 'attached' })
  await unfold(page, 'the-ramp')
  await page.click(deck)
  await page.keyboard.type('460', { delay: 20 })
  expect(await page.inputValue(deck)).toBe('460')
  expect(await page.inputValue('[name="text"]')).toMatch(/deck: 460/)
  expect(faults).toEqual([])
})

it('lists are typed as their fields show them', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await unfold(page, 'buy-and-saw')
  const type = async (path: string, value: string): Promise<void> => {
    await page.click(fieldOf(path), { clickCount: 3 })
    await page.keyboard.type(value, { delay: 20 })
    expect(await page.inputValue(fieldOf(path))).toBe(value)
    expect(await page.locator('.checks .stop').count(), value).toBe(0)
  }
  expect(await page.getAttribute(fieldOf('stock.timber'), 'placeholder')).toBe('2400, 3000')
  await type('stock.timber', '2400, 3600')
  await page.click('#part-skin > summary')
  const skin = fieldOf('ramps.0.skin')
  expect(await page.inputValue(skin)).toBe('9 plywood, 9 plywood, 6 hardboard')
  await type('ramps.0.skin', '9 plywood, 6 hardboard')
  const text = await page.inputValue('[name="text"]')
  expect(text).toContain('timber: [2400, 3600]')
  expect(text).toContain('skin: [9 plywood, 6 hardboard]')
  // what is wrong with an entry is told under the list
  await page.fill(skin, '9 plywood, thin')
  await page.locator('.checks .stop .where', { hasText: 'go to skin layers' }).click()
  await page.waitForFunction((name) => document.activeElement?.matches(name), skin)
  expect(
    await page
      .locator('.field', { has: page.locator(skin) })
      .locator('.wrong')
      .textContent(),
  ).toContain('thin')
  expect(faults).toEqual([])
})

it('Escape takes back what was typed on the drawing, as if it had not been, and leaves a page', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  const over = async (): Promise<void> => {
    await page.click('.typed[data-key="ramps.0.height.deck"] text')
    await page.waitForSelector('input.over:focus')
  }
  const before = await page.inputValue('[name="text"]')
  await over()
  await page.keyboard.type('700', { delay: 20 })
  expect(await page.inputValue(fieldOf('ramps.0.height.deck'))).toBe('700')
  await page.keyboard.press('Escape')
  await page.waitForSelector('input.over', { state: 'detached' })
  // the keyboard goes on from the figure
  const figure = '.typed[data-key="ramps.0.height.deck"]:focus'
  expect(await page.locator(figure).count()).toBe(1)
  // the key that opens it is not typed into it
  await page.keyboard.press('Space')
  await page.waitForSelector('input.over:focus')
  expect(await page.inputValue('input.over')).toBe('640')
  await page.keyboard.press('Escape')
  await page.waitForSelector('input.over', { state: 'detached' })
  expect(await page.inputValue('[name="text"]')).toBe(before)
  expect(await page.isDisabled('#undo')).toBe(true)
  // what was typed and entered stays, when nothing is typed over it
  await over()
  await page.keyboard.type('700', { delay: 20 })
  await page.keyboard.press('Enter')
  await page.waitForSelector('input.over', { state: 'detached' })
  expect(await page.locator(figure).count()).toBe(1)
  await over()
  await page.keyboard.press('Escape')
  // what is wrong is not entered: it stays to be mended, or taken back
  await over()
  await page.keyboard.type('x9', { delay: 20 })
  await page.keyboard.press('Enter')
  expect(await page.locator('input.over[aria-invalid="true"]').count()).toBe(1)
  await page.keyboard.press('Escape')
  await page.waitForSelector('input.over', { state: 'detached' })
  expect(await page.inputValue(fieldOf('ramps.0.height.deck'))).toBe('700')
  await page.waitForSelector('.pages button', { state: 'attached' })
  await page.locator('.sheets [role="button"]').first().press('Space')
  await page.waitForSelector('.sheet-view svg text')
  expect(await page.evaluate(() => scrollY)).toBe(0)
  await page.keyboard.press('Escape')
  await page.waitForSelector('.picture')
  expect(faults).toEqual([])
})
