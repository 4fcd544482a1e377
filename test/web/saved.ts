import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Download, Page } from 'playwright-core'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'

/** So long a busy machine may take for one thing, ms. */
export const patience = 240_000

/** What is pressed saves a file: its bytes. */
export const savedBy = async (page: Page, press: () => Promise<void>): Promise<Uint8Array> => {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: patience }) as Promise<Download>,
    press(),
  ])
  return new Uint8Array(readFileSync(await download.path()))
}

export const saved = (page: Page, button: string): Promise<Uint8Array> =>
  savedBy(page, () => page.click(button))

/** What was asked for once is not made again: three hands make the same set, and compare it to the same. */
export const once = <A extends readonly (string | Uint8Array)[], T>(
  make: (...of: A) => Promise<T>,
): ((...of: A) => Promise<T>) => {
  const made = new Map<string, Promise<T>>()
  return (...of) => {
    const hash = createHash('sha256')
    for (const part of of) hash.update(part).update('\0')
    const key = hash.digest('hex')
    const there = made.get(key) ?? make(...of)
    made.set(key, there)
    return there
  }
}

/** What a set holds: its plan, and the marks of each page. */
export const contentOf = once(async (bytes: Uint8Array) => {
  const { attachments, pages } = await readPdf(bytes)
  const plan = attachments.find(({ name }) => name === 'plan.json')
  return { plan: plan && JSON.parse(new TextDecoder().decode(plan.bytes)), pages }
})

/** A folder for what the command writes and reads. */
export const withFolder = async <T>(work: (folder: string) => Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-web-'))
  try {
    return await work(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** What a command writes for a design, `--out` a file of that ending. */
export const commanded: (
  text: string,
  command: string,
  ending: string,
  ...options: readonly string[]
) => Promise<Uint8Array> = once((text, command, ending, ...options) =>
  withFolder(async (folder) => {
    const [design, out] = [join(folder, 'design.yaml'), join(folder, `out.${ending}`)]
    writeFileSync(design, text)
    const { exit, err } = await traceply(command, design, '--out', out, ...options)
    if (exit !== 0) throw new Error(err)
    return new Uint8Array(readFileSync(out))
  }),
)

/** The PDF that the command writes for a design. */
export const plotted = (text: string, ...options: readonly string[]): Promise<Uint8Array> =>
  commanded(text, 'plot', 'pdf', ...options)

/** Some pages of a set once more, by the command. */
export const reprinted = once((set: Uint8Array, pages: string) =>
  withFolder(async (folder) => {
    const [from, out] = [join(folder, 'set.pdf'), join(folder, 'again.pdf')]
    writeFileSync(from, set)
    const { exit, err } = await traceply('reprint', from, pages, '--out', out)
    if (exit !== 0) throw new Error(err)
    return new Uint8Array(readFileSync(out))
  }),
)

/** The PDF that the command writes for a design and the file of a measured printer called hall. */
export const corrected = once((text: string, profile: string) =>
  withFolder((folder) => {
    writeFileSync(join(folder, 'hall.json'), profile)
    return plotted(text, '--printer', 'hall', '--profiles', folder)
  }),
)
