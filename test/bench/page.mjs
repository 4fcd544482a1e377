import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import chromium from '@sparticuz/chromium'
import { chromium as driver } from 'playwright-core'

/**
 * The page in a browser, from the disk: what a person waits for, and what of that is time of its own thread on the processor, which a
 * busy machine spoils less. Medians of one run; a task over 50 ms is one that is felt.
 */
const file = resolve('dist/traceply.html')
const times = 50

const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)]
const row = (name, words, goal) => console.log(`${name.padEnd(62)} ${words}   goal ${goal}`)

/** Before anything of the page runs: when the drawing is there, and which tasks were long. */
const watch = () => {
  window.long = []
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) window.long.push({ startTime, duration })
  }).observe({ type: 'longtask', buffered: true })
  new MutationObserver((_, observer) => {
    if (!document.querySelector('.picture svg text')) return
    observer.disconnect()
    document.body.getBoundingClientRect()
    window.drawn = performance.now()
  }).observe(document, { childList: true, subtree: true })
}

/** Keys in a field, each until the drawing has changed and until the pages are counted anew. */
const typed = async (count) => {
  const field = document.querySelector('[name="ramps.0.height.deck"]')
  const until = (of, done) =>
    new Promise((heard) => {
      const observer = new MutationObserver(() => {
        if (!done()) return
        observer.disconnect()
        heard(performance.now())
      })
      observer.observe(of, { childList: true, subtree: true, attributes: true, characterData: true })
    })
  const paper = document.querySelector('#part-paper')
  const [drawing, counts] = [[], []]
  const from = performance.now()
  for (let i = 0; i < count; i++) {
    const value = String(600 + ((i * 7) % 60))
    field.value = value
    const start = performance.now()
    const drawn = until(
      document.querySelector('.picture'),
      () => document.querySelector('[data-key="ramps.0.height.deck"] text')?.textContent === value,
    )
    let greyed = false
    const counted = until(paper, () => {
      const old = paper.querySelector('summary .old') !== null
      greyed ||= old
      return greyed && !old
    })
    field.dispatchEvent(new Event('input', { bubbles: true }))
    drawing.push((await drawn) - start)
    document.body.getBoundingClientRect()
    counts.push((await counted) - start)
    // so long a hand takes to the next key
    await new Promise((go) => setTimeout(go, 120))
  }
  return { drawing, counts, long: window.long.filter(({ startTime }) => startTime >= from) }
}

/** What the page's own thread does meanwhile: ms on the processor in all, and of its longest task. */
const traced = async (browser, work) => {
  await browser.startTracing(undefined, { categories: ['toplevel', '__metadata'] })
  const result = await work()
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString())
  const threadOf = ({ pid, tid }) => `${pid} ${tid}`
  const main = new Set(
    traceEvents
      .filter(({ ph, name, args }) => ph === 'M' && name === 'thread_name' && args.name === 'CrRendererMain')
      .map(threadOf),
  )
  const tasks = traceEvents.filter(
    (event) => event.name === 'ThreadControllerImpl::RunTask' && event.tdur && main.has(threadOf(event)),
  )
  if (tasks.length === 0) throw new Error('the trace shows no task of the page')
  const times = tasks.map(({ tdur }) => tdur / 1000)
  return { result, all: times.reduce((sum, ms) => sum + ms, 0), longest: Math.max(...times) }
}

export const pageBench = async () => {
  const bytes = gzipSync(readFileSync(file), { level: 9 }).length
  row('the whole file, packed', `${(bytes / 1e6).toFixed(2)} MB`, '1.5 MB')
  const browser = await driver.launch({
    executablePath: process.env.TRACEPLY_BROWSER ?? (await chromium.executablePath()),
    // a GPU that is not there is not reckoned by the processor
    args: ['--no-sandbox', '--disable-gpu', '--disable-software-rasterizer'],
    headless: true,
  })
  const opened = async () => {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage()
    await page.addInitScript(watch)
    await page.goto(pathToFileURL(file).href)
    await page.waitForFunction(() => window.drawn !== undefined)
    return page
  }
  const firsts = []
  for (let i = 0; i < 6; i++) {
    const { result, all, longest } = await traced(browser, async () => {
      const page = await opened()
      await page.waitForSelector('.pages button', { state: 'attached' })
      const { drawn, long } = await page.evaluate(() => ({ drawn: window.drawn, long: window.long }))
      await page.context().close()
      return { drawn, longest: Math.max(0, ...long.map(({ duration }) => duration)) }
    })
    firsts.push({ ...result, all, longestTime: longest })
  }
  row(
    'opening the file to the first drawing',
    `${middle(firsts.map(({ drawn }) => drawn)).toFixed(0)} ms`,
    '1000 ms',
  )
  row(
    '  of the processor, until the pages are there',
    `${middle(firsts.map(({ all }) => all)).toFixed(0)} ms`,
    '',
  )
  const spread = (list) => `${middle(list).toFixed(0)} ms, at most ${Math.max(...list).toFixed(0)}`
  row('longest task of the page while it opens, of 6', spread(firsts.map(({ longest }) => longest)), '50 ms')
  row('  of the processor', spread(firsts.map(({ longestTime }) => longestTime)), '50 ms')
  const page = await opened()
  await page.waitForSelector('.checks .good')
  await page.evaluate(typed, 5)
  const keys = await traced(browser, () => page.evaluate(typed, times))
  const { drawing, counts, long } = keys.result
  const worst = (tasks) => Math.max(0, ...tasks.map(({ duration }) => duration)).toFixed(0)
  row(`a key to the drawing, median of ${times}`, `${middle(drawing).toFixed(1)} ms`, '16 ms')
  row(
    '  of the processor, all that a key brings, pages and checks too',
    `${(keys.all / times).toFixed(1)} ms`,
    '',
  )
  row(`a key to the pages counted, median of ${times}`, `${middle(counts).toFixed(0)} ms`, '100 ms')
  row('longest task of the page while keys are pressed', `${worst(long)} ms`, '50 ms')
  row('  of the processor', `${keys.longest.toFixed(0)} ms`, '50 ms')
  for (let i = 0; i < 5; i++) await page.click('#add-ramp')
  await page.click('#part-paper > summary')
  await page.click('.covers button >> nth=0')
  await page.check('[name="strips"]')
  await page.waitForTimeout(2000)
  await page.evaluate(() => {
    window.long = []
  })
  const { longest } = await traced(browser, async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 300_000 }),
      page.click('#save-pages'),
    ])
    await download.path()
  })
  const meanwhile = await page.evaluate(() => window.long)
  row('longest task of the page while a large set is written', `${worst(meanwhile)} ms`, '50 ms')
  row('  of the processor', `${longest.toFixed(0)} ms`, '50 ms')
  await browser.close()
}
