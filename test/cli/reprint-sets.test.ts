import { readFileSync } from 'node:fs'
import { deflateSync, inflateSync } from 'node:zlib'
import { PDFArray, PDFDict, PDFName, PDFRawStream, type PDFRef } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { assertEqual } from '../support/equal.ts'
import { readPdf } from '../support/read-pdf.ts'
import { templates } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, planAmong, planOf, rawContents, useFolder, withCatalog } from './reprint-run.ts'

const { file, plot, refused, reprint, save } = useFolder()

const covers = ['whole', 'line', 'ribbon'] as const
const sets = templates.flatMap((name) => covers.map((cover) => ({ name, cover })))

describe.each(sets)('every page of $name, $cover', ({ name, cover }) => {
  // the first and the last tile alone, those between with them: all of them are drawn alike
  it('comes again byte for byte, with layers, label, bookmark and plan', async () => {
    const path = await plot(name, '--cover', cover, '--strips')
    const bytes = bytesOf(path)
    const [whole, contents] = [await readPdf(bytes), await rawContents(bytes)]
    const plan = planAmong(whole)
    expect(contents.length).toBe(plan.pages.length)
    const words: readonly string[] = plan.pages.map(
      ({ kind, tile }: { kind: string; tile?: string }) => tile ?? kind,
    )
    const tiles = words.filter((word) => /^\d+$/.test(word))
    const alone = words.filter((word) => !tiles.slice(1, -1).includes(word))
    const seen = new Set<number>()
    for (const said of [tiles, ...[...new Set(alone)].map((word) => [word])]) {
      const again = await reprint(path, ...said)
      const read = await readPdf(again)
      // a set of two ramps has two maps: both are called up by the word
      const numbers = words.flatMap((word, k) => (said.includes(word) ? [k] : []))
      for (const number of numbers) seen.add(number)
      assertEqual(
        await rawContents(again),
        numbers.map((k) => contents[k]),
      )
      assertEqual(
        read.pages,
        numbers.map((k) => whole.pages[k]),
      )
      expect(read.labels).toEqual(numbers.map((k) => whole.labels[k]))
      expect(read.outline).toEqual(
        numbers.map((k, page) => ({ title: whole.outline[k]!.title, page: page + 1 })),
      )
      expect(read.layers).toEqual(whole.layers)
      expect(read.viewerPreferences).toEqual(whole.viewerPreferences)
      expect(read.title).toBe(whole.title)
      expect(read.subject).toBe(whole.subject)
      // the whole plan, with the pages that are there, under a seal of its own
      const { reprint: held, seal, ...rest } = planAmong(read)
      const { seal: before, ...of } = plan
      assertEqual(rest, of)
      expect(held).toEqual(numbers.map((k) => k + 1))
      expect(seal).not.toBe(before)
      const twice = await reprint(save('once.pdf', again), ...said)
      expect(Buffer.from(twice).equals(Buffer.from(again)), `${said}`).toBe(true)
    }
    expect(seen.size).toBe(plan.pages.length)
    expect(tiles.length).toBeGreaterThan(2)
    // a square, a map, a strip and two tiles at least
    expect(new Set(alone).size).toBeGreaterThan(4)
  })
})

it('tiles are called by their numbers, other pages by a word, capitals or not, each once, in the order of the set', async () => {
  const path = await plot('quarter-mm', '--cover', 'whole')
  const plan = await planOf(bytesOf(path))
  const tiles: readonly { readonly tile: string; readonly page: number }[] = plan.pages.filter(
    (page: { kind: string }) => page.kind === 'tile',
  )
  const [first, third, fifth] = [tiles[0]!, tiles[2]!, tiles[4]!]
  const again = await reprint(path, '5', third.tile, 'MAP', fifth.tile, '01')
  expect((await planOf(again)).reprint).toEqual([1, first.page, third.page, fifth.page])
  expect((await readPdf(again)).labels).toEqual(['Map', first.tile, third.tile, fifth.tile])
})

