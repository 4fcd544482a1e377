import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, PDFNumber } from 'pdf-lib'
import { describe, expect, test, vi } from 'vitest'
import { type Drawing, text } from '../../src/drawing/drawing.ts'
import { textWidth } from '../../src/drawing/text-width.ts'
import { circle } from '../../src/geometry/path.ts'
import { writePdf } from '../../src/write/pdf.ts'
import type { PdfInput, PdfPlatform } from '../../src/write/pdf-input.ts'
import { assertNear } from '../support/near.ts'
import { platform } from '../support/platform.ts'
import { readPdf } from '../support/read-pdf.ts'

const mm = 25.4 / 72
const { deflate, digest } = platform
const withoutWideFont: PdfPlatform = { deflate, digest }

const input = (more: Partial<PdfInput> = {}): PdfInput => ({
  title: 'Low pair',
  subject: 'full size',
  pages: [1, 2, 3].map((n) => ({
    width: 210,
    height: 297,
    label: `${n} B${n} (`,
    bookmark: `${n} · outer ramp, ) side`,
    draw: (): Drawing => [
      { kind: 'stroke', layer: 'cut', path: circle({ x: 100, y: 100 }, 40 + n), pen: { width: 0.3 } },
      text('note', { x: 20, y: 20 }, 3, `page ${n} of 3`),
    ],
  })),
  attachments: [],
  ...more,
})

const print = async (more: Partial<PdfInput> = {}) => readPdf((await writePdf(input(more), platform)).bytes)

test('the printer is told: no scaling, one side, tray by paper size; the title shows in the window', async () => {
  expect((await print()).viewerPreferences).toEqual({
    PrintScaling: 'None',
    Duplex: 'Simplex',
    PickTrayByPDFSize: true,
    DisplayDocTitle: true,
  })
})

test('every page has its label and its bookmark, in order', async () => {
  const read = await print()
  expect(read.labels).toEqual(['1 B1 (', '2 B2 (', '3 B3 ('])
  expect(read.outline).toEqual([1, 2, 3].map((n) => ({ title: `${n} · outer ramp, ) side`, page: n })))
})

test.each(['Ράμπα για το παιδί', 'Rampa dla Łucji – żółw', '自転車のランプ 🛹', 'a ) b \\ ((', ''])(
  'title and subject are kept exactly: %s',
  async (title) => {
    const read = await print({ title, subject: `${title}!` })
    expect(read.title).toBe(title)
    expect(read.subject).toBe(`${title}!`)
  },
)

test('attachments come back byte for byte under any name', async () => {
  const files = ['plan.json', 'a ) b (( \\.json', 'σχέδιο 図.bin', 'Plan.json'].map((name, i) => ({
    name,
    type: i === 0 ? 'application/json' : 'application/octet-stream',
    description: `what ) it ( is ${name}`,
    bytes: Uint8Array.from({ length: 1000 * i + 7 }, (_, k) => (k * 131 + i) % 256),
  }))
  const { attachments } = await print({ attachments: files })
  expect(attachments).toHaveLength(4)
  for (const file of files) {
    const read = attachments.find((a) => a.name === file.name)
    expect(read?.description).toBe(file.description)
    expect(Buffer.from(read!.bytes).equals(Buffer.from(file.bytes))).toBe(true)
  }
})

test('two attachments of one name are refused', async () => {
  const file = { name: 'plan.json', type: 'a/b', description: '', bytes: new Uint8Array(1) }
  await expect(writePdf(input({ attachments: [file, file] }), platform)).rejects.toThrow('plan.json')
})

