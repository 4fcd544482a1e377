import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { change, pair, problemsOf, single } from './sample.ts'

/** `line:column message` of every problem, in order. */
const said = (text: string): readonly string[] =>
  problemsOf(text).map(({ place, message }) => `${place.line}:${place.column} ${message}`)

const inSingle = (from: string, to: string): string => change(single, from, to)
const inPair = (from: string, to: string): string => change(pair, from, to)

const rampKeys =
  'name, like, kind, width, stores-inside, height, transition, toe, deck, length, sides, studs, skin, fasten, run-out, deck-board, coping, chamfer, lip, limits, wheels'
const lengthForms = 'write it like 640, 17 3/16 in, 4 ft 7 1/4 in, 1.2 m or 18 mm'

describe('keys', () => {
  it.each([
    ['with a slip', inSingle('height', 'hieght'), '5:5 unknown key `hieght`; did you mean `height`?'],
    [
      'at the top level',
      inSingle('units: mm', 'units: mm\ncolour: red'),
      '3:1 unknown key `colour`; the top level takes title, units, paper, stock, prices, space, ramps',
    ],
    [
      'in a ramp',
      inSingle('    toe', '    radius: 3\n    toe'),
      `7:5 unknown key \`radius\`; a quarter takes ${rampKeys}`,
    ],
    [
      'that belong elsewhere',
      inSingle('    toe', '    every: 200\n    toe'),
      `7:5 unknown key \`every\`; it belongs to \`studs\` or \`studs.foot\` or \`coping.holes\`; a quarter takes ${rampKeys}`,
    ],
    [
      'in a map of a ramp',
      inSingle('60.3 }', '60.3, colour: red }'),
      '10:30 unknown key `colour`; `coping` takes outside, material, holes, up, out, notch, seat',
    ],
    [
      'that are lists',
      inSingle('    toe', '    ? [a, b]\n    : 3\n    toe'),
      `7:7 unknown key \`[a, b]\`; a quarter takes ${rampKeys}`,
    ],
    [
      'said twice',
      inSingle('toe: 40', 'toe: 40\n    toe: 50'),
      '8:5 `toe` stands here twice (first on line 7); keep one',
    ],
  ])('%s', (_, text, message) => {
    expect(said(text)).toEqual([message])
  })

  it.each([
    [
      'title',
      inSingle('title: Boathouse\n', ''),
      '1:1 missing key `title`: printed on every page; any language; e.g. `title: Low ramp for the boathouse`',
    ],
    [
      'units',
      inSingle('units: mm\n', ''),
      '1:1 missing key `units`: what a number without a unit is read in; e.g. `units: mm`',
    ],
    [
      'ramps',
      'title: Boathouse\nunits: in\n',
      '1:1 missing key `ramps`: one entry for each ramp; e.g. `ramps: [{ kind: quarter, … }]`',
    ],
    [
      'toe',
      inSingle('    toe: 40\n', ''),
      "4:5 missing key `toe`: height of the side's front edge; e.g. `toe: 40`",
    ],
    [
      'width',
      inSingle('width: 1216', 'kind: quarter'),
      '4:5 a quarter needs exactly one of `width` or `stores-inside`; e.g. `width: 1216`',
    ],
    [
      'deck',
      inSingle('    deck: 500\n', ''),
      '4:5 a quarter needs exactly one of `deck` or `length`; e.g. `deck: 500`',
    ],
    [
      'a layer of the height',
      inSingle('{ deck: 640 }', '{}'),
      '5:13 `height` needs exactly one of `frame`, `deck` or `surface`; e.g. `height: { deck: 640 }`',
    ],
    [
      'the circle',
      inSingle('circle: { surface: 1700 }', 'tangent: { frame: 0 }'),
      '6:17 missing key `transition.circle`: its radius, and which layer that means: one of frame, surface; e.g. `circle: { surface: 1700 }`',
    ],
    [
      'outside',
      inSingle('outside: 60.3', 'up: 4'),
      '10:13 missing key `coping.outside`: outside diameter of the pipe, as measured; e.g. `outside: 60.3`',
    ],
    [
      'down',
      inSingle('outside: 60.3', 'outside: 60.3, notch: { along: 48 }'),
      '10:37 missing key `coping.notch.down`: top line to the floor of the notch; e.g. `down: 37`',
    ],
  ])('missing: %s', (_, text, message) => {
    expect(said(text)).toEqual([message])
  })

  it.each([
    [
      'two layers',
      inSingle('{ deck: 640 }', '{ deck: 640, frame: 625 }'),
      '5:15 `height` takes only one of `frame`, `deck` or `surface`; here stand `frame` and `deck`: take one away',
    ],
    [
      'three layers',
      inSingle('{ deck: 640 }', '{ deck: 640, frame: 625, surface: 640 }'),
      '5:15 `height` takes only one of `frame`, `deck` or `surface`; here stand `frame` and `deck` and `surface`: take one away',
    ],
    [
      'deck and length',
      inSingle('deck: 500', 'deck: 500\n    length: 1400'),
      '9:5 a quarter takes only one of `deck` or `length`; here stand `deck` and `length`: take one away',
    ],
    [
      'reveals and a notch',
      inSingle('60.3 }', '60.3, up: 8, out: 6, notch: { along: 48, down: 30 } }'),
      '10:45 `coping` takes only one of `up`/`out` or `notch`; here stand `up`, `out` and `notch`: take one away',
    ],
    [
      'width and stores-inside',
      inPair('like: outer', 'like: outer\n    width: 1000'),
      '15:5 a quarter takes only one of `width` or `stores-inside`; here stand `width` and `stores-inside`: take one away',
    ],
  ])('that exclude each other: %s', (_, text, message) => {
    expect(said(text)).toEqual([message])
  })
})

