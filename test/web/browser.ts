import { existsSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { pathToFileURL } from 'node:url'
import chromium from '@sparticuz/chromium'
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium as driver,
  type Page,
} from 'playwright-core'
import { afterEach, beforeAll } from 'vitest'
import { madeOnce } from '../support/made-once.ts'
import { patience } from './saved.ts'

/** Chromium out of its npm package: x64 Linux without a system package. Elsewhere one that is installed, or none. */
const executable = async (): Promise<string | null> => {
  if (process.env.TRACEPLY_BROWSER) return process.env.TRACEPLY_BROWSER
  if (process.platform === 'linux' && process.arch === 'x64') {
    // unpacked where there is none: half of one does not start
    await madeOnce('browser', async () => {
      await chromium.executablePath()
    })
    return chromium.executablePath()
  }
  return (
    [
      '/usr/bin/chromium',
      '/usr/bin/google-chrome',
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    ].find((path) => existsSync(path)) ?? null
  )
}

/** No root's sandbox; a GPU that is not there is not reckoned by the processor, which took more of it than the page. */
const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-software-rasterizer',
  // a page lives for seconds: what is optimised for it is thrown away with it
  '--js-flags=--no-maglev --invocation-count-for-turbofan=30000 --max-inlined-bytecode-size-cumulative=300',
]

/** Of a proxy that all requests would go through: how many came. */
export const heard = { connections: 0 }

const startBrowser = async (): Promise<Browser> => {
  const path = await executable()
  if (path === null)
    throw new Error('no browser here: set TRACEPLY_BROWSER to the program of an installed Chromium')
  const server = createServer((socket) => {
    heard.connections++
    socket.destroy()
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  server.unref()
  const { port } = server.address() as AddressInfo
  return driver.launch({ executablePath: path, args, headless: true, proxy: { server: `127.0.0.1:${port}` } })
}

/** Started by the first file of a worker that asks, and ended with the worker. */
const shared: { browser?: Promise<Browser> } = {}

/** The browser of the tests of a file; what a test opened is closed when it ends. */
export const useBrowser = (): { readonly open: OpenPage } => {
  const here: { browser?: Browser } = {}
  beforeAll(async () => {
    shared.browser ??= startBrowser()
    here.browser = await shared.browser
  }, patience)
  afterEach(async () => {
    for (const context of here.browser?.contexts() ?? []) await context.close()
  })
  return { open: (...how) => openPageIn(here.browser!, ...how) }
}

export const pageFile = new URL('../../dist/traceply.html', import.meta.url)

export interface Opened {
  readonly page: Page
  /** what the console said of errors, and every exception */
  readonly faults: readonly string[]
  /** every request but that for the file itself */
  readonly requests: readonly string[]
}

type OpenPage = (
  options?: BrowserContextOptions,
  hash?: string,
  beside?: BrowserContext | null,
) => Promise<Opened>

/** In the page: as in Safari before 17.4. */
export const withoutCheckVisibility = (): void => {
  Reflect.deleteProperty(Element.prototype, 'checkVisibility')
}

/** The page from the disk, as a double click opens it. */
const openPageIn = async (
  browser: Browser,
  options: BrowserContextOptions = {},
  hash = '',
  /** a tab beside those of this one */
  beside: BrowserContext | null = null,
): Promise<Opened> => {
  // a change glows only where that is looked at: its frames take as much of the processor as the change itself
  const usual = { viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' } as const
  const context = beside ?? (await browser.newContext({ ...usual, ...options }))
  const page = await context.newPage()
  const faults: string[] = []
  const requests: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text())
  })
  page.on('pageerror', (error) => faults.push(String(error)))
  const address = `${pathToFileURL(pageFile.pathname).href}${hash}`
  page.on('request', (request) => {
    if (
      !request.url().startsWith(pathToFileURL(pageFile.pathname).href) &&
      !/^(?:blob|data):/.test(request.url())
    )
      requests.push(request.url())
  })
  await page.goto(address)
  await page.waitForSelector('main')
  return { page, faults, requests }
}
