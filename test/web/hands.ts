import type { Page } from 'playwright-core'

/** How someone works the page. */
export interface Hands {
  /** types a figure on the drawing */
  readonly type: (page: Page, key: string, value: string) => Promise<void>
  /** presses what a selector finds */
  readonly press: (page: Page, selector: string) => Promise<void>
  /** fills a field of the column */
  readonly fill: (page: Page, selector: string, value: string) => Promise<void>
}

const over = 'input.over'

const figure = (key: string): string => `.typed[data-key="${key}"]`

export const mouse: Hands = {
  type: async (page, key, value) => {
    await page.click(`${figure(key)} text`)
    await page.fill(over, value)
    await page.keyboard.press('Enter')
  },
  press: (page, selector) => page.click(selector),
  fill: (page, selector, value) => page.fill(selector, value),
}

/** Fingers are coarse: they hit the middle of what they see. */
export const finger: Hands = {
  type: async (page, key, value) => {
    const box = (await page
      .locator(`${figure(key)} text`)
      .first()
      .boundingBox())!
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2)
    await page.fill(over, value)
    await page.keyboard.press('Enter')
  },
  press: (page, selector) => page.tap(selector),
  fill: async (page, selector, value) => {
    await page.tap(selector)
    await page.fill(selector, value)
  },
}

/** Goes on with the Tab key until something is focused; throws where it never is. */
const tabTo = async (page: Page, selector: string): Promise<void> => {
  for (let i = 0; i < 250; i++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`the keyboard does not reach ${selector}`)
}

const typeOver = async (page: Page, value: string): Promise<void> => {
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type(value)
}

/** Nothing but keys. */
export const keyboard: Hands = {
  type: async (page, key, value) => {
    await tabTo(page, figure(key))
    await page.keyboard.press('Enter')
    await page.waitForSelector(`${over}:focus`)
    await typeOver(page, value)
    await page.keyboard.press('Enter')
  },
  press: async (page, selector) => {
    await tabTo(page, selector)
    await page.keyboard.press('Enter')
  },
  fill: async (page, selector, value) => {
    await tabTo(page, selector)
    await typeOver(page, value)
  },
}
