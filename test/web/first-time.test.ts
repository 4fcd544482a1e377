import type { BrowserContextOptions } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Cover } from '../../src/page/cover/cover.ts'
import { defaultMargins, defaultOverlap } from '../../src/page/sheet/paper.ts'
import { assertEqual } from '../support/equal.ts'
import { takeBack } from '../tape-up/plot.ts'
import { tapeUp } from '../tape-up/tape-up.ts'
import { heard, useBrowser } from './browser.ts'
import { finger, type Hands, keyboard, mouse } from './hands.ts'
import { contentOf, corrected, once, patience, plotted, reprinted, savedBy } from './saved.ts'

const { open } = useBrowser()

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes)

const phone: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
}

/** A set on a4, taped: once where the sets of several hands are the same bytes. */
const taped4 = once(async (set: Uint8Array, text: string, cover: Cover) => {
  const margins = defaultMargins('a4')
  return tapeUp(await takeBack(set, { text, paper: 'a4', cover, margins }, margins, defaultOverlap))
})

describe.each<readonly [string, Hands, BrowserContextOptions]>([
  ['the mouse', mouse, {}],
  ['the keyboard alone', keyboard, {}],
  ['fingers on a phone 360 px wide', finger, phone],
])('someone who opens the page for the first time, with %s', (_, hands, options) => {
  it('changes the ramp on its drawing, takes what a check offers, prints, measures, prints again', {
    timeout: patience,
  }, async () => {
    const { page, faults, requests } = await open(options)
    expect(await page.textContent('h1')).toBe('Low ramp for the boathouse')

    // what cannot be read and what is wrong with it are seen together
    await page.focus('[name="ramps.0.transition.circle.surface"]')
    await page.fill('[name="ramps.0.transition.circle.surface"]', 'much')
    const told = page.locator('.field .wrong')
    await told.waitFor()
    const room = await told.evaluate((words) => {
      const { top } = words.closest('.field')!.getBoundingClientRect()
      const stage = document.querySelector<HTMLElement>('.stage')!.getBoundingClientRect()
      const clear = stage.right < words.getBoundingClientRect().left ? 0 : stage.bottom
      return { over: top - clear, under: innerHeight - words.getBoundingClientRect().bottom }
    })
    expect(Math.min(room.over, room.under)).toBeGreaterThanOrEqual(0)
    await page.click('#undo')
    await told.waitFor({ state: 'detached' })
    await page.evaluate(() => scrollTo(0, 0))

    // figures of the drawing are fields
    await hands.type(page, 'ramps.0.height.deck', '600')
    await hands.type(page, 'ramps.0.width', '1 m')
    await hands.type(page, 'ramps.0.transition.circle.surface', '500')
    const stop = page.locator('.checks .stop', { hasText: 'lean over the rider' })
    await stop.waitFor()
    expect(await page.isDisabled('#save-pages')).toBe(true)
    // what a check offers is a button that types it: the least radius is the first, and stays so
    await hands.press(page, 'button.offer[data-check="overhang"]')
    await stop.waitFor({ state: 'detached' })
    expect(await page.inputValue('[name="ramps.0.transition.circle.surface"]')).toMatch(/^5\d\d mm$/)
    await hands.press(page, '#undo')
    await stop.waitFor()
    await hands.type(page, 'ramps.0.transition.circle.surface', '1600')
    await stop.waitFor({ state: 'detached' })

    const design = text(await savedBy(page, () => hands.press(page, '#save-design')))
    expect(design).toContain('deck: 600')
    expect(design).toContain('width: 1 m')
    expect(design).toContain('# top of the deck board above the floor')
    const set = await savedBy(page, () => hands.press(page, '#save-pages'))
    const command = await contentOf(await plotted(design))
    const own = await contentOf(set)
    expect(own.plan.seal).toBe(command.plan.seal)
    expect(own).toEqual(command)

    // taped, it is the line that the design asks for
    const taped = await taped4(set, design, own.plan.cover)
    expect(taped.faults).toEqual([])
    expect(taped.measured).toBeGreaterThan(1000)

    // a stretched square is measured, and the pages saved again
    await hands.press(page, '#part-printer > summary')
    await hands.fill(page, '[name="printer-name"]', 'hall')
    await hands.fill(page, '[name="measure-across"]', '149.4mm')
    await hands.fill(page, '[name="measure-down"]', '150.6mm')
    await hands.fill(page, '[name="measure-diagonals"]', '212.2mm, 212.1mm')
    await hands.press(page, '#keep-printer')
    expect(await page.textContent('.printer .words')).toBe('hall is kept in this browser')
    expect(await page.textContent('.next [role="status"]')).toContain('from before the last change')
    const profile = text(await savedBy(page, () => hands.press(page, '#save-printer')))
    const again = await savedBy(page, () => hands.press(page, '#save-corrected'))
    assertEqual(await contentOf(again), await contentOf(await corrected(design, profile)))

    // page 3 of it once more
    await page.setInputFiles('input[name="file"]', {
      name: 'set.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from(again),
    })
    await page.waitForSelector('[name="again-3"]')
    const third = await contentOf(await savedBy(page, () => hands.press(page, '[name="again-3"]')))
    assertEqual(third, await contentOf(await reprinted(again, '3')))
    expect(third.pages).toHaveLength(1)
    expect(faults).toEqual([])
    expect(requests).toEqual([])
    expect(heard.connections).toBe(0)
  })
})
