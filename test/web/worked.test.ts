import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { solveDesign } from '../../src/index.ts'
import { templateText } from '../support/templates.ts'
import { useBrowser } from './browser.ts'
import { patience, plotted, saved } from './saved.ts'

const { open } = useBrowser()

/** Who minds nothing that moves. */
const moving = { reducedMotion: 'no-preference' } as const

/** How many lines and words of the drawing glow. */
const glowing = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      document
        .getAnimations()
        .filter(({ effect }) =>
          ((effect as KeyframeEffect).getKeyframes() as readonly Record<string, unknown>[]).some((frame) =>
            `${frame.stroke} ${frame.fill}`.includes('--glow'),
          ),
        ).length,
  )

it('lip and tangent are dragged, by the pointer and by keys, each drag one step back', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open(moving)
  const drag = async (handle: string, dx: number, dy: number): Promise<void> => {
    const box = (await page.locator(`#handle-${handle} .knob`).boundingBox())!
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + dx / 2, y + dy / 2)
    await page.mouse.move(x + dx, y + dy)
    await page.mouse.up()
  }
  const figure = async (path: string): Promise<number> =>
    Number.parseFloat(await page.inputValue(`[name="ramps.0.${path}"]`))
  await drag('lip', 0, -30)
  const high = await figure('height.deck')
  expect(high).toBeGreaterThan(660)
  await page.click('#undo')
  expect(await figure('height.deck')).toBe(640)
  await drag('tangent', -40, 0)
  expect(await figure('transition.circle.surface')).toBeGreaterThan(1800)
  await page.click('#undo')
  expect(await figure('transition.circle.surface')).toBe(1700)
  await drag('tangent', 0, -30)
  expect(await figure('transition.tangent.surface')).toBeGreaterThan(20)
  await page.click('#undo')
  // through what stops it and back, in one drag
  const lip = (await page.locator('#handle-lip .knob').boundingBox())!
  const [x, y] = [lip.x + lip.width / 2, lip.y + lip.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y - 600)
  await page.waitForSelector('.picture.old')
  await page.mouse.move(x, y - 12)
  await page.waitForSelector('.picture:not(.old)')
  await page.mouse.up()
  const back = await figure('height.deck')
  expect(back).toBeGreaterThan(640)
  expect(back).toBeLessThan(760)
  await page.click('#undo')
  expect(await figure('height.deck')).toBe(640)
  await page.focus('#handle-lip')
  await page.keyboard.press('ArrowUp')
  expect(await figure('height.deck')).toBe(645)
  const said = (handle: string) => page.getAttribute(`#handle-${handle}`, 'aria-valuetext')
  expect(await said('lip')).toBe('deck height 645 mm')
  await page.focus('#handle-tangent')
  await page.keyboard.press('ArrowLeft')
  expect(await figure('transition.circle.surface')).toBe(1710)
  await page.keyboard.press('ArrowUp')
  expect(await figure('transition.tangent.surface')).toBe(5)
  expect(await said('tangent')).toBe('surface radius 1710 mm, surface tangent height 5 mm')
  expect(faults).toEqual([])
})

it('each check points at its place, and its offers are taken and undone', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.fill('[name="ramps.0.toe"]', '3')
  const row = page.locator('.checks .warn', { hasText: 'feather edge' })
  await row.hover()
  await page.waitForSelector('.ring')
  await page.mouse.move(5, 5)
  await page.waitForSelector('.ring', { state: 'detached' })
  await row.locator('.where').focus()
  await page.waitForSelector('.ring')
  await row.locator('.offer').first().click()
  await row.waitFor({ state: 'detached' })
  expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('12 mm')
  await page.click('#undo')
  expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('3')
  await row.waitFor()
  // one that was made for the text before is not typed over what was just typed
  await page.waitForSelector('.checks:not(.old) .warn .offer:not([aria-disabled="true"])')
  await page.evaluate(() => {
    const checks = document.querySelector('.checks')!
    new MutationObserver((_, watch) => {
      if (!checks.matches('.old')) return
      watch.disconnect()
      checks.querySelector<HTMLElement>('.warn .offer')!.click()
      document.body.dataset.pressed = 'old'
    }).observe(checks, { attributeFilter: ['class'] })
  })
  await page.fill('[name="ramps.0.toe"]', '4')
  await page.waitForSelector('[data-pressed]')
  expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('4')
  await page.click('#undo')
  await page.click('#part-pipe > summary')
  await page.fill('[name="ramps.0.coping.out"]', '-4')
  await page.locator('.checks .warn', { hasText: 'behind the ridden face' }).hover()
  await page.waitForSelector('[data-key="ramps.0.coping"].lit')
  // a field lights its part too
  await page.mouse.move(5, 5)
  await page.focus('[name="ramps.0.coping.outside"]')
  await page.waitForSelector('[data-key="ramps.0.coping"].lit')
  expect(faults).toEqual([])
})

