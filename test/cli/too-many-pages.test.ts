import { expect, it } from 'vitest'
import type { PaperName } from '../../src/design/design.ts'
import { tooManyPages } from '../../src/job/too-many-pages.ts'
import { coverCounts } from '../../src/page/cover/pattern-covers.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../src/page/sheet/paper.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import { coveredText } from '../support/covered.ts'
import { figuresOf, traceply } from '../support/traceply.ts'
import { template, useFolder } from './reprint-run.ts'

const { file, list, save } = useFolder()

/** Long low ramps for a whole club, as large as a design may be. */
const fleet = (count: number): string => {
  const ramps = Array.from({ length: count }, (_, i) =>
    [
      `  - name: bay ${i + 1}`,
      '    width: 2400',
      `    height: { frame: ${2900 - 10 * i} }`,
      `    transition: { circle: { surface: ${9000 + i} } }`,
      '    toe: 40',
      '    deck: 3000',
      '    skin: [9 plywood]',
    ].join('\n'),
  )
  return `title: Boathouse fleet\nunits: mm\nramps:\n${ramps.join('\n')}\n`
}

/** Least windows: 120 mm square, half of which is overlap. */
const small = ['--margin', '88.5,45,88.5,45', '--overlap', '60']

it('a job of more than 2,000 pages is refused with the number and the ways out', async () => {
  const path = save('fleet.yaml', fleet(7))
  const { exit, out, err } = await traceply(
    'plot',
    path,
    ...small,
    '--cover',
    'whole',
    '--out',
    file('set.pdf'),
  )
  expect([exit, out]).toEqual([2, ''])
  const said =
    /^this job takes (\d+) pages to tape, more than 2000; take larger paper \(--paper a3\), smaller margins, a smaller overlap, --cover line or fewer ramps in one design\n$/.exec(
      err,
    )
  // seven outlines of about 8.7 + 2.9 + 3 + 7 m, a page every 60 mm of them across or up, but for the panel's own edges
  expect(Number(said?.[1])).toBeGreaterThan(2000)
  expect(Number(said?.[1])).toBeLessThan(3000)
  expect(list()).toEqual(['fleet.yaml'])
})

it('where the way to cover is chosen, the least of them counts, and --cover line is no way out', async () => {
  const path = save('fleet.yaml', fleet(17))
  const { exit, err } = await traceply('plot', path, ...small, '--out', file('set.pdf'))
  expect(exit).toBe(2)
  expect(err).toMatch(/^this job takes \d{4} pages to tape, more than 2000; take larger paper/)
  expect(err).not.toContain('--cover line')
  expect(list()).toEqual(['fleet.yaml'])
})

it('a way out that it names is a way out', () => {
  const a4 = sheet('a4')
  // the usual margins and overlap
  const { whole } = coverCounts(coveredText(fleet(5), { sheet: a4, overlap: defaultOverlap }))
  expect(whole).toBeGreaterThan(200)
  expect(whole).toBeLessThan(2000)
  expect(tooManyPages(whole, a4, defaultOverlap, 'whole', 5)).toBeNull()
})

const sheet = (name: PaperName) => ({
  paper: paperOf(name),
  margins: defaultMargins(name),
  correction: noCorrection,
})

const refusal = (...said: Parameters<typeof tooManyPages>): string => tooManyPages(...said) ?? 'taken'

it.each([
  [2000, 'a4', 12, 'whole', 1, 'taken'],
  [2001, 'a4', 12, 'whole', 1, 'larger paper (--paper a3) or --cover line'],
  [2001, 'letter', 12, 'line', 1, 'larger paper (--paper tabloid) or --cover ribbon'],
  [2001, 'a0', 12, 'ribbon', 3, 'fewer ramps in one design'],
  [2001, 'a1', 40, 'ribbon', 2, 'larger paper (--paper a0), a smaller overlap or fewer ramps in one design'],
] as const)('%d on %s, overlap %d, %s, %d ramps: %s', (tiles, paper, overlap, cover, ramps, words) => {
  expect(refusal(tiles, sheet(paper), overlap, cover, ramps)).toBe(
    words === 'taken' ? words : `this job takes ${tiles} pages to tape, more than 2000; take ${words}`,
  )
})

it('pages of strips count too, before anything is laid', () => {
  expect(refusal(1990, sheet('a0'), 12, 'ribbon', 1, 10)).toBe('taken')
  expect(refusal(1990, sheet('a0'), 12, 'ribbon', 2, 11)).toBe(
    'this job takes 1990 pages to tape and 11 of strips, more than 2000; take fewer ramps in one design or no strips (without --strips)',
  )
})

it('an honest job is far below', async () => {
  const { pages } = JSON.parse((await figuresOf(template('pair-mm'), '--json')).out)
  expect(Math.max(pages.whole, pages.line, pages.ribbon)).toBeLessThan(50)
})
