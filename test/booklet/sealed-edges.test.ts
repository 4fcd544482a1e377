import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const quarter = templateText('quarter-mm')
const tins = "The tin's label comes first"

/** What is sealed while all is in pieces. */
const early = (said: string): string => /Seal now what is hidden later: ([^.]*)\./.exec(said)![1]!

test('every edge that the finished ramp covers is sealed while all is in pieces, no covered one at the end', () => {
  const said = bookletSaid(quarter)
  expect(early(said)).toBe(
    'the ends of the timbers, all edges of the sides with their notches, both ends of each layer of skin and the front edge of the deck board',
  )
  expect(said).toContain('Seal the sawn edges that still show first')
  // 2500 is two sheets beside each other on panels of 1220 × 2440
  expect(early(bookletSaid(quarter.replace(/^( *)width: \d+/m, '$1width: 2500')))).toMatch(
    / and the edges where sheets meet$/,
  )
  const bare = bookletSaid(
    quarter
      .replace(/^ {4}coping:[^\n]*\n( {6}[^\n]*\n)*/m, '    coping: none\n')
      .replace(/^ {4}deck-board:.*\n/m, ''),
  )
  expect(early(bare)).toBe(
    'the ends of the timbers, all edges of the sides and both ends of each layer of skin',
  )
})

test('flames and oily rags are told of before each step that paints', () => {
  for (const only of ['cutting', 'finishing']) {
    const said = bookletSaid(quarter, [only])
    expect(said.split(tins)).toHaveLength(2)
    expect(said.indexOf(tins)).toBeLessThan(said.search(/Seal (now what|the sawn edges)/))
  }
})
