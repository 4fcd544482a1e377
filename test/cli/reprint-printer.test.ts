import { readFileSync } from 'node:fs'
import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { defaultMargins } from '../../src/page/sheet/paper.ts'
import { assertEqual } from '../support/equal.ts'
import { assertNear } from '../support/near.ts'
import type { Pt } from '../support/pt.ts'
import type { PdfPageRead } from '../support/read-pdf.ts'
import { pathPoints, readPdf } from '../support/read-pdf.ts'
import { templates } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { tapeUp } from '../tape-up/tape-up.ts'
import { bytesOf, planAmong, planOf, rawContents, template, useFolder } from './reprint-run.ts'

const { file, plot, refused, reprint, save } = useFolder()

/** Sides and diagonals of the printed square, mm: wide, short, leaning; and one that prints all too large. */
const printers = {
  study: ['--across', '148.4mm', '--down', '151.1mm', '--diagonals', '211.2mm', '212.4mm'],
  shed: ['--across', '150.7mm', '--down', '149.2mm', '--diagonals', '212.6mm', '211.5mm'],
  large: ['--across', '151.75mm', '--down', '152.5mm', '--diagonals', '215.5mm', '214.9mm'],
  wide: ['--across', '148.5mm', '--down', '150mm'],
  near: ['--across', '148.5mm', '--down', '150mm', '--margins', '5mm,6mm,4mm,9mm'],
  far: ['--across', '148.5mm', '--down', '150mm', '--margins', '4mm,9.5mm,14mm,6mm'],
} as const

type Printer = keyof typeof printers

const printer = (name: Printer) => ['--printer', name, '--profiles', file('my printers')] as const

const gauge = async (...names: readonly Printer[]): Promise<void> => {
  for (const name of names) {
    const { exit, err } = await traceply('gauge', name, ...printers[name], '--profiles', file('my printers'))
    expect(exit, err).toBe(0)
  }
}

type Map6 = readonly [number, number, number, number, number, number]
const apply = ([a, b, c, d, e, f]: Map6, { x, y }: Pt): Pt => ({ x: a * x + c * y + e, y: b * x + d * y + f })

/** Written points to where a true printer puts them: the correction undone about the page's centre. */
const undone = (
  [a, b, c, d]: readonly number[],
  { width, height }: PdfPageRead,
  points: readonly Pt[],
): readonly Pt[] => {
  const det = a! * d! - b! * c!
  return points.map((p) => {
    const x = p.x - width / 2
    const y = p.y - height / 2
    return { x: (d! * x - c! * y) / det + width / 2, y: (a! * y - b! * x) / det + height / 2 }
  })
}

const mm = 25.4 / 72

/** The farthest that points of two pages lie apart, in the order in which they are drawn. */
const farthest = (before: readonly Pt[], after: readonly Pt[]): number => {
  expect(after.length).toBe(before.length)
  return Math.sqrt(
    before.reduce((most, { x, y }, i) => Math.max(most, (x - after[i]!.x) ** 2 + (y - after[i]!.y) ** 2), 0),
  )
}

/** Points of a layer; or of all, where the ends of a line stand for what is between: under two maps it lies farthest apart at one. */
const drawn = (page: PdfPageRead, layer?: string): readonly Pt[] =>
  [...page.strokes, ...(layer ? [] : page.fills)]
    .filter((mark) => layer === undefined || mark.layer === layer)
    .flatMap(({ path }) => pathPoints(path, 40, layer ? 40 : 1).flat())

type Pages = { readonly pages: readonly { kind: string; tile?: string }[] }

/** What another printer may have: a test square is printed anew. */
const correctable = ({ pages }: Pages) => pages.filter(({ kind }) => kind !== 'square')

const allOf = (plan: Pages): readonly string[] => [
  ...new Set(correctable(plan).map(({ kind, tile }) => tile ?? kind)),
]