describe('a set of before pages proved which they are', () => {
  const old = 'test/fixtures/row-letters.pdf'

  it('gives each of its pages by number and by name of a row letter, found by the words on it', async () => {
    const contents = await rawContents(bytesOf(old))
    const { pages, set } = await planOf(bytesOf(old))
    const called: number[] = []
    for (const { page, kind, tile } of pages as { page: number; kind: string; tile?: string }[]) {
      const number = pages.filter(
        (one: { kind: string; page: number }) => one.kind === 'tile' && one.page <= page,
      )
      const words = [
        ...(tile === undefined ? [kind] : [tile]),
        ...(kind === 'tile' ? [`${number.length}`] : []),
      ]
      for (const word of words) {
        const again = await reprint(old, word)
        expect(await rawContents(again), word).toEqual([contents[page - 1]])
        expect((await planOf(again)).reprint).toEqual([page])
        // and from there once more
        assertEqual(await reprint(save('again.pdf', again), word), again)
        called.push(page)
      }
    }
    expect([...new Set(called)]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9])
    expect(called.length).toBe(9 + 5)
    expect(set).toBe('V83H-5WW5-5BWB')
  })

  it('also where they were turned round', async () => {
    const contents = await rawContents(bytesOf(old))
    const turned = await withCatalog(bytesOf(old), (catalog, doc) => {
      const kids = catalog.lookup(PDFName.of('Pages'), PDFDict).lookup(PDFName.of('Kids'), PDFArray)
      const order = kids.asArray().toReversed()
      order.forEach((kid, i) => {
        kids.set(i, kid)
      })
      expect(doc.getPageCount()).toBe(9)
    })
    const path = save('turned.pdf', turned)
    for (const [word, page] of [
      ['B2', 6],
      ['1', 4],
      ['map', 1],
    ] as const)
      expect(await rawContents(await reprint(path, word)), word).toEqual([contents[page - 1]])
  })

  it('for another printer too: its words, matrix and plan are new', async () => {
    const folder = file('printers')
    const sides = ['--across', '149mm', '--down', '150.5mm']
    await traceply('gauge', 'shed', '--paper', 'a3', ...sides, '--profiles', folder)
    const again = await reprint(old, 'B2', '--printer', 'shed', '--profiles', folder)
    const { printer, set } = await planOf(again)
    expect(printer).toBe('shed')
    const words = (await readPdf(again)).pages[0]!.texts.map(({ text }) => text)
    expect(words).toContain(`tile B2 · 3 of 5 · set ${set}`)
    assertEqual(await reprint(save('again.pdf', again), '3'), again)
  })

  it.each([
    ['of another set', 'V83H-5WW5-5BWB', 'V83H-5WW5-5BWC'],
    ['whose words tell no page', 'tile B2 ', 'tile Q2 '],
  ])('but not a page %s', async (_, words, others) => {
    const bytes = await withCatalog(bytesOf(old), (_, doc) => {
      const ref = doc.getPage(5).node.get(PDFName.of('Contents')) as PDFRef
      const stream = doc.context.lookup(ref) as PDFRawStream
      const drawn = inflateSync(stream.contents).toString('latin1')
      expect(drawn).toContain(words)
      const changed = new Uint8Array(deflateSync(Buffer.from(drawn.replaceAll(words, others), 'latin1')))
      doc.context.assign(ref, PDFRawStream.of(stream.dict, changed))
    })
    const { exit, err } = await refused(save('doubt.pdf', bytes), 'B2')
    expect(exit).toBe(1)
    expect(err).toContain('does not hold it any more')
  })
})

it('the same pages from the set and from a reprint of more are the same file', async () => {
  const path = await plot('quarter-in', '--cover', 'line')
  const more = save('more.pdf', await reprint(path, '1', '2', '3', 'square'))
  expect(Buffer.from(await reprint(more, '2')).equals(Buffer.from(await reprint(path, '2')))).toBe(true)
})

it('a square alone can be printed again', async () => {
  const path = save('square.pdf', '')
  expect((await traceply('square', '--paper', 'a4', '--out', path, '--force')).exit).toBe(0)
  expect(await rawContents(await reprint(path, 'square'))).toEqual(await rawContents(bytesOf(path)))
})

it('letters of an embedded font come along', async () => {
  const text = readFileSync('templates/quarter-mm.yaml', 'utf8').replace(
    /^title:.*$/m,
    'title: Ράμπα για το υπόστεγο',
  )
  const design = save('greek.yaml', text)
  const path = save('greek.pdf', '')
  expect((await traceply('plot', design, '--out', path, '--force')).exit).toBe(0)
  const whole = await readPdf(bytesOf(path))
  const map = await readPdf(await reprint(path, 'map'))
  expect(map.title).toBe('Ράμπα για το υπόστεγο')
  expect(map.pages[0]).toEqual(whole.pages[0])
  expect(map.pages[0]!.texts.map(({ text }) => text)).toContain('Ράμπα για το υπόστεγο')
})
