import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { traceply } from '../support/traceply.ts'
import { useBrowser, withoutCheckVisibility } from './browser.ts'
import { drop, shed } from './drop.ts'
import { patience, saved, withFolder } from './saved.ts'

const { open } = useBrowser()

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes)

describe('what the page keeps', () => {
  it('each tab its own design, printer and laying through a reload, and a printer of the other tab besides', {
    timeout: patience,
  }, async () => {
    const one = await open()
    const other = await open({}, '', one.page.context())
    await one.page.fill('[name="ramps.0.toe"]', '38')
    for (const [{ page }, name] of [
      [one, 'hall'],
      [other, 'shed'],
    ] as const) {
      await page.click('#part-printer > summary')
      await page.fill('[name="printer-name"]', name)
      await page.fill('[name="measure-across"]', '149.4mm')
      await page.fill('[name="measure-down"]', '150mm')
      await page.fill('[name="measure-diagonals"]', '211.7mm, 211.7mm')
      await page.click('#keep-printer')
    }
    await one.page.click('#part-paper > summary')
    await one.page.click('.covers button:has-text("ribbon")')
    await one.page.fill('[name="overlap"]', '15')
    await one.page.press('[name="overlap"]', 'Enter')
    await other.page.fill('[name="ramps.0.toe"]', '44')
    await other.page.reload()
    await one.page.reload()
    expect(await one.page.inputValue('[name="ramps.0.toe"]')).toBe('38')
    expect(await other.page.inputValue('[name="ramps.0.toe"]')).toBe('44')
    const printer = one.page.locator('#part-printer > summary')
    expect(await printer.textContent()).toContain('measured, pages are corrected')
    await printer.click()
    expect(await one.page.inputValue('#printer')).toBe('hall')
    await one.page.click('#part-paper > summary')
    await one.page.locator('.covers [aria-pressed="true"]', { hasText: 'ribbon' }).waitFor()
    expect(await one.page.inputValue('[name="overlap"]')).toBe('15 mm')
    expect(await one.page.locator('#printer option').allTextContents()).toEqual(
      expect.arrayContaining(['hall', 'shed']),
    )
    // a third one begins with what was changed last, not with what was closed or loaded last
    const third = await open({}, '', one.page.context())
    expect(await third.page.inputValue('[name="ramps.0.toe"]')).toBe('44')
    const line = third.page.locator('#part-printer > summary')
    expect(await line.textContent()).toContain('measured, pages are corrected')
    await line.click()
    expect(await third.page.inputValue('#printer')).toBe('shed')
    // none is a choice as well, which the next tab keeps to, and says what there is
    await third.page.selectOption('#printer', '')
    const fourth = await open({}, '', one.page.context())
    expect(await fourth.page.textContent('#part-printer > summary')).toContain('hall, shed are measured')
    // what one tab measures anew or forgets, the others know: the newest is the one that pages are corrected for
    const drawn = one.page.locator('.printer [role="status"]').first()
    expect(await drawn.textContent()).toContain('across 0.40 % too short')
    await other.page.click('#part-printer > summary')
    await other.page.selectOption('#printer', 'hall')
    await other.page.fill('[name="printer-name"]', 'hall')
    await other.page.fill('[name="measure-across"]', '149.7mm')
    await other.page.fill('[name="measure-down"]', '150mm')
    await other.page.fill('[name="measure-diagonals"]', '211.9mm, 211.9mm')
    await other.page.click('#keep-printer')
    await other.page.click('#replace-printer')
    await drawn.filter({ hasText: 'across 0.20 % too short' }).waitFor()
    await other.page.click('#forget-printer')
    await third.page.locator('#printer option', { hasText: 'hall' }).waitFor({ state: 'detached' })
    // one that is forgotten in another tab is not taken any more, which is said
    await one.page.waitForSelector('#printer-again')
    expect(await one.page.inputValue('#printer')).toBe('')
    expect(await one.page.textContent('.printer .words')).toMatch(/^hall is forgotten in this browser/)
    expect(await other.page.inputValue('#printer')).toBe('')
    await other.page.click('#printer-again')
    await third.page.locator('#printer option', { hasText: 'hall' }).waitFor({ state: 'attached' })
    expect(await other.page.inputValue('#printer')).toBe('hall')
    expect([...one.faults, ...other.faults]).toEqual([])
  })

  it('a printer of a name that is there is replaced only when that is said', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await page.evaluate(withoutCheckVisibility)
    await page.click('#part-printer > summary')
    const measure = async (across: string): Promise<void> => {
      await page.fill('[name="printer-name"]', 'hall')
      await page.fill('[name="measure-across"]', across)
      await page.fill('[name="measure-down"]', '150mm')
      await page.fill('[name="measure-diagonals"]', '211.7mm, 211.7mm')
      await page.click('#keep-printer')
    }
    await measure('149.4mm')
    await measure('149mm')
    expect(await page.textContent('.printer .words')).toMatch(/called hall is kept already/)
    expect(text(await saved(page, '#save-printer'))).toContain('149.4')
    await page.click('#replace-printer')
    // a button that goes when it is pressed hands the focus on
    await page.waitForFunction(() => document.activeElement?.id === 'keep-printer')
    const hall = await saved(page, '#save-printer')
    expect(text(hall)).not.toContain('149.4')
    // one that came back another way is not told to be forgotten
    await page.click('#forget-printer')
    const words = page.locator('.printer .words')
    expect(await words.textContent()).toBe('hall is forgotten in this browser')
    await drop(page, hall, 'hall.json')
    await page.waitForSelector('#printer-again', { state: 'detached' })
    expect(await words.textContent()).toBe('')
    expect(faults).toEqual([])
  })

  it('nothing where the browser refuses or is full, which is said', { timeout: patience }, async () => {
    const { page, faults } = await open()
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new Error('full')
      }
    })
    await page.fill('[name="ramps.0.toe"]', '37')
    await page.locator('header', { hasText: 'This browser keeps nothing here' }).waitFor()
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('37')
    // where asking for the place alone is refused
    await page.context().addInitScript(() => {
      for (const place of ['localStorage', 'sessionStorage'])
        Object.defineProperty(globalThis, place, {
          get: () => {
            throw new DOMException('refused', 'SecurityError')
          },
        })
    })
    const refused = await open({}, '', page.context())
    await refused.page.locator('header', { hasText: 'This browser keeps nothing here' }).waitFor()
    await refused.page.waitForSelector('.checks .good')
    expect([...faults, ...refused.faults]).toEqual([])
  })

  it('one step back for all that was typed in one field, and the design in a link', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await page.locator('[name="ramps.0.toe"]').press('End')
    await page.keyboard.type('.5')
    await page.keyboard.press('Tab')
    await page.fill('[name="ramps.0.deck"]', '480')
    await page.click('#undo')
    expect(await page.inputValue('[name="ramps.0.deck"]')).toBe('500')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('40.5')
    await page.click('#undo')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('40')
    // where nothing is left to take back the key stays there, and does nothing
    await page.keyboard.press('Enter')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('undo')
    expect(await page.isDisabled('#undo')).toBe(true)
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('40')
    await page.click('#redo')
    await page.click('#copy-link')
    const hash = await page.evaluate(() => location.hash)
    expect(hash).toMatch(/^#design=/)
    // on another disk the page lies elsewhere
    expect(await page.textContent('.next [role="status"]')).toMatch(/link.*same place.*send the design/)
    const other = await open({}, hash)
    expect(await other.page.inputValue('[name="ramps.0.toe"]')).toBe('40.5')
    // a link does not bring back what was changed since
    for (const [tab, toe] of [
      [page, '33'],
      [other.page, '38'],
    ] as const) {
      await tab.fill('[name="ramps.0.toe"]', toe)
      await tab.reload()
      expect(await tab.inputValue('[name="ramps.0.toe"]')).toBe(toe)
      expect(await tab.evaluate(() => location.hash)).toBe('')
    }
    // pasted into the address of a page that is open
    await page.evaluate((link) => {
      location.hash = link
    }, hash)
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[name="ramps.0.toe"]')?.value === '40.5',
    )
    expect(await page.evaluate(() => location.hash)).toBe(hash)
    await page.click('#undo')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('33')
    expect([...faults, ...other.faults]).toEqual([])
  })

  it('what was changed in a page that was written with a design', { timeout: patience }, () =>
    withFolder(async (folder) => {
      const [design, file] = [join(folder, 'shed.yaml'), join(folder, 'shed.html')]
      writeFileSync(design, shed)
      expect((await traceply('page', design, '--out', file)).exit).toBe(0)
      const { page, faults } = await open()
      const toe = page.locator('[name="ramps.0.toe"]')
      await toe.fill('33')
      await page.goto(pathToFileURL(file).href)
      expect(await toe.inputValue()).toBe('40 mm')
      // one's own is behind it, as behind a link
      await page.click('#undo')
      expect(await toe.inputValue()).toBe('33')
      await page.click('#redo')
      await toe.fill('38')
      await page.reload()
      expect(await toe.inputValue()).toBe('38')
      expect(faults).toEqual([])
    }),
  )

  it('the way back to the last design that could be read, in a text that was emptied and loaded again', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await page.fill('[name="ramps.0.toe"]', '37')
    await page.evaluate(() => {
      for (const part of document.querySelectorAll('details')) part.open = true
    })
    await page.fill('[name="text"]', '')
    await page.reload()
    const again = await open({}, '', page.context())
    for (const tab of [page, again.page]) {
      await tab.locator('.drawing', { hasText: 'Undo brings back' }).waitFor()
      expect(await tab.inputValue('[name="text"]')).toBe('')
      await tab.click('#undo')
      expect(await tab.inputValue('[name="ramps.0.toe"]')).toBe('37')
      await tab.waitForSelector('.checks .good')
    }
    // one that can be read has nothing behind it
    await page.reload()
    expect(await page.isDisabled('#undo')).toBe(true)
    expect([...faults, ...again.faults]).toEqual([])
  })
})
