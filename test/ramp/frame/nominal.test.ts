import { expect, test } from 'vitest'
import { editDesign } from '../../../src/design/edit.ts'
import { readDesign } from '../../../src/design/read.ts'
import { writeStarter } from '../../../src/design/starter.ts'
import { starterFor } from '../../../src/design/starters.ts'
import { solveDesign } from '../../../src/ramp/solve.ts'

const told = (id: string, text: string): readonly string[] => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  return solveDesign(reading.design)
    .checks.filter((check) => check.id === id)
    .map(({ level, message }) => `${level}: ${message}`)
}
const metric = writeStarter(starterFor('quarter', 'mm'))
const inches = writeStarter(starterFor('quarter', 'in'))
const pipe = (outside: string): readonly string[] =>
  told('pipe-nominal', metric.replace('outside: 60.3', `outside: ${outside}`))

// EN 10255, from memory: DN 50 is 60.3 mm outside, DN 40 48.3 mm
test('steel pipe typed by its nominal diameter in mm is told, and what it measures is not', () => {
  expect(pipe('50')).toEqual([expect.stringContaining('(outside: 60.3)')])
  expect(pipe('40')).toEqual([expect.stringContaining('(outside: 48.3)')])
  expect(pipe('60.3')).toEqual([])
  expect(pipe('50\n      material: plastic')).toEqual([])
})

// a pipe of 76.1 mm, 20 mm behind the face, is let in deeper than this deck is long: EN 10255, from memory
test('what a pipe measures is offered where the ramp can be built with it, and told as it is where another part stops', () => {
  const bare = metric.replace(/ {4}chamfer:.*\n {6}leg.*\n/, '').replace('out: 6', 'out: -20')
  const checksOf = (outside: number, deck: number) => {
    const reading = readDesign(
      bare.replace('outside: 60.3', `outside: ${outside}`).replace('deck: 500', `deck: ${deck}`),
    )
    return 'design' in reading ? solveDesign(reading.design).checks : []
  }
  const nominal = (deck: number) => checksOf(65, deck).find(({ id }) => id === 'pipe-nominal')!
  expect(nominal(500).offers).toEqual([[{ path: 'ramps.0.coping.outside', value: '76.1' }]])
  const stopsOf = (outside: number) =>
    checksOf(outside, 64).flatMap(({ id, level }) => (level === 'stop' ? [id] : []))
  expect([stopsOf(65), stopsOf(76.1)]).toEqual([[], ['notch-long']])
  expect(nominal(64).offers).toEqual([])
  expect(nominal(64).message).toMatch(
    /measures 76\.1 mm outside: measure it and type that; another part fails then and must change too$/,
  )
})

// sawn sizes of EN 1313-1, planed ones 5 mm less: from memory
test('timber typed by its sawn size in mm is told what is left when it is planed', () => {
  const studs = (section: string) =>
    told('stud-nominal', editDesign(metric, 'ramps.0.studs.section', section))
  expect(studs('50 x 100')).toEqual([
    'note: the studs are taken as 50 x 100 mm in real; what is sawn to 50 x 100 is mostly sold planed, about 45 x 95: measure one, and type that (section: 45 x 95)',
  ])
  expect(studs('150 x 50')).toEqual([expect.stringContaining('(section: 45 x 145)')])
  for (const measured of ['45 x 95', '38 x 89', '47 x 100', '50.8 x 101.6'])
    expect(studs(measured)).toEqual([])
})

// PS 1, from memory: the performance category 3/4 measures 23/32
test('plywood of 3/4 in is told what it measures, wherever it is typed', () => {
  const sides = editDesign(inches, 'ramps.0.sides.thickness', '3/4')
  expect(told('sheet-nominal', sides)).toEqual([
    'note: the sides are taken as 3/4 in thick in real; plywood sold as 3/4 measures about 23/32 in: measure it, and type that (thickness: 23/32)',
  ])
  const board = editDesign(sides, 'ramps.0.deck-board', '3/4 plywood')
  expect(told('sheet-nominal', board)[0]).toContain('(thickness: 23/32 and deck-board: 23/32 plywood)')
  expect(told('sheet-nominal', inches)).toEqual([])
  // hardboard is sold as it measures, and so is metric plywood
  expect(told('sheet-nominal', editDesign(inches, 'ramps.0.deck-board', '3/4 other'))).toEqual([])
  expect(told('sheet-nominal', editDesign(metric, 'ramps.0.sides.thickness', '3/4 in'))).toEqual([])
})

test('a deck that nobody stands on is asked in the larger unit, that of the file', () => {
  const deck = (text: string, typed: string) => told('deck-short', editDesign(text, 'ramps.0.deck', typed))
  expect(deck(metric, '60')).toEqual([
    'warn: a deck of 60 mm is a ledge that nobody stands on; did you mean 60 cm (600 mm)?',
  ])
  expect(deck(metric, '50')[0]).toContain('did you mean 50 cm (500 mm)?')
  expect(deck(inches, '2')[0]).toContain('did you mean 2 ft (24 in)?')
  expect(deck(metric, '60 cm')).toEqual([])
  expect(deck(metric, '100')).toEqual([])
  expect(deck(inches, '4')).toEqual([])
})
