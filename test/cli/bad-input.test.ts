import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'

let folder: string
const at = (name: string): string => join(folder, name)
const template = readFileSync('templates/quarter-mm.yaml', 'utf8')

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'traceply-cli-'))
  writeFileSync(at('ramp.yaml'), template)
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

/** What a command line says and leaves; `files` are those that were not there before. */
const ran = async (...args: readonly string[]) => {
  const before = readdirSync(folder)
  const said = await traceply(...args)
  return { ...said, files: readdirSync(folder).filter((file) => !before.includes(file)) }
}

const plot = (...args: readonly string[]) => ran('plot', at('ramp.yaml'), '--out', at('set.pdf'), ...args)

describe('what cannot be read', () => {
  test('a file that is not there', async () => {
    const { exit, err, files } = await ran('plot', at('none.yaml'), '--out', at('set.pdf'))
    expect(exit).toBe(2)
    expect(err).toBe(`cannot read ${at('none.yaml')}: there is no such file or folder\n`)
    expect(files).toEqual([])
  })

  test('an empty design, with the command that writes one', async () => {
    writeFileSync(at('empty.yaml'), '')
    const { exit, err } = await ran('figures', at('empty.yaml'))
    expect(exit).toBe(1)
    expect(err).toBe(
      `${at('empty.yaml')}:1:1: the file is empty; \`traceply new quarter\` writes one to start from\n1 problem in ${at('empty.yaml')}; nothing written\n`,
    )
  })

  test('a folder', async () => {
    const { exit, err } = await ran('figures', folder)
    expect(exit).toBe(2)
    expect(err).toBe(`cannot read ${folder}: that is a folder\n`)
  })

  test('an empty file, and one that is not text', async () => {
    writeFileSync(at('empty.yaml'), '')
    expect((await ran('figures', at('empty.yaml'))).exit).toBe(1)
    writeFileSync(at('bytes.yaml'), Buffer.from([0xff, 0xfe, 0x00, 0xd8]))
    const { exit, err } = await ran('figures', at('bytes.yaml'))
    expect(exit).toBe(1)
    expect(err).toBe(`${at('bytes.yaml')} is not text in UTF-8; save it as plain text in UTF-8\n`)
  })

  test('several faults of a design are all told, with line, column and a pointer; nothing is written', async () => {
    writeFileSync(at('ramp.yaml'), template.replace('toe:', 'tow:').replace('deck: 640', 'deck: -640'))
    const { exit, err, files } = await plot()
    expect(exit).toBe(1)
    expect(err).toMatch(/ramp\.yaml:\d+:\d+: unknown key `tow`.*did you mean `toe`\?/)
    expect(err).toMatch(/ramp\.yaml:\d+:\d+: .*-640/)
    expect(err).toMatch(/\n +\^+\n/)
    expect(err).toContain('; nothing written\n')
    expect(files).toEqual([])
  })
})

