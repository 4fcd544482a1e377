import { expect, it } from 'vitest'
import { useBrowser } from './browser.ts'
import { drop, shed } from './drop.ts'
import { patience, saved } from './saved.ts'
import { wordsOver } from './words-apart.ts'

const { open } = useBrowser()

it('after a set was saved, DANGER and STOP stand before what is old', { timeout: patience }, async () => {
  const { page, faults } = await open()
  const status = page.locator('.next [role="status"]')
  await saved(page, '#save-figures')
  // a button that is barred while it saves gets the focus back
  await page.waitForFunction(() => document.activeElement?.id === 'save-figures')
  await page.fill('[name="ramps.0.deck"]', '120')
  await page.waitForSelector('.alarm-mark')
  expect(await status.textContent()).toMatch(
    /^Look at what stands under DANGER.* from before the last change/,
  )
  await page.fill('[name="ramps.0.deck"]', 'x')
  await page.waitForSelector('.checks .stop')
  expect(await status.textContent()).toMatch(
    /^First mend what stands under STOP.* from before the last change/,
  )
  expect(faults).toEqual([])
})

it('why nothing was saved is told as long as the text is the same, also of the square, which is made of little of it', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  const status = page.locator('.next [role="status"]')
  await page.click('#part-printer > summary')
  await page.click('#part-the-file-as-text > summary')
  await page.fill('[name="text"]', '')
  await page.click('#square-to-measure')
  await status.filter({ hasText: 'the file is empty' }).waitFor()
  await page.click('#undo')
  await page.waitForSelector('.checks .good')
  expect(await status.textContent()).toMatch(/^Change the figures in colour/)
  expect(faults).toEqual([])
})

it('a torn link says so above what is shown, until another design is there', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  const alert = page.locator('header [role="alert"]')
  await page.click('#copy-link')
  const hash = await page.evaluate(() => location.hash)
  const torn = await open({}, hash.slice(0, -40))
  expect(await torn.page.textContent('header [role="alert"]')).toMatch(/link is torn.*no whole design/)
  await torn.page.fill('[name="ramps.0.toe"]', '38')
  await torn.page.waitForSelector('header [role="alert"]', { state: 'detached' })
  expect(await torn.page.evaluate(() => location.hash)).toBe('')
  // pasted into the address of an open page
  expect(await alert.count()).toBe(0)
  await page.evaluate(
    (link) => {
      location.hash = link
    },
    hash.slice(0, -40),
  )
  await alert.waitFor()
  await page.evaluate((link) => {
    location.hash = link
  }, hash)
  await alert.waitFor({ state: 'detached' })
  expect([...faults, ...torn.faults]).toEqual([])
})

it('printed from the browser, a page is not there, as it would not be to scale, which is said', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  const banner = () => page.evaluate(() => getComputedStyle(document.body, '::before').content)
  await page.waitForSelector('.pages button', { state: 'attached' })
  await page.click('#part-paper > summary')
  await page.locator('.pages button').last().click()
  await page.waitForSelector('.leaf svg text')
  expect(await banner()).toBe('none')
  await page.emulateMedia({ media: 'print' })
  expect(await banner()).toContain('Not to scale: save the pages and print the PDF')
  expect(await page.isVisible('.leaf')).toBe(false)
  await page.emulateMedia({ media: 'screen' })
  expect(await page.isVisible('.leaf')).toBe(true)
  expect(faults).toEqual([])
})

it.each([
  ['a phone on its side', 844, 390],
  ['a laptop at 200 %', 683, 384],
  ['a phone upright', 390, 844],
  ['a laptop', 1366, 768],
])(
  'no words of a high ramp in danger lie over each other: %s',
  { timeout: patience },
  async (_, width, height) => {
    const { page, faults } = await open({ viewport: { width, height } })
    await page.fill('[name="ramps.0.height.deck"]', '1600')
    await page.waitForSelector('.alarm-mark')
    await page.waitForSelector('.pages button', { state: 'attached' })
    await page.locator('.sheets [data-page]').nth(9).waitFor()
    expect((await wordsOver(page)).faults).toEqual([])
    // a page that figures cover has no number: few have none, and where there is room all have theirs
    const numbers = await page.locator('.sheets text').count()
    expect(numbers).toBeGreaterThanOrEqual(width > 1000 ? 10 : 7)
    // nor the head of the radius' arrow over the number of a page
    const under = await page.evaluate(() => {
      const boxOf = (one: Element) => {
        const { x, y, width, height } = one.getBoundingClientRect()
        return { x: x + width / 2, y: y + height / 2, width, height }
      }
      const heads = [...document.querySelectorAll('[data-key="ramps.0.transition.circle.surface"] path')]
        .map(boxOf)
        .filter(({ width, height }) => width < 14 && height < 14)
      return [...document.querySelectorAll('.sheets text')].flatMap((text) => {
        const { x, y } = boxOf(text)
        return heads
          .filter((head) => Math.hypot(head.x - x, head.y - y) < head.width / 2 + 3)
          .map(() => text.textContent)
      })
    })
    expect(under).toEqual([])
    expect(faults).toEqual([])
  },
)

it('lengths of the square that are missing are asked for, all at once', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.click('#part-printer > summary')
  const words = page.locator('.printer .words')
  await page.click('#keep-printer')
  expect((await words.textContent())?.split('\n')).toEqual([
    expect.stringContaining('side of the square across'),
    expect.stringContaining('side of the square down'),
    expect.stringContaining('both diagonals'),
  ])
  await page.fill('[name="measure-across"]', '149.4mm')
  await page.fill('[name="measure-down"]', '150.6mm')
  await page.click('#keep-printer')
  expect(await words.textContent()).toBe('measure both diagonals, with the unit: 212.1mm 212.1mm')
  await page.fill('[name="measure-diagonals"]', '212.2mm 212.1mm')
  await page.click('#keep-printer')
  expect(await words.textContent()).toContain('is kept in this browser')
  expect(faults).toEqual([])
})