describe.each(templates)('%s corrected for another printer', (name) => {
  it.each([
    { cover: 'whole', from: null, to: 'study' },
    { cover: 'line', from: 'shed', to: 'study' },
    { cover: 'ribbon', from: 'study', to: 'large' },
  ] as const)(
    '$cover, from $from to $to: the same lines in the pattern and on the print',
    async ({ cover, from, to }) => {
      await gauge('study', 'shed', 'large')
      const path = await plot(name, '--cover', cover, '--strips', ...(from ? printer(from) : []))
      const whole = await readPdf(bytesOf(path))
      const before = planAmong(whole)
      const bytes = await reprint(path, ...allOf(before), ...printer(to))
      const moved = await readPdf(bytes)
      const after = planAmong(moved)
      const kept = correctable(before).map((page) => before.pages.indexOf(page))
      expect(kept.length).toBe(whole.pages.length - 1)
      expect(moved.pages.length).toBe(kept.length)
      expect(after.correction).not.toEqual(before.correction)
      expect(after.printer).toBe(to)
      let cuts = 0
      for (const [i, page] of moved.pages.entries()) {
        const old = whole.pages[kept[i]!]!
        const what = `page ${kept[i]! + 1}`
        const places = [before, after].map((plan) => plan.pages[kept[i]!])
        const cut = [old, page].map((p) => drawn(p, 'cut')) as [readonly Pt[], readonly Pt[]]
        for (const [k, { toPattern }] of (places[0].places as { toPattern: Map6 }[]).entries()) {
          const there = farthest(
            cut[0].map((p) => apply(toPattern, p)),
            cut[1].map((p) => apply(places[1].places[k].toPattern, p)),
          )
          expect(there, what).toBeLessThan(0.005)
          cuts += cut[0].length
        }
        // all that is drawn, words too: on the print where it was
        const print = farthest(
          undone(before.correction, old, drawn(old)),
          undone(after.correction, page, drawn(page)),
        )
        expect(print * mm, what).toBeLessThan(0.005)
        const words = farthest(
          undone(before.correction, old, old.texts),
          undone(after.correction, page, page.texts),
        )
        expect(words * mm, what).toBeLessThan(0.005)
        expect(page.label).toBe(old.label)
        // a fill or a stroke is not moved to another layer
        assertEqual(
          page.strokes.map(({ layer }) => layer),
          old.strokes.map(({ layer }) => layer),
        )
      }
      expect(cuts).toBeGreaterThan(200)
      expect(moved.layers).toEqual(whole.layers)
      expect(moved.viewerPreferences).toEqual(whole.viewerPreferences)
      expect(moved.outline.map(({ title }) => title)).toEqual(
        whole.outline
          .filter(({ page }) => before.pages[page - 1].kind !== 'square')
          .map(({ title }) => title),
      )
      expect(moved.subject).toBe(whole.subject.replace(before.set, after.set))
    },
  )
})

describe('the words of a page that is corrected', () => {
  const told = async (bytes: Uint8Array) =>
    (await readPdf(bytes)).pages.map(({ texts }) => texts.map(({ text }) => text).join('\n'))

  it('tell the new code and printer, and no more the old ones', async () => {
    await gauge('study', 'shed')
    const codes = new Set<string>()
    for (const from of [null, 'shed'] as const) {
      const path = await plot('pair-mm', '--cover', 'line', '--strips', ...(from ? printer(from) : []))
      const before = await planOf(bytesOf(path))
      const bytes = await reprint(path, ...allOf(before), ...printer('study'))
      const after = await planOf(bytes)
      const [old, fresh] = [before.set.split('-'), after.set.split('-')]
      expect(fresh.slice(0, 2)).toEqual(old.slice(0, 2))
      expect(fresh[2]).not.toBe(old[2])
      codes.add(after.set)
      // nor is it the set that plot makes for that printer: its tiles lie otherwise
      const plotted = await planOf(bytesOf(await plot('pair-mm', '--cover', 'line', ...printer('study'))))
      expect(fresh[2]).not.toBe(plotted.set.split('-')[2])
      const pages = await told(bytes)
      for (const [i, words] of pages.entries()) {
        expect(words).toContain(after.set)
        expect(words).not.toContain(before.set)
        expect(words).not.toMatch(/\bshed\b/)
        const { kind } = correctable(after)[i]!
        if (kind === 'tile') expect(words).toContain('OUTSIDE FACE up · corrected for study')
      }
    }
    // the tiles of a set plotted for another printer lie otherwise: their pages must not be mixed
    expect(codes.size).toBe(2)
  })

  it('a long name is squeezed beside the small map, and stays on the page', async () => {
    const name = 'the-grey-printer-in-the-study-upstairs-2'
    await traceply('gauge', name, ...printers.large, '--profiles', file('my printers'))
    const path = await plot('quarter-mm', '--cover', 'line')
    const bytes = await reprint(path, '3', '--printer', name, '--profiles', file('my printers'))
    const [tile] = (await readPdf(bytes)).pages
    const line = tile!.texts.find(({ text }) => /^page \d+ of/.test(text))!
    const face = tile!.texts.find(({ text }) => text.startsWith('OUTSIDE'))!
    expect(face.text).toBe(`OUTSIDE FACE up · corrected for ${name}`)
    expect(face.width).toBeLessThan(line.width * 1.01)
    // and squeezed anew, not twice, by the next correction
    await gauge('study')
    const again = await readPdf(await reprint(save('long.pdf', bytes), '3', ...printer('study')))
    const short = again.pages[0]!.texts.find(({ text }) => text.startsWith('OUTSIDE'))!
    expect(short.text).toBe('OUTSIDE FACE up · corrected for study')
    expect(short.width).toBeGreaterThan(0.8 * line.width)
  })

  it('where they are set in an embedded font they stay, and that is said', async () => {
    await gauge('large')
    const text = readFileSync(template('quarter-mm'), 'utf8').replace(/^title:.*$/m, 'title: Ράμπα')
    const path = file('greek.pdf')
    await traceply('plot', save('greek.yaml', text), '--cover', 'line', '--out', path)
    const { set } = await planOf(bytesOf(path))
    const { exit, err } = await traceply(
      'reprint',
      path,
      'trial',
      '1',
      ...printer('large'),
      '--out',
      file('two.pdf'),
    )
    expect(exit).toBe(0)
    expect(err).toContain(
      `watch Lip trial: the words on the page still tell set ${set} or its printer; the new set is `,
    )
  })
})

