import { describe, expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'

const faults = (prices: string, units: 'mm' | 'in' = 'mm'): readonly string[] => {
  const name = units === 'mm' ? 'quarter-mm' : 'quarter-in'
  const reading = readDesign(`prices:\n${prices}\n${templateText(name)}`)
  return 'problems' in reading
    ? reading.problems.map(({ message, place }) => `${place.line}:${place.column} ${message}`)
    : []
}
const pricesOf = (prices: string, units: 'mm' | 'in' = 'mm') => {
  const name = units === 'mm' ? 'quarter-mm' : 'quarter-in'
  return designOf(`prices:\n${prices}\n${templateText(name)}`).prices!
}

test('names sheets, timbers and words; the currency stays as it was typed', () => {
  expect(pricesOf('  18 plywood: 62 EUR\n  38 x 89 x 2400: 5,20 EUR\n  Pipe: 31')).toEqual({
    before: '',
    behind: ' EUR',
    all: [
      {
        what: '18 plywood',
        of: { kind: 'sheet', sheet: { thickness: 18, material: 'plywood' }, size: null },
        amount: 62,
      },
      { what: '38 x 89 x 2400', of: { kind: 'timber', section: [38, 89], length: 2400 }, amount: 5.2 },
      { what: 'Pipe', of: { kind: 'word', word: 'pipe' }, amount: 31 },
    ],
  })
  const ofSize = { kind: 'sheet', sheet: { thickness: 12.7, material: 'plywood' }, size: [1219.2, 2438.4] }
  for (const key of [
    '1/2 plywood 48 x 96',
    '1/2 in plywood 8 ft x 4 ft',
    '1/2" plywood 48" × 96"',
    '1/2 in plywood 4 ft 0 in x 8 ft 0 in',
  ])
    expect(pricesOf(`  ${key}: $58`, 'in').all[0]!.of).toEqual(ofSize)
  const inches = pricesOf('  23/32 plywood: $58\n  1 1/2 x 3 1/2 x 96: $4.30', 'in')
  expect([inches.before, inches.behind]).toEqual(['$', ''])
  expect(inches.all[1]!.of).toEqual({ kind: 'timber', section: [38.1, 88.9], length: 2438.4 })
})

describe('bad prices', () => {
  test.each([
    [
      'two currencies',
      '  18 plywood: 62 EUR\n  pipe: $31',
      '3:9 `prices` are in two currencies, `EUR` (line 2) and `$`; write all of them in one',
    ],
    [
      'no money',
      '  pipe: cheap',
      '2:9 the price of `pipe`: `cheap` is no amount of money; e.g. `18 plywood: 62 EUR`',
    ],
    [
      'two signs on one',
      '  pipe: $31 EUR',
      '2:9 the price of `pipe`: `$31 EUR` is no amount of money; e.g. `18 plywood: 62 EUR`',
    ],
    [
      'a negative one',
      '  pipe: -3',
      '2:9 the price of `pipe`: `-3` is no amount of money; e.g. `18 plywood: 62 EUR`',
    ],
    ['nothing', '  pipe: 0', '2:9 the price of `pipe`: 0 is outside 0.01 to 1000000'],
    [
      'a list',
      '  pipe: [3]',
      '2:9 the price of `pipe`: a list is no amount of money; e.g. `18 plywood: 62 EUR`',
    ],
    [
      'a slip of a word',
      '  wheel: 3',
      '2:3 nothing of the list is called `wheel`; did you mean `wheels`? a price is for a sheet (18 plywood, or one size of it: 18 plywood 1220 x 2440), a timber (38 x 89 x 2400), or pipe, screws, wheels, handles, glue, paint, bolts, rubber',
    ],
    [
      'a timber without a length',
      '  38 x 89: 3',
      '2:3 `38 x 89` has no length; a timber is priced by section and length, e.g. `38 x 89 x 2400`',
    ],
    [
      'a size of a sheet behind an x',
      '  9 plywood x 1250 x 2500: 3',
      '2:3 one size of a sheet is written `9 plywood 1250 x 2500`',
    ],
    [
      'a size of a sheet that no panel has',
      '  9 plywood 125 x 2500: 3',
      '2:3 125 mm is outside 300 to 6000 mm; did you mean 125 cm (1250 mm)?',
    ],
    [
      'a size of a sheet twice, the long side first',
      '  9 plywood 1250 x 2500: 3\n  9 plywood 2500 x 1250: 4',
      '3:3 `9 plywood 2500 x 1250` has a price already (line 2); keep one',
    ],
    [
      'a timber in the wrong unit',
      '  38 x 89 x 96: 3',
      '2:3 96 mm is outside 300 to 12000 mm; did you mean 96 cm (960 mm)?',
    ],
    [
      'one thing twice',
      '  38 x 89 x 2400: 3\n  89 x 38 x 2400: 4',
      '3:3 `89 x 38 x 2400` has a price already (line 2); keep one',
    ],
    [
      'an unknown material',
      '  18 pywood: 4',
      '2:3 unknown material `pywood`; did you mean `plywood`? allowed: plywood, hardboard, steel, other',
    ],
  ])('%s', (_, prices, message) => {
    expect(faults(prices)).toEqual([message])
  })

  test('a comma within braces, which parts two prices: told once, with what to write', () => {
    const within = (prices: string): readonly string[] => {
      const reading = readDesign(`prices: { ${prices} }\n${templateText('quarter-mm')}`)
      return 'problems' in reading ? reading.problems.map(({ message }) => message) : []
    }
    expect(within('18 plywood: 62,50 EUR, pipe: 31 EUR')).toEqual([
      'the price of `18 plywood`: within braces a comma ends it; write `62.50 EUR`, with a point, or put it in quotes',
    ])
    expect(within('pipe: $31,5, screws: $9').join()).toContain('write `$31.5`, with a point')
    expect(within('18 plywood: "62,50 EUR", pipe: 31 EUR')).toEqual([])
    expect(within('18 plywood: 62.50 EUR, pipe: 31 EUR')).toEqual([])
    // what was meant is not known
    expect(within('18 plywood: 62 EUR, 9 plywood').join()).toContain('the price of `9 plywood`: ``')
  })

  test('an empty map, and something that is no map', () => {
    expect(faults('  {}')).toEqual(['2:3 `prices` is empty; e.g. `18 plywood: 62 EUR`, or leave it out'])
    expect(faults('  cheap').join()).toContain('`prices` takes a price for each thing, not `cheap`')
  })

  test('all together', () => {
    expect(faults('  18 plywood: 62 EUR\n  pipe: $31\n  glu: 3\n  paint: dear')).toHaveLength(3)
  })
})

test('a garage, a door and a ceiling are read; an odd size is asked about', () => {
  const read = (space: string) => readDesign(`space: { ${space} }\n${templateText('quarter-mm')}`)
  const reading = read('garage: 3000 x 6000, door: 2100 x 2000, ceiling: 2300')
  expect('design' in reading && reading.design.space).toEqual({
    garage: [3000, 6000],
    door: [2100, 2000],
    ceiling: 2300,
  })
  const only = read('garage: 3000 x 6000')
  expect('design' in only && only.design.space).toEqual({ garage: [3000, 6000], door: null, ceiling: null })
  const wrong = read('garage: 10 x 20')
  expect('problems' in wrong && wrong.problems[0]!.message).toContain(
    '10 mm is outside 300 to 30000 mm; did you mean',
  )
  expect('problems' in read('door: 2100 x 2000')).toBe(true)
})
