import { describe, expect, it } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import { change, good, pair, single } from './sample.ts'

const ramp = (text: string, i = 0): QuarterDesign => good(text).ramps[i] as QuarterDesign
const inSingle = (from: string, to: string): QuarterDesign => ramp(change(single, from, to))

describe('a design in mm', () => {
  it('is the same with line feeds, carriage returns or both at the ends of its lines', () => {
    for (const end of ['\r', '\r\n']) expect(good(single.replaceAll('\n', end))).toEqual(good(single))
  })

  it('has every default filled in', () => {
    expect(good(single)).toEqual({
      title: 'Boathouse',
      units: 'mm',
      paper: 'a4',
      stock: {
        panel: [1220, 2440],
        timber: [2400, 3000],
        pipe: [3000],
        kerf: 3,
        trim: 5,
        panels: [],
        offcuts: [],
      },
      ramps: [
        {
          name: 'ramp',
          like: null,
          kind: 'quarter',
          width: 1216,
          height: { layer: 'deck', value: 640 },
          transition: {
            circle: { layer: 'surface', radius: 1700 },
            tangent: { layer: 'surface', height: 0 },
          },
          toe: 40,
          back: { from: 'deck', value: 500 },
          sides: { thickness: 18, count: 2 },
          studs: { section: [38, 89], every: 200, foot: null, deck: 300 },
          skin: [
            { thickness: 9, material: 'plywood' },
            { thickness: 6, material: 'hardboard' },
          ],
          fasten: 'studs',
          runOut: { kind: 'none' },
          deckBoard: null,
          coping: {
            outside: 60.3,
            material: 'steel',
            holes: { ends: 75, every: 600 },
            seat: 'square',
            by: { kind: 'reveals', up: 8, out: 8 },
          },
          chamfer: 0,
          wheels: null,
          storesInside: null,
        },
      ],
    })
  })
})

describe('a design in inches', () => {
  const text = `title: Boathouse
units: in
ramps:
  - width: 47 1/2
    height: { frame: 24 3/8 }
    transition: { circle: { frame: "6' 9\\"" }, tangent: { frame: -1/4 } }
    toe: 1 1/2
    length: 1.5 m
    studs: { foot: { every: 6, to: 1' 8" } }
    fasten: between
    skin: [3/8, 1/16 in Steel, 6 mm other]
    run-out: { sheet: 1/16 steel }
    deck-board: 5/8
    coping: { outside: 2 3/8, notch: { along: 1 7/8, down: 30 mm }, seat: round, material: plastic, holes: { every: 16 } }
    chamfer: { leg: 5 }
`
  it('reads fractions, feet and foreign units', () => {
    expect(good(text)).toEqual({
      title: 'Boathouse',
      units: 'in',
      paper: 'letter',
      stock: {
        panel: [1219.2, 2438.4],
        timber: [2438.4, 3048],
        pipe: [3048],
        kerf: 3.175,
        trim: 4.7625,
        panels: [],
        offcuts: [],
      },
      ramps: [
        {
          name: 'ramp',
          like: null,
          kind: 'quarter',
          width: 1206.5,
          height: { layer: 'frame', value: 619.125 },
          transition: {
            circle: { layer: 'frame', radius: 2057.4 },
            tangent: { layer: 'frame', height: -6.35 },
          },
          toe: 38.1,
          back: { from: 'length', value: 1500 },
          // 23/32 in
          sides: { thickness: 18.25625, count: 2 },
          studs: { section: [38.1, 88.9], every: 203.2, foot: { every: 152.4, to: 508 }, deck: 304.8 },
          skin: [
            { thickness: 9.525, material: 'plywood' },
            { thickness: 1.5875, material: 'steel' },
            { thickness: 6, material: 'other' },
          ],
          fasten: 'between',
          runOut: { kind: 'sheet', sheet: { thickness: 1.5875, material: 'steel' } },
          deckBoard: { thickness: 15.875, material: 'plywood' },
          coping: {
            outside: 60.325,
            material: 'plastic',
            holes: { ends: 76.2, every: 406.4 },
            seat: 'round',
            by: { kind: 'notch', along: 47.625, down: 30 },
          },
          chamfer: 127,
          wheels: null,
          storesInside: null,
        },
      ],
    })
  })

  it('has 5/16 in for reveals that are not said', () => {
    const reveals = change(text, ', notch: { along: 1 7/8, down: 30 mm }', '')
    expect(ramp(reveals).coping?.by).toEqual({ kind: 'reveals', up: 7.9375, out: 7.9375 })
  })
})

describe('the alternatives', () => {
  it.each(['frame', 'deck', 'surface'] as const)('a height of the %s', (layer) => {
    expect(inSingle('{ deck: 640 }', `{ ${layer}: 612 }`).height).toEqual({ layer, value: 612 })
  })
  it('closer studs at the foot, or none; under the deck', () => {
    const { studs } = inSingle('toe', 'studs: { foot: { every: 150, to: 500 }, deck: 400 }\n    toe')
    expect(studs).toEqual({ section: [38, 89], every: 200, foot: { every: 150, to: 500 }, deck: 400 })
    expect(inSingle('toe', 'studs: { foot: none }\n    toe').studs.foot).toBeNull()
  })
  it('a top sheet on the studs or between them', () => {
    expect(inSingle('toe', 'fasten: studs\n    toe').fasten).toBe('studs')
    expect(inSingle('toe', 'fasten: between\n    toe').fasten).toBe('between')
  })
  it('run-out, deck board, coping and chamfer that are not there', () => {
    expect(inSingle('toe', 'run-out: flat\n    toe').runOut).toEqual({ kind: 'flat' })
    expect(inSingle('toe', 'run-out: none\n    toe').runOut).toEqual({ kind: 'none' })
    expect(inSingle('toe', 'run-out: { step-back: 20 }\n    toe').runOut).toEqual({
      kind: 'stepped',
      back: 20,
    })
    expect(inSingle('toe', 'deck-board: none\n    toe').deckBoard).toBeNull()
    expect(inSingle('{ outside: 60.3 }', 'none').coping).toBeNull()
    expect(inSingle('toe', 'chamfer: none\n    toe').chamfer).toBe(0)
  })
  it('one reveal leaves the other at its default', () => {
    expect(inSingle('60.3 }', '60.3, out: -3 }').coping?.by).toEqual({ kind: 'reveals', up: 8, out: -3 })
  })
  it('a skin may be empty', () => {
    expect(inSingle('[9 plywood, 6 hardboard]', '[]').skin).toEqual([])
  })
})