describe('sizes', () => {
  it.each([
    [
      'a wrong unit',
      inSingle('toe: 40', 'toe: 40 mn'),
      '7:10 `toe`: unknown unit `mn` in `40 mn`; did you mean `mm`?',
    ],
    [
      'an unknown unit',
      inSingle('toe: 40', 'toe: 40 rods'),
      '7:10 `toe`: unknown unit `rods` in `40 rods`; use mm, cm, m, in or ft',
    ],
    [
      'a fraction over zero',
      inSingle('toe: 40', 'toe: 1 3/0 in'),
      '7:10 `toe`: `1 3/0 in` has a fraction over zero; the lower number must be 1 or more',
    ],
    [
      'a decimal comma',
      inSingle('toe: 40', 'toe: 40,5'),
      '7:10 `toe`: `40,5` has a comma; write `40.5`, with a point',
    ],
    ['no number', inSingle('toe: 40', 'toe: low'), `7:10 \`toe\`: \`low\` is not a length; ${lengthForms}`],
    ['nothing', inSingle('toe: 40', 'toe:'), '7:9 `toe` has no value; e.g. `toe: 40`'],
    [
      'a list for a length',
      inSingle('toe: 40', 'toe: [40]'),
      '7:10 `toe` takes `solve` or one value, not a list; e.g. `toe: 40`',
    ],
    [
      'negative',
      inSingle('width: 1216', 'width: -1216'),
      '4:12 `width`: -1216 mm is outside 300 to 12000 mm',
    ],
    [
      'absurd',
      inSingle('surface: 1700', 'surface: 5 m 3'),
      '6:38 `transition.circle.surface`: `5 m 3` is not one length: only feet and inches go together, as in 4 ft 7 1/4 in',
    ],
    [
      'absurd, with its unit',
      inSingle('surface: 1700', 'surface: 170 m'),
      '6:38 `transition.circle.surface`: 170 m is outside 300 to 20000 mm',
    ],
    [
      'cm typed as mm',
      inSingle('surface: 1700', 'surface: 66'),
      '6:38 `transition.circle.surface`: 66 mm is outside 300 to 20000 mm; did you mean 66 cm (660 mm)?',
    ],
    // 22 cm are less than the least radius; 22 m, more than the most; 22 × 25.4 = 558.8
    [
      'inches typed as mm',
      inSingle('surface: 1700', 'surface: 22'),
      '6:38 `transition.circle.surface`: 22 mm is outside 300 to 20000 mm; did you mean 22 in (559 mm)?',
    ],
    [
      'mm that are said to be mm',
      inSingle('surface: 1700', 'surface: 66 mm'),
      '6:38 `transition.circle.surface`: 66 mm is outside 300 to 20000 mm',
    ],
    [
      'inches typed as mm in a sheet',
      inSingle('9 plywood', '3/8 plywood'),
      '9:12 `skin`: 3/8 mm is outside 0.5 to 60 mm; did you mean 3/8 in (10 mm)?',
    ],
    [
      'half a pair',
      inSingle('    toe', '    studs: { section: 38 }\n    toe'),
      '7:23 `studs.section`: `38` is not a pair; e.g. `section: 38 x 89`',
    ],
    [
      'timber by its name in inches',
      inSingle('    toe', '    studs: { section: 2x4 }\n    toe'),
      '7:23 `studs.section`: `2x4` is a name in inches; dry it measures about 38 x 89 mm: measure it, and type that',
    ],
    [
      'timber by the name of a beam',
      inSingle('    toe', '    studs: { section: 4 x 12 }\n    toe'),
      '7:23 `studs.section`: `4 x 12` is 40 x 120 mm if it is in cm; as a name in inches it measures about 89 x 286 mm dry: measure it, and type that',
    ],
    [
      'timber in cm, or by its name in inches',
      inSingle('    toe', '    studs: { section: 4 x 6 }\n    toe'),
      '7:23 `studs.section`: `4 x 6` is 40 x 60 mm if it is in cm; as a name in inches it measures about 89 x 140 mm dry: measure it, and type that',
    ],
    [
      'timber by its name in inches, turned round',
      inSingle('    toe', '    studs: { section: 4x2 }\n    toe'),
      '7:23 `studs.section`: `4x2` is a name in inches; dry it measures about 38 x 89 mm: measure it, and type that',
    ],
    [
      'an absurd pair',
      inSingle('    toe', '    studs: { section: 38 x 890 }\n    toe'),
      '7:23 `studs.section`: 890 mm is outside 10 to 300 mm',
    ],
    [
      'one side',
      inSingle('    toe', '    sides: { count: 1 }\n    toe'),
      '7:21 `sides.count`: `1` is not a whole number from 2 to 9',
    ],
    [
      'half a side',
      inSingle('    toe', '    sides: { count: 2.5 }\n    toe'),
      '7:21 `sides.count`: `2.5` is not a whole number from 2 to 9',
    ],
    [
      'no timber',
      inSingle('units: mm', 'units: mm\nstock: { timber: [] }'),
      '3:18 `stock.timber` is an empty list; give at least one length; e.g. `timber: [2400, 3000]`',
    ],
  ])('%s', (_, text, message) => {
    expect(said(text)).toEqual([message])
  })

  it('both ends of a range are allowed', () => {
    for (const width of ['300', '12 in', '12000', '12 m']) expect(said(inSingle('1216', width))).toEqual([])
    for (const width of ['299.9', '11 3/4 in', '12000.1'])
      expect(said(inSingle('1216', width))).toHaveLength(1)
  })

  it('studs stand 610 mm or 24 in apart at most, closer ones at the foot too', () => {
    const every = (keys: string): readonly string[] =>
      said(inSingle('    toe', `    studs: { ${keys} }\n    toe`))
    for (const most of ['610', '24 in']) {
      expect(every(`every: ${most}`)).toEqual([])
      expect(every(`foot: { every: ${most}, to: 700 }`)).toEqual([])
    }
    // 610 / 25.4 = 24.02, rounded inward
    expect(every('every: 610.1')).toEqual(['7:21 `studs.every`: 610.1 mm is outside 40 to 610 mm'])
    expect(every('foot: { every: 700, to: 900 }')).toEqual([
      '7:29 `studs.foot.every`: 700 mm is outside 40 to 610 mm',
    ])
  })

  it('mm typed as inches', () => {
    const inches = change(single, 'units: mm', 'units: in')
      .replace(/1216|640|1700|40|500/g, (n) => `${n} mm`)
      .replace('[9 plywood, 6 hardboard]', '[]')
      .replace('60.3', '2 3/8')
    // 1700 / 25.4 = 66.93, nearest 1/16: 66 15/16; 300 / 25.4 = 11.81 and 20 000 / 25.4 = 787.40, rounded inward
    expect(said(change(inches, 'surface: 1700 mm', 'surface: 1700'))).toEqual([
      '6:38 `transition.circle.surface`: 1700 in is outside 11 13/16 to 787 3/8 in; did you mean 1700 mm (66 15/16 in)?',
    ])
  })

  // 84 × 25.4 = 2133.6 and 24 × 25.4 = 609.6 lie in their ranges, 7 in, 2 in and 24 mm do not
  it.each([
    ['in', 'surface: 1700', 'surface: 7', '7 in', 'did you mean 7 ft (84 in)?'],
    ['in', 'deck: 640', 'deck: 2', '2 in', 'did you mean 2 ft (24 in)?'],
    ['in', 'deck: 640', 'deck: 24 mm', '24 mm', 'did you mean 24 in?'],
    ['in', 'width: 1216', 'width: 8', '8 in', 'did you mean 8 ft (96 in)?'],
    ['mm', 'width: 1216', 'width: 48', '48 mm', 'did you mean 48 cm (480 mm)?'],
    ['mm', 'deck: 500', 'deck: 45', '45 mm', 'did you mean 45 cm (450 mm)?'],
    ['mm', 'deck: 500', 'deck: 19 1/2', '19 1/2 mm', 'did you mean 19 1/2 in (495 mm)?'],
    ['mm', 'surface: 1700', 'surface: 1.7', '1.7 mm', 'did you mean 1.7 m (1700 mm)?'],
  ])('a forgotten unit in a design in %s: %s is %s', (units, old, typed, shown, meant) => {
    const sized = inSingle('units: mm', `units: ${units}`)
    const messages = said(change(sized, old, typed))
    expect(messages.filter((message) => message.includes(`: ${shown} is outside`)).join()).toContain(meant)
  })

  it('a whole file in the other unit is told from its units', () => {
    const [first, ...rest] = said(inSingle('units: mm', 'units: in'))
    expect(first).toBe(
      '2:8 8 sizes of this file make no sense when read in inches, but do in mm; did you mean `units: mm`?',
    )
    expect(rest).toHaveLength(8)
    expect(rest.every((message) => /; did you mean [\d.]+ mm \(.* in\)\?$/.test(message))).toBe(true)
    const metric = inSingle('units: mm', 'units: mm')
      .replace('1216', '48')
      .replace('surface: 1700', 'surface: 66')
      .replace('deck: 500', 'deck: 20')
    const inches = said(metric)
    expect(inches[0]).toBe(
      '2:8 3 sizes of this file make no sense when read in mm, but do in inches; did you mean `units: in`?',
    )
    // not one of them is guessed to be in cm
    expect(inches).toHaveLength(4)
    expect(inches.join()).not.toContain(' cm')
  })

  it('an example comes in the unit of the file', () => {
    const inches = inSingle('units: mm', 'units: in').replace(
      '    toe',
      '    studs: { section: 3 1/2 }\n    toe',
    )
    expect(said(inches)).toContain(
      '7:23 `studs.section`: `3 1/2` is not a pair; e.g. `section: 1 1/2 x 3 1/2`',
    )
  })

  it('are not judged while the units are unknown', () => {
    expect(said(inSingle('units: mm', 'units: inch'))).toEqual([
      '2:8 unknown units `inch`; did you mean `in`? allowed: mm, in',
    ])
  })
})

