import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const ribbed = (name: string, count: number): string =>
  templateText(name).replace(/^( {4}sides:)[\s\S]*?(?=^ {4}\w)/m, `$1 { thickness: 18, count: ${count} }\n`)

/** Marks that stand over columns to write in, table by table. */
const heads = (said: string, before: string): readonly string[] =>
  [...said.matchAll(new RegExp(`${before} ((?:S\\d+ )+)`, 'g'))].map(([, marks]) => marks!.trim())

test.each([
  ['quarter-mm', 2, [2]],
  ['quarter-mm', 3, [3]],
  ['quarter-mm', 4, [2, 2]],
  ['quarter-mm', 5, [3, 2]],
] as const)(
  '%s of %i sides: each has its columns among the checks on the sawn wood',
  (name, count, tables) => {
    const said = bookletSaid(ribbed(name, count), ['cutting'])
    for (const before of ['wanted', 'off by at most']) {
      const found = heads(said, before)
      expect(found.map((one) => one.split(' ').length)).toEqual(tables)
      const marks = found.join(' ').split(' ')
      expect([...marks].sort()).toEqual(Array.from({ length: count }, (_, i) => `S${i + 1}`))
      // the first is what the others are laid on
      expect(said).toContain(`the side laid on ${marks[0]}:`)
    }
  },
)

test('sides in pieces, and sides of a flat with ribs, are named by their marks as well', () => {
  const long = `title: Long
units: mm
ramps:
  - width: 1800
    height: { deck: 1000 }
    transition: { circle: { surface: 2200 } }
    toe: 40
    deck: 1400
    sides: { thickness: 18, count: 4 }
    skin: [ 9 plywood, 9 plywood ]
    deck-board: 18 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
`
  const said = bookletSaid(long, ['cutting'])
  const pairs = heads(said, 'wanted').map((one) => one.split(' '))
  expect(pairs.map((one) => one.length)).toEqual([2, 2])
  expect(pairs.flat().sort()).toEqual(['S1', 'S2', 'S3', 'S4'])
  // the first is what the others are laid on, and what the pages show
  expect(said).toContain(`the side laid on ${pairs[0]![0]}:`)
  expect(said).toContain(`They show ${pairs[0]![0]},`)
  const flat = ribbed('quarter-and-flat-mm', 3)
  expect(heads(bookletSaid(flat, ['cutting']), 'wanted').map((one) => one.split(' ').length)).toEqual([2, 3])
})
