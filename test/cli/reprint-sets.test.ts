import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { templates } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, planOf, rawContents, useFolder } from './reprint-run.ts'

const { file, plot, reprint, save } = useFolder()

const covers = ['whole', 'line', 'ribbon'] as const
const sets = templates.flatMap((name) => covers.map((cover) => ({ name, cover })))

describe.each(sets)('every page of $name, $cover', ({ name, cover }) => {
  it('comes again byte for byte, with layers, label, bookmark and plan', async () => {
    const path = await plot(name, '--cover', cover, '--strips')
    const bytes = bytesOf(path)
    const [whole, contents, plan] = [await readPdf(bytes), await rawContents(bytes), await planOf(bytes)]
    expect(contents.length).toBe(plan.pages.length)
    const called = new Set<string>()
    for (const [i, { kind, tile }] of plan.pages.entries()) {
      const said = tile ?? kind
      const again = await reprint(path, said)
      const read = await readPdf(again)
      // a set of two ramps has two maps: both are called up by the word
      const numbers = plan.pages.flatMap((page: { kind: string; tile?: string }, k: number) =>
        page.tile === tile && page.kind === kind ? [k] : [],
      ) as readonly number[]
      expect(numbers).toContain(i)
      expect(await rawContents(again)).toEqual(numbers.map((k) => contents[k]))
      expect(read.pages).toEqual(numbers.map((k) => whole.pages[k]))
      expect(read.labels).toEqual(numbers.map((k) => whole.labels[k]))
      expect(read.outline).toEqual(
        numbers.map((k, page) => ({ title: whole.outline[k]!.title, page: page + 1 })),
      )
      expect(read.layers).toEqual(whole.layers)
      expect(read.viewerPreferences).toEqual(whole.viewerPreferences)
      expect(read.title).toBe(whole.title)
      expect(read.subject).toBe(whole.subject)
      // the whole plan, with the pages that are there, under a seal of its own
      const { reprint: held, seal, ...rest } = await planOf(again)
      const { seal: before, ...of } = plan
      expect(rest).toEqual(of)
      expect(held).toEqual(numbers.map((k) => k + 1))
      expect(seal).not.toBe(before)
      const twice = await reprint(save('once.pdf', again), said)
      expect(Buffer.from(twice).equals(Buffer.from(again)), said).toBe(true)
      called.add(said)
    }
    expect(called.size).toBeGreaterThan(3)
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

it('a set of before pages proved which they are is refused with the way to print it again', async () => {
  const path = 'test/fixtures/row-letters.pdf'
  const { exit, err } = await traceply('reprint', path, 'B2', '--out', file('none.pdf'))
  expect(exit).toBe(1)
  expect(err).toMatch(
    /by an older traceply; take the PDF as plot wrote it, or, with the design file, traceply reprint DESIGN --set CODE/,
  )
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
