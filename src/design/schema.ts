import { inch } from '../geometry/inch.ts'
import { kinds, paperNames, type RampKind } from './design.ts'
import type { Range } from './plausible.ts'
import { type Alternatives, type DefaultText, type Row, rowKey, type Unsaid, type Value } from './row.ts'

const mostRamps = 20
/** sizes of panels, and of pieces that are there */
const mostPanels = 20
const mostOffcuts = 50
/** letters of the title */
const mostTitle = 200
/** letters of a ramp's name */
const mostName = 40

const foot = 12 * inch

const length = (least: number, most: number): Value => ({ kind: 'length', least, most })
/** A ramp or flat narrower or shorter than 12 in was meant in feet; 300 mm, so that 12 in is within. */
const leastSide = 300
/** Sheets carry nobody over wider bays than 24 in; 610 mm, so that 24 in is within. Common practice, no source. */
const mostEvery = 610

const steps = (first: number, last: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((last - first) / step) + 1 }, (_, i) => first + i * step)
/** Lengths of timber and pipe, 1.5 to 6 m and 6 to 20 ft; sides of panels. Common practice, no source. mm */
const soldLengths = [
  ...steps(1500, 6000, 300),
  ...steps(1500, 6000, 500),
  ...steps(6, 20, 1).map((ft) => ft * foot),
]
const soldSides = [1200, 1250, 1500, 2500, 3000, ...steps(4, 10, 1).map((ft) => ft * foot)]

const choice = (...of: readonly string[]): Value => ({ kind: 'choice', of })
const map = (...alternatives: readonly Alternatives[]): Value => ({ kind: 'map', alternatives })
const exactlyOne = (...keys: readonly string[]): Alternatives => ({
  sets: keys.map((k) => [k]),
  required: true,
})

const required: Unsaid = { kind: 'required' }
const ownKeys: Unsaid = { kind: 'keys' }
const open = (note: string): Unsaid => ({ kind: 'open', note })
const defaults = (mm: DefaultText, inch: DefaultText = mm): Unsaid => ({
  kind: 'default',
  text: { mm, in: inch },
})

const row = (
  path: string,
  value: Value,
  unsaid: Unsaid,
  example: readonly [mm: string, inch: string],
  help: string,
  words: readonly string[] = [],
): Row => ({ path, value, words, unsaid, help, example: { mm: example[0], in: example[1] } })

const same = (text: string): readonly [string, string] => [text, text]

/** Where the keys of a kind of ramp stand in the table. */
export const rampPath = (kind: RampKind): string => `ramps[${kind}]`

/** What a path of the table is within its ramp; a path outside of ramps stays as it is. */
const withinRamp = (path: string): string => path.replace(/^ramps\[\w+\]\.?/, '')