it('a flat alone says its sizes, and offers nothing that it has none of', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.selectOption('[name="ramps.0.kind"]', 'flat')
  await page.waitForSelector('.checks .good')
  await page.waitForSelector('#save-set:disabled')
  for (const none of ['trial', 'strips', 'map', 'offsets', 'offsets-csv'])
    expect(await page.isDisabled(`#save-${none}`), none).toBe(true)
  for (const own of ['square', 'booklet', 'cuts', 'list', 'picture', 'figures'])
    expect(await page.isDisabled(`#save-${own}`), own).toBe(false)
  expect(await page.textContent('.save .help')).toContain('straight cuts')
  expect(await page.textContent('.answer')).toBe('110 mm high, 2440 long, 1216 wide; lengths in mm')
  await page.click('#undo')
  await page.waitForSelector('#save-set:enabled')
  expect(await page.locator('.save .help').count()).toBe(0)
  expect(faults).toEqual([])
})

it('another unit chosen is one STOP with its way back, the sizes folded under it', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  await page.waitForSelector('.checks .good')
  await page.click('#part-title-and-units > summary')
  await page.selectOption('[name="units"]', 'in')
  const stops = page.locator('.checks > ul > .stop')
  await stops.first().waitFor()
  expect(await stops.count()).toBe(1)
  expect(await stops.locator('.message').textContent()).toMatch(/17 sizes .* make no sense .*units: mm/)
  expect(await stops.locator('.message.heard').count()).toBe(0)
  const sizes = page.locator('.checks > details')
  expect(await sizes.locator('summary').textContent()).toContain('the 17 sizes')
  expect(await sizes.locator('.stop').count()).toBe(17)
  await stops.locator('.offer', { hasText: 'type units: mm' }).click()
  await page.waitForSelector('.checks .good')
  expect(await page.inputValue('[name="units"]')).toBe('mm')
  expect(faults).toEqual([])
})

it('a button under watch is told of only where there is one', { timeout: patience }, async () => {
  const { page, faults } = await open()
  const status = page.locator('.next [role="status"]')
  await page.click('#part-the-file-as-text > summary')
  const text = await page.inputValue('[name="text"]')
  // no ramp is made smaller by a button
  await page.fill(
    '[name="text"]',
    text.replace('ramps:', 'space: { garage: 3000 x 6000, door: 600 x 500 }\nramps:'),
  )
  await page.locator('.checks .warn', { hasText: 'does not let it through' }).waitFor()
  expect(await page.locator('.checks .warn .offer').count()).toBe(0)
  expect(await status.textContent()).toBe('Look at what stands under watch. Then save the pages.')
  expect(faults).toEqual([])
})

it('an overlap that is refused is told beside the save button, and bars nothing that is not taped', {
  timeout: patience,
}, async () => {
  const { page, faults } = await open()
  await page.click('#part-paper > summary')
  await page.fill('[name="overlap"]', '3')
  await page.press('[name="overlap"]', 'Enter')
  const status = page.locator('.next [role="status"]')
  await status.filter({ hasText: 'under paper: overlap 3 mm' }).waitFor()
  expect(await page.isDisabled('#save-pages')).toBe(true)
  for (const thing of ['list', 'list-csv', 'cuts', 'cuts-svg', 'offsets', 'square', 'figures', 'picture-svg'])
    expect((await saved(page, `#save-${thing}`)).length, thing).toBeGreaterThan(100)
  await page.fill('[name="overlap"]', '')
  await page.press('[name="overlap"]', 'Enter')
  await page.waitForSelector('#save-pages:enabled')
  expect(await page.textContent('.next')).not.toContain('under paper')
  expect(faults).toEqual([])
})

it('a cover that was tapped is given back by another tap', { timeout: patience }, async () => {
  const { page, faults } = await open()
  await page.click('#part-paper > summary')
  const chosen = page.locator('.covers [aria-pressed="true"] b')
  await chosen.waitFor()
  const own = await chosen.textContent()
  const tap = (cover: string) => page.click(`.covers button:has(b:text-is("${cover}"))`)
  const choice = page.locator('#part-paper .help', { hasText: 'tap it again to leave it to the program' })
  expect(await choice.count()).toBe(0)
  const other = own === 'whole' ? 'line' : 'whole'
  await tap(other)
  await choice.filter({ hasText: `${other} is your choice` }).waitFor()
  await tap(other)
  await choice.waitFor({ state: 'detached' })
  await chosen.filter({ hasText: own! }).waitFor()
  expect(faults).toEqual([])
})

it('at twice the letters nothing on a phone is wider than the page', { timeout: patience }, async () => {
  const { page, faults } = await open({ viewport: { width: 390, height: 844 }, bypassCSP: true })
  await page.addStyleTag({ content: 'html { font-size: 200% !important }' })
  await page.waitForSelector('#save-set')
  const wide = () => page.evaluate(() => document.documentElement.scrollWidth)
  expect(await wide()).toBe(390)
  // nor the names of several ramps
  const named = shed.replace('- kind', '- name: left quarter\n    kind')
  await drop(
    page,
    ['right quarter', 'kicker'].reduce(
      (all, name) => `${all}  - { name: ${name}, like: left quarter }\n`,
      named,
    ),
  )
  await page.waitForSelector('.tabs button:nth-child(3)')
  expect(await page.evaluate(() => document.querySelector('.tabs')!.scrollWidth)).toBeGreaterThan(390)
  expect(await wide()).toBe(390)
  expect(faults).toEqual([])
})
