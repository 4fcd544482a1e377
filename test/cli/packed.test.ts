import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'
import { tapeUp } from '../tape-up/tape-up.ts'
import { bytesOf, planOf, rawContents, template, useFolder } from './reprint-run.ts'

const { file, plot, refused, reprint } = useFolder()

const sets = [
  { name: 'pair-mm', said: ['--paper', 'a2', '--strips', '--pack'] },
  { name: 'quarter-mm-round', said: ['--paper', 'a3', '--strips', '--pack'] },
  { name: 'quarter-in', said: ['--paper', 'a4', '--strips', '--pack', '--cover', 'line'] },
] as const

interface Page {
  readonly kind: string
  readonly tile?: string
  readonly holds?: readonly string[]
}

/** What calls up one page alone: a tile's number, its kind, or the number of a page with strips or a trial. */
const wordFor = (pages: readonly Page[], page: Page): string => {
  const { kind, tile, holds = [] } = page
  if (kind !== 'parts' && kind !== 'strip') return tile ?? kind
  const held = kind === 'strip' || holds.includes('strip') ? 'strip' : 'trial'
  const alike = pages.filter((one) => one.kind === held || one.holds?.includes(held))
  return `${held === 'strip' ? 'strips' : 'trial'}-${alike.indexOf(page) + 1}`
}

describe.each(sets)('a packed set of $name, $said', ({ name, said }) => {
  it('each page comes again byte for byte, from the PDF and from the design', async () => {
    const path = await plot(name, ...said)
    const [contents, plan] = [await rawContents(bytesOf(path)), await planOf(bytesOf(path))]
    expect(plan.pages.some((page: { kind: string }) => page.kind === 'parts')).toBe(true)
    for (const [i, page] of plan.pages.entries()) {
      if (page.kind === 'map') continue
      const again = await reprint(path, wordFor(plan.pages, page))
      expect(await rawContents(again)).toEqual([contents[i]])
      const { reprint: held, seal, ...rest } = await planOf(again)
      const { seal: before, ...of } = plan
      expect(held).toEqual([i + 1])
      expect(rest).toEqual(of)
      expect(seal).not.toBe(before)
    }
    const asked = ['map', 'trial', 'strips']
    const { labels } = await readPdf(bytesOf(path))
    for (const [i, label] of labels.entries())
      for (const called of [label, label.toUpperCase(), label.toLowerCase().replaceAll(' ', '-')])
        expect((await planOf(await reprint(path, called))).reprint, called).toEqual([i + 1])
    const fromDesign = await reprint(template(name), '--set', plan.set, ...asked, ...said)
    expect(Buffer.from(fromDesign).equals(Buffer.from(await reprint(path, ...asked)))).toBe(true)
  })
})

it('a page with a trial and strips is called up by either word', async () => {
  const asked = ['--paper', 'a4', '--cover', 'line', '--strips', '--pack']
  const path = await plot('quarter-in', ...asked)
  const { pages } = await planOf(bytesOf(path))
  const numbers = (of: (patterns: readonly string[]) => boolean) =>
    pages
      .filter(({ places }: { places: { pattern: string }[] }) => of(places.map(({ pattern }) => pattern)))
      .map(({ page }: { page: number }) => page)
  const trials = numbers((patterns) => patterns.includes('ramp/lip'))
  const strips = numbers((patterns) => patterns.some((pattern) => pattern.startsWith('ramp/strip-')))
  expect(strips).toContain(trials[0])
  expect((await planOf(await reprint(path, 'trial'))).reprint).toEqual(trials)
  expect((await planOf(await reprint(path, 'strips'))).reprint).toEqual(strips)
  const { err } = await refused(path, 'Q9')
  expect(err).toMatch(/other pages: map, square, trial, strips \(\d+: strips-1 …\), parts/)
})

