import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { PNG } from 'pngjs'
import { describe, expect, it } from 'vitest'
import { readSettled } from '../../src/index.ts'
import { badInputs } from '../design/bad-inputs.ts'
import { traceply } from '../support/traceply.ts'
import { useBrowser } from './browser.ts'
import { commanded, contentOf, patience, plotted, reprinted, saved, withFolder } from './saved.ts'

const { open } = useBrowser()

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes)

/** Two engines reckon sine, cosine and powers apart in the last bit; so far their lengths may lie apart, mm. */
const apart = 1e-9

/** Of two JSON files: where they say something else, and how many numbers were compared. */
const compared = (
  own: string,
  other: string,
): { readonly faults: readonly string[]; readonly numbers: number } => {
  const faults: string[] = []
  let numbers = 0
  const walk = (a: unknown, b: unknown, path: string): void => {
    if (typeof a === 'number' && typeof b === 'number') {
      numbers++
      if (!(Math.abs(a - b) <= apart)) faults.push(`${path}: ${a}, not ${b}`)
    } else if (a !== null && b !== null && typeof a === 'object' && typeof b === 'object') {
      for (const key of new Set([...Object.keys(a), ...Object.keys(b)]))
        walk((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}.${key}`)
    } else if (a !== b) faults.push(`${path}: ${a}, not ${b}`)
  }
  walk(JSON.parse(own), JSON.parse(other), '')
  return { faults, numbers }
}

/** They say the same, and a good deal. */
const expectSame = (own: string, other: string, what: string): void => {
  const { faults, numbers } = compared(own, other)
  expect(faults, what).toEqual([])
  expect(numbers, what).toBeGreaterThan(20)
}

/** Gives the page a file, as one that is dropped on it. */
const drop = (page: Page, content: string, name = 'design.yaml'): Promise<void> =>
  page.evaluate(
    ([inside, called]) => {
      const dataTransfer = new DataTransfer()
      dataTransfer.items.add(new File([inside!], called!))
      dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }))
    },
    [content, name],
  )

describe('what the page saves', () => {
  it('is what the commands write', { timeout: patience }, async () => {
    const { page, faults, requests } = await open()
    const design = text(await saved(page, '#save-design'))
    for (const [thing, command] of [
      ['cuts', 'cuts'],
      ['list', 'buy'],
      ['offsets', 'offsets'],
    ] as const) {
      for (const format of ['csv', 'txt'] as const)
        expect(text(await saved(page, `#save-${thing}-${format}`)), `${thing}.${format}`).toBe(
          text(await commanded(design, command, format)),
        )
      const { pages } = await contentOf(await saved(page, `#save-${thing}`))
      expect(pages.length).toBeGreaterThan(0)
      expect(pages, thing).toEqual((await contentOf(await commanded(design, command, 'pdf'))).pages)
    }
    expect(text(await saved(page, '#save-cuts-svg'))).toBe(text(await commanded(design, 'cuts', 'svg')))
    for (const thing of ['cuts', 'list'] as const)
      expectSame(
        text(await saved(page, `#save-${thing}-json`)),
        text(await commanded(design, thing === 'cuts' ? 'cuts' : 'buy', 'json')),
        thing,
      )
    const booklet = await contentOf(await saved(page, '#save-booklet'))
    expect(booklet.pages).toEqual((await contentOf(await commanded(design, 'booklet', 'pdf'))).pages)
    await withFolder(async (folder) => {
      const at = (name: string): string => join(folder, name)
      writeFileSync(at('design.yaml'), design)
      const command = async (...args: readonly string[]): Promise<string> => {
        const { exit, out, err } = await traceply(...args)
        if (exit !== 0) throw new Error(err)
        return out
      }
      await command('figures', at('design.yaml'), '--picture', at('side.svg'))
      await command('plot', at('design.yaml'), '--out', at('set.pdf'), '--map', at('map.png'))
      await command('square', '--out', at('square.pdf'))
      expect(text(await saved(page, '#save-picture-svg'))).toBe(readFileSync(at('side.svg'), 'utf8'))
      const figures = await command('figures', at('design.yaml'), '--json')
      expectSame(text(await saved(page, '#save-figures')), figures, 'figures')
      const offsets = await command('offsets', at('design.yaml'), '--json')
      expectSame(text(await saved(page, '#save-offsets-json')), offsets, 'offsets')
      // the pixels are one, their packing is not
      const own = PNG.sync.read(Buffer.from(await saved(page, '#save-map')))
      const map = PNG.sync.read(readFileSync(at('map.png')))
      expect([own.width, own.height]).toEqual([map.width, map.height])
      expect(own.data.equals(map.data)).toBe(true)
      const square = await contentOf(await saved(page, '#save-square'))
      expect(square).toEqual(await contentOf(new Uint8Array(readFileSync(at('square.pdf')))))
      const trial = await contentOf(await saved(page, '#save-trial'))
      const set = new Uint8Array(readFileSync(at('set.pdf')))
      expect(trial).toEqual(await contentOf(await reprinted(set, 'trial')))
      const strips = await contentOf(await saved(page, '#save-strips'))
      const striped = await plotted(design, '--strips')
      expect(strips).toEqual(await contentOf(await reprinted(striped, 'strips')))
    })
    expect(faults).toEqual([])
    expect(requests).toEqual([])
  })

  it('prints a title in Greek, Polish and Cyrillic letters, as the command does', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await page.click('#part-title-and-units > summary')
    await page.fill('[name="title"]', 'Ράμπα łódź рампа')
    const design = text(await saved(page, '#save-design'))
    const set = await contentOf(await saved(page, '#save-pages'))
    const words = set.pages.flatMap(({ texts }) => texts.map((one) => one.text)).join(' ')
    expect(words).toContain('Ράμπα łódź рампа')
    expect(await page.textContent('.next [role="status"]')).not.toMatch(/\?|cannot/)
    expect(set).toEqual(await contentOf(await plotted(design)))
    expect(faults).toEqual([])
  })
})

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
})

describe('what the page keeps', () => {
  it('each tab its own design through a reload, and a printer of the other tab besides', {
    timeout: patience,
  }, async () => {
    const one = await open()
    const other = await open({}, '', one.page.context())
    await one.page.fill('[name="ramps.0.toe"]', '38')
    await other.page.fill('[name="ramps.0.toe"]', '44')
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
    await one.page.reload()
    await other.page.reload()
    expect(await one.page.inputValue('[name="ramps.0.toe"]')).toBe('38')
    expect(await other.page.inputValue('[name="ramps.0.toe"]')).toBe('44')
    await one.page.click('#part-printer > summary')
    expect(await one.page.locator('#printer option').allTextContents()).toEqual(
      expect.arrayContaining(['hall', 'shed']),
    )
    // a third one begins with what was there last
    const third = await open({}, '', one.page.context())
    expect(['38', '44']).toContain(await third.page.inputValue('[name="ramps.0.toe"]'))
    expect([...one.faults, ...other.faults]).toEqual([])
  })

  it('a printer of a name that is there is replaced only when that is said', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
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
    expect(text(await saved(page, '#save-printer'))).not.toContain('149.4')
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
    expect(faults).toEqual([])
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
    await page.click('#redo')
    await page.click('#copy-link')
    const hash = await page.evaluate(() => location.hash)
    expect(hash).toMatch(/^#design=/)
    const other = await open({}, hash)
    expect(await other.page.inputValue('[name="ramps.0.toe"]')).toBe('40.5')
    expect([...faults, ...other.faults]).toEqual([])
  })
})
