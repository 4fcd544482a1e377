import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { traceply } from '../support/traceply.ts'
import { openPage, startBrowser } from './browser.ts'
import { contentOf, patience, plotted, saved, titleOf, withFolder } from './saved.ts'

let browser: Browser
beforeAll(async () => {
  browser = await startBrowser()
}, patience)
afterEach(async () => {
  for (const context of browser.contexts()) await context.close()
})
afterAll(() => browser?.close())

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes)

describe('someone who opens the page for the first time', () => {
  it('types a height on the drawing, reads what stops, and saves the set that the command writes', {
    timeout: patience,
  }, async () => {
    const { page, faults, requests } = await openPage(browser)
    expect(await page.textContent('h1')).toBe('Low ramp for the boathouse')

    // a figure of the drawing is a field
    await page.click('.typed[data-key="ramps.0.height.deck"] text')
    await page.fill('input.over', '5000')
    expect(await page.textContent('.checks')).toMatch(/STOP.*height.deck.*5000 mm is outside/)
    expect(await page.isDisabled('#save-pages')).toBe(true)
    // the last good drawing stays
    expect(await page.locator('.typed').count()).toBeGreaterThan(3)
    await page.fill('input.over', '1 ft 11 5/8 in')
    await page.keyboard.press('Enter')
    expect(await page.locator('input.over').count()).toBe(0)
    expect(await page.inputValue('[name="ramps.0.height.deck"]')).toBe('1 ft 11 5/8 in')

    const design = text(await saved(page, '#save-design'))
    expect(design).toContain('deck: 1 ft 11 5/8 in')
    expect(design).toContain('# top of the deck board above the floor')
    expect(titleOf(design)).toBe('Low ramp for the boathouse')

    const set = await saved(page, '#save-pages')
    const command = await plotted(design)
    expect(await contentOf(set)).toEqual(await contentOf(command))

    // a page of it once more, by the page and by the command
    await page.setInputFiles('input[name="file"]', {
      name: 'set.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from(set),
    })
    const again = await saved(page, '[name="again-3"]')
    await withFolder(async (folder) => {
      const [from, out] = [join(folder, 'saved-by-the-page.pdf'), join(folder, 'three.pdf')]
      writeFileSync(from, set)
      expect(await traceply('reprint', from, '3', '--out', out)).toMatchObject({ exit: 0 })
      expect(await contentOf(again)).toEqual(await contentOf(new Uint8Array(readFileSync(out))))
    })
    // and the page takes a set that the command wrote
    await page.setInputFiles('input[name="file"]', {
      name: 'set.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from(command),
    })
    expect((await contentOf(await saved(page, '[name="again-3"]'))).pages).toEqual(
      (await contentOf(again)).pages,
    )

    await page.reload()
    await page.waitForSelector('main')
    for (const [button, least] of [
      ['#save-booklet', 5],
      ['#save-list', 1],
      ['#save-cuts', 2],
      ['#save-offsets', 1],
      ['#save-square', 1],
    ] as const)
      expect((await contentOf(await saved(page, button))).pages.length, button).toBeGreaterThanOrEqual(least)
    expect(faults).toEqual([])
    expect(requests).toEqual([])
  })

  it('measures a stretched square, keeps the printer, and saves corrected pages', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await openPage(browser)
    await page.click('#part-printer summary')
    await page.fill('[name="printer-name"]', 'hall')
    await page.fill('[name="measure-across"]', '149.4mm')
    await page.fill('[name="measure-down"]', '150.6mm')
    await page.fill('[name="measure-diagonals"]', '212.2mm, 212.1mm')
    await page.click('#keep-printer')
    expect(await page.textContent('.printer .words')).toBe('hall is kept in this browser')
    const profile = text(await saved(page, '#save-printer'))
    const set = await saved(page, '#save-pages')
    const design = text(await saved(page, '#save-design'))
    await withFolder(async (folder) => {
      writeFileSync(join(folder, 'hall.json'), profile)
      const [own, command] = [
        await contentOf(set),
        await contentOf(await plotted(design, '--printer', 'hall', '--profiles', folder)),
      ]
      expect(own.plan).toEqual(command.plan)
      expect(own.pages).toEqual(command.pages)
    })
    // it is still known after a reload
    await page.reload()
    await page.click('#part-printer summary')
    expect(await page.locator('#printer option').allTextContents()).toContain('hall')
    expect(faults).toEqual([])
  })

  it('prints a title in any language as the command does', { timeout: patience }, async () => {
    const { page, faults, requests } = await openPage(browser)
    await page.click('#part-the-file summary')
    await page.fill('[name="title"]', 'Rampa dla Łucji · ράμπα')
    const design = text(await saved(page, '#save-design'))
    expect(titleOf(design)).toBe('Rampa dla Łucji · ράμπα')
    const own = await contentOf(await saved(page, '#save-pages'))
    const words = own.pages.flatMap(({ texts }) => texts.map((one) => one.text))
    expect(words).toContain('Rampa dla Łucji · ράμπα')
    expect(own.pages).toEqual((await contentOf(await plotted(design))).pages)
    expect([faults, requests]).toEqual([[], []])
  })

  it('finds the last design after a reload, goes back and forward, and carries it in a link', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await openPage(browser)
    await page.fill('[name="ramps.0.toe"]', '38')
    await page.reload()
    await page.waitForSelector('main')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('38')
    await page.fill('[name="ramps.0.toe"]', '39')
    await page.click('#undo')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('38')
    await page.click('#redo')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('39')
    await page.click('#copy-link')
    const hash = await page.evaluate(() => location.hash)
    expect(hash).toMatch(/^#design=/)
    const other = await openPage(browser, {}, hash)
    expect(await other.page.inputValue('[name="ramps.0.toe"]')).toBe('39')
    expect([...faults, ...other.faults]).toEqual([])
  })

  it('is told where nothing is kept, and by what was dropped what it is', { timeout: patience }, async () => {
    const { page, faults } = await openPage(browser)
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new Error('full')
      }
    })
    await page.fill('[name="ramps.0.toe"]', '37')
    expect(await page.textContent('header')).toContain('This browser keeps nothing here')
    const junk = Buffer.alloc(5_000_000, 'x: [')
    await page.setInputFiles('input[name="file"]', {
      name: 'junk.yaml',
      mimeType: 'text/plain',
      buffer: junk,
    })
    await page.waitForSelector('.checks .stop')
    expect(await page.textContent('.checks')).toMatch(/256 kB/)
    await page.click('#undo')
    expect(await page.locator('.checks .stop').count()).toBe(0)
    await page.setInputFiles('input[name="file"]', {
      name: 'other.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from('%PDF-1.4\nnothing'),
    })
    await page.waitForSelector('header [role="alert"]')
    expect(await page.textContent('header [role="alert"]')).toMatch(/torn or damaged/)
    expect(faults).toEqual([])
  })
})
