import { describe, expect, it } from 'vitest'
import { chooseCover } from '../../../src/page/cover/choose-cover.ts'
import type { Cover } from '../../../src/page/cover/cover.ts'
import { atMost, below, hold } from '../../support/hold.ts'

/** The rules as docs/printing.md says them, in the order of the table. */
describe('without --cover a set takes', () => {
  it.each<readonly [number, number, number, Cover, string]>([
    [4, 4, 3, 'whole', 'the whole outline is four pages'],
    [1, 1, 1, 'whole', 'one page holds everything'],
    [2, 1, 1, 'line', 'one sheet without a joint is better than two'],
    [9, 8, 5, 'whole', 'the line saves a single page'],
    [14, 7, 5, 'line', 'a ribbon saves two pages only'],
    [22, 9, 6, 'ribbon', 'a ribbon saves three pages'],
    [32, 12, 8, 'ribbon', 'a ribbon saves four pages'],
    [6, 4, 4, 'line', 'the line saves two pages and a ribbon none'],
  ])('of whole %i, line %i, ribbon %i pages: %s, since %s', (whole, line, ribbon, cover) => {
    expect(chooseCover({ whole, line, ribbon }).cover).toBe(cover)
  })

  it('never more pages than the whole outline, and says the counts of the ways not taken', () => {
    for (let whole = 1; whole <= 40; whole++)
      for (let line = 1; line <= whole; line++)
        for (let ribbon = 1; ribbon <= line; ribbon++) {
          const counts = { whole, line, ribbon }
          const { cover, why } = chooseCover(counts)
          atMost(counts[cover], whole)
          for (const other of ['whole', 'line', 'ribbon'] as const)
            if (other !== cover) hold(why.includes(`${other} ${counts[other]}`), `${other} in: ${why}`)
          // five pages and more are never taped where three fewer would do
          if (whole > 4 && cover !== 'ribbon' && !(cover === 'whole' && whole <= line + 1))
            below(counts[cover] - ribbon, 3)
        }
  })
})
