import { describe, expect, it } from 'vitest'
import { editDesign } from '../../src/index.ts'
import { hangsOn, type SaveQuestion, sourceOf } from '../../src/web/state/source-of.ts'
import { settledOf } from '../../src/web/worker/lay.ts'
import { makeOf } from '../../src/web/worker/make.ts'
import { layOf } from '../../src/web/worker/messages.ts'
import { templateText } from '../support/templates.ts'

type Thing = SaveQuestion['thing']
type Format = SaveQuestion['format']

const lay = { words: { cover: 'ribbon', strips: true, overlap: '15' }, profile: '{"name":"hall"}' }
const question = { kind: 'save', text: 'title: barn\npaper: a4\ntoe: 40\n', lay } as const
const said = new Map([['paper', 'a4']])

const laid = (words: SaveQuestion['lay']['words']) => ({ lay: { ...lay, words: { ...lay.words, ...words } } })
const changes: Readonly<Record<string, Partial<SaveQuestion>>> = {
  figure: { text: question.text.replace('40', '41') },
  paper: { text: question.text.replace('a4', 'a3') },
  margin: laid({ margin: '9' }),
  profile: { lay: { ...lay, profile: null } },
  cover: laid({ cover: 'whole' }),
  overlap: laid({ overlap: '20' }),
  strips: laid({ strips: false }),
  pack: laid({ pack: true }),
  // laid in another order, and a box that was ticked and is not any more: the same
  order: { lay: { ...lay, words: { overlap: '15', pack: false, strips: true, cover: 'ribbon' } } },
}

/** The changes that make a file old. */
const agedBy = (one: SaveQuestion): string =>
  Object.keys(changes)
    .filter((name) => {
      const other = { ...one, ...changes[name] }
      const paper = name === 'paper' ? new Map([['paper', 'a3']]) : said
      return sourceOf(other, paper) !== sourceOf(one, said)
    })
    .join(' ')

const sheet = 'figure paper margin profile'
const whole = `${sheet} cover overlap strips pack`

/** Found by making each file of a quarter twice and comparing what was drawn and written. */
const aged: Readonly<Record<Thing, string | Partial<Record<Format, string>>>> = {
  pages: whole,
  map: whole,
  square: 'paper margin profile',
  booklet: `${sheet} cover overlap`,
  cuts: { pdf: sheet, svg: sheet, csv: 'figure', json: 'figure', txt: 'figure' },
  list: { pdf: sheet, csv: 'figure', json: 'figure', txt: 'figure' },
  offsets: { pdf: sheet, csv: 'figure', json: 'figure', txt: 'figure' },
  picture: 'figure paper',
  figures: 'figure paper',
}

const files = Object.entries(hangsOn).flatMap(([thing, formats]) =>
  Object.keys(formats).map((format) => [thing as Thing, format as Format] as const),
)

describe('a file is old once what it is made of is another, and not before', () => {
  it.each(files)('%s as %s', (thing, format) => {
    const own = aged[thing]
    expect(agedBy({ ...question, thing, format })).toBe(typeof own === 'string' ? own : own[format])
  })

  it('story strips alone, as they bear the code of the set that they belong to', () => {
    expect(agedBy({ ...question, thing: 'pages', format: 'pdf', only: 'strips' })).toBe(whole)
  })

  it('the square to measure a printer anew is printed without its correction', () => {
    const square = { ...question, thing: 'square', format: 'pdf', uncorrected: true } as const
    expect(agedBy(square)).toBe('paper margin')
    expect(layOf({ ...square, lay })).toEqual({ ...lay, profile: null })
    expect(layOf({ ...question, thing: 'square', format: 'pdf', lay })).toBe(lay)
  })
})

it('no text of cuts, list and offsets is another on other paper', () => {
  const text = templateText('quarter-mm')
  const other = editDesign(text, 'paper', 'a3')
  const made = (text: string, thing: Thing, format: Format) =>
    makeOf(thing, format, { text, lay: { words: {}, profile: null }, ...settledOf(text) })
  const texts = files.filter(([thing, format]) => aged[thing][format as never] === 'figure')
  expect(texts).toHaveLength(9)
  for (const [thing, format] of texts)
    expect(made(other, thing, format), `${thing} ${format}`).toEqual(made(text, thing, format))
})