it('what may throw a rider down stands first, and in the drawing; what a change moved glows, if motion is not unwelcome', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open(moving)
  await page.waitForSelector('.checks .good')
  expect(await glowing(page)).toBe(0)
  await page.fill('[name="ramps.0.deck"]', '120')
  await expect.poll(() => glowing(page), { timeout: patience }).toBeGreaterThan(0)
  await page.waitForSelector('.alarm-mark')
  expect(await page.textContent('.alarm-mark')).toBe('DANGER: tips over')
  // saving is not the strongest thing now, the way out is; what each way leads to is said
  expect(await page.getAttribute('#save-pages', 'class')).toBe(null)
  expect(await page.getAttribute('#save-set', 'class')).toBe(null)
  await page.waitForSelector('.checks .hurts .best')
  const ways = await page.locator('.checks .warn .offer small').allTextContents()
  expect(ways.length).toBeGreaterThan(0)
  expect(await page.textContent('.checks .hurts .best small')).toBe('then nothing to watch')
  expect(await page.textContent('.checks li:first-child')).toMatch(/DANGER.*A rider can fall.*tips it over/)
  expect(await page.textContent('.next [role="status"]')).toContain('under DANGER')
  // said once
  expect((await page.textContent('main'))?.split('A rider can fall')).toHaveLength(2)
  await page.click('.checks .hurts .best')
  await page.waitForSelector('.alarm-mark', { state: 'detached' })
  // as it was said
  await page.locator('.checks .good').waitFor()
  const still = await open()
  await still.page.waitForSelector('.checks .good')
  await still.page.fill('[name="ramps.0.deck"]', '120')
  await still.page.waitForSelector('.alarm-mark')
  await still.page.waitForTimeout(400)
  expect(await glowing(still.page)).toBe(0)
  expect([...faults, ...still.faults]).toEqual([])
})

it('offers stay where they stood when it is known what each leads to', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.fill('[name="ramps.0.height.deck"]', '600')
  await page.fill('[name="ramps.0.transition.circle.surface"]', '500')
  const offers = page.locator('.checks .stop .offer')
  await page.locator('.checks .stop', { hasText: 'lean over the rider' }).waitFor()
  const placed = () =>
    offers.evaluateAll((buttons) =>
      buttons.map((button) => {
        const { x, y } = button.getBoundingClientRect()
        return { x, y, typed: button.firstChild?.textContent }
      }),
    )
  const before = await placed()
  expect(before.length).toBeGreaterThan(1)
  await page.waitForSelector('.checks .stop .best')
  // the second is the best: it brings nothing to watch
  expect(await offers.nth(1).getAttribute('class')).toContain('best')
  expect((await placed()).slice(0, before.length)).toEqual(before)
  expect(faults).toEqual([])
})

it('a ramp or a page that is there no more is not shown', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.click('#add-ramp')
  await page.locator('.tabs button', { hasText: 'ramp 2' }).click()
  await page.waitForSelector('[name="ramps.1.name"]', { state: 'attached' })
  await page.click('#undo')
  await page.waitForSelector('[name="ramps.1.name"]', { state: 'detached' })
  expect(await page.inputValue('[name="ramps.0.height.deck"]')).toBe('640')
  // of larger paper there are fewer pages
  await page.waitForSelector('.pages button', { state: 'attached' })
  await page.click('#part-paper > summary')
  await page.locator('.pages button').last().click()
  await page.waitForSelector('.sheet-view svg text')
  await page.selectOption('[name="paper"]', 'a0')
  await page.locator('#part-paper', { hasText: 'a0, 1 page to tape' }).waitFor()
  await page.waitForSelector('.sheet-view :not(.old) > svg text, .leaf-box:not(.turning) svg text')
  expect(await page.isDisabled('#next-page')).toBe(true)
  expect(await page.locator('.sheet-view .wrong').count()).toBe(0)
  // while there are none for a moment it stays, and nothing is saved by it
  const barred = page.locator('.sheet-view #save-page:disabled')
  await page.fill('[name="margin"]', '900')
  await page.locator('[name="margin"]').blur()
  await page.locator('.next', { hasText: 'First mend' }).waitFor()
  expect(await barred.count()).toBe(1)
  await page.fill('[name="margin"]', '')
  await page.locator('[name="margin"]').blur()
  await page.waitForSelector('.sheet-view #save-page:enabled')
  await page.fill('[name="ramps.0.toe"]', 'x')
  expect(await barred.count()).toBe(1)
  // of another kind: what that has not goes, what it needs comes
  await page.fill('[name="ramps.0.toe"]', '40')
  await page.selectOption('[name="ramps.0.kind"]', 'flat')
  await page.locator('.next', { hasText: 'A flat is straight cuts' }).waitFor()
  await page.waitForSelector('.sheet-view', { state: 'detached' })
  await page.waitForSelector('.pages button', { state: 'detached' })
  expect(await page.locator('.checks .stop').count()).toBe(0)
  await page.click('#undo')
  expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('40')
  expect(await page.locator('.sheet-view').count()).toBe(0)
  expect(faults).toEqual([])
})