// 10 mm are 1 cm, 1000 are 1 m, 12 in are 1 ft
describe('units that no file is in', () => {
  it.each([
    ['cm', 'mm', 10, '64 cm'],
    ['centimetres', 'mm', 10, '64 cm'],
    ['m', 'mm', 1000, '0.64 m'],
    ['feet', 'in', 12, '2 ft'],
  ])(
    '%s are told how to write lengths, and no other unit is put in their place',
    (typed, units, times, own) => {
      const text = inSingle('units: mm', `units: ${typed}`)
      expect(said(text)).toEqual([
        `2:8 unknown units \`${typed}\`; say ${units}, and write lengths in ${units}, ${times} times the figure, or with their own unit: ${own}; allowed: mm, in`,
      ])
      const reading = readDesign(text)
      expect('problems' in reading && reading.problems[0]!.meant).toBeUndefined()
    },
  )
})

it.each(['yes', 'no', 'true'])('a sheet that is said with %s is told what to write', (typed) => {
  expect(said(`${single.replace(/\n$/, '')}\n    deck-board: ${typed}\n`).at(-1)).toMatch(
    new RegExp(
      `\\d \`deck-board\`: \`${typed}\` is no sheet; write a thickness and a material, or leave the key out; e.g. \`deck-board: 15 plywood\`$`,
    ),
  )
})

