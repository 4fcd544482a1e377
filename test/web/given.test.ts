import { PDFDocument } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { gaugeJob, isRefusal, readSettled, writeProfile } from '../../src/index.ts'
import { badInputs } from '../design/bad-inputs.ts'
import { useBrowser } from './browser.ts'
import { drop, shed } from './drop.ts'
import { patience, saved } from './saved.ts'

const { open } = useBrowser()

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes)

describe('what the page is given', () => {
  it('all that a design file may have wrong is told in the words of the commands', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    const inputs = await badInputs()
    expect(inputs.length).toBeGreaterThan(100)
    for (const input of inputs) {
      // as it comes out of a file
      const read = text(new TextEncoder().encode(input))
      const reading = readSettled(read)
      const wanted = 'problems' in reading ? reading.problems : []
      // a letter that no file can hold is another one by then
      if (wanted.length === 0) continue
      await drop(page, input)
      const said = await page
        .waitForFunction(
          (first) => {
            const all = [...document.querySelectorAll('.checks .stop .message')].map((one) => one.textContent)
            return all[0] === first ? all : null
          },
          wanted[0]!.message,
          { timeout: 20_000 },
        )
        .then((handle) => handle.jsonValue())
      expect(said, read.slice(0, 300)).toEqual(wanted.map(({ message }) => message))
    }
    expect(faults).toEqual([])
  })

  it('what a message asks whether it was meant is a button that types it, under its field too', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await page.fill('[name="ramps.0.height.deck"]', '25.2')
    const offer = page.locator('.field .offer', { hasText: 'type 25.2 cm' })
    await offer.click()
    expect(await page.inputValue('[name="ramps.0.height.deck"]')).toBe('25.2 cm')
    expect(await page.locator('.checks .stop').count()).toBe(0)
    await page.click('#undo')
    expect(await page.inputValue('[name="ramps.0.height.deck"]')).toBe('25.2')
    // no file is seen here: the field is pointed at, or the line of the text
    expect(await page.textContent('.checks .stop')).not.toMatch(/line \d/)
    await page.click('#part-the-ramp > summary')
    await page.locator('.checks .stop .where', { hasText: 'go to deck height' }).click()
    await page.waitForFunction(
      () => (document.activeElement as HTMLInputElement).name === 'ramps.0.height.deck',
    )
    await drop(page, shed.replace('toe:', 'toes:'))
    await page.locator('.checks .stop .where', { hasText: 'go to toes' }).click()
    // a ramp more would be written over one that is not seen
    expect(await page.isDisabled('#add-ramp')).toBe(true)
    expect(await page.textContent('.ramps')).toContain('first mend what stands under STOP')
    await page.waitForFunction(() => (document.activeElement as HTMLTextAreaElement).name === 'text')
    expect(await page.evaluate(() => String(getSelection()))).toBe('toes')
    expect(faults).toEqual([])
  })

  it('5 MB of junk, an empty file and a torn set are told apart, and the ramp comes back', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await drop(page, 'x: ['.repeat(1_250_000), 'junk.yaml')
    await page.locator('.checks .stop', { hasText: '256 kB' }).waitFor()
    await page.click('#undo')
    expect(await page.locator('.checks .stop').count()).toBe(0)
    await drop(page, '%PDF-1.4\nnothing', 'other.pdf')
    await page.locator('header [role="alert"]', { hasText: 'torn or damaged' }).waitFor()
    expect(await page.inputValue('[name="ramps.0.height.deck"]')).toBe('640')
    expect(faults).toEqual([])
  })

  it('a file that is no UTF-8, and a PDF that is refused, change nothing and leave no set beside them', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    const alert = page.locator('header [role="alert"]')
    const before = await page.inputValue('[name="text"]')
    // ä of Latin-1
    await drop(page, Buffer.from(shed.replace('boathouse', 'B\u00e4rsee'), 'latin1'), 'old.yaml')
    await alert.waitFor()
    expect(await alert.textContent()).toBe('old.yaml is not text in UTF-8; save it as plain text in UTF-8')
    expect(await page.inputValue('[name="text"]')).toBe(before)
    const set = await saved(page, '#save-set')
    const opened = page.locator('section.set')
    await drop(page, set, 'set.pdf')
    await opened.waitFor()
    const other = await PDFDocument.create()
    other.addPage()
    await drop(page, await other.save(), 'other.pdf')
    await alert.waitFor()
    expect(await alert.textContent()).toContain('take the set as it was saved first')
    expect(await opened.count()).toBe(0)
    expect(await page.inputValue('[name="text"]')).toBe(before)
    expect(faults).toEqual([])
  })

  it("a printer's file opened as a design is taken for what it is, and the design stays", {
    timeout: patience,
  }, async () => {
    const found = gaugeJob(
      'shed',
      { across: ['149.4mm'], down: ['150mm'], diagonals: ['211.7mm', '211.7mm'] },
      'a4',
    )
    if (isRefusal(found)) throw new Error('a plausible reading')
    const { page, faults } = await open()
    const alert = page.locator('header [role="alert"]')
    const before = await page.inputValue('[name="text"]')
    await drop(page, writeProfile(found), 'shed.json')
    await alert.filter({ hasText: 'shed.json is the file of printer shed' }).waitFor()
    expect(await page.inputValue('[name="text"]')).toBe(before)
    expect(await page.textContent('#part-printer > summary')).toContain('pages are corrected')
    expect(await page.inputValue('#printer')).toBe('shed')
    // another of its name is not lost by a file that was opened by mistake
    await page.click('#part-printer > summary')
    await page.selectOption('#printer', '')
    expect(await page.locator('#printer option').allTextContents()).toContain('shed')
    await drop(page, writeProfile({ ...found, across: 0.99 }), 'other.json')
    await alert.filter({ hasText: 'another of that name is kept here' }).waitFor()
    expect(await page.inputValue('#printer')).toBe('')
    expect(faults).toEqual([])
  })
})