describe('pairs', () => {
  it.each([
    ['45 x 95', [45, 95]],
    ['45×95', [45, 95]],
    ['45 X 95', [45, 95]],
    ['1 1/2 x 3 1/2 in', [38.1, 88.9]],
    ['1 1/2 in x 89', [38.1, 89]],
    ['4.5 x 9.5 cm', [45, 95]],
  ])('%s', (section, mm) => {
    expect(inSingle('toe', `studs: { section: ${section} }\n    toe`).studs).toEqual({
      section: mm,
      every: 200,
      foot: null,
      deck: 300,
    })
  })
  it('a panel is turned short side first', () => {
    expect(good(change(single, 'units: mm', 'units: mm\nstock: { panel: 2500 x 1250 }')).stock.panel).toEqual(
      [1250, 2500],
    )
  })
})

describe('like', () => {
  const inner = (more: string, outer = ''): QuarterDesign =>
    ramp(change(pair, 'like: outer', `like: outer${more}`).replace('toe: 40', `toe: 40${outer}`), 1)

  it('takes over all that is not said, but not the name', () => {
    const [outer] = good(pair).ramps
    expect(inner('')).toEqual({
      ...outer,
      name: 'inner',
      like: 'outer',
      width: 1167,
      storesInside: { ramp: 'outer', clearance: 12 },
    })
  })
  it('replaces a layer by another', () => {
    expect(inner('\n    height: { frame: 500 }').height).toEqual({ layer: 'frame', value: 500 })
    expect(inner('\n    length: 1300').back).toEqual({ from: 'length', value: 1300 })
    const { transition } = inner('\n    transition: { tangent: { frame: 0 } }')
    expect(transition).toEqual({
      circle: { layer: 'surface', radius: 1700 },
      tangent: { layer: 'frame', height: 0 },
    })
  })
  it('merges maps key by key and replaces lists', () => {
    expect(inner('\n    sides: { count: 3 }').sides).toEqual({ thickness: 18.5, count: 3 })
    expect(inner('\n    skin: [12]').skin).toEqual([{ thickness: 12, material: 'plywood' }])
  })
  it('keeps the pipe where only its place changes', () => {
    const outer = '\n    coping: { outside: 48.3, up: 5, out: 6, seat: round, holes: { ends: 60 } }'
    const pipe = { outside: 48.3, seat: 'round', material: 'steel', holes: { ends: 60, every: 600 } }
    expect(inner('\n    coping: { notch: { along: 40, down: 20 } }', outer).coping).toEqual({
      ...pipe,
      by: { kind: 'notch', along: 40, down: 20 },
    })
    expect(inner('\n    coping: { up: 4 }', outer).coping).toEqual({
      ...pipe,
      by: { kind: 'reveals', up: 4, out: 6 },
    })
    expect(inner('\n    coping: { holes: { every: 500 } }', outer).coping?.holes).toEqual({
      ends: 60,
      every: 500,
    })
    expect(inner('\n    coping: none', outer).coping).toBeNull()
  })
  it('goes on from ramp to ramp', () => {
    const third = `${pair}  - name: third\n    like: inner\n    toe: 30\n    width: 900\n`
    expect(ramp(third, 2)).toMatchObject({ name: 'third', toe: 30, width: 900, storesInside: null })
    expect(ramp(third, 2).height).toEqual({ layer: 'deck', value: 640 })
  })
})

describe('stores-inside', () => {
  it('makes the width: outer width, less two sides of the outer, less the clearance', () => {
    // 1216 − 2 × 18.5 − 12
    expect(ramp(pair, 1).width).toBe(1167)
    // the sides of the ramp itself do not matter
    expect(ramp(change(pair, 'like: outer', 'like: outer\n    sides: { thickness: 9 }'), 1).width).toBe(1167)
  })
  it('goes through three ramps, in any order', () => {
    const third = `${pair}  - name: third\n    like: inner\n    stores-inside: { ramp: inner, clearance: 10 }\n`
    // 1167 − 37 − 10
    expect(ramp(third, 2).width).toBe(1120)
    const first = pair.replace(
      'name: outer\n    width: 1216',
      'name: outer\n    stores-inside: { ramp: hull, clearance: 3 }',
    )
    const hull = `${first}  - name: hull\n    like: outer\n    width: 1256\n`
    // 1256 − 37 − 3
    expect(ramp(hull, 0).width).toBe(1216)
  })
})

it('any language, any way of writing the same YAML', () => {
  const text =
    '\ufefftitle: "Ράμπα 滑板 łódź"\r\nunits: MM\r\nramps: [{width: "1.216 m", height: {deck: 64 cm},\r\n transition: {circle: {surface: 1700}}, toe: 40, deck: 500, skin: [9, 6 hardboard], coping: {outside: 60.3}}]\r\n'
  expect(good(text)).toEqual({ ...good(single), title: 'Ράμπα 滑板 łódź' })
})
