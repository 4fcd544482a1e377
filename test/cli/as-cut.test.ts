import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { rowAt } from '../../src/design/schema.ts'
import { assertNear } from '../support/near.ts'
import { traceply } from '../support/traceply.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'traceply-'))
})
afterEach(() => {
  rmSync(folder, { recursive: true })
})

const one = 'templates/quarter-mm.yaml'
const two = 'templates/pair-mm.yaml'
const cut = (design: string, ...cuts: readonly string[]) =>
  traceply('figures', design, ...cuts.flatMap((said) => ['--as-cut', said]))

/**
 * The starter by hand: frame 625, deck 640, ridden face 1700 about a centre 1700 up; lip at cos⁻¹((1700 − 625)/1724). The pipe
 * of 60.3 stands 8 up and 6 out: its middle 617.85 up, 1700 + 30.15 − 6 from the centre.
 */
const byHand = (along: number, down: number) => {
  const [R, c, r] = [1724, 1700, 30.15]
  const lip = Math.sqrt(R ** 2 - (c - 625) ** 2)
  const middle = { x: lip + along - r, y: 625 - down + r }
  const want = { y: 640 + 8 - r, x: Math.sqrt((1700 + r - 6) ** 2 - (c - (640 + 8 - r)) ** 2) }
  return {
    up: middle.y + r - 640,
    out: 1700 + r - Math.hypot(middle.x, c - middle.y),
    under: want.y - middle.y,
    behind: middle.x - want.x,
  }
}

it.each(['mm', 'in'] as const)(
  'the notch of the examples in %s shows the pipe as the starter has it',
  async (units) => {
    const example = rowAt('ramps[quarter].coping.notch').example[units]
    const file = join(folder, 'example.yaml')
    const starter = readFileSync(`templates/quarter-${units}.yaml`, 'utf8')
    writeFileSync(file, starter.replace(/up: .*\n +out: .*/, `notch: ${example}`))
    const pipeOf = async (design: string) =>
      JSON.parse((await traceply('figures', design, '--json')).out).ramps[0].coping
    const [own, said] = [await pipeOf(`templates/quarter-${units}.yaml`), await pipeOf(file)]
    for (const key of ['up', 'out']) assertNear(said[key], own[key], 1)
    expect((await traceply('figures', file)).out).not.toContain('watch')
  },
)

