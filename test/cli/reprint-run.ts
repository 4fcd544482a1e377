import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { deflateSync } from 'node:zlib'
import { PDFDict, PDFDocument, PDFName, PDFRawStream, type PDFStream } from 'pdf-lib'
import { afterEach, beforeEach, expect } from 'vitest'
import { type PdfRead, readAttachments } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'

export const template = (name: string): string => `templates/${name}.yaml`

/** pdf.js takes no Buffer. */
export const bytesOf = (path: string): Uint8Array => new Uint8Array(readFileSync(path))

/** Sets by the line that plotted them, which gives the same bytes again: once a worker. */
const plottedBefore = new Map<string, Uint8Array>()

/** What is plotted, with what the printer's profile says in place of its folder: that has another name in each test. */
const saidBy = (name: string, options: readonly string[]): string => {
  const [printer, folder] = ['--printer', '--profiles'].map((option) => options.indexOf(option) + 1)
  const said = folder! > 0 ? readFileSync(join(options[folder!]!, `${options[printer!]}.json`), 'utf8') : ''
  return JSON.stringify([name, said, ...options.filter((_, i) => folder === 0 || i !== folder)])
}

/** A folder for each test. */
export const useFolder = () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'traceply-'))
  })
  afterEach(() => {
    rmSync(folder, { recursive: true })
  })
  const file = (name: string): string => join(folder, name)
  return {
    file,
    list: (): readonly string[] => readdirSync(folder).sort(),
    save: (name: string, bytes: string | Uint8Array): string => {
      writeFileSync(file(name), bytes)
      return file(name)
    },
    /** Plots a template; the path of its PDF. */
    plot: async (name: string, ...options: readonly string[]): Promise<string> => {
      const path = file(`${name}.pdf`)
      const key = saidBy(name, options)
      const before = plottedBefore.get(key)
      if (before) {
        writeFileSync(path, before)
        return path
      }
      const { exit, err } = await traceply('plot', template(name), ...options, '--out', path, '--force')
      expect(exit, err).toBe(0)
      plottedBefore.set(key, bytesOf(path))
      return path
    },
    /** Reprints into a new file; its bytes. */
    reprint: async (...args: readonly string[]): Promise<Uint8Array> => {
      const out = file('reprint.pdf')
      const { exit, err } = await traceply('reprint', ...args, '--out', out, '--force')
      expect(exit, err).toBe(0)
      return bytesOf(out)
    },
    /** Reprints in vain: exit and message; no file may be left. */
    refused: async (...args: readonly string[]) => {
      const out = file('refused.pdf')
      const before = readdirSync(folder)
      const { exit, out: said, err } = await traceply('reprint', ...args, '--out', out)
      expect(said).toBe('')
      expect(existsSync(out)).toBe(false)
      expect(readdirSync(folder)).toEqual(before)
      expect(err).not.toMatch(/\n {4}at |undefined|NaN|\[object/)
      return { exit, err }
    },
  }
}

/** The content streams as they stand in the file, by page: read by pdf-lib, without src/read. */
export const rawContents = async (bytes: Uint8Array): Promise<readonly string[]> =>
  (await PDFDocument.load(bytes, { updateMetadata: false })).getPages().map((page) => {
    const stream = page.node.Contents() as PDFStream
    return Buffer.from(stream.getContents()).toString('base64')
  })

// biome-ignore lint/suspicious/noExplicitAny: as a script would find it in the file
export const planOf = async (bytes: Uint8Array): Promise<any> =>
  planAmong({ attachments: await readAttachments(bytes) })

/** Of a PDF that was read. */
// biome-ignore lint/suspicious/noExplicitAny: as a script would find it in the file
export const planAmong = ({ attachments }: Pick<PdfRead, 'attachments'>): any => {
  const file = attachments.find(({ name }) => name === 'plan.json')!
  return JSON.parse(new TextDecoder().decode(file.bytes))
}

/** The same PDF with another text for its plan. */
export const withPlanText = async (bytes: Uint8Array, text: string): Promise<Uint8Array> => {
  const doc = await PDFDocument.load(bytes, { updateMetadata: false })
  for (const [ref, object] of doc.context.enumerateIndirectObjects())
    if (
      object instanceof PDFRawStream &&
      object.dict.lookup(PDFName.of('Type')) === PDFName.of('EmbeddedFile')
    )
      doc.context.assign(ref, PDFRawStream.of(object.dict, deflateSync(Buffer.from(text))))
  return doc.save({ updateFieldAppearances: false })
}

/** The same PDF with its catalog changed. */
export const withCatalog = async (
  bytes: Uint8Array,
  change: (catalog: PDFDict, doc: PDFDocument) => void,
): Promise<Uint8Array> => {
  const doc = await PDFDocument.load(bytes, { updateMetadata: false })
  change(doc.context.lookup(doc.context.trailerInfo.Root, PDFDict), doc)
  return doc.save({ updateFieldAppearances: false })
}
