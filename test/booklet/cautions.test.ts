import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const quarter = templateText('quarter-mm')
const withFlat = templateText('quarter-and-flat-in')
const lifting = 'nobody stands under it or between it and a wall.'
const rolling = 'Wheels have no brake: block them on any slope.'

test.each([
  ['the lip trial is sawn', quarter, 'first', 'Cover eyes, ears and lungs.', 'saw the lip trial'],
  [
    'a frame is turned over for its rubber',
    quarter,
    'framing',
    'nobody stands under it.',
    'tack the rubber strip',
  ],
  ['a ramp is moved', quarter, 'moving', lifting, 'Measure doors'],
  ['a flat is set and tipped', withFlat, 'flat', lifting, 'on level ground'],
])('a caution stands before %s', (_, text, part, caution, work) => {
  const said = bookletSaid(text, [part])
  expect(said).toContain(caution)
  expect(said.indexOf(caution)).toBeLessThan(said.indexOf(work))
  expect(said.split(caution)).toHaveLength(2)
})

test('of wheels it is said how to lift and that they have no brake, before they are put on', () => {
  const said = bookletSaid(quarter.replace('# wheels:', 'wheels:'), ['moving'])
  expect(said).toContain(rolling)
  expect(said.indexOf(rolling)).toBeLessThan(said.indexOf('Screw the 4 wheels'))
  expect(said).toContain('each, drilled 3 mm before, 10 mm or more off the screws in its ends.')
  expect(bookletSaid(quarter, ['moving'])).not.toContain('no brake')
})

test('as many lift at the toe of what rolls as its weight in their hands asks for, two at least', () => {
  const one = quarter.replace('# wheels:', 'wheels:')
  // wider, of thicker skin: more in the hands
  const more = one.replace(/width: \d+/, 'width: 2400').replace(/skin: .*/, 'skin: [ 9 plywood, 9 plywood ]')
  for (const text of [one, more]) {
    const said = bookletSaid(text, ['moving']).replace(/\s+/g, ' ')
    const [, most] = said.match(/ to (\d+) kg in the hands/)!
    const [, people] = said.match(/To roll on wheels, (\d+) people lift at the toe/)!
    // 51 lb each, the load constant of the NIOSH lifting equation
    expect(Number(people)).toBe(Math.max(2, Math.ceil(Number(most) / 23.13)))
    expect(said.includes('set the toe on a trolley')).toBe(Number(people) > 2)
  }
})

test('fume of zinc is spoken of where the pipe may have any: a plastic one has none, its sharp ends it has', () => {
  const plastic = quarter.replace('outside: 60.3', 'material: plastic\n      outside: 60.3')
  for (const [text, zinc] of [
    [quarter, true],
    [plastic, false],
  ] as const) {
    const said = bookletSaid(text, ['coping'])
    expect(said).toContain('drilled holes are sharp')
    expect(said.includes('Zinc-coated pipe')).toBe(zinc)
  }
})

test('a joint of a flat is felt where a quarter meets it', () => {
  const alone = `title: Flat
units: mm
ramps:
  - kind: flat
    width: 1216
    length: 2400
    height: { surface: 113 }
    skin: [18 plywood, 6 hardboard]
`
  for (const [text, joint] of [
    [withFlat, true],
    [alone, false],
  ] as const) {
    const said = bookletSaid(text, ['flat'])
    expect(said).toContain('Nothing rocks.')
    expect(said.includes('A hand run over the joint feels no step.')).toBe(joint)
  }
})

test('the rubber strip goes on once, under the bare frame of each ramp: not under what stands with skin and deck on', () => {
  const said = bookletSaid(withFlat)
  expect(said.match(/ack the rubber strip/g)).toHaveLength(2)
  expect(bookletSaid(withFlat, ['moving'])).not.toContain('ack the rubber strip')
  const framing = bookletSaid(quarter, ['framing'])
  expect(framing.indexOf('tack the rubber strip')).toBeLessThan(
    framing.indexOf('Measure both diagonals again'),
  )
})