describe('traceply figures --as-cut', () => {
  it('says reveals and shims below the figures', async () => {
    const { exit, out, err } = await cut(one, 'along=30,down=42')
    const { up, out: stands, under, behind } = byHand(30, 42)
    expect([exit, err]).toEqual([0, ''])
    expect([up, stands, under, behind].map((mm) => mm.toFixed(1))).toEqual(['3.3', '-1.1', '4.7', '5.4'])
    expect(out.split('\n').slice(-5)).toEqual([
      '',
      'ramp, notch as cut: 30 along, 42 down',
      `  pipe     ${shown(up)} above the deck board, ${shown(-stands)} behind the ridden face; wanted 8 above and 6 out`,
      `  shim     under the pipe ${shown(under)}; behind it ${shown(behind)}`,
      '',
    ])
  })
  it('says how much more to take off where the notch is too small, and nothing where it is right', async () => {
    const small = byHand(20, 37)
    const { out } = await cut(one, 'down=37, along=20')
    expect(out).toContain(
      `  shim     under the pipe none: not deep enough yet, take ${shown(-small.under)} more off its floor; behind it none: not deep enough yet,\n` +
        `           take ${shown(-small.behind)} more off its back wall`,
    )
    const { out: right } = await cut(one, 'along=24.6 mm,down=3.73 cm')
    expect(right).toContain('  shim     under the pipe none; behind it none\n')
  })
  it('takes what can be measured on a sawn side, and what is not said is as the design has it', async () => {
    const asCut = async (said: string) =>
      JSON.parse((await traceply('figures', one, '--json', '--as-cut', said)).out).asCut[0]
    const { ramps } = JSON.parse((await traceply('figures', one, '--json')).out)
    const { notch } = ramps[0].coping
    const [R, c] = [1724, 1700]
    const lip = Math.sqrt(R ** 2 - (c - 625) ** 2)
    const toe = Math.sqrt(R ** 2 - (c - 40) ** 2)
    // the floor lies 42 below the top line, 583 up; there the frame's curve, by the circle
    const open = Math.sqrt(R ** 2 - (c - 583) ** 2)
    const wall = lip + 30
    for (const [said, along, down] of [
      ['along=30,down=42', 30, 42],
      ['along=30,bottom=583', 30, 42],
      [`floor=${wall - open},down=42`, 30, 42],
      [`bottom=583,floor=${wall - open}`, 30, 42],
      [`back=${toe + ramps[0].length - wall},down=42`, 30, 42],
      ['along=30', 30, notch.down],
      ['bottom=583', notch.along, 42],
    ] as const) {
      const found = await asCut(said)
      assertNear(found.along, along, 1e-6)
      assertNear(found.down, down, 1e-6)
    }
  })
  it('has no floor to measure in a round seat', async () => {
    const { exit, err } = await cut('templates/quarter-mm-round.yaml', 'floor=40')
    expect(exit).toBe(2)
    expect(err).toContain('a round seat has no level floor')
    expect((await cut('templates/quarter-mm-round.yaml', 'back=560')).exit).toBe(0)
  })
  it('asks about a shim that nobody meant', async () => {
    expect((await cut(one, 'along=60,down=42')).out).toContain('asked    is that measured so?')
    expect((await cut(one, 'along=30,down=42')).out).not.toContain('measured so')
  })
  it('prints it in JSON, in mm, with the name of the ramp; and no such key unless asked', async () => {
    const { exit, out } = await traceply('figures', two, '--json', '--as-cut', 'outer: along=30, down=42')
    expect(exit).toBe(0)
    const { asCut } = JSON.parse(out)
    const { up, out: stands, under, behind } = byHand(30, 42)
    expect(asCut).toHaveLength(1)
    expect(Object.keys(asCut[0])).toEqual(['ramp', 'along', 'down', 'up', 'out', 'wanted', 'shims'])
    expect(asCut[0]).toMatchObject({ ramp: 'outer', along: 30, down: 42 })
    assertNear(asCut[0].up, up, 1e-6)
    assertNear(asCut[0].out, stands, 1e-6)
    assertNear(asCut[0].shims.under, under, 1e-6)
    assertNear(asCut[0].shims.behind, behind, 1e-6)
    assertNear(asCut[0].wanted.up, 8, 1e-6)
    assertNear(asCut[0].wanted.out, 6, 1e-6)
    const { out: plain } = await traceply('figures', two, '--json')
    expect(JSON.parse(plain)).not.toHaveProperty('asCut')
  })
  it('takes one for each ramp', async () => {
    const { out } = await cut(two, 'outer:along=30,down=42', 'inner:along=28,down=40')
    expect(out).toContain('outer, notch as cut: 30 along, 42 down')
    expect(out).toContain('inner, notch as cut: 28 along, 40 down')
  })
  it('reads lengths in the units of the file', async () => {
    const { out } = await cut('templates/quarter-in.yaml', 'along=1 1/8,down=1 5/8')
    expect(out).toContain('notch as cut: 1 1/8 along, 1 5/8 down')
  })
  it('still exits 1 where a check says stop, with nothing made up', async () => {
    const file = join(folder, 'overhang.yaml')
    writeFileSync(file, readFileSync(one, 'utf8').replace(/deck: 640/, 'deck: 2400'))
    const { exit, out } = await cut(file, 'along=30,down=42')
    expect(exit).toBe(1)
    expect(out).toContain('[overhang]')
    expect(out).not.toContain('as cut')
  })

  it('never lists a flat among the ramps to name, and takes the only ramp with a notch unnamed', async () => {
    const flat = 'templates/quarter-and-flat-mm.yaml'
    const { exit, out } = await cut(flat, 'along=30,down=42')
    expect(exit).toBe(0)
    expect(out).toContain('quarter, notch as cut: 30 along, 42 down')
    expect((await cut(flat, 'left:along=30,down=42')).err).toContain(
      'the only one with a notch is `quarter`\n',
    )
    expect((await cut(flat, 'x')).err).toBe('--as-cut x: write it like along=25,down=37\n')
    const file = join(folder, 'three.yaml')
    const both = `${readFileSync(flat, 'utf8')}  - { name: second, like: quarter }\n`
    writeFileSync(file, both)
    const { err } = await cut(file, 'along=30,down=42')
    expect(err).toBe(
      '--as-cut along=30,down=42: 2 ramps have a notch, say which, like quarter:along=25,down=37; they are quarter, second\n',
    )
    writeFileSync(file, both.replace(/ {4}coping:[\s\S]*?(?= {2}- \{)/, ''))
    expect((await cut(file, 'along=30,down=42')).err).toBe(
      '--as-cut along=30,down=42: no ramp has a pipe; give one `coping` in the design file\n',
    )
  })

  const bare = (): string => {
    const file = join(folder, 'bare.yaml')
    writeFileSync(
      file,
      readFileSync(one, 'utf8').replace(/ {4}coping:[\s\S]*?(?= {4}chamfer)/, '    coping: none\n'),
    )
    return file
  }
  it.each([
    ['no pairs', one, ['30,42'], '--as-cut 30,42: write it like along=25,down=37'],
    [
      'the wall from two edges',
      one,
      ['along=30,back=42'],
      '--as-cut along=30,back=42: `along` and `back` both say where the wall is; one of them is enough',
    ],
    [
      'the same twice',
      one,
      ['along=30,along=42'],
      '--as-cut along=30,along=42: write it like along=25,down=37',
    ],
    ['nothing', one, [''], '--as-cut : write it like along=25,down=37'],
    ['in inches', 'templates/quarter-in.yaml', ['x'], '--as-cut x: write it like along=7/8,down=1 7/16'],
    ['in several ramps', two, ['x'], '--as-cut x: write it like outer:along=25,down=37'],
    [
      'no name where there are several',
      two,
      ['along=30,down=42'],
      '--as-cut along=30,down=42: 2 ramps have a notch, say which, like outer:along=25,down=37; they are outer, inner',
    ],
    [
      'a name that is near',
      two,
      ['outr:along=30,down=42'],
      '--as-cut outr:along=30,down=42: no ramp is called `outr`; did you mean `outer`?',
    ],
    [
      'a name that is not',
      one,
      ['left:along=30,down=42'],
      '--as-cut left:along=30,down=42: no ramp is called `left`; the only one with a notch is `ramp`',
    ],
    [
      'a unit that is none, and a length in the other unit: both at once',
      one,
      ['along=4x,down=900'],
      '--as-cut along=4x,down=900: `along`: unknown unit `x` in `4x`; use mm, cm, m, in or ft\n' +
        '--as-cut along=4x,down=900: `down`: 900 mm is outside 1 to 300 mm',
    ],
    [
      'inches typed as mm',
      one,
      ['along=30,down=5/8'],
      '--as-cut along=30,down=5/8: `down`: 5/8 mm is outside 1 to 300 mm; did you mean 5/8 in (16 mm)?',
    ],
    [
      'a decimal comma',
      one,
      ['along=30,5,down=42'],
      '--as-cut along=30,5,down=42: `along`: `30,5` has a comma; write `30.5`, with a point',
    ],
    [
      'the floor twice',
      one,
      ['bottom=590,down=42'],
      '--as-cut bottom=590,down=42: `bottom` and `down` both say where the floor is; one of them is enough',
    ],
    [
      'a ramp twice',
      two,
      ['outer:along=30,down=42', 'outer:along=31,down=42'],
      '--as-cut is given twice for `outer`; give one notch for each ramp',
    ],
    [
      'the two measures of a notch apart',
      two,
      ['outer:along=30', 'outer: down=1 7/16 in'],
      '--as-cut is given twice for `outer`; join the two with a comma: --as-cut "outer:along=30, down=1 7/16 in"',
    ],
  ])('refuses %s', async (_, design, cuts, words) => {
    expect(await cut(design, ...cuts)).toEqual({ exit: 2, out: '', err: `${words}\n` })
  })
  it('refuses a ramp without a pipe', async () => {
    expect(await cut(bare(), 'along=30,down=42')).toEqual({
      exit: 2,
      out: '',
      err: '--as-cut along=30,down=42: `ramp` has no pipe; give it `coping` in the design file\n',
    })
  })
})

describe('traceply figures', () => {
  it('prints how each layer is laid and screwed, and the pipe with its holes, in JSON', async () => {
    const file = join(folder, 'long.yaml')
    // two sheets up the curve
    writeFileSync(
      file,
      readFileSync(one, 'utf8').replace('units: mm', 'units: mm\nstock: { panel: 700 x 1220 } #'),
    )
    const { exit, out } = await traceply('figures', file, '--json')
    const [ramp] = JSON.parse(out).ramps
    expect(exit).toBe(0)
    expect(Object.keys(ramp.skin[0])).toEqual(
      'layer sheet thickness length start marks pieces widths seams acrossSeams rows sheets screws'.split(
        ' ',
      ),
    )
    for (const { length, marks, pieces, widths, seams, rows, screws, sheets } of ramp.skin) {
      expect(pieces).toHaveLength(2)
      expect(sheets.map(({ size }: { size: number[] }) => size)).toEqual(
        pieces.map((piece: { length: number }) => [1216, piece.length]),
      )
      assertNear(pieces[0].length + 3 + pieces[1].length, length, 1e-6)
      expect(widths).toEqual([{ from: 0, length: 1216 }])
      // studs are numbered from 1: the mark of the stud that the seam names
      for (const { at, stud } of seams) assertNear(at, marks[stud - 1], 1e-9)
      expect(screws.count).toBe(
        rows.reduce((sum: number, row: { across: number[] }) => sum + row.across.length, 0),
      )
      expect(screws.length).toBeGreaterThan(0)
    }
    expect(ramp.skin.map((layer: { seams: { stud: number }[] }) => layer.seams[0]!.stud)).toEqual([4, 3, 4])
    expect(ramp.coping).toMatchObject({ pipeLength: 1216, holes: [75, 675, 1141] })
  })
  it('keeps to 120 columns and 48 lines for one ramp, whatever it has to say', async () => {
    const file = join(folder, 'all.yaml')
    for (const design of [
      readFileSync(one, 'utf8'),
      readFileSync(one, 'utf8').replace('width: 1216', 'width: 3000\n    fasten: between'),
      readFileSync('templates/quarter-in.yaml', 'utf8'),
    ]) {
      writeFileSync(file, design)
      const { out } = await traceply('figures', file)
      const lines = out.trimEnd().split('\n')
      expect(lines.length).toBeLessThanOrEqual(48)
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(120)
    }
  })
})

/** As a figure of a mm file. */
const shown = (mm: number): string => `${Number(mm.toFixed(1))}`
