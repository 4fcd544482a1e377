import { describe, expect, it } from 'vitest'
import { assertNear } from '../support/near.ts'
import { templates } from '../support/templates.ts'
import { figuresOf, traceply } from '../support/traceply.ts'
import { bytesOf, planOf, template, useFolder } from './reprint-run.ts'

const { file, list, save } = useFolder()

/** A shape: a JSON type, words to choose from, a list of one shape, null or a shape, or keys with their shapes. */
type Shape =
  | 'number'
  | 'string'
  | readonly ['one of', ...string[]]
  | readonly ['list', Shape]
  | readonly ['pair']
  | readonly ['or null', Shape]
  | { readonly [key: string]: Shape }

/** Every path where the value has not the shape. Further keys are free: the contract ends in `…`. */
const faults = (value: unknown, shape: Shape, path: string): readonly string[] => {
  const wrong = [`${path} is ${JSON.stringify(value)}`]
  if (shape === 'number') return typeof value === 'number' && Number.isFinite(value) ? [] : wrong
  if (shape === 'string') return typeof value === 'string' && value !== '' ? [] : wrong
  if (Array.isArray(shape)) {
    const [kind, ...rest] = shape
    if (kind === 'one of') return rest.includes(value as string) ? [] : wrong
    if (kind === 'or null') return value === null ? [] : faults(value, rest[0], path)
    if (!Array.isArray(value)) return wrong
    if (kind === 'pair')
      return value.length === 2 ? value.flatMap((v, i) => faults(v, 'number', `${path}[${i}]`)) : wrong
    return value.flatMap((v, i) => faults(v, rest[0], `${path}[${i}]`))
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return wrong
  return Object.entries(shape).flatMap(([key, inner]) =>
    key in value
      ? faults((value as Record<string, unknown>)[key], inner, `${path}.${key}`)
      : [`${path}.${key} is missing`],
  )
}

const length = ['or null', 'number'] as const
const framedShape = {
  studs: [
    'list',
    {
      at: 'number',
      x: 'number',
      y: 'number',
      angle: 'number',
      lies: ['one of', 'edge', 'flat'],
      role: 'string',
    },
  ],
  studLength: 'number',
  skin: [
    'list',
    {
      layer: 'number',
      sheet: 'string',
      thickness: 'number',
      length: 'number',
      marks: ['list', 'number'],
    },
  ],
} as const satisfies Shape

/** A flat has no transition, no pipe and no deck. */
const flatShape: Shape = {
  name: 'string',
  kind: ['one of', 'flat'],
  length: 'number',
  width: 'number',
  heights: { frame: 'number', deck: length, surface: 'number' },
  ...framedShape,
}

/** What scripts rely on: keys may come in, none may go or change. */
const figuresShape: Shape = {
  title: 'string',
  units: ['one of', 'mm', 'in'],
  ramps: [
    'list',
    {
      name: 'string',
      kind: ['one of', 'quarter'],
      length,
      width: 'number',
      heights: ['or null', { frame: 'number', deck: 'number', surface: 'number' }],
      transition: [
        'or null',
        {
          curve: ['one of', 'circle'],
          radius: { frame: 'number', surface: 'number' },
          toeAngle: 'number',
          lipAngle: 'number',
          arc: 'number',
          run: 'number',
          toeStep: 'number',
        },
      ],
      coping: [
        'or null',
        {
          outside: 'number',
          centre: ['pair'],
          up: 'number',
          out: 'number',
          notch: { seat: ['one of', 'square', 'round'], along: 'number', down: 'number' },
        },
      ],
      ...framedShape,
    },
  ],
  checks: [
    'list',
    {
      id: 'string',
      level: ['one of', 'stop', 'warn', 'note'],
      ramp: 'string',
      message: 'string',
      offers: ['list', ['list', { path: 'string', value: 'string' }]],
    },
  ],
}

const planShape: Shape = {
  version: 'number',
  set: 'string',
  paper: { name: 'string', width: 'number', height: 'number' },
  cover: ['one of', 'whole', 'line', 'ribbon'],
  correction: ['list', 'number'],
  design: 'string',
  pages: [
    'list',
    {
      page: 'number',
      kind: 'string',
      places: ['list', { pattern: 'string', toPattern: ['list', 'number'], window: ['list', 'number'] }],
    },
  ],
}

// biome-ignore lint/suspicious/noExplicitAny: as a script would find it
const ofKind = (read: { readonly ramps: readonly any[] }, kind: string) =>
  read.ramps.filter((ramp) => ramp.kind === kind)

const figures = async (path: string) => {
  const { exit, out, err } = await figuresOf(path, '--json')
  expect(err).toBe('')
  return { exit, read: JSON.parse(out) }
}

describe.each(templates)('%s', (name) => {
  it('figures --json has every key of the contract with its type', async () => {
    const { exit, read } = await figures(template(name))
    expect(exit).toBe(0)
    expect(faults({ ...read, ramps: ofKind(read, 'quarter') }, figuresShape, 'figures')).toEqual([])
    expect(faults(ofKind(read, 'flat'), ['list', flatShape], 'flats')).toEqual([])
    expect(read.ramps.length).toBe(name === 'pair-mm' || name.includes('flat') ? 2 : 1)
    expect(ofKind(read, 'flat').length).toBe(name.includes('flat') ? 1 : 0)
    for (const ramp of read.ramps) {
      expect(ramp.studs.length).toBeGreaterThan(2)
      expect(ramp.skin.map(({ layer }: { layer: number }) => layer)).toEqual(
        ramp.skin.map((_: unknown, i: number) => i + 1),
      )
      expect(ramp.coping === null).toBe(name === 'quarter-in-plain' || ramp.kind === 'flat')
    }
  })

  it('is in mm and degrees: angles and arc follow from radius, height and toe', async () => {
    const { read } = await figures(template(name))
    // the height at which the ridden face runs level
    const level = ofKind(read, 'flat')[0]?.heights.surface ?? 0
    for (const { transition, heights, studs, skin } of ofKind(read, 'quarter')) {
      const { frame: R, surface: r } = transition.radius
      const thick = skin.reduce((sum: number, layer: { thickness: number }) => sum + layer.thickness, 0)
      assertNear(R - r, thick, 1e-9, 'skin')
      // the centre is the surface radius over that (docs/geometry.md)
      const degrees = (height: number): number => (Math.acos((level + r - height) / R) * 180) / Math.PI
      assertNear(transition.lipAngle, degrees(heights.frame), 1e-9, 'lip')
      const turn = ((transition.lipAngle - transition.toeAngle) * Math.PI) / 180
      assertNear(transition.arc, R * turn, 1e-6, 'arc')
      const toe = (transition.toeAngle * Math.PI) / 180
      assertNear(transition.toeStep, level + r - r * Math.cos(toe), 1e-6, 'toe step')
      for (const { angle, at } of studs)
        assertNear(angle, transition.toeAngle + (at / R) * (180 / Math.PI), 1e-6, 'angle of a stud')
    }
  })

  it('plot --json is the attached plan alone, and --out of figures writes the same as is printed', async () => {
    const { exit, out } = await traceply('plot', template(name), '--json', '--out', file('set.pdf'))
    expect(exit).toBe(0)
    const plan = JSON.parse(out)
    expect(await planOf(bytesOf(file('set.pdf')))).toEqual(plan)
    expect(faults(plan, planShape, 'plan')).toEqual([])
    expect(plan.pages.map(({ page }: { page: number }) => page)).toEqual(
      plan.pages.map((_: unknown, i: number) => i + 1),
    )
    for (const { places, pattern, toPattern, window } of plan.pages)
      if (places.length > 0) expect({ pattern, toPattern, window }).toEqual(places[0])
    for (const json of [[], ['--json']] as const) {
      const printed = await figuresOf(template(name), ...json)
      const written = await traceply('figures', template(name), ...json, '--out', file('f'), '--force')
      expect(written).toEqual({ exit: 0, out: `Wrote ${file('f')}.\n`, err: '' })
      expect(Buffer.from(bytesOf(file('f'))).toString()).toBe(printed.out)
    }
  })
})

const framingShape: Shape = {
  deckTimbers: [
    'list',
    {
      x: 'number',
      y: 'number',
      lies: ['one of', 'edge', 'flat'],
      role: ['one of', 'pipe', 'backing', 'deck', 'back'],
      width: 'number',
      depth: 'number',
    },
  ],
  deckBoard: {
    sheet: 'string',
    thickness: 'number',
    from: 'number',
    length: 'number',
    pieces: ['list', { from: 'number', length: 'number' }],
    widths: ['list', { from: 'number', length: 'number' }],
    seams: ['list', { at: 'number', timber: length }],
    rows: ['list', { at: 'number', timber: 'number', across: ['list', 'number'], length }],
    screws: { count: 'number', length },
  },
  skin: ['list', { start: 'number', rows: ['list', { at: 'number' }], screws: { count: 'number', length } }],
}

it('figures --json tells the timbers behind the lip and the deck board on them, timbers numbered from 1', async () => {
  const { read } = await figures(template('quarter-mm'))
  const [ramp] = read.ramps
  expect(faults(ramp, framingShape, 'ramp')).toEqual([])
  const { from, length: deep, rows } = ramp.deckBoard
  assertNear(from + deep, ramp.length, 1e-9)
  expect(rows.length).toBeGreaterThan(1)
  for (const { at, timber } of rows) {
    const under = ramp.deckTimbers[timber - 1]
    expect(Math.abs(from + at - under.x)).toBeLessThan(under.width / 2)
    assertNear(under.y, ramp.heights.frame, 1e-9)
  }
})

it('figures tell layers that are stepped back, in words and in JSON', async () => {
  const text = Buffer.from(bytesOf(template('quarter-mm'))).toString()
  const path = save('ramp.yaml', text.replace(/sheet: 1\.5 steel/, 'step-back: 15 '))
  const { read } = await figures(path)
  expect(read.ramps[0].skin.map(({ start }: { start: number }) => start)).toEqual([0, 15, 30])
  const { out } = await traceply('figures', path)
  expect(out).toMatch(/^ {2}skin 3 {3}6 hardboard, 998 long from 30 up; /m)
  expect(out).toContain('the skin rises at the toe in steps of 48.7, 9 and 6 mm')
})

describe('a design with a stop', () => {
  const good = Buffer.from(bytesOf(template('quarter-mm'))).toString()
  const overhang = good.replace('surface: 1700', 'surface: 500')
  const words =
    'a deck height of 640 mm lies above the centre of the curve (500 mm), so the lip would lean over the rider; ' +
    'the least surface radius for this height is 625 mm (909 mm brings nothing more to watch), or lower the height to 515 mm'

  it('plot and offsets write nothing and say why, exit 1', async () => {
    expect(overhang).not.toBe(good)
    const path = save('ramp.yaml', overhang)
    for (const [command, out] of [
      ['plot', 'set.pdf'],
      ['offsets', 'set.csv'],
    ] as const)
      for (const more of [[], ['--json']]) {
        const { exit, out: said, err } = await traceply(command, path, '--out', file(out), ...more)
        expect([exit, said]).toEqual([1, ''])
        expect(err.replaceAll('\n      ', ' ')).toBe(
          `STOP  ${words} [overhang]\nnothing written; \`traceply figures ${path}\` shows what is solved\n`,
        )
      }
    expect(list()).toEqual(['ramp.yaml'])
  })

  it('figures print all that is solved, exit 1, JSON alone on standard output', async () => {
    const path = save('ramp.yaml', overhang)
    const { exit, read } = await figures(path)
    expect(exit).toBe(1)
    expect(faults(read, figuresShape, 'figures')).toEqual([])
    expect(read.checks[0]).toMatchObject({ id: 'overhang', level: 'stop', ramp: 'ramp', message: words })
    // what its words offer, as data
    const [radius, quiet, height] = read.checks[0].offers
    expect(radius).toMatchObject([{ path: 'ramps.0.transition.circle.surface' }])
    expect(quiet).toMatchObject([{ path: 'ramps.0.transition.circle.surface' }])
    expect(height).toMatchObject([{ path: 'ramps.0.height.deck' }])
    for (const [{ value }] of [radius, quiet, height]) expect(words).toContain(value)
    expect(read.ramps[0]).toMatchObject({ name: 'ramp', kind: 'quarter', width: 1216, studLength: 1180 })
    const table = await traceply('figures', path)
    expect([table.exit, table.err]).toEqual([1, ''])
    expect(table.out).toMatch(/^Low ramp for the boathouse \(lengths in mm\)\n\n {2}width {4}1216\n/)
    expect(table.out).toContain('  timber   38 × 89 between the sides, 1180 long\n')
    expect(table.out).toContain('STOP  a deck height of 640')
    expect(table.out).not.toMatch(/undefined|NaN|null|Infinity/)
  })

  it('the radius that is offered as bringing nothing to watch is the first: there its plywood just bends', async () => {
    const watched = async (radius: number): Promise<readonly string[]> => {
      const { read } = await figures(
        save(`r${radius}.yaml`, good.replace('surface: 1700', `surface: ${radius}`)),
      )
      const checks: readonly { readonly level: string; readonly id: string }[] = read.checks
      return checks.filter(({ level }) => level !== 'note').map(({ id }) => id)
    }
    // APA, "Bending Plywood", form TT-003: 3/8 in bends to 3 ft along the grain; 6 mm of hardboard lie inside the second layer
    const least = 3 * 12 * 25.4 - 6
    expect(await watched(Math.ceil(least))).toEqual([])
    expect(await watched(Math.floor(least))).toEqual(['skin-bend'])
    expect(await watched(625)).toContain('steep')
  })

  it('a good ramp beside it is still solved in full, and the name tells which', async () => {
    const pair = Buffer.from(bytesOf(template('pair-mm'))).toString()
    const path = save('pair.yaml', pair.replace(/(name: inner[\s\S]*?deck: )460/, '$12400'))
    const { exit, read } = await figures(path)
    expect(exit).toBe(1)
    expect(read.ramps[0].transition.arc).toBeGreaterThan(1000)
    expect(read.ramps[1].transition).toBeNull()
    const stop = read.checks.find(({ level }: { level: string }) => level === 'stop')
    expect(stop).toMatchObject({ id: 'overhang', ramp: 'inner' })
    const { exit: plotted, err } = await traceply('plot', path, '--out', file('set.pdf'))
    expect(plotted).toBe(1)
    expect(err).toMatch(/^STOP {2}inner: /m)
    expect(list()).toEqual(['pair.yaml'])
  })
})

it('a broken design prints no JSON at all, exit 1', async () => {
  const path = save('ramp.yaml', 'title: Boathouse\nunits: mm\nramps:\n  - toe: 4o\n')
  for (const command of ['figures', 'plot', 'offsets']) {
    const { exit, out } = await traceply(command, path, '--json')
    expect([exit, out]).toEqual([1, ''])
  }
  expect(list()).toEqual(['ramp.yaml'])
})

it('several problems come together, each with its place, its line and a pointer', async () => {
  const good = Buffer.from(bytesOf(template('quarter-mm'))).toString()
  const text = good
    .replace('seat: square', 'seat: squar')
    .replace('    toe: 40', '    tow: 40')
    .replace('deck: 640', 'deck: -640')
  const path = save('ramp.yaml', text)
  const { exit, out, err } = await traceply('plot', path, '--out', file('set.pdf'))
  expect([exit, out]).toEqual([1, ''])
  const lines = text.split('\n')
  // each fault: `file:line:column: message`, the line itself, the pointer under what is meant
  const shown = [...err.matchAll(/^(.*):(\d+):(\d+): (.*)\n {2}(.*)\n {2}( *)(\^+)$/gm)]
  const meant = shown.map(([, name, line, column, , shownLine, blanks, marks]) => {
    expect(name).toBe(path)
    expect(lines[Number(line) - 1]).toContain(shownLine!.replace(/…$/, ''))
    expect(blanks).toHaveLength(Number(column) - 1)
    return lines[Number(line) - 1]!.slice(Number(column) - 1, Number(column) - 1 + marks!.length)
  })
  expect(meant).toEqual(['-640', 'tow', 'squar'])
  expect(err.endsWith(`\n3 problems in ${path}; nothing written\n`)).toBe(true)
  expect(list()).toEqual(['ramp.yaml'])
})