describe('what cannot be written', () => {
  test('a folder that is missing', async () => {
    const out = join(folder, 'no', 'set.pdf')
    const { exit, err, files } = await ran('plot', at('ramp.yaml'), '--out', out)
    expect(exit).toBe(2)
    expect(err).toBe(`cannot write ${out}: there is no folder ${join(folder, 'no')}; make it first\n`)
    expect(files).toEqual([])
  })

  test('a file that exists is kept byte for byte, and replaced with --force', async () => {
    writeFileSync(at('set.pdf'), 'mine')
    const { exit, err, files } = await plot()
    expect(exit).toBe(2)
    expect(err).toBe(
      `${at('set.pdf')} exists and is kept; choose another name, or add --force to replace it\n`,
    )
    expect(files).toEqual([])
    expect(readFileSync(at('set.pdf'), 'utf8')).toBe('mine')
    expect((await plot('--force')).exit).toBe(0)
    expect(readFileSync(at('set.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  })

  test('a folder, a path through a file, a name that the disk refuses', async () => {
    mkdirSync(at('set.pdf'))
    expect((await plot()).err).toBe(`cannot write ${at('set.pdf')}: that is a folder; add a file name\n`)
    const through = join(at('ramp.yaml'), 'set.pdf')
    const passed = await ran('plot', at('ramp.yaml'), '--out', through)
    expect([passed.exit, passed.files]).toEqual([2, []])
    const long = at(`${'x'.repeat(300)}.pdf`)
    const refused = await ran('plot', at('ramp.yaml'), '--out', long)
    expect([refused.exit, refused.files]).toEqual([2, []])
    expect(refused.err).toContain('that name is too long; choose a shorter one')
  })

  test('the design itself, even with --force', async () => {
    const { exit, err } = await ran('plot', at('ramp.yaml'), '--out', at('ramp.yaml'), '--force')
    expect(exit).toBe(2)
    expect(err).toContain('that is the file that is read; choose another name')
    expect(readFileSync(at('ramp.yaml'), 'utf8')).toBe(template)
  })

  test('a design with a stop writes nothing, and figures still print what is solved', async () => {
    writeFileSync(at('ramp.yaml'), template.replace('surface: 1700', 'surface: 500'))
    const { exit, err, files } = await plot()
    expect([exit, files]).toEqual([1, []])
    expect(err.replaceAll('\n      ', ' ')).toMatch(/^STOP .*the least surface radius for this height is \d+/)
    const figures = await ran('figures', at('ramp.yaml'), '--json')
    expect(figures.exit).toBe(1)
    expect(JSON.parse(figures.out).checks[0].id).toBe('overhang')
  })
})

describe('the command line', () => {
  test.each([
    [['--paper', 'a9'], '--paper a9: say one of letter, legal, tabloid, a4, a3, a2, a1, a0\n'],
    [['--cover', 'all'], '--cover all: say one of whole, line, ribbon\n'],
    [['--overlap', '2'], '--overlap 2 mm is outside 8 to 60 mm; did you mean 2 cm (20 mm)?\n'],
    [
      ['--margin', '10, 20'],
      '--margin 10, 20: give one length, or four with commas between: top, right, bottom, left\n',
    ],
    [['--margin', '-3'], '--margin -3 mm is outside 0 to 297 mm\n'],
    [['--margin', '300 mm'], '--margin 300 mm is outside 0 to 297 mm\n'],
  ])('%j', async (args, message) => {
    const { exit, err, files } = await plot(...args)
    expect([exit, err, files]).toEqual([2, message, []])
  })

  test('a page smaller than its margins and overlap says what they may take', async () => {
    const { exit, err } = await plot('--margin', '80')
    expect(exit).toBe(2)
    expect(err).toContain('margins and overlap together may take at most 150 mm, or take larger paper')
  })

  test('several faults are told together', async () => {
    const { err } = await plot('--paper', 'a9', '--cover', 'all', '--overlap', 'wide')
    expect(err.trim().split('\n').length).toBe(3)
  })

  test('unknown commands and options, and no command: exit 2; help and version: exit 0', async () => {
    for (const args of [['plto', 'x'], ['plot'], ['plot', 'x', '--colour'], []])
      expect((await ran(...args)).exit).toBe(2)
    expect((await ran('plto', 'x')).err).toContain('plot')
    for (const args of [['--help'], ['--version'], ['plot', '--help']])
      expect((await ran(...args)).exit).toBe(0)
  })

  test('new writes a starter that plots, in both units', async () => {
    for (const units of ['mm', 'in']) {
      expect((await ran('new', 'quarter', '--units', units, '--out', at(`${units}.yaml`))).exit).toBe(0)
      expect((await ran('plot', at(`${units}.yaml`), '--out', at(`${units}.pdf`))).exit).toBe(0)
    }
    expect((await ran('new', 'quarter', '--units', 'cm')).err).toBe('--units cm: say mm or in\n')
    expect((await ran('new', 'spine')).exit).toBe(2)
  })
})

test('plot --json is JSON alone and the plan that is attached; run twice, the bytes are the same', async () => {
  const first = await plot('--json')
  const second = await ran('plot', at('ramp.yaml'), '--out', at('again.pdf'), '--json')
  const plan = JSON.parse(first.out)
  const bytes = readFileSync(at('set.pdf'))
  const attached = (await readPdf(new Uint8Array(bytes))).attachments.find(
    ({ name }) => name === 'plan.json',
  )!
  expect(JSON.parse(new TextDecoder().decode(attached.bytes))).toEqual(plan)
  expect(plan.design).toBe(template)
  expect(second.out).toBe(first.out)
  expect(readFileSync(at('again.pdf')).equals(bytes)).toBe(true)
})
