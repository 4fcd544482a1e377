import { expect, test } from 'vitest'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid, cutsSaid, flatAlone } from './said.ts'

const flat = flatAlone(2400)

const listed = (text: string): string => {
  const buy = buyJob(designOf(text))
  if (isRefusal(buy)) throw new Error(JSON.stringify(buy))
  return buy.facts.stock.list.map(({ what, note }) => `${what}: ${note}`).join('\n')
}

test('a flat alone is told nothing of pages, curve, toe and deck', () => {
  expect(bookletSaid(flat, ['first'])).not.toContain('test square')
  expect(bookletSaid(flat, ['first'])).toContain('Every size in the tables is written.')
  const cutting = bookletSaid(flat, ['cutting'])
  expect(cutting).toContain('Saw the sheets of skin from')
  expect(cutting).not.toMatch(/\btoe\b|\bdeck\b/)
  expect(bookletSaid(flat, ['care'])).toContain('Local codes and licensed practice come before')
  expect(bookletSaid(flat, ['care'])).not.toContain('high deck')
  expect(bookletSaid(flat, ['care'])).not.toContain('edge on the floor')
  expect(bookletSaid(flat, ['moving'])).not.toContain('back edge')
  expect(cutting).not.toMatch(/taped pages|curve|joint|Mirrored/)
  expect(cutsSaid(flat)).not.toMatch(/taped pages|curve|toe corner|joint/)
  expect(bookletSaid(flat, ['glance'])).toMatch(/\d sheets of skin, \d/)
  expect(listed(flat)).not.toMatch(/batten|curve|adhesive tape/)
})

test('one beside a quarter leaves all of that', () => {
  const both = templateText('quarter-and-flat-mm')
  expect(bookletSaid(both, ['first'])).toContain('The test square is true both ways')
  expect(bookletSaid(both, ['cutting'])).toMatch(
    /trace a curve before .* As printed: as the taped pages lie\./,
  )
  expect(cutsSaid(both)).toContain('to the toe corner of a side')
  expect(bookletSaid(both, ['glance'])).toMatch(/\d sheets of skin and deck, \d/)
  expect(bookletSaid(both, ['care'])).toContain('A high deck can be fallen from')
  expect(bookletSaid(both, ['care'])).toContain('look at the edge on the floor')
  expect(bookletSaid(both, ['moving'])).toContain('Walk it on its back edge')
  for (const what of ['thin straight batten', 'adhesive tape', 'jigsaw: curve'])
    expect(listed(both)).toContain(what)
})