describe('words', () => {
  it.each([
    [
      'a kind',
      inSingle('width: 1216', 'kind: spine\n    width: 1216'),
      '4:11 unknown kind `spine`; allowed: quarter, flat',
    ],
    [
      'a seat',
      inSingle('60.3 }', '60.3, seat: squar }'),
      '10:36 unknown seat `squar`; did you mean `square`? allowed: square, round',
    ],
    [
      'a paper',
      inSingle('units: mm', 'units: mm\npaper: b5'),
      '3:8 unknown paper `b5`; allowed: letter, legal, tabloid, a4, a3, a2, a1, a0',
    ],
    [
      'a material',
      inSingle('9 plywood', '9 plywod'),
      '9:12 unknown material `plywod`; did you mean `plywood`? allowed: plywood, hardboard, steel, other',
    ],
    [
      'a material before its thickness',
      inSingle('9 plywood', 'plywood 3/8 in'),
      '9:12 `skin`: thickness first, then the material: `3/8 in plywood`',
    ],
    [
      'a material alone',
      inSingle('    toe', '    deck-board: plywood\n    toe'),
      '7:17 `deck-board`: `plywood` has no thickness in front; thickness first, then the material; e.g. `deck-board: 15 plywood`',
    ],
    [
      'a material before its thickness in a run-out',
      inSingle('    toe', '    run-out: { sheet: Steel 1.5 }\n    toe'),
      '7:23 `run-out.sheet`: thickness first, then the material: `1.5 steel`',
    ],
    [
      'a pair with another word between',
      inSingle('    toe', '    studs: { section: 38 by 89 }\n    toe'),
      '7:23 `studs.section`: `38 by 89` is written with an x: `38 x 89`',
    ],
    [
      'one sheet for a list',
      inSingle('[9 plywood, 6 hardboard]', '9 plywood'),
      '9:11 `skin` takes a list, not `9 plywood`; e.g. `skin: [9 plywood, 9 plywood, 6 hardboard]`',
    ],
    [
      'a list in a list',
      inSingle('[9 plywood,', '[[9 plywood],'),
      '9:12 `skin`: a list stands where one sheet belongs',
    ],
    [
      'a height without its layer',
      inSingle('{ deck: 640 }', '640'),
      '5:13 `height` takes keys of its own (frame, deck, surface), not `640`; e.g. `height: { deck: 640 }`',
    ],
    [
      'a coping that is a word',
      inSingle('{ outside: 60.3 }', 'pipe'),
      '10:13 `coping` takes `none` or keys of its own (outside, material, holes, up, out, notch, seat), not `pipe`; e.g. `coping: { outside: 60.3, up: 8, out: 6 }`',
    ],
  ])('%s', (_, text, message) => {
    expect(said(text)).toEqual([message])
  })
})

