import { describe, expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { templateText } from '../support/templates.ts'

const metric = templateText('quarter-mm')
const inches = templateText('quarter-in')
const withStock = (text: string, stock: string): string =>
  text.replace(/^units: .*$/m, `$&\nstock: { ${stock} }`)

/** Where and what the reader does not take. */
const problems = (text: string): readonly string[] => {
  const reading = readDesign(text)
  return 'problems' in reading
    ? reading.problems.map(({ message, place }) => `${place.line}:${place.column} ${message}`)
    : []
}

describe('stock that cannot be meant', () => {
  test.each([
    ['9', 'a saw cut of 9 mm was typed: blades cut 1 mm to 6 mm wide'],
    ['0.2', 'a saw cut of 0.2 mm was typed: blades cut 1 mm to 6 mm wide'],
    ['3', null],
  ])('a kerf of %s mm is asked about, or not', (kerf, words) => {
    const reading = readDesign(withStock(metric, `kerf: ${kerf}`))
    if ('problems' in reading) throw new Error(reading.problems[0]!.message)
    const said = solveDesign(reading.design).checks.filter(({ id }) => id === 'kerf')
    expect(said.map(({ level }) => level)).toEqual(words === null ? [] : ['warn'])
    if (words !== null) expect(said[0]!.message).toContain(words)
  })

  test.each([
    ['metres', metric, '2.4, 3', 'm'],
    ['centimetres', metric, '240, 290', 'cm'],
    ['feet', inches, '8, 10', 'ft'],
    ['inches', metric, '96, 120, 144, 192', 'in'],
    ['feet, in a file of millimetres', metric, '8, 10, 16', 'ft'],
  ])(
    'timber typed in %s is refused piece by piece; with the unit that is offered it is read',
    (_, text, typed, unit) => {
      const said = problems(withStock(text, `timber: [${typed}]`))
      expect(said).toHaveLength(typed.split(', ').length)
      for (const message of said) {
        expect(message).toMatch(/^\d+:\d+ `stock\.timber`: .* is outside /)
        expect(message).toContain(` ${unit} (`)
      }
      const meant = typed
        .split(', ')
        .map((one) => `${one} ${unit}`)
        .join(', ')
      expect(problems(withStock(text, `timber: [${meant}]`))).toEqual([])
    },
  )
})