const topRows: readonly Row[] = [
  row('', map(), required, same('{ … }'), 'the design file'),
  row(
    'title',
    { kind: 'text', least: 1, most: mostTitle },
    required,
    same('Low ramp for the boathouse'),
    'printed on every page; any language',
  ),
  row('units', choice('mm', 'in'), required, ['mm', 'in'], 'what a number without a unit is read in'),
  row('paper', choice(...paperNames), defaults('a4', 'letter'), ['a4', 'letter'], 'the paper to print on'),
  row('stock', map(), ownKeys, ['{ kerf: 3 }', '{ kerf: 1/8 }'], 'what you can buy, for the shopping list'),
  row(
    'stock.panel',
    { kind: 'pair', least: 300, most: 6000, sold: soldSides },
    defaults('1220 x 2440', '48 x 96'),
    ['1220 x 2440', '48 x 96'],
    'the two sides of a plywood panel',
  ),
  row(
    'stock.timber',
    { kind: 'lengths', least: 300, most: 12_000, entries: 30, sold: soldLengths },
    defaults(['2400', '3000'], ['96', '120']),
    ['[2400, 3000]', '[96, 120]'],
    'lengths in which timber is sold',
  ),
  row(
    'stock.pipe',
    { kind: 'lengths', least: 300, most: 12_000, entries: 30, sold: soldLengths },
    defaults(['3000'], ['120']),
    ['[3000]', '[120]'],
    'lengths in which pipe is sold',
  ),
  row('stock.kerf', length(0, 10), defaults('3', '1/8'), ['3', '1/8'], 'width of the saw cut'),
  row(
    'stock.trim',
    length(0, 50),
    defaults('5', '3/16'),
    ['5', '3/16'],
    'trimmed off a panel; up to 6 mm, or to save a panel, rectangles keep its edges',
  ),
  row(
    'stock.panels',
    { kind: 'maps', least: 1, most: mostPanels },
    open('`panel` for every sheet; steel comes in 1250 x 2500 mm, or 48 x 120 in'),
    ['[{ sheet: 18 plywood, size: 1220 x 2440 }]', '[{ sheet: 23/32 plywood, size: 48 x 96 }]'],
    'panels that you can buy, by material and thickness; several sizes if you like',
  ),
  row(
    'stock.panels[]',
    map(),
    required,
    ['{ sheet: 18 plywood, size: 1220 x 2440 }', '{ sheet: 23/32 plywood, size: 48 x 96 }'],
    'one size of panel',
  ),
  row(
    'stock.panels[].sheet',
    { kind: 'sheet', least: 0.5, most: 60 },
    required,
    ['18 plywood', '23/32 plywood'],
    'thickness and material, as the parts say it',
  ),
  row(
    'stock.panels[].size',
    { kind: 'pair', least: 300, most: 6000, sold: soldSides },
    required,
    ['1220 x 2440', '48 x 96'],
    'its two sides; the grain runs along the longer',
  ),
  row(
    'stock.panels[].clamped',
    { kind: 'count', least: 1, most: 2 },
    defaults('1'),
    same('2'),
    '2: two clamped back to back and sawn as one; parts come in pairs',
  ),
  row(
    'stock.panels[].good-face',
    choice('any', 'out'),
    defaults('any'),
    same('out'),
    '`out`: the better face must show outside on both sides',
  ),
  row(
    'stock.offcuts',
    { kind: 'maps', least: 1, most: mostOffcuts },
    open('nothing is there'),
    ['[{ sheet: 18 plywood, size: 600 x 1200 }]', '[{ sheet: 23/32 plywood, size: 24 x 48 }]'],
    'what lies in the garage already; it is used first',
  ),
  row(
    'stock.offcuts[]',
    map(),
    required,
    ['{ sheet: 18 plywood, size: 600 x 1200 }', '{ sheet: 23/32 plywood, size: 24 x 48 }'],
    'pieces of one size',
  ),
  row(
    'stock.offcuts[].sheet',
    { kind: 'sheet', least: 0.5, most: 60 },
    required,
    ['18 plywood', '23/32 plywood'],
    'thickness and material, as the parts say it',
  ),
  row(
    'stock.offcuts[].size',
    { kind: 'pair', least: 50, most: 6000 },
    required,
    ['600 x 1200', '24 x 48'],
    'its two sides; the grain runs along the longer',
  ),
  row(
    'stock.offcuts[].count',
    { kind: 'count', least: 1, most: 50 },
    defaults('1'),
    same('2'),
    'how many of them',
  ),
  row(
    'prices',
    { kind: 'prices', least: 0.01, most: 1_000_000 },
    open('no costs are told'),
    ['{ 18 plywood: 62 EUR, 38 x 89 x 2400: 5.20 EUR }', '{ 23/32 plywood: $58, 1 1/2 x 3 1/2 x 96: $4.30 }'],
    'what things of the shopping list cost, all in one currency',
  ),
  row(
    'space',
    map(),
    open('no space is asked about'),
    ['{ garage: 3000 x 6000, door: 2100 x 2000 }', '{ garage: 120 x 240, door: 84 x 80 }'],
    'where the ramps are kept',
  ),
  row(
    'space.garage',
    { kind: 'pair', least: 300, most: 30_000 },
    required,
    ['3000 x 6000', '120 x 240'],
    'width x depth of its floor',
  ),
  row(
    'space.door',
    { kind: 'pair', least: 300, most: 10_000 },
    open('no door is asked about'),
    ['2100 x 2000', '84 x 80'],
    'width x height of its door',
  ),
  row(
    'space.ceiling',
    length(300, 10_000),
    open('no ceiling is asked about'),
    ['2300', '90'],
    'height under its ceiling',
  ),
  row(
    'ramps',
    { kind: 'maps', least: 1, most: mostRamps },
    required,
    same('[{ kind: quarter, … }]'),
    'one entry for each ramp',
  ),
]

/** The word that leaves a figure to the program. */
export const solveWord = 'solve'
const solvable = [solveWord]

