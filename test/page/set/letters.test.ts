import { describe, expect, it } from 'vitest'
import type { PaperName } from '../../../src/design/design.ts'
import {
  bookletInput,
  bookletJob,
  buyInput,
  buyJob,
  cutsInput,
  cutsJob,
  isRefusal,
  offsetsInput,
  offsetsJob,
  type PdfInput,
  type ReadLaying,
  readDesign,
  readLaying,
  squareJob,
} from '../../../src/index.ts'
import { setInput } from '../../../src/job/set-input.ts'
import { type Word, wordsOf } from '../../booklet/words.ts'
import { hold } from '../../support/hold.ts'
import { fingerprint, layOut } from '../../support/lay-out.ts'
import { templates, templateText } from '../../support/templates.ts'

/** Capitals of the face are 698 of 1000 high, a point is 25.4 / 72 mm. */
const eightPoint = (8 * 25.4 * 0.698) / 72

/** What a scale counts: whole numbers and fractions. */
const scaleFigure = /^\d+$|^(\d+ )?\d+\/\d+$/

const tooSmall = (said: readonly Word[]): readonly Word[] =>
  said.filter(({ text, tall }) => tall < eightPoint && !scaleFigure.test(text))

/** The title, or as much of it as has room. */
const titled = (said: readonly Word[], title: string): boolean =>
  said.some(({ text }) => text.includes(title) || (text.endsWith('…') && title.startsWith(text.slice(0, -1))))

const titleOf = (text: string): string => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  return reading.design.title
}

describe.each(templates)(
  '%s: no letters under 8 pt but figures of scales, the title on every page',
  (name) => {
    it.each(['letter', 'a4'] as const)('of its set on %s, each cover', (paper) => {
      let seen = 0
      const text = templateText(name)
      const title = titleOf(text)
      for (const cover of ['whole', 'line', 'ribbon'] as const) {
        const set = layOut(text, paper, cover, { strips: true })!
        for (const page of set.pages) {
          const said = wordsOf(page.draw())
          seen += said.length
          const where = `${page.label}, ${cover} on ${paper}`
          expect(tooSmall(said), where).toEqual([])
          hold(titled(said, title), where)
        }
      }
      expect(seen).toBeGreaterThan(300)
    })
  },
)

const granted = <T extends object>(found: T): Exclude<T, { readonly refused: string }> => {
  if (isRefusal(found as never)) throw new Error(JSON.stringify(found))
  return found as Exclude<T, { readonly refused: string }>
}

const laid = (name: string, paper: PaperName) => {
  const reading = readDesign(templateText(name))
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  const { design } = reading
  const laying = granted(readLaying({ paper }, null, design)) as ReadLaying
  return { design, laying }
}

it('nor on the pages beside the set: booklet, lists, cuts, offsets, square', () => {
  let seen = 0
  for (const [name, paper] of [
    ['pair-mm', 'a4'],
    ['quarter-in', 'letter'],
    ['quarter-and-flat-in', 'letter'],
  ] as const) {
    const { design, laying } = laid(name, paper)
    const { sheet } = laying
    const asked: Record<string, PdfInput> = {
      offsets: offsetsInput(design, granted(offsetsJob(design)), sheet),
      cuts: cutsInput(design, granted(cutsJob(design)), sheet, fingerprint),
      list: buyInput(design, granted(buyJob(design)), sheet),
      booklet: bookletInput(design, granted(bookletJob(design, laying, { only: null, fingerprint })), sheet),
      square: setInput(granted(squareJob({ paper, units: design.units }, null, fingerprint)).set, ''),
    }
    for (const [what, { pages }] of Object.entries(asked))
      for (const page of pages) {
        const said = wordsOf(page.draw())
        seen += said.length
        expect(tooSmall(said), `${name}, ${what}: ${page.label}`).toEqual([])
        if (what !== 'square') hold(titled(said, design.title), `${name}, ${what}: ${page.label}`)
      }
  }
  expect(seen).toBeGreaterThan(3000)
})
