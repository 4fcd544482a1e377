import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, planOf, template, useFolder } from './reprint-run.ts'

const { file, list, save } = useFolder()

const alone = `title: Boathouse floor
units: mm
ramps:
  - { name: floor, kind: flat, width: 1216, length: 2440, height: { surface: 113 }, skin: [18 plywood, 6 hardboard],
      studs: { every: 300 } }
`
const both = template('quarter-and-flat-mm')
const gaugedFor = (design: string) =>
  traceply(
    ...['gauge', 'study', '--across', '149mm', '--down', '150mm'],
    ...['--profiles', file('printers'), '--for', design],
  )

describe.each([
  ['mm', 'quarter-and-flat-mm'],
  ['in', 'quarter-and-flat-in'],
])('new flat --units %s', (units, name) => {
  it('writes a flat and the quarter that meets it, good as they are', async () => {
    const path = file('ramp.yaml')
    const { exit, out } = await traceply('new', 'flat', '--units', units, '--out', path)
    expect([exit, out.split('\n')[0]]).toEqual([
      0,
      `Wrote ${path}: a flat and a quarter that runs out on it, in ${units === 'in' ? 'inches' : 'mm'}, to make your own.`,
    ])
    expect(Buffer.from(bytesOf(path)).toString()).toBe(Buffer.from(bytesOf(template(name))).toString())
    const figures = JSON.parse((await traceply('figures', path, '--json')).out)
    expect(figures.checks.filter(({ level }: { level: string }) => level !== 'note')).toEqual([])
    // they meet at one height, and the quarter starts level there
    const [flat, quarter] = figures.ramps
    expect([flat.kind, quarter.kind]).toEqual(['flat', 'quarter'])
    expect(Math.abs(quarter.transition.toeStep - flat.heights.surface)).toBeLessThan(1e-6)
    expect(Math.abs(quarter.transition.toeAngle)).toBeLessThan(1e-6)
  })
})

describe('figures of a flat', () => {
  it('list frame, studs and sheets, in lines of at most 120 columns', async () => {
    const { exit, out } = await traceply('figures', save('floor.yaml', alone))
    expect(exit).toBe(0)
    // 113 − 24; 1216 − 36; studs at 19, every 300, 2440 − 19
    expect(out).toBe(
      [
        'Boathouse floor (lengths in mm)',
        '',
        'floor',
        '  height   frame 89   ridden face 113',
        '  sides    2 of 2440 × 89, 18 thick: straight cuts',
        '  width    1216',
        '  timber   38 × 89 between the sides, on edge, 1180 long: 9 studs',
        '  studs 9  from one end to their middles: 19, 300, 600, 900, 1200, 1500, 1800, 2100, 2421',
        '  skin 1   18 plywood, 2440 long; 1 sheet, 54 screws of 50',
        '  skin 2   6 hardboard, 2440 long; 1 sheet, 72 screws of 50',
        "  screws   250 apart at most (top sheet 175), 10.5 off a sheet's edge, 20 off a stud's end, 15 off any below; gaps 3",
        // plywood 0.0612 m³ at 490 to 663 kg/m³, hardboard 0.0178 at 801 to 1041, timber 0.0359 at 384 to 601; the screws
        '  weight   58 to 82 kg, for 4 to lift; stands on 2440 × 1216, 113 high; passes a door 1216 wide, on edge one 113 wide,',
        '           room for hands apart',
        '',
        '18 plywood: both sides and a piece of skin from 2 of 1220 × 2440',
        '6 hardboard: a piece of skin from one 1220 × 2440',
        'timber: 38 × 89: 5 of 2400',
        '',
        '',
      ]
        .join('\n')
        .replace(/\n\n$/, '\n'),
    )
  })

  it('say how the studs lie and what they are ripped to', async () => {
    const figures = async (height: string) =>
      (await traceply('figures', save('floor.yaml', alone.replace('surface: 113', height)))).out
    expect(await figures('surface: 110')).toContain(
      '38 × 89, ripped to 86 between the sides, on edge, 1180 long',
    )
    expect(await figures('frame: 45')).toContain('38 × 89 between the sides, flat, 1180 long')
    expect(await figures('frame: 30.5')).toContain('38 × 89, ripped to 30.5 between the sides, flat')
  })

  it('have the keys of any ramp in JSON, null where a flat has none', async () => {
    const { ramps, pages } = JSON.parse((await traceply('figures', save('floor.yaml', alone), '--json')).out)
    expect(pages).toBeNull()
    expect(ramps).toHaveLength(1)
    expect(ramps[0]).toMatchObject({
      name: 'floor',
      kind: 'flat',
      length: 2440,
      width: 1216,
      heights: { frame: 89, deck: null, surface: 113 },
      transition: null,
      coping: null,
      deckTimbers: [],
      studLength: 1180,
    })
    expect(ramps[0].studs[1]).toEqual({
      at: 300,
      x: 300,
      y: 89,
      angle: 0,
      lies: 'edge',
      role: 'inner',
      width: 38,
      depth: 89,
      endScrews: [
        { x: 300, y: 44, along: 0, down: 45 },
        { x: 300, y: 12, along: 0, down: 77 },
      ],
    })
    const withQuarter = JSON.parse((await traceply('figures', both, '--json')).out).ramps[1]
    expect(Object.keys(ramps[0]).sort()).toEqual(Object.keys(withQuarter).sort())
    expect(Object.keys(ramps[0].heights)).toEqual(Object.keys(withQuarter.heights))
  })

  it('a stop prints what is solved, exit 1', async () => {
    const { exit, out } = await traceply('figures', save('floor.yaml', alone.replace('113', '30')))
    expect(exit).toBe(1)
    expect(out).toContain(
      'STOP  a surface height of 30 mm leaves only 6 mm of frame under the skin; make it 34 mm or more [flat-low]',
    )
    expect(out).toContain('height   frame 6   ridden face 30')
    expect(out).not.toMatch(/undefined|NaN|null|Infinity/)
  })
})

