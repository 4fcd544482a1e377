import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { PNG } from 'pngjs'
import { describe, expect, it } from 'vitest'
import { assertEqual } from '../support/equal.ts'
import { traceply } from '../support/traceply.ts'
import { useBrowser } from './browser.ts'
import { drop, shed } from './drop.ts'
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
      assertEqual(pages, (await contentOf(await commanded(design, command, 'pdf'))).pages, thing)
    }
    expect(text(await saved(page, '#save-cuts-svg'))).toBe(text(await commanded(design, 'cuts', 'svg')))
    for (const thing of ['cuts', 'list'] as const)
      expectSame(
        text(await saved(page, `#save-${thing}-json`)),
        text(await commanded(design, thing === 'cuts' ? 'cuts' : 'buy', 'json')),
        thing,
      )
    const booklet = await contentOf(await saved(page, '#save-booklet'))
    assertEqual(booklet.pages, (await contentOf(await commanded(design, 'booklet', 'pdf'))).pages)
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
      assertEqual(square, await contentOf(new Uint8Array(readFileSync(at('square.pdf')))))
      const trial = await contentOf(await saved(page, '#save-trial'))
      const set = new Uint8Array(readFileSync(at('set.pdf')))
      assertEqual(trial, await contentOf(await reprinted(set, 'trial')))
      const strips = await contentOf(await saved(page, '#save-strips'))
      // the strips of the command's set, under the code of the set that is saved here
      const striped = await contentOf(await reprinted(await plotted(design, '--strips'), 'strips'))
      expect(strips.plan.set).toBe(trial.plan.set)
      const drawn = ({ pages }: typeof strips) => pages.map(({ texts: _, ...page }) => page)
      assertEqual(drawn(strips), drawn(striped))
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
    expect(await page.textContent('.next [role="status"]')).toBe(
      'lodz.yaml saved: the design, to open here again',
    )
    const set = await contentOf(await saved(page, '#save-pages'))
    const words = set.pages.flatMap(({ texts }) => texts.map((one) => one.text)).join(' ')
    expect(words).toContain('Ράμπα łódź рампа')
    expect(await page.textContent('.next [role="status"]')).not.toMatch(/\?|cannot/)
    assertEqual(set, await contentOf(await plotted(design)))
    expect(faults).toEqual([])
  })
})

describe('what is said beside the design', () => {
  it('goes into the pages as it does with the command: units, margins, overlap, packing, strips, a printer', {
    timeout: patience,
  }, async () => {
    const { page, faults } = await open()
    await drop(page, shed)
    await page.click('#part-title-and-units > summary')
    await page.selectOption('[name="units"]', 'in')
    await page.click('#part-paper > summary')
    await page.selectOption('[name="paper"]', 'a4')
    await page.fill('[name="margin"]', '9mm, 14mm, 11mm, 16mm')
    await page.fill('[name="overlap"]', '15mm')
    await page.check('[name="pack"]')
    await page.check('[name="strips"]')
    const design = text(await saved(page, '#save-design'))
    expect(design).toMatch(/^units: in$[\s\S]*^paper: a4$/m)
    const words = ['--margin', '9mm,14mm,11mm,16mm', '--overlap', '15mm', '--pack', '--strips']
    const own = await contentOf(await saved(page, '#save-pages'))
    expect(own.plan.overlap).toBe(15)
    expect(own.plan.margins).toEqual({ top: 9, right: 14, bottom: 11, left: 16 })
    const set = await plotted(design, ...words)
    assertEqual(own, await contentOf(set))
    // the pages are told apart by what they are for
    const tiles = own.plan.pages.filter(({ kind }: { kind: string }) => kind === 'tile').length
    await page.locator('.made-of', { hasText: `${tiles} to tape + map + test square + ` }).waitFor()
    expect(await page.textContent('#save-pages')).toBe(`save the ${own.pages.length} pages`)

    await withFolder(async (folder) => {
      const measured = ['--across', '149.4mm', '--down', '150.2mm', '--diagonals', '211.9mm', '211.8mm']
      const { exit, err } = await traceply('gauge', 'hall', ...measured, '--profiles', folder)
      if (exit !== 0) throw new Error(err)
      await page.click('#part-printer > summary')
      await page.setInputFiles('[name="printer-file"]', join(folder, 'hall.json'))
      await page.locator('.printer .words', { hasText: 'hall is kept in this browser' }).waitFor()
      const printer = ['--printer', 'hall', '--profiles', folder]
      assertEqual(
        await contentOf(await saved(page, '#save-pages')),
        await contentOf(await plotted(design, ...words, ...printer)),
      )
      // measured on another paper: the page says what the command does, and no more that it is corrected
      await page.selectOption('[name="paper"]', 'letter')
      const doubt = 'printer hall was measured on a4, this is letter'
      await page.locator('.next .wrong', { hasText: doubt }).waitFor()
      expect(await page.textContent('.next')).not.toContain('are corrected')
      await page.selectOption('[name="paper"]', 'a4')
      await page.locator('.next .wrong').waitFor({ state: 'detached' })
    })
    // the square stands where it is measured too, as the printer prints it by itself, and is not old for that
    const toMeasure = await saved(page, '#square-to-measure')
    expect(await page.textContent('.next [role="status"]')).toMatch(/^square\.pdf saved/)
    await page.selectOption('#printer', '')
    expect(toMeasure).toEqual(await saved(page, '#save-square'))

    // a set that the command wrote, dropped
    await drop(page, set, 'set.pdf')
    await page.waitForSelector('[name="again-3"]')
    const third = await saved(page, '[name="again-3"]')
    expect(await page.textContent('.set [role="status"]')).toBe('set-3.pdf saved')
    assertEqual(await contentOf(third), await contentOf(await reprinted(set, '3')))
    // of that one page alone is there
    await drop(page, third, 'pages-3.pdf')
    await page.locator('.set', { hasText: `1 of the ${own.pages.length} pages of set` }).waitFor()
    expect(await page.locator('.set [name^="again-"]').allTextContents()).toEqual(['3'])
    await page.fill('[name="ramps.0.toe"]', '44 mm')
    await page.fill('[name="margin"]', '')
    await page.fill('[name="overlap"]', '')
    await page.uncheck('[name="pack"]')
    await page.click('.covers button:has-text("ribbon")')
    await page.click('#take-design')
    expect(text(await saved(page, '#save-design'))).toBe(design)
    // laid as that set was, and what is not of it is told
    expect(await page.textContent('.set [role="status"]')).toContain(
      `to those of ${own.plan.set} only where they bear that code too`,
    )
    expect(await page.inputValue('[name="margin"]')).toBe('9 mm, 14 mm, 11 mm, 16 mm')
    expect(await page.inputValue('[name="overlap"]')).toBe('15 mm')
    expect(await page.isChecked('[name="strips"]')).toBe(true)
    expect(await page.textContent('.covers [aria-pressed="true"] b')).toBe(own.plan.cover)
    // one step, there and back
    await page.click('#undo')
    expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('44 mm')
    expect(await page.inputValue('[name="margin"]')).toBe('')
    expect(await page.isChecked('[name="pack"]')).toBe(false)
    await page.locator('.covers [aria-pressed="true"]', { hasText: 'ribbon' }).waitFor()
    await page.click('#redo')
    expect(await page.inputValue('[name="margin"]')).toBe('9 mm, 14 mm, 11 mm, 16 mm')
    expect(faults).toEqual([])
  })
})