describe('titles and names', () => {
  it.each([
    [
      'a title with control characters',
      inSingle('Boathouse', '"Boat\\ehouse"'),
      '1:8 `title` has a control character (U+001B) as letter 5; take it out',
    ],
    [
      'a title with raw control characters',
      inSingle('Boathouse', 'Boat\u0007house'),
      '1:8 `title` has a control character (U+0007) as letter 5; take it out',
    ],
    [
      'a title that turns the line round',
      inSingle('Boathouse', 'Boat\u202ehouse'),
      '1:8 `title` has a control character (U+202E) as letter 5; take it out',
    ],
    [
      'a title with half a letter',
      inSingle('Boathouse', 'Boat\ud800house'),
      '1:8 `title` has a control character (U+D800) as letter 5; take it out',
    ],
    [
      'a title on two lines',
      inSingle('Boathouse', '"Boat\\nhouse"'),
      '1:8 `title` has a control character (U+000A) as letter 5; take it out',
    ],
    [
      'a title of 5,000 letters',
      inSingle('Boathouse', 'x'.repeat(5000)),
      '1:8 `title` has 5000 letters; at most 200 are allowed',
    ],
    [
      'a title that begins with #',
      inSingle('Boathouse', '#1 "low" ramp'),
      '1:8 `title` is blank, as # begins a comment; put it in quotes: `"#1 \\"low\\" ramp"`',
    ],
    [
      'a comment in place of a title',
      inSingle('Boathouse', '# low'),
      '1:8 `title` is blank; give it 1 to 200 letters',
    ],
    ['a blank title', inSingle('Boathouse', '" "'), '1:8 `title` is blank; give it 1 to 200 letters'],
    [
      'a title that is a list',
      inSingle('Boathouse', '[Boat, house]'),
      '1:8 `title` takes one value, not a list; e.g. `title: Low ramp for the boathouse`',
    ],
    [
      'a name of 41 letters',
      inSingle('width: 1216', `name: ${'n'.repeat(41)}\n    width: 1216`),
      '4:11 `name` has 41 letters; at most 40 are allowed',
    ],
    [
      'a name with a slash',
      inSingle('width: 1216', 'name: a/b\n    width: 1216'),
      '4:11 the name `a/b` has a slash; use a blank or a hyphen',
    ],
    [
      'no name for one of two',
      inPair('- name: outer\n    width', '- width'),
      '4:5 missing key `name`: with more than one ramp each needs a name; e.g. `name: outer`',
    ],
  ])('%s', (_, text, message) => {
    expect(said(text)[0]).toBe(message)
  })

  it('two ramps of one name', () => {
    const text = inPair('name: inner', 'name: outer').replace(/\n.*stores-inside.*/, '')
    expect(said(text)).toEqual([
      '12:11 two ramps are called `outer` (first on line 4); give each a name of its own',
    ])
  })

  it('a title is counted in letters, not in bytes', () => {
    expect(said(inSingle('Boathouse', '🛹'.repeat(200)))).toEqual([])
    expect(said(inSingle('Boathouse', '🛹'.repeat(201)))).toEqual([
      '1:8 `title` has 201 letters; at most 200 are allowed',
    ])
  })
})

