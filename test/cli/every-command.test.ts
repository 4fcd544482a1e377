import { copyFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { starters } from '../../src/design/starters.ts'
import { readPdf } from '../support/read-pdf.ts'
import { templates } from '../support/templates.ts'
import { figuresOf, traceply } from '../support/traceply.ts'
import { bytesOf, template, useFolder } from './reprint-run.ts'

const { file, list, save } = useFolder()

/** Printed by no command: what the program cannot know. */
const promises = /\bsafe(?:ly|ty)?\b|\bcompl(?:y|ies|iant)\b/i

describe.each(templates)('%s runs through every command', (name) => {
  it('figures: a table that a person reads', async () => {
    const { exit, out, err } = await figuresOf(template(name))
    expect([exit, err]).toEqual([0, ''])
    expect(out).toMatch(
      name.includes('in')
        ? /^.+ \(lengths in inches; \+ is 1\/32 more, – is 1\/32 less\)\n\n/
        : /^.+ \(lengths in mm\)\n\n/,
    )
    expect(out).not.toMatch(/undefined|NaN|null|Infinity|\[object/)
    expect(out).not.toMatch(promises)
    expect(out.endsWith('\n')).toBe(true)
  })

  it('buy: a box to tick before each line', async () => {
    const { exit, out } = await traceply('buy', template(name))
    expect(exit).toBe(0)
    expect(out.match(/^ {2}\[ \] \d+ /gm)!.length).toBeGreaterThan(15)
  })

  it('cuts: every panel with what is sawn from it', async () => {
    const { exit, out } = await traceply('cuts', template(name))
    expect(exit).toBe(0)
    expect(out).toMatch(/^panel 1 of \d+: /m)
    expect(out).not.toMatch(/undefined|NaN|null|Infinity|\[object/)
    expect(out).not.toMatch(promises)
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(120)
  })

  describe.each([
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
  ] as const)('on %s', (paper, width, height) => {
    /** The set that comes unless told how to cover. */
    const plain: { set?: Uint8Array } = {}

    it('plot: five numbered steps in 24 lines of at most 120 columns', async () => {
      copyFileSync(template(name), file('ramp.yaml'))
      let told = 0
      for (const cover of [null, 'whole', 'line', 'ribbon'] as const) {
        const asked = ['plot', file('ramp.yaml'), '--paper', paper, '--force', '--out', file('set.pdf')]
        const { exit, out, err } = await traceply(...asked, ...(cover ? ['--cover', cover] : []))
        expect(exit, err).toBe(0)
        // a path as long as that of a test is not ours to shorten
        const lines = (out + err).replaceAll(file('set.pdf'), 'set.pdf').trimEnd().split('\n')
        expect(lines.length).toBeLessThanOrEqual(24)
        for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(120)
        expect(out.match(/^\d\. /gm)).toEqual(['1. ', '2. ', '3. ', '4. ', '5. '])
        expect(out + err).not.toMatch(promises)
        const bytes = bytesOf(file('set.pdf'))
        // the way that is taken unless told is one of the others: it is read once
        if (cover !== null && Buffer.compare(bytes, plain.set!) === 0) {
          told++
          continue
        }
        if (cover === null) plain.set = bytes
        const { pages } = await readPdf(bytes)
        expect(lines[0]).toMatch(
          new RegExp(
            `^set\\.pdf: ${pages.length} pages on ${paper}, set [0-9A-Z-]{14}: \\d+ tiles to tape together, `,
          ),
        )
        const [, tiles, first] = /: (\d+) tiles to tape together, (\d+) to read first\.$/.exec(lines[0]!)!
        expect(Number(tiles) + Number(first)).toBe(pages.length)
        for (const page of pages) {
          expect(Math.abs((page.width * 25.4) / 72 - width)).toBeLessThan(0.01)
          expect(Math.abs((page.height * 25.4) / 72 - height)).toBeLessThan(0.01)
          expect(page.texts.filter(({ text }) => promises.test(text))).toEqual([])
        }
      }
      expect(told).toBe(1)
    })

    it('offsets, square, reprint', async () => {
      if (plain.set) save('set.pdf', plain.set)
      const made = [
        ['offsets', template(name), '--paper', paper, '--out', file('offsets.pdf')],
        ['square', '--paper', paper, '--out', file('square.pdf')],
        ...(plain.set ? [] : [['plot', template(name), '--paper', paper, '--out', file('set.pdf')]]),
        ['reprint', file('set.pdf'), '1', 'map', '--out', file('again.pdf')],
        [
          'gauge',
          'shed',
          '--paper',
          paper,
          '--across',
          '149mm',
          '--down',
          '150mm',
          '--profiles',
          file('printers'),
          '--for',
          template(name),
        ],
      ]
      for (const args of made) {
        const { exit, out, err } = await traceply(...args)
        expect(exit, err).toBe(0)
        expect(out + err).not.toMatch(/undefined|NaN|\[object/)
        expect(out + err).not.toMatch(promises)
      }
      expect(list()).toEqual(['again.pdf', 'offsets.pdf', 'printers', 'set.pdf', 'square.pdf'])
    })
  })
})

describe('new', () => {
  it.each(['mm', 'in'])(
    'quarter --units %s prints what --out writes: a design that is good as it is',
    async (units) => {
      const printed = await traceply('new', 'quarter', '--units', units)
      expect([printed.exit, printed.err]).toEqual([0, ''])
      expect(printed.out).toMatch(new RegExp(`^units: ${units} `, 'm'))
      const path = file('my ramp.yaml')
      expect(await traceply('new', 'quarter', '--units', units, '--out', path)).toEqual({
        exit: 0,
        err: '',
        out: `Wrote ${path}: a quarter, in ${units === 'in' ? 'inches' : 'mm'}, to make your own.\nNext: change its figures in any text editor, then\n  traceply figures "${path}"\n  traceply plot "${path}"\n`,
      })
      expect(Buffer.from(bytesOf(path)).toString()).toBe(printed.out)
      // every key of it is explained
      const keys = printed.out.split('\n').filter((line) => /^\s*(?:- )?[a-z-]+:/.test(line))
      expect(keys.length).toBeGreaterThan(20)
      for (const line of keys) expect(line).toMatch(/ # \S/)
      for (const args of [
        ['figures', path],
        ['plot', path, '--out', file('set.pdf')],
        ['offsets', path],
      ])
        expect((await traceply(...args)).exit).toBe(0)
    },
  )

  it('mm unless told, and an existing file is kept', async () => {
    const { out } = await traceply('new', 'quarter')
    expect(out).toMatch(/^units: mm /m)
    await traceply('new', 'quarter', '--out', file('ramp.yaml'))
    const { exit, err } = await traceply('new', 'quarter', '--units', 'in', '--out', file('ramp.yaml'))
    expect([exit, err]).toEqual([
      2,
      `${file('ramp.yaml')} exists and is kept; choose another name, or add --force to replace it\n`,
    ])
    expect(Buffer.from(bytesOf(file('ramp.yaml'))).toString()).toBe(out)
    expect(
      (await traceply('new', 'quarter', '--units', 'in', '--out', file('ramp.yaml'), '--force')).exit,
    ).toBe(0)
    expect(Buffer.from(bytesOf(file('ramp.yaml'))).toString()).toMatch(/^units: in /m)
  })

  it.each([
    [['spine'], 'there is no kind of ramp called `spine`; say one of: quarter, flat\n'],
    [['quarter', '--units', 'cm'], '--units cm: say mm or in\n'],
    [['quarter', '--units', ''], '--units : say mm or in\n'],
  ])('%j is refused', async (args, err) => {
    expect(await traceply('new', ...args, '--out', file('ramp.yaml'))).toEqual({ exit: 2, out: '', err })
    expect(list()).toEqual([])
  })
})

it('--map writes an image beside the PDF, and never over it', async () => {
  const args = ['plot', template('quarter-mm'), '--out', file('set.pdf')]
  const image = ['plot', template('quarter-mm'), '--out', file('set.png'), '--map', file('set.png')]
  expect(await traceply(...image)).toEqual({
    exit: 2,
    out: '',
    err: `cannot write ${file('set.png')}: what is written is a PDF; give it a name that ends in .pdf\n`,
  })
  expect(await traceply(...args, '--map', file('map.jpg'))).toEqual({
    exit: 2,
    out: '',
    err: `--map ${file('map.jpg')}: the map is an image; end its name in .png\n`,
  })
  expect(list()).toEqual([])
  expect((await traceply(...args, '--map', file('map.png'))).exit).toBe(0)
  expect(Buffer.from(bytesOf(file('map.png'))).toString('latin1', 1, 4)).toBe('PNG')
  expect(Buffer.from(bytesOf(file('set.pdf'))).toString('latin1', 0, 5)).toBe('%PDF-')
})

it('every starter is among the templates that are tried here', () => {
  expect(starters.map(({ name }) => name).sort()).toEqual([...templates].sort())
})

it('without --out the PDF lies beside you, named after the design', async () => {
  const before = process.cwd()
  copyFileSync(template('quarter-mm'), file('low.ramp.yaml'))
  process.chdir(file('.'))
  try {
    expect((await traceply('plot', 'low.ramp.yaml')).out).toMatch(/^low\.ramp\.pdf: /)
    expect((await traceply('plot', 'low.ramp.yaml')).err).toBe(
      'low.ramp.pdf exists and is kept; choose another name, or add --force to replace it\n',
    )
  } finally {
    process.chdir(before)
  }
  expect(list()).toEqual(['low.ramp.pdf', 'low.ramp.yaml'])
})
