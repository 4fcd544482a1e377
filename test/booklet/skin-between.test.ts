import { describe, expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid, flatAlone } from './said.ts'

/** Sheets meet between studs of the layer below: no row stands at a seam of the top sheet. */
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
    expect(top).not.toContain('under a seam')
    expect(top).not.toContain('Draw the stud lines')
    expect(top).not.toContain('Rows of one stud')
  })

  test('how its ends are held is told before it is laid', () => {
    const top = topOf(flat)
    expect(top).toContain("hold the sheet's ends by what covers them")
    // 18 of layers and 6 of hardboard below the head, 25 into the stud: 50 is the next that is sold
    expect(topOf(quarter)).toMatch(
      /takes a row into the stud there: screws of 4\.5 × 50 \([A-Z]\), countersunk/,
    )
    expect(top.indexOf("hold the sheet's ends")).toBeLessThan(top.indexOf('Draw every row'))
    expect(bookletSaid(templateText('quarter-mm'), ['skin'])).not.toContain("hold the sheet's ends")
  })
})