describe('one ramp and another', () => {
  it.each([
    [
      'like no one',
      inPair('like: outer', 'like: outr'),
      '13:11 there is no ramp `outr`; did you mean `outer`?',
    ],
    [
      'like someone far off',
      inPair('like: outer', 'like: attic'),
      '13:11 there is no ramp `attic`; earlier ramps: `outer`',
    ],
    [
      'like itself',
      inPair('like: outer', 'like: inner'),
      '13:11 the ramp `inner` cannot be like itself; name an earlier ramp',
    ],
    [
      'like a later one',
      inPair('width: 1216', 'like: inner\n    width: 1216'),
      '5:11 the ramp `inner` comes later; `like` takes over from an earlier one: put it above this ramp',
    ],
    [
      'stored in no one',
      inPair('ramp: outer', 'ramp: attic'),
      '14:28 there is no ramp `attic`; other ramps: `outer`',
    ],
    [
      'stored in itself',
      inPair('ramp: outer', 'ramp: inner'),
      '14:28 the ramp `inner` cannot be stored inside itself; name another ramp',
    ],
    [
      'stored in too narrow a ramp',
      inPair('width: 1216', 'width: 330'),
      '14:20 the width that follows, 281 mm, is outside 300 to 12000 mm; widen `outer` or take less clearance',
    ],
  ])('%s', (_, text, message) => {
    expect(said(text)).toEqual([message])
  })

  it('stored in each other', () => {
    expect(said(inPair('width: 1216', 'stores-inside: { ramp: inner, clearance: 3 }'))).toEqual([
      '5:28 the ramps go round in a circle: `inner` is itself stored inside this one',
      '14:28 the ramps go round in a circle: `outer` is itself stored inside this one',
    ])
  })

  it('stored in two that are stored in each other', () => {
    const round = inPair('width: 1216', 'stores-inside: { ramp: inner, clearance: 3 }')
    expect(said(`${round}  - { name: third, like: inner }\n`)).toHaveLength(2)
  })

  it('more than twenty', () => {
    const ramps = (n: number): string =>
      `title: Many\nunits: mm\nramps:\n  - ${single.slice(single.indexOf('width')).replace('width', 'name: r0\n    width')}` +
      Array.from({ length: n - 1 }, (_, i) => `  - { name: r${i + 1}, like: r${i} }\n`).join('')
    expect(said(ramps(20))).toEqual([])
    expect(said(ramps(21))).toEqual(['31:5 21 ramps are too many for one design; at most 20: split the file'])
  })

  it.each([
    [
      'a map',
      '{ width: 3 }',
      '3:8 `ramps` takes a list with a `-` before each ramp, not a map; e.g. `ramps: [{ kind: quarter, … }]`',
    ],
    [
      'empty',
      '[]',
      '3:8 `ramps` takes a list with a `-` before each ramp, not an empty list; e.g. `ramps: [{ kind: quarter, … }]`',
    ],
    ['numbers', '[ 3 ]', '3:10 a ramp is made of keys such as `width:` and `height:`; here stands `3`'],
  ])('ramps that are %s', (_, ramps, message) => {
    expect(said(`title: x\nunits: mm\nramps: ${ramps}\n`)).toEqual([message])
  })
})

const copied = ', as text copied from a mail or a web page may hold'

describe("blanks that are none of the space bar's", () => {
  it.each([
    ['in a title', inSingle('Boathouse', 'deck of 2\u00a0m,\u3000low')],
    ['behind a value, and in a comment', inSingle('toe: 40', 'toe: 40\u00a0 # or\u00a050')],
    ['before a unit', inSingle('width: 1216', 'width: 1216\u00a0mm')],
    ['of the file itself, before its first letter', `\ufeff${single}`],
    ['escaped in a quoted key', single.replace('title:', '"title":')],
  ])('are read %s', (_, text) => {
    expect(said(text)).toEqual([])
  })
})