it('the content is the old one under one matrix, but for those words', async () => {
  await gauge('study')
  const path = await plot('quarter-mm', '--cover', 'line')
  const { set } = await planOf(bytesOf(path))
  const bytes = await reprint(path, '2', ...printer('study'))
  const after = await planOf(bytes)
  const plain = (content: string): string => inflateSync(Buffer.from(content, 'base64')).toString('latin1')
  const before = plain((await rawContents(await reprint(path, '2')))[0]!)
  const [, matrix, inner] = /^q\n(\S+ \S+ \S+ \S+ \S+ \S+) cm\n([\s\S]*)Q\n$/.exec(
    plain((await rawContents(bytes))[0]!),
  )!
  expect(
    inner!
      .replaceAll(after.set, set)
      .replace(
        /(?:[\d.]+ Tz )?\(OUTSIDE FACE up \\267 corrected for study\) Tj(?: 100 Tz)?/,
        '(OUTSIDE FACE up) Tj',
      ),
  ).toBe(before)
  // from no correction the matrix is the new one, about the middle of A4
  const [a, b, c, d] = after.correction
  const [x, y] = [210 / mm / 2, 297 / mm / 2]
  const expected = [a, b, c, d, x - a * x - c * y, y - b * x - d * y]
  matrix!.split(' ').forEach((v, i) => {
    expect(Math.abs(Number(v) - expected[i]!), `entry ${i}`).toBeLessThan(1e-7)
  })
})

it('by way of a third printer the pages come out the same', async () => {
  await gauge('study', 'shed')
  const path = await plot('quarter-in', '--cover', 'line')
  const there = await reprint(path, '2', ...printer('study'))
  const around = await reprint(
    save('shed.pdf', await reprint(path, '2', ...printer('shed'))),
    '2',
    ...printer('study'),
  )
  const [a, b] = [(await readPdf(there)).pages[0]!, (await readPdf(around)).pages[0]!]
  expect(farthest(drawn(a), drawn(b)) * mm).toBeLessThan(0.001)
  const [p, q] = [await planOf(there), await planOf(around)]
  expect(q.correction).toEqual(p.correction)
  for (const [i, page] of p.pages.entries())
    for (const [k, { toPattern }] of page.places.entries())
      for (const [n, v] of toPattern.entries())
        expect(Math.abs(v - q.pages[i].places[k].toPattern[n])).toBeLessThan(1e-6)
})

it('for the printer that it was plotted for a page comes as it is', async () => {
  await gauge('study')
  const path = await plot('quarter-mm', '--cover', 'line', ...printer('study'))
  expect(
    Buffer.from(await reprint(path, '1', ...printer('study'))).equals(Buffer.from(await reprint(path, '1'))),
  ).toBe(true)
})

it('a whole set, corrected to print smaller, is taped together as any other', async () => {
  await gauge('large')
  const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'whole')
  const bytes = await reprint(path, ...allOf(await planOf(bytesOf(path))), ...printer('large'))
  const [read, whole] = [await readPdf(bytes), await planOf(bytes)]
  const plan = { ...whole, pages: correctable(whole).map((page, i) => ({ ...page, page: i + 1 })) }
  const found = tapeUp({
    job: {
      text: readFileSync(template('quarter-mm'), 'utf8'),
      paper: 'a4',
      cover: 'whole',
      correction: plan.correction,
    },
    margins: defaultMargins('a4'),
    overlap: 12,
    read,
    plan,
  })
  expect(found.faults).toEqual([])
  expect(found.sought).toBeGreaterThan(700)
  expect(found.joints).toBeGreaterThan(8)
})

