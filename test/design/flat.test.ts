import { describe, expect, it, test } from 'vitest'
import { change, good, problemsOf } from './sample.ts'

const flat = `title: Boathouse
units: mm
ramps:
  - name: low
    kind: flat
    width: 1216
    length: 2440
    height: { surface: 113 }
    skin: [18 plywood, 6 hardboard]
`
const quarter = `  - name: curved
    width: 1216
    height: { deck: 640 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    skin: [9 plywood]
`
const said = (text: string): readonly string[] =>
  problemsOf(text).map(({ place, message }) => `${place.line}:${place.column} ${message}`)
const inFlat = (from: string, to: string): string => change(flat, from, to)

it('has every default filled in', () => {
  expect(good(flat).ramps).toEqual([
    {
      name: 'low',
      like: null,
      kind: 'flat',
      width: 1216,
      length: 2440,
      height: { layer: 'surface', value: 113 },
      sides: { thickness: 18, count: 2 },
      studs: { section: [38, 89], every: 200 },
      skin: [
        { thickness: 18, material: 'plywood' },
        { thickness: 6, material: 'hardboard' },
      ],
      fasten: 'studs',
    },
  ])
})

it('says all of it in inches', () => {
  const text = `title: Boathouse
units: in
ramps:
  - { kind: flat, width: 47 1/2, length: 8 ft, height: { frame: 3 1/2 }, sides: { thickness: 1 1/2, count: 3 },
      studs: { section: 1 1/2 x 3 1/2, every: 16 }, skin: [3/4], fasten: between }
`
  expect(good(text).ramps).toEqual([
    {
      name: 'ramp',
      like: null,
      kind: 'flat',
      width: 1206.5,
      length: 2438.4,
      height: { layer: 'frame', value: 88.9 },
      sides: { thickness: 38.1, count: 3 },
      studs: { section: [38.1, 88.9], every: 406.4 },
      skin: [{ thickness: 19.05, material: 'plywood' }],
      fasten: 'between',
    },
  ])
})

describe('keys of another kind are refused, and it is said whose they are', () => {
  test.each([
    ['toe: 40', 'toe'],
    ['deck: 500', 'deck'],
    ['run-out: flat', 'run-out'],
    ['coping: none', 'coping'],
    ['transition: { circle: { frame: 1700 } }', 'transition'],
    ['chamfer: none', 'chamfer'],
    ['deck-board: 15 plywood', 'deck-board'],
    ['stores-inside: { ramp: low, clearance: 12 }', 'stores-inside'],
  ])('%s', (line, key) => {
    expect(said(inFlat('    skin', `    ${line}\n    skin`))).toEqual([
      `9:5 \`${key}\` belongs to a quarter, \`low\` is a flat: leave it out`,
    ])
  })
  test('inside of a key that both have', () => {
    expect(said(inFlat('    skin', '    studs: { every: 300, foot: none, deck: 200 }\n    skin'))).toEqual([
      '9:26 `foot` belongs to a quarter, this is a flat: leave it out',
      '9:38 `deck` belongs to a quarter, this is a flat: leave it out',
    ])
    expect(said(inFlat('{ surface: 113 }', '{ surface: 113, deck: 120 }'))).toEqual([
      '8:29 `deck` belongs to a quarter, this is a flat: leave it out',
    ])
  })
  test('a key that no ramp has lists those of a flat', () => {
    expect(said(inFlat('    skin', '    colour: red\n    skin'))).toEqual([
      '9:5 unknown key `colour`; a flat takes name, like, kind, width, length, height, sides, studs, skin, fasten',
    ])
    expect(said(inFlat('length', 'lenght'))).toEqual(['7:5 unknown key `lenght`; did you mean `length`?'])
  })
})