it('words for the lip with their radii, a ramp found from what one knows, a twin, another paper', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  expect(await page.textContent('.steepness [aria-pressed="true"] b')).toBe('mellow')
  const quick = page.locator('.steepness button', { hasText: 'quick' })
  await quick.click()
  await page.locator('.answer', { hasText: 'quick' }).waitFor()
  await page.click('#part-help-me-choose > summary')
  await page.fill('[name="wish-rider"]', '8')
  await page.click('#choose')
  await page.locator('.chosen li').first().waitFor({ timeout: patience })
  const found = await page.locator('.chosen li').count()
  expect(found).toBeGreaterThanOrEqual(3)
  expect(found).toBeLessThanOrEqual(5)
  await page.click('[name="take-2"]')
  // the one that is drawn is the one that is outlined, and none once it is changed
  expect(await page.locator('.chosen [aria-pressed="true"]').getAttribute('name')).toBe('take-2')
  const design = new TextDecoder().decode(await saved(page, '#save-design'))
  const reading = readDesign(design)
  expect('design' in reading && solveDesign(reading.design).stopped).toBe(false)
  await page.fill('[name="ramps.0.toe"]', '41')
  expect(await page.locator('.chosen [aria-pressed="true"]').count()).toBe(0)
  await page.selectOption('#starter', 'quarter-mm')
  expect(new TextDecoder().decode(await saved(page, '#save-design'))).toBe(templateText('quarter-mm'))
  await page.click('#add-ramp')
  await page.locator('.drawing button', { hasText: 'ramp 2' }).click()
  expect(await page.inputValue('[name="ramps.1.like"]')).toBe('ramp')
  await page.click('#remove-ramp')
  expect(await page.locator('#remove-ramp').count()).toBe(0)
  await page.click('#part-pipe > summary')
  await page.uncheck('[name="ramps.0.coping"]')
  await page.keyboard.press('Control+z')
  expect(await page.isChecked('[name="ramps.0.coping"]')).toBe(true)
  await page.uncheck('[name="ramps.0.coping"]')
  await page.check('[name="ramps.0.coping"]')
  expect(await page.inputValue('[name="ramps.0.coping.outside"]')).toBe('60.3')
  await page.click('#part-paper > summary')
  await page.selectOption('[name="paper"]', 'letter')
  await page.waitForFunction(() =>
    /letter, \d+ pages to tape/.test(document.querySelector('#part-paper')?.textContent ?? ''),
  )
  await page.locator('.sheets [role="button"]').first().click()
  await page.waitForSelector('.sheet-view svg text')
  expect(await page.textContent('.sheet-view')).toMatch(/WASTE|KEEP/)
  // by mouse no ring lies over the drawing
  await page.click('.sheet-view >> text=back to the side')
  await page.waitForFunction(() => document.activeElement?.matches('.sheets [data-page]'))
  expect(await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle)).toBe('none')
  expect(faults).toEqual([])
})