const quarterRows: readonly Row[] = [
  row(
    'ramps[quarter]',
    map(exactlyOne('width', 'stores-inside'), exactlyOne('deck', 'length')),
    required,
    same('{ kind: quarter, … }'),
    'a ramp that rises in a curve',
  ),
  row(
    'ramps[quarter].name',
    { kind: 'text', least: 1, most: mostName },
    open('`ramp` for a single ramp; required when there are more'),
    same('outer'),
    'what this ramp is called on its pages; no two alike, no slash',
  ),
  row(
    'ramps[quarter].like',
    { kind: 'text', least: 1, most: mostName },
    open('nothing is taken over'),
    same('outer'),
    'an earlier ramp; what is not said here is as there',
  ),
  row('ramps[quarter].kind', choice(...kinds), defaults('quarter'), same('quarter'), 'what sort of ramp'),
  row(
    'ramps[quarter].width',
    length(leastSide, 12_000),
    open('one of `width`, `stores-inside`'),
    ['1216', '47 1/2'],
    'outside to outside of the sides',
    solvable,
  ),
  row(
    'ramps[quarter].stores-inside',
    map(),
    open('one of `width`, `stores-inside`'),
    ['{ ramp: outer, clearance: 12 }', '{ ramp: outer, clearance: 1/2 }'],
    'the ramp this one is kept in; its width follows from that',
  ),
  row(
    'ramps[quarter].stores-inside.ramp',
    { kind: 'text', least: 1, most: mostName },
    required,
    same('outer'),
    'name of the ramp around this one',
  ),
  row(
    'ramps[quarter].stores-inside.clearance',
    length(0, 300),
    required,
    ['12', '1/2'],
    'room between the two, both sides together',
  ),
  row(
    'ramps[quarter].height',
    map(exactlyOne('frame', 'deck', 'surface')),
    required,
    ['{ deck: 640 }', '{ deck: 25 }'],
    'how high, and which layer that means: one of frame, deck, surface',
  ),
  row(
    'ramps[quarter].height.frame',
    length(100, 3000),
    open('one of the three'),
    ['625', '24 3/8'],
    "the side's top line above the floor",
    solvable,
  ),
  row(
    'ramps[quarter].height.deck',
    length(100, 3000),
    open('one of the three'),
    ['640', '25'],
    'top of the deck board above the floor',
    solvable,
  ),
  row(
    'ramps[quarter].height.surface',
    length(100, 3000),
    open('one of the three'),
    ['640', '25'],
    'the ridden face at the lip above the floor',
    solvable,
  ),
  row(
    'ramps[quarter].transition',
    map(),
    required,
    ['{ circle: { surface: 1700 } }', '{ circle: { surface: 80 } }'],
    'the curve',
  ),
  row(
    'ramps[quarter].transition.circle',
    map(exactlyOne('frame', 'surface')),
    required,
    ['{ surface: 1700 }', '{ surface: 80 }'],
    'its radius, and which layer that means: one of frame, surface',
  ),
  row(
    'ramps[quarter].transition.circle.frame',
    length(300, 20_000),
    open('one of the two'),
    ['1724', '81'],
    'radius of the edge of the side, before the skin',
    solvable,
  ),
  row(
    'ramps[quarter].transition.circle.surface',
    length(300, 20_000),
    open('one of the two'),
    ['1700', '80'],
    'radius of the face that is ridden',
    solvable,
  ),
  row(
    'ramps[quarter].transition.tangent',
    map({ sets: [['surface'], ['frame']], required: false }),
    ownKeys,
    same('{ surface: 0 }'),
    'the height at which a layer of the curve, continued, runs level',
  ),
  row(
    'ramps[quarter].transition.tangent.surface',
    length(-100, 500),
    defaults('0'),
    same('0'),
    'the ridden face runs out level at this height; 0 is the floor',
    solvable,
  ),
  row(
    'ramps[quarter].transition.tangent.frame',
    length(-100, 500),
    open('`surface` holds'),
    same('0'),
    'the edge of the side runs out level at this height',
    solvable,
  ),
  row(
    'ramps[quarter].toe',
    length(0, 300),
    required,
    ['40', '1 1/2'],
    "height of the side's front edge",
    solvable,
  ),
  row(
    'ramps[quarter].deck',
    length(50, 3000),
    open('one of `deck`, `length`'),
    ['500', '20'],
    'lip to back edge along the top',
    solvable,
  ),
  row(
    'ramps[quarter].length',
    length(200, 10_000),
    open('one of `deck`, `length`'),
    ['1400', '60'],
    'the whole side, front edge to back edge',
    solvable,
  ),
  row(
    'ramps[quarter].sides',
    map(),
    ownKeys,
    ['{ thickness: 18, count: 2 }', '{ thickness: 23/32, count: 2 }'],
    'the plywood panels that carry the curve',
  ),
  row(
    'ramps[quarter].sides.thickness',
    length(5, 60),
    defaults('18', '23/32'),
    ['18', '23/32'],
    'of one side, as measured',
  ),
  row(
    'ramps[quarter].sides.count',
    { kind: 'count', least: 2, most: 9 },
    defaults('2'),
    same('2'),
    'how many; those between are ribs',
  ),
  row(
    'ramps[quarter].studs',
    map(),
    ownKeys,
    ['{ section: 38 x 89, every: 200 }', '{ section: 1 1/2 x 3 1/2, every: 8 }'],
    'the timber across, between the sides',
  ),
  row(
    'ramps[quarter].studs.section',
    { kind: 'pair', least: 10, most: 300, timber: true },
    defaults('38 x 89', '1 1/2 x 3 1/2'),
    ['38 x 89', '1 1/2 x 3 1/2'],
    'thickness x depth, as measured',
  ),
  row(
    'ramps[quarter].studs.every',
    length(40, mostEvery),
    defaults('200', '8'),
    ['200', '8'],
    'from one stud to the next, along the curve',
  ),
  row(
    'ramps[quarter].studs.foot',
    map(),
    defaults('none'),
    ['{ every: 150, to: 500 }', '{ every: 6, to: 20 }'],
    'closer studs at the foot, where wheels strike',
    ['none'],
  ),
  row(
    'ramps[quarter].studs.foot.every',
    length(40, mostEvery),
    required,
    ['150', '6'],
    'from one to the next there',
  ),
  row('ramps[quarter].studs.foot.to', length(40, 5000), required, ['500', '20'], 'how far up the curve'),
  row(
    'ramps[quarter].studs.deck',
    length(100, 1000),
    defaults('300', '12'),
    ['300', '12'],
    'from one to the next under the deck',
  ),
  row(
    'ramps[quarter].skin',
    { kind: 'sheets', least: 0.5, most: 60, entries: 12 },
    required,
    ['[9 plywood, 9 plywood, 6 hardboard]', '[3/8 plywood, 3/8 plywood, 1/4 hardboard]'],
    'layers from the studs outward: thickness as measured, and material',
  ),
  row(
    'ramps[quarter].fasten',
    choice('studs', 'between'),
    defaults('studs'),
    same('studs'),
    "where the top sheet's screws go: into the studs, or between them",
  ),
  row(
    'ramps[quarter].run-out',
    map(exactlyOne('sheet', 'step-back')),
    defaults('none'),
    ['{ sheet: 1.5 steel }', '{ sheet: 1/16 steel }'],
    'what closes the step at the toe',
    ['none', 'flat'],
  ),
  row(
    'ramps[quarter].run-out.sheet',
    { kind: 'sheet', least: 0.5, most: 20 },
    open('one of the two'),
    ['1.5 steel', '1/16 steel'],
    'thickness and material of the bridging sheet',
  ),
  row(
    'ramps[quarter].run-out.step-back',
    length(5, 100),
    open('one of the two'),
    ['20', '3/4'],
    'no sheet: each layer of skin starts so far behind the one below',
  ),
  row(
    'ramps[quarter].deck-board',
    { kind: 'sheet', least: 3, most: 60 },
    defaults('none'),
    ['15 plywood', '5/8 plywood'],
    'the board on top, behind the lip',
    ['none'],
  ),
  row(
    'ramps[quarter].coping',
    map({ sets: [['up', 'out'], ['notch']], required: false }),
    defaults('none'),
    ['{ outside: 60.3, up: 8, out: 6 }', '{ outside: 2 3/8, up: 5/16, out: 1/4 }'],
    'the pipe at the lip: how far it stands out, or the notch it lies in',
    ['none'],
  ),
  row(
    'ramps[quarter].coping.outside',
    length(10, 200),
    required,
    ['60.3', '2 3/8'],
    'outside diameter of the pipe, as measured',
  ),
  row(
    'ramps[quarter].coping.material',
    choice('steel', 'plastic'),
    defaults('steel'),
    same('steel'),
    'of the pipe',
  ),
  row(
    'ramps[quarter].coping.holes',
    map(),
    ownKeys,
    ['{ ends: 75, every: 600 }', '{ ends: 3, every: 24 }'],
    'for the screws that hold the pipe',
  ),
  row(
    'ramps[quarter].coping.holes.ends',
    length(20, 500),
    defaults('75', '3'),
    ['75', '3'],
    'from either end of the pipe',
  ),
  row(
    'ramps[quarter].coping.holes.every',
    length(100, 2000),
    defaults('600', '24'),
    ['600', '24'],
    'from one hole to the next',
  ),
  row(
    'ramps[quarter].coping.up',
    length(-100, 100),
    defaults('8', '5/16'),
    ['8', '5/16'],
    'how far the pipe stands above the deck board',
  ),
  row(
    'ramps[quarter].coping.out',
    length(-100, 100),
    defaults('8', '5/16'),
    ['6', '1/4'],
    'how far the pipe stands out of the ridden face',
  ),
  row(
    'ramps[quarter].coping.notch',
    map(),
    open('`up` and `out` hold'),
    ['{ along: 25, down: 37 }', '{ along: 7/8, down: 1 7/16 }'],
    'the cut-out itself, in place of up and out',
  ),
  row(
    'ramps[quarter].coping.notch.along',
    length(1, 300),
    required,
    ['25', '7/8'],
    'lip to the back wall of the notch',
  ),
  row(
    'ramps[quarter].coping.notch.down',
    length(1, 300),
    required,
    ['37', '1 7/16'],
    'top line to the floor of the notch',
  ),
  row(
    'ramps[quarter].coping.seat',
    choice('square', 'round'),
    defaults('square'),
    same('square'),
    'shape of the notch',
  ),
  row(
    'ramps[quarter].chamfer',
    map(),
    defaults('none'),
    ['{ leg: 120 }', '{ leg: 5 }'],
    'the back bottom corner cut off at 45 degrees',
    ['none'],
  ),
  row(
    'ramps[quarter].chamfer.leg',
    length(10, 2000),
    required,
    ['120', '5'],
    'how far the cut reaches along either edge',
  ),
  row(
    'ramps[quarter].lip',
    { kind: 'angle', least: 10, most: 89 },
    open('it follows from height, radius and tangent'),
    same('48°'),
    'how steep the lip is, for which the figure that is `solve` is found',
  ),
  row(
    'ramps[quarter].limits',
    map(),
    open('nothing is limited'),
    ['{ length: 1500, lip: 40..50° }', '{ length: 60, lip: 40..50° }'],
    'what the figure that is `solve` must keep to',
  ),
  row(
    'ramps[quarter].limits.panels',
    { kind: 'count', least: 1, most: 20 },
    open('any number'),
    same('1'),
    'panels that the sides are sawn from, at most',
  ),
  row(
    'ramps[quarter].limits.length',
    length(200, 10_000),
    open('any length'),
    ['1500', '60'],
    'of the side from its front edge to its back edge, at most',
  ),
  row(
    'ramps[quarter].limits.lip',
    { kind: 'angles', least: 10, most: 89 },
    open('any angle'),
    same('40..50°'),
    'how steep the lip may be, at most or from and to',
  ),
  row(
    'ramps[quarter].limits.paper',
    { kind: 'count', least: 1, most: 500 },
    open('any number'),
    same('8'),
    'pages to tape for the side, at most',
  ),
  row(
    'ramps[quarter].wheels',
    map(),
    defaults('none'),
    ['{ diameter: 75, height: 100 }', '{ diameter: 3, height: 4 }'],
    'on the cut of the back bottom corner: they carry the ramp when it is tipped',
    ['none'],
  ),
  row('ramps[quarter].wheels.diameter', length(20, 400), required, ['75', '3'], 'of one wheel'),
  row(
    'ramps[quarter].wheels.height',
    length(25, 500),
    required,
    ['100', '4'],
    "from its plate's face to its tread, as measured",
  ),
  row(
    'ramps[quarter].wheels.count',
    { kind: 'count', least: 2, most: 8 },
    defaults('4'),
    same('4'),
    'how many, evenly across',
  ),
]