describe('files that are no design', () => {
  const empty = '1:1 the file is empty'
  const deep = 'lists and maps lie more than 32 deep in each other here; a design needs 5'
  it.each([
    ['empty', '', empty],
    ['only blanks', '\n  \n\n', empty],
    ['only a comment', '# later\n', empty],
    [
      'a sentence',
      'a low ramp, please',
      '1:1 a design is made of keys such as `title:` and `ramps:`; here stands `a low ramp, please`',
    ],
    [
      'a list',
      '- title\n- units\n',
      '1:1 a design is made of keys such as `title:` and `ramps:`; here stands a list',
    ],
    [
      'a picture',
      '\u0089PNG\r\n\u001a\n\0\0\0\rIHDR',
      '1:1 this is not a text file; a design is plain YAML text',
    ],
    ['indented with tabs', inSingle('    toe', '\ttoe'), '7:1 this line is indented with a tab; use blanks'],
    [
      'indented wrongly',
      inSingle('    toe', '   toe'),
      '7:1 this key is indented wrongly: it belongs to no entry; keys of one map start in one column',
    ],
    [
      'an open bracket',
      inSingle('{ deck: 640 }', '{ deck: 640'),
      '6:5 this line is indented wrongly, or a bracket above is still open; keys of one map start in one column',
    ],
    [
      'an open quotation mark',
      inSingle('Boathouse', '"Boathouse'),
      '11:1 a quotation mark " is never closed',
    ],
    [
      'a second colon',
      inSingle('Boathouse', 'Low: Boathouse'),
      '1:8 a second `:` here; put the value on its own lines, in braces, or in quotes if it is one text',
    ],
    [
      'a bracket too many',
      inSingle('toe: 40', 'toe: 40\n    deck-board: }'),
      '8:17 this does not belong here; is a bracket, a quotation mark or a colon too many or missing?',
    ],
    [
      'no colon',
      inSingle('toe: 40', 'toe 40'),
      '7:5 a colon and a blank belong behind `toe`: write `toe: 40`',
    ],
    [
      'no colon on a line with a comment',
      inSingle('units: mm', 'units mm   # as on the tape'),
      '2:1 a colon and a blank belong behind `units`: write `units: mm`',
    ],
    [
      'no blank behind the colon',
      inSingle('toe: 40', 'toe:40'),
      '7:5 a blank belongs behind the colon: write `toe: 40`',
    ],
    [
      'another sign for the colon',
      inSingle('toe: 40', 'toe = 40'),
      '7:5 a colon and a blank belong behind `toe`: write `toe: 40`',
    ],
    [
      'no colon on the first line',
      inSingle('title: ', 'title '),
      '1:1 a colon and a blank belong behind `title`: write `title: Boathouse`',
    ],
    [
      'no colon behind a dash',
      inSingle('- width: 1216', '- width 1216'),
      '4:5 a colon and a blank belong behind `width`: write `width: 1216`',
    ],
    [
      'no colon before a list',
      inSingle('ramps:', 'ramps'),
      '3:1 a colon belongs behind `ramps`: write `ramps:`',
    ],
    [
      'no colon before keys',
      inSingle('height: { deck: 640 }', 'height\n      deck: 640'),
      '5:5 a colon belongs behind `height`: write `height:`',
    ],
    [
      'no colon behind a slip',
      inSingle('toe: 40', 'teo 40'),
      '7:5 a colon and a blank belong behind `teo`: write `toe: 40`',
    ],
    [
      'no colon behind no key',
      inSingle('toe: 40', 'colour 40 # red'),
      '7:5 a key takes a colon and a blank behind it, as in `title: Low ramp`; is one of them missing here?',
    ],
    [
      'no colon behind the only key of a map',
      inSingle('height: { deck: 640 }', 'height:\n      deck 640'),
      '6:7 `height` takes keys of its own (frame, deck, surface), not `deck 640`; a colon and a blank belong behind `deck`: write `deck: 640`',
    ],
    [
      'a no-break blank behind a colon',
      inSingle('toe: 40', 'toe:\u00a040'),
      `7:9 this blank is none of the space bar's (U+00A0)${copied}; type a plain one`,
    ],
    [
      'no-break blanks as indents',
      single.replaceAll('    ', '\u00a0\u00a0\u00a0\u00a0'),
      `5:1 this blank is none of the space bar's (U+00A0)${copied}; type a plain one; 6 lines of the file hold such`,
    ],
    [
      'a thin blank behind the colon of a last key',
      `${inSingle('toe: 40', 'toe: 30')}stock:\n  kerf:\u20093\n`,
      `12:8 this blank is none of the space bar's (U+2009)${copied}; type a plain one`,
    ],
    [
      'a wide blank behind a colon in braces',
      inSingle('{ deck: 640 }', '{ deck:\u3000640 }'),
      `5:20 this blank is none of the space bar's (U+3000)${copied}; type a plain one`,
    ],
    [
      'a wide blank behind a brace',
      inSingle('{ deck: 640 }', '{\u3000deck: 640 }'),
      `5:14 this blank is none of the space bar's (U+3000)${copied}; type a plain one`,
    ],
    [
      'a no-break blank behind a closing brace',
      inSingle('{ outside: 60.3 }', '{ outside: 60.3 }\u00a0# pipe'),
      `10:30 this blank is none of the space bar's (U+00A0)${copied}; type a plain one`,
    ],
    [
      'a sign without width before a key',
      inSingle('units', '\u200bunits'),
      `2:1 a sign without width (U+200B) stands here${copied}; take it out`,
    ],
    [
      'no colon, behind the mark that a file may begin with',
      `\ufeff${inSingle('toe: 40', 'toe 40')}`,
      '7:5 a colon and a blank belong behind `toe`: write `toe: 40`',
    ],
    [
      'no-break blanks behind colons, in lines that end with a carriage return alone',
      single.replaceAll(': ', ':\u00a0').replaceAll('\n', '\r'),
      `1:7 this blank is none of the space bar's (U+00A0)${copied}; type a plain one; 9 lines of the file hold such`,
    ],
    [
      'no blank behind a colon in braces',
      inSingle('{ deck: 640 }', '{ deck:640 }'),
      '5:15 unknown key `deck:640`; a blank belongs behind the colon: write `deck: 640`',
    ],
    [
      'no colon below an empty line and a comment',
      '\n# later\nquux 3\ntoe: 4',
      '3:1 a key must stand on one line, with `: ` behind it; is a colon missing, or this line indented wrongly?',
    ],
    ['two documents', `${single}---\ntitle: b\n`, '11:1 a second document starts here; one design a file'],
    [
      '1 MB of nested YAML',
      '[{a: '.repeat(200_000),
      '1:1 the file has 1000000 letters; a design has at most 262144 (256 kB): is it the right file?',
    ],
    ['256 kB of brackets', '['.repeat(262_144), `1:33 ${deep}`],
    ['256 kB of maps', '{a: '.repeat(65_536), `1:129 ${deep}`],
    ['256 kB of dashes', '- '.repeat(131_072), `1:65 ${deep}`],
    [
      '700 lines, each deeper',
      Array.from({ length: 700 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      `33:34 ${deep}`,
    ],
    [
      '256 kB of small things',
      'a: 1\n'.repeat(52_000),
      '1:1 the file has more than 30000 words and signs; a design has a few hundred: is it the right file?',
    ],
  ])('%s', (_, text, message) => {
    // a text that grows in the reader does not end within the test's own limit
    expect(said(text)).toEqual([message])
  })

  it('anchors that would explode', () => {
    const layers = Array.from(
      { length: 12 },
      (_, i) => `k${i + 1}: &k${i + 1} [${Array(10).fill(`*k${i}`).join(', ')}]`,
    )
    const text = `k0: &k0 [lol, lol]\n${layers.join('\n')}\ntitle: *k12\n`
    const message =
      '`*k0` repeats another part of the file, which a design may not; write the value out, or use `like:` to take over a ramp'
    expect(said(text)).toEqual([`2:10 ${message}`, `2:15 ${message}`, `2:20 ${message}`])
  })

  it('depth 32 is still read', () => {
    expect(said(`${'['.repeat(32)}${']'.repeat(32)}`)[0]).toContain('here stands a list')
  })

  it('whatever stands in the file, problems come back, each inside the text', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '\n',
        '  ',
        '- ',
        ': ',
        '{',
        '}',
        '[',
        ']',
        '"',
        "'",
        '# ',
        '&a ',
        '*a ',
        '|\n',
        '? ',
        '!!x ',
        '\t',
        '---\n',
        '%',
      ),
      fc.constantFrom(
        'title: x\n',
        'units: mm\n',
        'ramps:\n',
        '  - ',
        'height: ',
        'like: ',
        'coping: ',
        '640',
        '3/0',
      ),
      fc.string({ maxLength: 4, unit: 'binary' }),
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const text = pieces.join('')
        const problems = problemsOf(text)
        expect(problems.length).toBeGreaterThan(0)
        for (const { place, message } of problems) {
          expect(message).not.toBe('')
          expect(place.offset).toBeGreaterThanOrEqual(0)
          expect(place.end).toBeGreaterThanOrEqual(place.offset)
          expect(place.end).toBeLessThanOrEqual(text.length)
          expect(text.slice(0, place.offset).split('\n')).toHaveLength(place.line)
        }
      }),
      { numRuns: 500 },
    )
  })
})

it('all problems of a file come together, in the order of the file', () => {
  const text = change(
    change(change(single, 'toe: 40', 'toe: 4o'), 'deck: 640', 'dek: 640'),
    'Boathouse',
    '""',
  )
  expect(said(text)).toEqual([
    '1:8 `title` is blank; give it 1 to 200 letters',
    '5:15 unknown key `dek`; did you mean `deck`?',
    '7:10 `toe`: unknown unit `o` in `4o`; use mm, cm, m, in or ft',
  ])
  expect(problemsOf(text).map((p) => [p.code, p.path, text.slice(p.place.offset, p.place.end)])).toEqual([
    ['text', 'title', '""'],
    ['unknown-key', 'ramps[0].height.dek', 'dek'],
    ['length', 'ramps[0].toe', '4o'],
  ])
})

it('a file of thousands of faults names the first hundred', () => {
  const text = Array.from({ length: 2000 }, (_, i) => `k${i}: 1`).join('\n')
  expect(problemsOf(text)).toHaveLength(100)
})