it('a twin shows what it takes over, follows a new name, and stays when the first goes', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  const second = page.locator('.drawing button', { hasText: 'ramp 2' })
  await page.fill('[name="ramps.0.transition.tangent.surface"]', '25')
  await page.click('#add-ramp')
  await second.click()
  const more = page.locator('#part-the-ramp .more > summary')
  expect(await more.textContent()).toContain('as `ramp` has them')
  await more.click()
  const standing = (key: string) => page.getAttribute(`[name="ramps.1.${key}"]`, 'placeholder')
  expect(await standing('transition.tangent.surface')).toBe('25')
  expect(await standing('height.deck')).toBe('640')
  await page.click('#part-pipe > summary')
  const pipe = page.locator('[name="ramps.1.coping"]')
  expect(await pipe.isChecked()).toBe(true)
  await pipe.uncheck()
  await page.fill('[name="ramps.1.toe"]', '45')
  expect(await page.inputValue('[name="text"]')).toContain('coping: none')
  await pipe.check()
  expect(await page.inputValue('[name="text"]')).not.toContain('coping: none')
  expect(await pipe.isChecked()).toBe(true)
  // the name passes through that of the other
  await page.locator('.drawing button').first().click()
  await page.locator('[name="ramps.0.name"]').press('End')
  await page.keyboard.type(' 2x')
  await second.first().waitFor()
  expect(await page.inputValue('[name="text"]')).toContain('like: ramp 2x\n')
  await page.click('#undo')
  expect(await page.inputValue('[name="text"]')).toContain('like: ramp\n')
  await page.click('#remove-ramp')
  expect(await page.locator('#remove-ramp').count()).toBe(0)
  expect(await page.inputValue('[name="ramps.0.name"]')).toBe('ramp 2')
  expect(await page.inputValue('[name="ramps.0.transition.tangent.surface"]')).toBe('25')
  expect(await page.inputValue('[name="ramps.0.toe"]')).toBe('45')
  expect(await page.locator('.checks .stop').count()).toBe(0)
  // what another is stored in stays
  await page.click('#part-help-me-choose > summary')
  await page.selectOption('#starter', 'pair-mm')
  await page.waitForSelector('#remove-ramp:disabled')
  expect(await page.textContent('.ramps')).toContain('stored inside it: inner')
  expect(await page.isDisabled('[name="ramps.0.kind"]')).toBe(true)
  expect(await page.textContent('#field-ramps\\.0\\.kind-help')).toContain('stored inside it: inner')
  expect(faults).toEqual([])
})

it('a figure that is left open is found and drawn, and its ramp printed', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.click('#part-the-ramp .more > summary')
  await page.fill('[name="ramps.0.lip"]', '45°')
  // while it is looked for a ramp can be added, and taken away
  const barred = await page.$eval('[name="ramps.0.transition.circle.surface"]', async (field) => {
    const input = field as HTMLInputElement
    input.value = 'solve'
    input.dispatchEvent(new Event('input', { bubbles: true }))
    await new Promise(requestAnimationFrame)
    return (document.querySelector('#add-ramp') as HTMLButtonElement).disabled
  })
  expect(barred).toBe(false)
  await page.click('#add-ramp')
  await page.click('#remove-ramp')
  await page.locator('.answer', { hasText: '45.0°' }).waitFor()
  // of one ramp no name is told; what was found of two may still stand there
  await page.locator('.checks .note', { hasText: /found transition.*lip 45\.0°/ }).waitFor()
  await page.waitForFunction(() => !(document.querySelector('#save-pages') as HTMLButtonElement).disabled)
  const design = new TextDecoder().decode(await saved(page, '#save-design'))
  expect(design).toContain('surface: solve')
  // it is the last that could be read, though it was typed before that
  await page.waitForFunction((text) => localStorage.getItem('traceply.whole') === text, design)
  expect((await saved(page, '#save-pages')).length).toBeGreaterThan((await plotted(design)).length / 2)
  // of several it is told whose it is
  await page.click('#add-ramp')
  await page.locator('.checks .note', { hasText: 'found ramp 2: ' }).waitFor()
  expect(faults).toEqual([])
})

it('a figure that limits alone decide is drawn and printed too', { timeout: patience }, async () => {
  const { page, faults } = await open()
  const design = templateText('quarter-mm')
    .replace('surface: 1700', 'surface: solve')
    .replace(/^ {4}toe: 40.*$/m, (line) => `${line}\n    limits: { lip: 48 to 52 }`)
  await page.click('#part-the-file-as-text > summary')
  await page.fill('[name="text"]', design)
  await page.locator('.checks .note', { hasText: 'found' }).waitFor()
  await page.waitForFunction(() => !(document.querySelector('#save-pages') as HTMLButtonElement).disabled)
  expect(await page.locator('.picture.old').count()).toBe(0)
  expect(await page.textContent('.next')).not.toContain('STOP')
  expect(new TextDecoder().decode(await saved(page, '#save-design'))).toBe(design)
  expect((await saved(page, '#save-pages')).length).toBeGreaterThan((await plotted(design)).length / 2)
  expect(faults).toEqual([])
})

it('a set that is being written can be stopped, and the page loaded again in the middle of it', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  await page.fill('[name="ramps.0.height.deck"]', '650')
  await page.click('#save-pages')
  await page.click('#stop')
  await page.locator('.next', { hasText: 'stopped, nothing saved' }).waitFor()
  await page.click('#save-pages')
  await page.reload()
  await page.waitForSelector('main')
  expect(await page.inputValue('[name="ramps.0.height.deck"]')).toBe('650')
  await page.waitForSelector('.pages button', { state: 'attached' })
  expect((await saved(page, '#save-pages')).length).toBeGreaterThan(10_000)
  expect(faults).toEqual([])
})