describe('what is to watch:', () => {
  const said = async (path: string, ...args: readonly string[]): Promise<string> => {
    const { exit, err } = await traceply('reprint', path, ...args, '--out', file('said.pdf'), '--force')
    expect(exit).toBe(0)
    return err
  }

  it('how far the pages reach into the margins', async () => {
    await gauge('wide', 'large')
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    // printed 148.5 for 150, so written 150 / 148.5 as wide: half of 190 mm grows by 95 · (150 / 148.5 − 1) = 0.96
    expect(await said(path, '2', ...printer('wide'))).toBe(
      'watch corrected for wide the pages reach 1.0 mm into the right margin, 1.0 mm into the left margin: look whether all of their edges are printed; if not, plot the whole set anew, corrected for wide\n',
    )
    expect(await said(path, '2', ...printer('large'))).toBe('')
  })

  it('an edge that the printer was measured to cut, and none that it prints', async () => {
    await gauge('near', 'far')
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    // 95 mm from the middle become 95.96: 9.04 of 105 are left; up and down 10 as before
    expect(await said(path, '2', ...printer('near'))).toBe('')
    expect(await said(path, '2', ...printer('far'))).toBe(
      'watch corrected for far the pages begin 9.0 mm from the right edge, where it prints from 9.5 mm, 10.0 mm from the bottom edge, where it prints from 14 mm: it cuts lines off; plot the whole set anew, corrected for far\n',
    )
  })

  it('the figures of the map', async () => {
    await gauge('large')
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    expect(await said(path, 'map', ...printer('large'))).toBe(
      'watch the figures on the map of what to expect are those of the printer that the set was plotted for\n',
    )
  })

  it('other paper than was measured', async () => {
    await gauge('large')
    const path = await plot('quarter-mm', '--paper', 'letter', '--cover', 'line')
    expect(await said(path, '2', ...printer('large'))).toBe(
      'watch printer large was measured on a4, this is letter; measure it again on this paper and tray\n',
    )
  })

  it('is expected to lie as far off as one plotted for that printer, and no longer as the first', async () => {
    await gauge('study', 'shed')
    const options = ['--paper', 'a4', '--cover', 'line'] as const
    const path = await plot('quarter-mm', ...options, ...printer('shed'))
    const before = (await planOf(bytesOf(path))).expected
    const again = await planOf(await reprint(path, '2', ...printer('study')))
    // study's square was measured by other lengths of the same number: their sums differ, and nothing else
    const own = await planOf(bytesOf(await plot('quarter-mm', ...options, ...printer('study'))))
    expect(again.expected.map(({ pattern }: { pattern: string }) => pattern)).toEqual(['ramp/side'])
    for (const where of ['lip', 'curve'] as const)
      for (const how of ['likely', 'worst'] as const)
        assertNear(again.expected[0][where][how], own.expected[0][where][how], 1e-9, `${where} ${how}`)
    await traceply(
      'gauge',
      'hasty',
      '--across',
      '148mm',
      '--down',
      '151mm',
      '--profiles',
      file('my printers'),
    )
    const loose = await planOf(
      await reprint(path, '2', '--printer', 'hasty', '--profiles', file('my printers')),
    )
    // without diagonals the lean is not known: 0.1° on the rise of 585 mm alone is a millimetre
    expect(loose.expected[0].curve.likely).toBeGreaterThan(before[0].curve.likely)
    expect(loose.expected[0].budget).toEqual(before[0].budget)
  })

  it('that its code is another one, and which one it fits', async () => {
    await gauge('large')
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    const before = await planOf(bytesOf(path))
    const { out } = await traceply('reprint', path, '2', ...printer('large'), '--out', file('said.pdf'))
    const after = await planOf(bytesOf(file('said.pdf')))
    expect(after.set).not.toBe(before.set)
    expect(out).toContain(`1 page of set ${after.set} on`)
    expect(out).toContain(` the pages of set ${before.set}, and of no other set.\n`)
  })

  it('a printer that is not known', async () => {
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    const { exit, err } = await refused(path, '2', ...printer('wide'))
    expect(exit).toBe(2)
    expect(err).toMatch(/^there is no printer called `wide` in /)
  })

  it('a test square, whose words and combs are true for no other printer', async () => {
    await gauge('large')
    const [, , , profiles] = printer('large')
    const told = (paper: string, others = '') => ({
      exit: 2,
      err: `reprint corrects no test square, as what it says to type would be wrong; ${others}print a new one: traceply square --paper ${paper} --printer large --profiles "${profiles}" --out square-large.pdf\n`,
    })
    const path = file('square.pdf')
    await traceply('square', '--paper', 'a4', '--out', path)
    expect(await refused(path, 'square', ...printer('large'))).toEqual(told('a4'))
    const set = await plot('quarter-mm', '--paper', 'a3', '--cover', 'line')
    expect(await refused(set, '1', 'square', ...printer('large'))).toEqual(
      told('a3', 'leave it out, and the other pages are written; '),
    )
  })
})
