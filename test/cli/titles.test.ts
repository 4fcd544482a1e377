import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, template, useFolder } from './reprint-run.ts'

const { file, save } = useFolder()

const titled = async (title: string) => {
  const text = Buffer.from(bytesOf(template('quarter-mm'))).toString()
  const path = save(
    'ramp.yaml',
    text.replace(/^title: .*$/m, () => `title: ${JSON.stringify(title)}`),
  )
  const out = file('set.pdf')
  const { exit, err } = await traceply('plot', path, '--out', out)
  expect(exit, err).toBe(0)
  const read = await readPdf(bytesOf(out))
  const words = read.pages.map((page) => page.texts.map(({ text }) => text).join(''))
  const watch = err
    .replaceAll('\n      ', ' ')
    .split('\n')
    .filter((line) => line.startsWith('watch '))
  return { read, words, watch }
}

describe('a title that can be printed stands on the pages and in the properties, without a warning', () => {
  it.each([
    ['Latin', 'Low ramp by the slipway'],
    ['Latin with accents', 'Rampe für das Bootshaus – “niedrig”'],
    ['Greek', 'Ράμπα για το λεμβοστάσιο'],
    ['Polish', 'Niska rampa na przystań: łódź, żółw, gęś'],
    ['Cyrillic', 'Низкая рампа у причала'],
  ])('%s', async (_, title) => {
    const { read, words, watch } = await titled(title)
    expect(read.title).toBe(title)
    expect(words.some((page) => page.includes(title))).toBe(true)
    expect(watch).toEqual([])
  })
})

describe('letters that no font of ours has are replaced, and that is said', () => {
  it.each([
    [
      'Japanese',
      'ボート小屋の低いランプ',
      '□'.repeat(11),
      '11 letters that no built-in font can print are shown as □',
    ],
    [
      'a picture',
      'Boathouse 🛹 ramp',
      'Boathouse □ ramp',
      '1 letter that no built-in font can print is shown as □',
    ],
  ])('%s', async (_, title, printed, said) => {
    const { read, words, watch } = await titled(title)
    expect(read.title).toBe(title)
    expect(words.some((page) => page.includes(printed))).toBe(true)
    expect(words.join('')).not.toContain(title)
    expect(watch).toEqual([`watch “${title}”: ${said}`])
    for (const line of watch) expect(line).toContain(said)
  })
})

it('the properties are exact: title, subject, no date, and the same for every run', async () => {
  const { read } = await titled('Ράμπα')
  expect(read.subject).toMatch(/^Full-size templates on a4, set [0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}$/)
  expect(Object.keys(read.info)).not.toEqual(expect.arrayContaining(['CreationDate']))
  expect(Object.keys(read.info)).not.toEqual(expect.arrayContaining(['ModDate']))
})

it.each(['W'.repeat(200), '🛹'.repeat(200), `${'ż '.repeat(99)}ż`])(
  'the longest title that is allowed is plotted: %s',
  async (title) => {
    expect((await titled(title)).read.title).toBe(title)
  },
)
