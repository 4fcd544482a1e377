import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, rmdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'
import { templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { template, useFolder } from './reprint-run.ts'

const { file, list, save } = useFolder()
const measured = ['--across', '149mm', '--down', '150mm'] as const

describe('what once failed or took minutes is refused in words:', () => {
  it('runs of digits where a length or a word belongs', async () => {
    const digits = '9'.repeat(60_000)
    for (const option of ['--margin', '--overlap', '--paper', '--cover']) {
      const { exit, err } = await traceply(
        'plot',
        template('quarter-mm'),
        option,
        digits,
        '--out',
        file('x.pdf'),
      )
      expect(exit, option).toBe(2)
      expect(err.length, option).toBeLessThan(400)
    }
    const long = templateText('quarter-mm').replace('deck: 640', `deck: ${digits}`)
    const { exit, err } = await traceply('figures', save('long.yaml', `${long}paper: ${digits}\n`))
    expect(exit).toBe(1)
    expect(err).toContain('too long for a length')
    expect(err).toContain('unknown paper')
  })

  it('more layers of skin than anyone screws down', async () => {
    const layers = (count: number): string =>
      templateText('quarter-mm').replace(
        /skin: \[.*\]/,
        `skin: [${Array(count).fill('3 plywood').join(', ')}]`,
      )
    const { exit, err } = await traceply('figures', save('many.yaml', layers(5000)))
    expect(exit).toBe(1)
    expect(err).toMatch(/`skin` has 5000 entries; at most 12\n/)
    expect((await traceply('figures', save('most.yaml', layers(12)))).err).not.toContain('entries')
    expect((await traceply('figures', save('more.yaml', layers(13)))).err).toContain('13 entries')
  })

  it('pipes where a file is due', async () => {
    execFileSync('mkfifo', [file('pipe')])
    mkdirSync(file('printers'))
    execFileSync('mkfifo', [file('printers/pipe.json')])
    for (const args of [
      ['figures', file('pipe')],
      ['plot', file('pipe'), '--out', file('x.pdf')],
      ['gauge', '--show', 'pipe', '--profiles', file('printers')],
    ]) {
      const { exit, err } = await traceply(...args)
      expect(exit).toBe(2)
      expect(err).toContain('that is a pipe; ')
    }
    const { exit, err } = await traceply('figures', template('quarter-mm'), '--out', file('pipe'), '--force')
    expect([exit, err]).toEqual([
      2,
      `cannot write ${file('pipe')}: that is a device or a pipe; give the name of a file\n`,
    ])
  })

  it.skipIf(process.platform !== 'linux')('profiles in a place that cannot be made', async () => {
    for (const folder of ['/proc/printers', '/dev/null/printers']) {
      const { exit, err } = await traceply('gauge', 'shed', ...measured, '--profiles', folder)
      expect(exit).toBe(2)
      expect(err).toMatch(/^cannot make the folder .*; name another with --profiles\n$/)
    }
  })

  it('a folder to work in that is gone', async () => {
    const before = process.cwd()
    const design = `${before}/${template('quarter-mm')}`
    mkdirSync(file('gone'))
    process.chdir(file('gone'))
    rmdirSync(file('gone'))
    try {
      const { exit, err } = await traceply('plot', design)
      expect([exit, err]).toEqual([2, 'the folder that you are in is gone; change to another one\n'])
    } finally {
      process.chdir(before)
    }
  })

  it.each(['', 'work', './work'])('no home folder for printers: %s', async (home) => {
    if (process.platform !== 'linux') return
    vi.stubEnv('XDG_CONFIG_HOME', home)
    vi.stubEnv('HOME', home)
    try {
      const { exit, err } = await traceply('gauge', 'shed', ...measured)
      expect([exit, err]).toEqual([
        2,
        'there is no home folder to keep printers in; name a folder with --profiles\n',
      ])
    } finally {
      vi.unstubAllEnvs()
    }
  })

  it('no name for the folder of printers, and one whose links lead round', async () => {
    const gauge = (folder: string) => traceply('gauge', 'shed', ...measured, '--profiles', folder)
    expect(await gauge('')).toEqual({
      exit: 2,
      out: '',
      err: '--profiles: the name of the folder is empty\n',
    })
    symlinkSync('round', file('round'))
    const { exit, err } = await gauge(file('round'))
    expect([exit, err]).toEqual([
      2,
      `cannot make the folder ${file('round')}: its links lead round in a circle; name another with --profiles\n`,
    ])
    expect(list()).toEqual(['round'])
  })

  it('readings of no square, and names that a system keeps for itself', async () => {
    const gauge = (...args: readonly string[]) => traceply('gauge', ...args, '--profiles', file('printers'))
    for (const reading of ['99999999mm/99999999mm', '0.0001mm', '1mm/1mm']) {
      const { exit, out } = await gauge('shed', '--across', reading, '--down', '150mm')
      expect([1, 2]).toContain(exit)
      expect(out).toBe('')
    }
    for (const name of ['con', 'NUL', 'com1', 'Lpt9'])
      expect((await gauge(name, ...measured)).err).toContain('is no name for a printer')
    expect(existsSync(file('printers'))).toBe(false)
  })

  it('a profile of 5 MB is no design', async () => {
    mkdirSync(file('printers'))
    writeFileSync(file('printers/large.json'), ' '.repeat(5 * 1024 * 1024))
    const { err } = await traceply('gauge', '--show', 'large', '--profiles', file('printers'))
    expect(err).toContain('256 kB, the most of a profile')
  })
})

describe('small parts on shared pages, where one is as long as the page', () => {
  it.each(['36.8mm', '37mm', '37.2mm'])('--pack --margin %s', async (margin) => {
    const { exit, err } = await traceply(
      'plot',
      template('quarter-mm'),
      ...['--pack', '--margin', margin, '--out', file('set.pdf'), '--force'],
    )
    expect(exit, err).toBe(0)
  })
})

it('what a run that was killed left is cleared by the next one, and nothing else', async () => {
  const dead = spawnSync(process.execPath, ['-e', ''])
  const name = (pid: number): string => `.${pid}-3f2a-11.traceply-part`
  save(name(dead.pid), 'torn')
  save(name(process.pid), 'at work')
  save('.hidden.part', 'mine')
  const { exit } = await traceply('figures', template('quarter-mm'), '--out', file('figures.txt'))
  expect(exit).toBe(0)
  expect(list()).toEqual(['.hidden.part', name(process.pid), 'figures.txt'].sort())
  expect(readdirSync(file('.')).length).toBe(3)
})

it('a title cannot move the cursor', async () => {
  const text = templateText('quarter-mm').replace(/title: .*/, 'title: "a\\u009b31mb"')
  const { out, err } = await traceply('figures', save('title.yaml', text))
  expect(`${out}${err}`).not.toMatch(/(?![\n\t])\p{Cc}/u)
})