describe('a design with a flat and a quarter', () => {
  it('plot prints the pages of the quarter, and says that the flat needs none', async () => {
    const { exit, out } = await traceply('plot', both, '--out', file('set.pdf'))
    expect(exit).toBe(0)
    expect(out).toContain('\n`flat`: a flat needs no pattern; saw to the lengths of `traceply figures`.\n')
    const { pages } = (await planOf(bytesOf(file('set.pdf')))) as {
      pages: readonly { places: readonly { pattern: string }[] }[]
    }
    const patterns = pages.flatMap(({ places }) => places.map(({ pattern }) => pattern))
    expect([...new Set(patterns)].sort()).toEqual(['quarter/lip', 'quarter/side', 'square'])
  })

  const striped = async (design: string) => {
    const { exit, err } = await traceply('plot', design, '--strips', '--out', file('set.pdf'))
    expect(exit, err).toBe(0)
    const { pages } = (await planOf(bytesOf(file('set.pdf')))) as {
      pages: readonly { kind: string; places: readonly { pattern: string }[] }[]
    }
    const read = await readPdf(bytesOf(file('set.pdf')))
    return {
      patterns: pages.flatMap(({ places }) => places.map(({ pattern }) => pattern)),
      words: pages.flatMap(({ kind }, i) =>
        kind === 'strip' ? read.pages[i]!.texts.map(({ text }) => text) : [],
      ),
    }
  }

  it('plot --strips adds strips of the quarter; the even marks of the flat are told for a tape', async () => {
    const { patterns, words } = await striped(both)
    expect(patterns).toContain('quarter/strip-1')
    expect(patterns.filter((one) => one.startsWith('flat/'))).toEqual([])
    const said = words.join(' ')
    // studs of 38, flush with both ends of 2440; 20 off the ends of studs between sides of 18; of the top layer those at the sides keep 15 off the ones below
    const studs = [19, ...Array.from({ length: 7 }, (_, i) => 300 * (i + 1)), 2440 - 19].join(', ')
    const across = (gap: number, from: number, count: number): string =>
      Array.from({ length: count }, (_, i) => Math.round(10 * (38 + gap * (from + i))) / 10).join(', ')
    expect(said).toContain("No strip: mark with a tape from the sheet's end at stud 1")
    for (const layer of [1, 2])
      expect(said).toContain(
        `lat, layer ${layer} ${studs}: bare figures are middles of studs, screws at each`,
      )
    expect(said).toContain(`flat, layer 1 ${across(1140 / 5, 0, 6)}: the screws of each row`)
    const top = [53, ...across(1140 / 7, 1, 6).split(', '), 1163].join(', ')
    expect(said).toContain(`flat, layer 2 ${top}: the screws of each row`)
  })

  it('plot --strips tells the marks of a flat with seams for a tape too: a strip would be as long as it is', async () => {
    const long = templateText('quarter-and-flat-mm').replace(/length: 2440/, 'length: 8000')
    const { patterns, words } = await striped(save('long.yaml', long))
    expect(patterns).toContain('quarter/strip-1')
    expect(patterns.filter((one) => one.startsWith('flat/'))).toEqual([])
    const said = words.join(' ')
    for (const layer of [1, 2])
      expect(said).toMatch(
        new RegExp(
          `flat, layer ${layer} 19, 300, 600, .*sheet ends [\\d.]+, next starts [\\d.]+, .*7981: bare`,
        ),
      )
  })

  it('offsets set out the quarter, and say that the flat needs none', async () => {
    const { exit, out, err } = await traceply('offsets', both, '--json')
    expect(exit).toBe(0)
    expect(JSON.parse(out).ramps.map(({ ramp }: { ramp: string }) => ramp)).toEqual(['quarter'])
    expect(err).toContain(
      'note  `flat`: a flat needs no offsets; saw to the lengths of `traceply figures`.\n',
    )
    expect((await traceply('offsets', both, '--out', file('set.pdf'))).exit).toBe(0)
  })

  it('gauge tells what a printer does to the quarter', async () => {
    const { exit, out } = await gaugedFor(both)
    expect(exit).toBe(0)
    expect(out).toContain('quarter, uncorrected')
    expect(out).not.toContain('flat, uncorrected')
  })

  it('figures --as-cut knows that a flat has no pipe', async () => {
    expect(await traceply('figures', both, '--as-cut', 'flat:along=40,down=30')).toMatchObject({
      exit: 2,
      err: '--as-cut flat:along=40,down=30: `flat` is a flat and has no pipe; say a ramp that has one\n',
    })
    expect((await traceply('figures', both, '--as-cut', 'quarter:along=40,down=30')).exit).toBe(0)
  })
})

