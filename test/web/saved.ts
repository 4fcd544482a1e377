import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Download, Page } from 'playwright-core'
import { readSettled } from '../../src/index.ts'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'

/** So long a busy machine may take for one thing, ms. */
export const patience = 240_000

/** A click that saves a file, and its bytes. */
export const saved = async (page: Page, button: string): Promise<Uint8Array> => {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: patience }) as Promise<Download>,
    page.click(button),
  ])
  return new Uint8Array(readFileSync(await download.path()))
}

export const titleOf = (text: string): string => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design.title
}

/** What a set holds: its plan, and the marks of each page. */
export const contentOf = async (bytes: Uint8Array) => {
  const { attachments, pages } = await readPdf(bytes)
  const plan = attachments.find(({ name }) => name === 'plan.json')
  return { plan: plan && JSON.parse(new TextDecoder().decode(plan.bytes)), pages }
}

/** A folder for what the command writes and reads. */
export const withFolder = async <T>(work: (folder: string) => Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-web-'))
  try {
    return await work(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The PDF that the command writes for a design. */
export const plotted = (text: string, ...options: readonly string[]): Promise<Uint8Array> =>
  withFolder(async (folder) => {
    const [design, out] = [join(folder, 'design.yaml'), join(folder, 'set.pdf')]
    writeFileSync(design, text)
    const { exit, err } = await traceply('plot', design, '--out', out, ...options)
    if (exit !== 0) throw new Error(err)
    return new Uint8Array(readFileSync(out))
  })
