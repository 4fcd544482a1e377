import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, template, useFolder } from './reprint-run.ts'

const { file, list, save } = useFolder()

const booklet = (...args: readonly string[]) => traceply('booklet', template('quarter-and-flat-mm'), ...args)

describe('traceply booklet', () => {
  it('writes its pages upright on the paper, each with its number, and tells its parts', async () => {
    const { exit, out } = await booklet('--out', file('b.pdf'), '--paper', 'letter')
    expect(exit).toBe(0)
    const { pages, outline } = await readPdf(bytesOf(file('b.pdf')))
    expect(out).toMatch(new RegExp(`b\\.pdf: ${pages.length} pages on letter\\.\n`))
    for (const { width, height } of pages) expect([width, height]).toEqual([612, 792])
    // every part that is told begins on the page that is told
    const told = [...out.matchAll(/^ {2}page +(\d+) {2}\S+ +(.+)$/gm)].map(([, page, title]) => [
      Number(page),
      title!,
    ])
    expect(told.length).toBeGreaterThan(8)
    for (const [page, title] of told)
      expect(outline.find((mark) => mark.page === page)?.title).toContain(title as string)
  })

  it('counts the pages that plot lays with the same options', async () => {
    const wordsOf = async (name: string): Promise<string> =>
      (await readPdf(bytesOf(file(name)))).pages
        .flatMap(({ texts }) => texts.map(({ text }) => text))
        .join(' ')
    for (const more of [[], ['--cover', 'whole'], ['--cover', 'line', '--overlap', '40mm']]) {
      const asked = [template('quarter-in'), ...more, '--force']
      expect((await traceply('booklet', ...asked, '--out', file('b.pdf'), '--only', 'first')).exit).toBe(0)
      const { out } = await traceply('plot', ...asked, '--out', file('p.pdf'))
      const tiles = /: (\d+) tiles to tape/.exec(out)![1]
      expect(await wordsOf('b.pdf')).toContain(`, ${tiles} pages to tape.`)
    }
  })

  it('lists its pages and writes nothing', async () => {
    const { exit, out } = await booklet('--pages')
    expect(exit).toBe(0)
    expect(out).toContain('framing  Framing')
    expect(list()).toEqual([])
  })

  it('writes the parts that are asked for', async () => {
    const { out } = await booklet('--out', file('b.pdf'), '--only', 'cutting,framing')
    expect([...out.matchAll(/^ {2}page +\d+ {2}(\S+)/gm)].map((found) => found[1])).toEqual([
      'cutting',
      'framing',
    ])
  })

  it('takes their names as they are shown, and says of one that this design has nothing for it', async () => {
    for (const more of [['--out', file('b.pdf')], ['--pages']]) {
      const { exit, out, err } = await traceply(
        'booklet',
        'templates/quarter-mm.yaml',
        ...more,
        '--only',
        'Care,flat',
      )
      expect(exit).toBe(0)
      expect(out).toMatch(/^ {2}page +1 {2}care /m)
      expect(err.split('\n').filter((line) => line.includes('nothing for it'))).toEqual([
        'note  `flat`: this design has nothing for it',
      ])
    }
  })

  it('says what is wrong with what was asked', async () => {
    const { exit, err } = await booklet('--only', 'framming,skin', '--paper', 'a9')
    expect(exit).toBe(2)
    expect(err).toContain('--only `framming` is no part of the booklet; did you mean `framing`?')
    expect(err).toContain('--paper')
    expect(list()).toEqual([])
  })

  it('keeps a file that exists, and writes nothing of a design with a stop', async () => {
    await booklet('--out', file('b.pdf'), '--only', 'care')
    expect((await booklet('--out', file('b.pdf'), '--only', 'care')).exit).toBe(2)
    const stopped = save(
      'stop.yaml',
      'title: High\nunits: mm\nramps:\n  - { kind: quarter, width: 1216, height: { deck: 2000 }, transition: { circle: { surface: 1000 } }, toe: 40, deck: 500, sides: { thickness: 18 }, studs: { section: 38 x 89, every: 200 }, skin: [9 plywood] }\n',
    )
    const { exit, err } = await traceply('booklet', stopped, '--out', file('c.pdf'))
    expect([exit, list()]).toEqual([1, ['b.pdf', 'stop.yaml']])
    expect(err).toContain('STOP')
  })
})