it('a flat that is written wrongly is told in full by every command, exit 1, and nothing is written', async () => {
  const wrong = alone
    .replace('{ surface: 113 }', '{ surface: 113, frame: 89 }')
    .replace('studs: {', 'toe: 40, studs: {')
    .concat('  - { name: other, kind: quarter, like: floor }\n')
  const path = save('floor.yaml', wrong)
  for (const args of [
    ['figures'],
    ['plot', '--out', file('set.pdf')],
    ['offsets', '--out', file('set.csv')],
  ]) {
    const { exit, out, err } = await traceply(args[0]!, path, ...args.slice(1))
    expect([exit, out]).toEqual([1, ''])
    expect([...err.matchAll(/^.*?:(\d+:\d+: .*)$/gm)].map(([, message]) => message)).toEqual([
      `4:${wrong.split('\n')[3]!.indexOf('frame: 89') + 1}: \`height\` takes only one of \`surface\` or \`frame\`; here stand \`surface\` and \`frame\`: take one away`,
      '5:7: `toe` belongs to a quarter, `floor` is a flat: leave it out',
      '6:41: the ramp `floor` is a flat and this is a quarter, so most of what it says means nothing here; ' +
        'name an earlier quarter, or leave `like` out and write what a quarter needs: height, transition, toe, skin, width or stores-inside, deck or length',
    ])
  }
  expect(list()).toEqual(['floor.yaml'])
})

describe('a design of flats alone has no curve', () => {
  const why = (path: string, done: string): string =>
    `no curve to ${done} in ${path}: a flat is straight cuts only, and \`traceply figures\` gives their lengths; ` +
    'add a quarter to the design, or mark its straight lines with tape and square\n'

  it.each([
    ['plot', 'plot', ['--out', 'set.pdf']],
    ['plot', 'plot', ['--strips', '--json', '--out', 'set.pdf']],
    ['offsets', 'set out', ['--out', 'set.csv']],
    ['offsets', 'set out', ['--json']],
  ] as const)('%s says so, exit 1, and writes nothing', async (command, done, options) => {
    const path = save('floor.yaml', alone)
    const args = options.map((option) => (option.startsWith('set') ? file(option) : option))
    expect(await traceply(command, path, ...args)).toEqual({ exit: 1, out: '', err: why(path, done) })
    expect(list()).toEqual(['floor.yaml'])
  })

  it('reprint --set as well', async () => {
    const path = save('floor.yaml', alone)
    const { exit, err } = await traceply(
      'reprint',
      path,
      'map',
      '--set',
      'BCDF-GHJK-2345',
      '--out',
      file('set.pdf'),
    )
    expect([exit, err]).toEqual([1, why(path, 'plot')])
    expect(list()).toEqual(['floor.yaml'])
  })

  it('gauge --for tells of the printer alone', async () => {
    const path = save('floor.yaml', alone)
    const { exit, out } = await gaugedFor(path)
    expect(exit).toBe(0)
    expect(out).not.toContain('uncorrected')
  })
})