/** Keys that a flat has as a quarter has them. */
const shared = ['name', 'like', 'sides.thickness', 'sides.count', 'studs.section', 'skin', 'fasten'] as const

const sharedRow = (key: (typeof shared)[number]): Row => ({
  ...quarterRows.find(({ path }) => path === `${rampPath('quarter')}.${key}`)!,
  path: `${rampPath('flat')}.${key}`,
})

const flatRows: readonly Row[] = [
  row(
    'ramps[flat]',
    map(),
    required,
    same('{ kind: flat, … }'),
    'a level ramp, on which others stand and run out',
  ),
  sharedRow('name'),
  sharedRow('like'),
  row(
    'ramps[flat].kind',
    choice(...kinds),
    open('as the ramp that it is like; else it would be a quarter'),
    same('flat'),
    'what sort of ramp',
  ),
  row(
    'ramps[flat].width',
    length(leastSide, 12_000),
    required,
    ['1216', '47 1/2'],
    'outside to outside of the sides',
  ),
  row(
    'ramps[flat].length',
    length(leastSide, 10_000),
    required,
    ['2440', '96'],
    'the whole side, from one end to the other',
  ),
  row(
    'ramps[flat].height',
    map(exactlyOne('surface', 'frame')),
    required,
    ['{ surface: 110 }', '{ surface: 4 1/4 }'],
    'how high, and which layer that means: one of surface, frame',
  ),
  row(
    'ramps[flat].height.surface',
    length(10, 500),
    open('one of the two'),
    ['110', '4 1/4'],
    'the ridden face above the floor',
  ),
  row(
    'ramps[flat].height.frame',
    length(10, 500),
    open('one of the two'),
    ['89', '3 1/2'],
    "the side's top edge above the floor",
  ),
  row(
    'ramps[flat].sides',
    map(),
    ownKeys,
    ['{ thickness: 18, count: 2 }', '{ thickness: 23/32, count: 2 }'],
    'the panels on edge along it, between which the studs stand',
  ),
  sharedRow('sides.thickness'),
  sharedRow('sides.count'),
  row(
    'ramps[flat].studs',
    map(),
    ownKeys,
    ['{ section: 38 x 89, every: 200 }', '{ section: 1 1/2 x 3 1/2, every: 8 }'],
    'the timber across, between the sides',
  ),
  sharedRow('studs.section'),
  row(
    'ramps[flat].studs.every',
    length(40, mostEvery),
    defaults('200', '8'),
    ['200', '8'],
    'from one stud to the next, along the side',
  ),
  sharedRow('skin'),
  sharedRow('fasten'),
]

