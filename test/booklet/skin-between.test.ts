import { describe, expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid, flatAlone } from './said.ts'

const flat = flatAlone(3000, '    fasten: between\n')
const quarter = templateText('quarter-mm').replace(/^ {4}deck-board: .*$/m, '$&\n    fasten: between')

const topOf = (text: string): string => bookletSaid(text, ['skin']).split('the top sheet')[1]!

describe('a top sheet that is screwed between studs', () => {
  test.each([
    ['a flat', flat],
    ['a quarter', quarter],
  ])('%s: its lines are rows of its table, no other is spoken of', (_, text) => {
    const top = topOf(text)
    expect(top).toContain('Draw every row of the table across')
    expect(top).not.toContain('Draw the stud lines')
    expect(top).not.toContain('Rows of one stud')
  })

  test('the rows that hold its ends are in its table, in its count and in the box', () => {
    const top = topOf(flat)
    expect(top).toContain('its ends have a row into the stud there')
    expect(top.indexOf('its ends have')).toBeLessThan(top.indexOf('Draw every row'))
    // both edges of three sheets
    expect(top.match(/K\d \d+ stud \d+(, seam)? 4\.5 × 50 \([A-Z]\) 12 /g)).toHaveLength(6)
    expect(top).toMatch(/; 72 screws of 4\.5 × 50 \([A-Z]\), 156 of 4\.5 × 16 \([A-Z]\), countersunk\./)
    expect(bookletSaid(templateText('quarter-mm'), ['skin'])).not.toContain('ends have a row')
  })
})