describe('low down in the file', () => {
  const file = {
    name: 'plan.json',
    type: 'application/json',
    description: 'the plan',
    bytes: new Uint8Array(9),
  }

  test('an attachment is data of the document, with its media type and size', async () => {
    const { bytes } = await writePdf(input({ attachments: [file] }), platform)
    const { catalog, context } = await PDFDocument.load(bytes, { updateMetadata: false })
    const spec = catalog.lookup(PDFName.of('AF'), PDFArray).lookup(0, PDFDict)
    expect(spec.get(PDFName.of('AFRelationship'))).toBe(PDFName.of('Data'))
    const stream = context.lookup(spec.lookup(PDFName.of('EF'), PDFDict).get(PDFName.of('F')))
    const { dict } = stream as unknown as { dict: PDFDict }
    expect(dict.get(PDFName.of('Subtype'))?.toString()).toBe('/application#2Fjson')
    expect(dict.lookup(PDFName.of('Params'), PDFDict).lookup(PDFName.of('Size'), PDFNumber).asNumber()).toBe(
      9,
    )
  })

  test('the names of attachments are sorted by their bytes, as a name tree must be (ISO 32000-1, 7.9.6)', async () => {
    const files = ['b', 'é', 'a', '図', 'B', 'ab'].map((name) => ({ ...file, name }))
    const { bytes } = await writePdf(input({ attachments: files }), platform)
    const { catalog } = await PDFDocument.load(bytes, { updateMetadata: false })
    const tree = catalog.lookup(PDFName.of('Names'), PDFDict).lookup(PDFName.of('EmbeddedFiles'), PDFDict)
    const list = tree.lookup(PDFName.of('Names'), PDFArray)
    const keys = files.map((_, i) => list.lookup(2 * i, PDFHexString).asString())
    expect(list.size()).toBe(2 * files.length)
    expect(keys).toEqual([...keys].sort())
    expect(new Set(keys).size).toBe(files.length)
  })

  test('no dates, no Rotate, no UserUnit; made by traceply', async () => {
    const document = await PDFDocument.load((await writePdf(input(), platform)).bytes, {
      updateMetadata: false,
    })
    const info = document.context.lookup(document.context.trailerInfo.Info, PDFDict)
    expect(info.keys().map(String).sort()).toEqual(['/Creator', '/Producer', '/Subject', '/Title'])
    expect([document.getCreator(), document.getProducer()]).toEqual(['traceply', 'traceply'])
    for (const page of document.getPages())
      expect(page.node.keys().map(String).sort()).toEqual([
        '/Contents',
        '/MediaBox',
        '/Parent',
        '/Resources',
        '/Type',
      ])
  })

  test('the same input gives the same bytes, wide font and attachment included', async () => {
    const page = { ...input().pages[0]!, draw: () => [text('note', { x: 9, y: 9 }, 3, 'Łódź')] }
    const make = async () => (await writePdf(input({ pages: [page], attachments: [file] }), platform)).bytes
    vi.useFakeTimers({ toFake: ['Date'], now: new Date('2024-02-29T12:00:00Z') })
    const first = await make()
    vi.setSystemTime(new Date('2031-07-01T00:00:00Z'))
    const second = await make()
    vi.useRealTimers()
    expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true)
  })

  test('the ID depends on title, pages and attachments', async () => {
    const id = async (more: Partial<PdfInput>) => {
      const document = await PDFDocument.load((await writePdf(input(more), platform)).bytes, {
        updateMetadata: false,
      })
      return (document.context.trailerInfo.ID as PDFArray).lookup(0, PDFHexString).asString()
    }
    const ids = await Promise.all([
      id({}),
      id({ title: 'other' }),
      id({ pages: input().pages.slice(1) }),
      id({ pages: input().pages.map((p) => ({ ...p, label: 'x' })) }),
      id({ attachments: [file] }),
      id({ attachments: [{ ...file, bytes: Uint8Array.of(0, 0, 0, 0, 0, 0, 0, 0, 1) }] }),
    ])
    expect(ids[0]).toMatch(/^[0-9a-f]{32}$/)
    expect(new Set(ids).size).toBe(ids.length)
  })
})

describe('letters outside WinAnsi', () => {
  const write = async (words: readonly string[], by: PdfPlatform = platform) => {
    const drawing = words.map((w, i) => text('note', { x: 100, y: 20 + 10 * i }, 5, w, { align: 'middle' }))
    const { bytes, warnings } = await writePdf(
      input({ pages: [{ ...input().pages[0]!, draw: () => drawing }] }),
      by,
    )
    return { warnings, bytes, texts: (await readPdf(bytes)).pages[0]!.texts }
  }

  test('Greek, Polish and signs are printed, without a warning', async () => {
    const words = ['Ράμπα για το παιδί', 'Łódź żółw', 'r ≤ 3′ 2″ → lip', 'plain']
    const { texts, warnings } = await write(words)
    expect(texts.map((t) => t.text)).toEqual(words)
    expect(warnings).toEqual([])
  })

  test('letters that the wide font lacks become a box; each text is warned about once', async () => {
    const { texts, warnings } = await write(['ramp 図面', 'ramp 図面', '図'])
    expect(texts.map((t) => t.text)).toEqual(['ramp □□', 'ramp □□', '□'])
    expect(warnings).toEqual([
      '“ramp 図面”: 2 letters that no built-in font can print are shown as □',
      '“図”: 1 letter that no built-in font can print is shown as □',
    ])
  })

  test('without a wide font they become a question mark, with a warning', async () => {
    const { texts, warnings } = await write(['Łódź'], withoutWideFont)
    expect(texts[0]!.text).toBe('?ód?')
    expect(warnings).toEqual(['“Łódź”: 2 letters that no built-in font can print are shown as ?'])
  })

  test('control characters do not reach the page', async () => {
    const { texts, warnings } = await write(['a\nb\u0000c'], withoutWideFont)
    expect(texts[0]!.text).toBe('a?b?c')
    expect(warnings).toHaveLength(1)
  })

  test('a warning quotes no more than 60 letters', async () => {
    const { warnings } = await write(['図'.repeat(5000)])
    expect(warnings[0]).toContain('5000 letters')
    expect(warnings[0]!.length).toBeLessThan(150)
  })

  test('a text in the wide font is never wider than textWidth, and stays centred on its place', async () => {
    const words = ['WWWWWWWWWWŁ MMMMMMM', 'Ράμπα', 'ill ł ill', 'Żółw 図']
    const { texts } = await write(words)
    texts.forEach((t, i) => {
      const width = t.width * mm
      expect(width).toBeLessThanOrEqual(textWidth(words[i]!, 5, 'regular') + 1e-3)
      expect(width).toBeGreaterThan(0.6 * textWidth(words[i]!, 5, 'regular'))
      assertNear(t.x * mm + width / 2, 100, 2e-3)
    })
  })

  test('the wide font is asked for only when a text needs it', async () => {
    let asked = 0
    const counting: PdfPlatform = {
      ...platform,
      wideFont: () => {
        asked++
        return platform.wideFont!()
      },
    }
    await write(['Zoë – ½'], counting)
    expect(asked).toBe(0)
    await write(['Łódź', 'żółw'], counting)
    expect(asked).toBe(1)
  })

  test('only the letters in use are embedded', async () => {
    expect((await write(['Łódź'])).bytes.length).toBeLessThan(30_000)
  })
})