describe('what a flat must say', () => {
  test.each([
    ['    width: 1216\n', '4:5 missing key `width`: outside to outside of the sides; e.g. `width: 1216`'],
    [
      '    length: 2440\n',
      '4:5 missing key `length`: the whole side, from one end to the other; e.g. `length: 2440`',
    ],
    [
      '    height: { surface: 113 }\n',
      '4:5 missing key `height`: how high, and which layer that means: one of surface, frame; e.g. `height: { surface: 110 }`',
    ],
    [
      '    skin: [18 plywood, 6 hardboard]\n',
      '4:5 missing key `skin`: layers from the studs outward: thickness as measured, and material; e.g. `skin: [9 plywood, 9 plywood, 6 hardboard]`',
    ],
  ])('%j', (line, message) => {
    expect(said(inFlat(line, ''))).toEqual([message])
  })
  test('exactly one height', () => {
    expect(said(inFlat('{ surface: 113 }', '{ surface: 113, frame: 89 }'))).toEqual([
      '8:29 `height` takes only one of `surface` or `frame`; here stand `surface` and `frame`: take one away',
    ])
    expect(said(inFlat('{ surface: 113 }', '{}'))).toEqual([
      '8:13 `height` needs exactly one of `surface` or `frame`; e.g. `height: { surface: 110 }`',
    ])
  })
  test('sizes that can be meant', () => {
    expect(said(inFlat('surface: 113', 'surface: 1130'))).toEqual([
      '8:24 `height.surface`: 1130 mm is outside 10 to 500 mm',
    ])
    expect(said(inFlat('surface: 113', 'surface: 4 1/2'))).toEqual([
      '8:24 `height.surface`: 4 1/2 mm is outside 10 to 500 mm; did you mean 4 1/2 in (114 mm)?',
    ])
    expect(said(inFlat('2440', '24400'))).toEqual(['7:13 `length`: 24400 mm is outside 300 to 10000 mm'])
    for (const length of ['300', '12 in']) expect(said(inFlat('2440', length))).toEqual([])
    for (const every of ['610', '24 in', '610.1'])
      expect(said(inFlat('    skin', `    studs: { every: ${every} }\n    skin`))).toEqual(
        every === '610.1' ? ['9:21 `studs.every`: 610.1 mm is outside 40 to 610 mm'] : [],
      )
  })
  test.each([
    ['width: 1216', 'width: 8'],
    ['length: 2440', 'length: 8'],
  ])('a foot that was forgotten: %s as %s in', (was, is) => {
    const inches = change(change(flat, 'units: mm', 'units: in'), was, is)
    // 300 / 25.4 = 11.81, rounded inward
    expect(said(inches).join()).toMatch(
      /: 8 in is outside 11 13\/16 to [\d /]+ in; did you mean 8 ft \(96 in\)\?/,
    )
  })
})

describe('like', () => {
  const second = (keys: string): string => `${flat}  - name: other\n    like: low\n    ${keys}\n`
  test('takes over from a flat, and is a flat by that', () => {
    const [low, other] = good(second('height: { frame: 60 }\n    length: 1220')).ramps
    expect(other).toEqual({
      ...low,
      name: 'other',
      like: 'low',
      height: { layer: 'frame', value: 60 },
      length: 1220,
    })
  })
  test('checks its keys as those of a flat', () => {
    expect(said(second('toe: 40'))).toEqual([
      '12:5 `toe` belongs to a quarter, `other` is a flat: leave it out',
    ])
  })
  test('goes on from ramp to ramp', () => {
    expect(good(`${second('width: 900')}  - name: third\n    like: other\n`).ramps[2]).toMatchObject({
      kind: 'flat',
      width: 900,
    })
  })
  test('is refused between kinds, with the reason and what to write', () => {
    const curved = `${flat}  - name: curved\n    kind: quarter\n    like: low\n    width: 900\n`
    expect(said(curved)).toEqual([
      '12:11 the ramp `low` is a flat and this is a quarter, so most of what it says means nothing here; ' +
        'name an earlier quarter, or leave `like` out and write what a quarter needs: height, transition, toe, skin, width or stores-inside, deck or length',
    ])
    const level = `${change(flat, '  - name: low', `${quarter}  - name: low\n    like: curved`)}`
    expect(said(level)).toEqual([
      '12:11 the ramp `curved` is a quarter and this is a flat, so most of what it says means nothing here; ' +
        'name an earlier flat, or leave `like` out and write what a flat needs: width, length, height, skin',
    ])
  })
})

test('a slip in the kind is told once, and the keys are read as those of what is meant', () => {
  expect(said(inFlat('kind: flat', 'kind: flta'))).toEqual([
    '5:11 unknown kind `flta`; did you mean `flat`? allowed: quarter, flat',
  ])
})

test('no ramp is kept inside a flat', () => {
  const inside = change(quarter, 'width: 1216', 'stores-inside: { ramp: low, clearance: 12 }')
  expect(said(`${flat}${inside}`)).toEqual([
    '11:28 the ramp `low` is a flat, too low to keep another inside; name a quarter',
  ])
})