it('a packed page can be corrected for a printer afterwards, and is taped as before', async () => {
  const profiles = ['--profiles', file('printers')]
  const sides = ['--across', '151.75mm', '--down', '152.5mm', '--diagonals', '215.5mm', '214.9mm']
  expect((await traceply('gauge', 'large', ...sides, ...profiles)).exit).toBe(0)
  const asked = ['--paper', 'a4', '--cover', 'line', '--strips', '--pack']
  const path = await plot('quarter-in', ...asked)
  const { pages } = await planOf(bytesOf(path))
  const square = pages.findIndex(({ kind }: Page) => kind === 'square')
  const every = pages.toSpliced(square, 1).map((page: Page) => wordFor(pages, page))
  const bytes = await reprint(path, ...every, '--printer', 'large', ...profiles)
  const [some, plan] = [await readPdf(bytes), await planOf(bytes)]
  // a test square is not corrected afterwards: that of a set plotted so
  const plotted = await readPdf(
    bytesOf(await plot('quarter-in', ...asked, '--printer', 'large', ...profiles)),
  )
  const read = { ...some, pages: some.pages.toSpliced(square, 0, plotted.pages[square]!) }
  const margins = { top: 10, right: 10, bottom: 10, left: 10 }
  const job = { text: plan.design, paper: 'a4', cover: 'line', correction: plan.correction } as const
  expect(tapeUp({ job, margins, overlap: 12, read, plan }).faults).toEqual([])
  const parts = pages.findIndex((page: { kind: string }) => page.kind === 'parts')
  const texts = read.pages[parts]!.texts.map(({ text }) => text)
  expect(texts.filter((text) => text.includes(plan.set)).length).toBeGreaterThan(2)
})

it.each([
  [['--strips', '--pack', '--paper', 'a2'], 'Packed: small parts share pages, which saves 1 page.'],
  // trial and strips fill a page and two of theirs
  [['--strips', '--pack', '--paper', 'a4'], 'Packed: no page is saved, so each small part keeps its own.'],
  [['--pack', '--paper', 'a4'], 'Packed: no page is saved, so each small part keeps its own.'],
  [['--strips', '--paper', 'a4'], null],
] as const)('plot %s reports what packing saves', async (said, expected) => {
  const { out } = await traceply('plot', template('quarter-mm'), ...said, '--out', file('q.pdf'))
  if (expected) expect(out.split('\n')).toContain(expected)
  else expect(out).not.toContain('Packed')
  expect(out).toContain('3. Saw the lip trial in scrap')
})

it('packing does not come by itself', async () => {
  const path = await plot('quarter-mm', '--paper', 'a1', '--strips')
  const kinds = (await planOf(bytesOf(path))).pages.map(({ kind }: { kind: string }) => kind)
  expect(kinds).toContain('trial')
  expect(kinds).not.toContain('parts')
})

describe('a page too small for the lip trial', () => {
  const said = async (margin: string, ...more: readonly string[]) => {
    const path = file('small.pdf')
    const args = ['plot', template('quarter-mm'), '--paper', 'a4', '--margin', margin, ...more]
    const { exit, err } = await traceply(...args, '--out', path, '--force')
    expect(exit, err).toBe(0)
    const { pages } = await planOf(bytesOf(path))
    return {
      err: err.replace(/\s+/g, ' '),
      trials: pages.filter(({ kind }: { kind: string }) => kind === 'trial' || kind === 'parts').length,
    }
  }

  it.each([[[]], [['--pack', '--strips']]] as const)(
    'plot %s says that there is none, and why',
    async (more) => {
      const { err, trials } = await said('10mm, 66mm, 10mm, 66mm', ...more)
      expect(trials).toBe(0)
      expect(err).toContain(
        'watch the page is too small for the lip trial of ramp, so there is none; take larger paper or smaller margins',
      )
    },
  )

  it('and where the strip that measures the pipe is left out', async () => {
    const { err, trials } = await said('45mm, 10mm, 45mm, 10mm')
    expect(trials).toBe(1)
    expect(err).toContain('watch the page is too low for the strip that measures the pipe of ramp')
  })

  it('nothing is said where both are there, or where the ramp has no pipe', async () => {
    expect((await said('10mm')).err).not.toContain('the page is too')
    const plain = await traceply('plot', template('quarter-in-plain'), '--out', file('plain.pdf'))
    expect(plain.err).not.toContain('the page is too')
  })
})