/** Every key of the design file, a map before its keys. Ranges are generous: they catch slips, not taste. */
export const schema: readonly Row[] = [...topRows, ...quarterRows, ...flatRows]

const byPath: ReadonlyMap<string, Row> = new Map(schema.map((r) => [r.path, r]))

const parentPath = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf('.')))

/** Throws TypeError for a path that the table lacks. */
export const rowAt = (path: string): Row => {
  const found = byPath.get(path)
  if (found === undefined) throw new TypeError(`the design file has no key ${path}`)
  return found
}

/** The row of one entry of a list of maps; ramps have one for each kind. */
export const itemRow = (list: Row): Row => rowAt(`${list.path}[]`)

/** What the value of a key may be, mm or a count. Throws TypeError for a path without a range. */
export const rangeAt = (path: string): Range => {
  const { value } = rowAt(path)
  if (!('least' in value)) throw new TypeError(`${path} has no range`)
  return value
}

/** The rows of a map's own keys, in the order of the table. */
export const rowsUnder = (path: string): readonly Row[] => under.get(path) ?? []

const under: ReadonlyMap<string, readonly Row[]> = ((): Map<string, Row[]> => {
  const found = new Map<string, Row[]>()
  for (const r of schema) {
    if (r.path === '' || r.path.endsWith(']')) continue
    const rows = found.get(parentPath(r.path))
    if (rows) rows.push(r)
    else found.set(parentPath(r.path), [r])
  }
  return found
})()

/** Where else a key is at home. */
export const parentsOf = (key: string): readonly string[] =>
  schema.filter((r) => r.path !== '' && rowKey(r) === key).map((r) => parentPath(r.path))

/** The kinds of ramp in which a map, that of a row or the same of another kind, has a key. */
export const kindsWith = (row: Row, key: string): readonly RampKind[] =>
  row.path === ''
    ? []
    : kinds.filter((kind) =>
        byPath.has([rampPath(kind), withinRamp(row.path), key].filter(Boolean).join('.')),
      )

export const keysUnder = (path: string): readonly string[] => rowsUnder(path).map(rowKey)
