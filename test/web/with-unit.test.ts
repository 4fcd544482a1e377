import { describe, expect, it } from 'vitest'
import { gaugeJob, isRefusal, readLaying, writeProfile } from '../../src/index.ts'
import { withUnit } from '../../src/web/words/with-unit.ts'
import { designOf, layingOf } from '../../src/web/worker/lay.ts'
import { templateText } from '../support/templates.ts'

describe('a length with the unit that it was read in', () => {
  it.each([
    ['0.5', '0.5 in'],
    ['17 3/16', '17 3/16 in'],
    ['1/2, 1, 3/4, 1 1/4', '1/2 in, 1 in, 3/4 in, 1 1/4 in'],
    ['1 2 1 2', '1 in, 2 in, 1 in, 2 in'],
    ['9mm', '9mm'],
    ['1/2"', '1/2"'],
    ['9mm, 1, 9mm, 1', '9mm, 1 in, 9mm, 1 in'],
    ['', ''],
    ['wide', 'wide'],
  ])('%s', (said, told) => {
    expect(withUnit(said, 'in')).toBe(told)
  })

  it.each(['0.5', '1/2, 1, 3/4, 1', '1 2 1 1'])('is the same margin in a design in mm: %s', (margin) => {
    const marginsOf = (margin: string, units: 'mm' | 'in') => {
      const laying = readLaying({ margin }, null, { units, paper: 'a3' })
      return isRefusal(laying) ? laying : laying.sheet.margins
    }
    const own = marginsOf(margin, 'in')
    expect(own).toHaveProperty('top')
    expect(marginsOf(withUnit(margin, 'in'), 'mm')).toEqual(own)
  })
})

describe('margins that hardly a printer prints', () => {
  const design = designOf(templateText('quarter-mm'))
  const doubts = (margin: string | undefined, profile: string | null = null) =>
    layingOf({ words: margin === undefined ? {} : { margin }, profile }, design).warnings
  it('are doubted, once it is known that they are', () => {
    expect(doubts('0.5 mm')).toEqual([expect.stringMatching(/^a margin of 0.5 mm: most printers do not/)])
    expect(doubts('10, 10, 2.9, 10')).toHaveLength(1)
    expect(doubts('3 mm')).toEqual([])
    expect(doubts(undefined)).toEqual([])
    // the command line reads the same
    const read = readLaying({ margin: '0.5 mm' }, null, design)
    expect('warnings' in read ? read.warnings : read).toEqual(doubts('0.5 mm'))
  })
  it('are those of a printer that was measured to print them', () => {
    const found = gaugeJob(
      'hall',
      { across: ['150mm'], down: ['150mm'], diagonals: ['212.1mm', '212.1mm'], margins: '1mm' },
      'a4',
    )
    if (isRefusal(found)) throw new Error('a plausible reading')
    expect(doubts('2 mm', writeProfile(found))).toEqual([])
    expect(doubts('0.5 mm', writeProfile(found))[0]).toMatch(/less than printer hall prints/)
  })
})
