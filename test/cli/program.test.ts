import { execFileSync, spawnSync } from 'node:child_process'
import {
  closeSync,
  copyFileSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import manifest from '../../package.json'
import { readPdf } from '../support/read-pdf.ts'
import { traceply as inProcess } from '../support/traceply.ts'
import { builtOnce, sealOf, useBuilt, versionTag } from './built.ts'
import { bytesOf } from './reprint-run.ts'

const { root, work, traceply, asMany } = useBuilt()
const template = (name: string): string => join(root(), 'templates', `${name}.yaml`)

const more = '(traceply --help shows all commands)\n'

describe('the command line: exit and words', () => {
  it.each([
    [['plto', 'x.yaml'], `error: unknown command 'plto'\n(Did you mean plot?)\n${more}`],
    [['figure', 'x.yaml'], `error: unknown command 'figure'\n(Did you mean figures?)\n${more}`],
    [['saw'], `error: unknown command 'saw'\n${more}`],
    [['plot'], `error: missing required argument 'design'\n${more}`],
    [['figures'], `error: missing required argument 'design'\n${more}`],
    [['new'], `error: missing required argument 'kind'\n${more}`],
    [['plot', 'x', '--papr', 'a4'], `error: unknown option '--papr'\n(Did you mean --paper?)\n${more}`],
    [['--colour'], `error: unknown option '--colour'\n${more}`],
    [['plot', 'x', '--out'], `error: option '--out <file>' argument missing\n${more}`],
    [['plot', 'a', 'b'], `error: too many arguments for 'plot'. Expected 1 argument but got 2.\n${more}`],
    [
      ['gauge', 'hall', '--margins', '4mm', '5mm'],
      `error: too many arguments for 'gauge'. Expected 1 argument but got 2.\n${more}--margins takes one word: lengths with commas and no blanks, or in quotes\n`,
    ],
    [
      ['choose', '--height', '2', 'ft'],
      `error: too many arguments for 'choose'. Expected 0 arguments but got 1.\n${more}what has a blank in it goes in quotes: --height "2 ft"\n`,
    ],
    [
      ['fit', '--chord', '48in', '--rise', '3', '5/8in'],
      'say one of: a file of points; --chord and --rise; --run and --height\nwhat has a blank in it goes in quotes: --rise "3 5/8in"\n',
    ],
    [['new', 'spine'], 'there is no kind of ramp called `spine`; say one of: quarter, flat\n'],
    [['new', 'quarter', '--units', 'cm'], '--units cm: say mm or in\n'],
    [['plot', ''], 'the name of the file to read is empty\n'],
    // nothing that is quoted moves the cursor or changes colours
    [['pl\u001b[31mot\u0007'], `error: unknown command 'pl?[31mot?'\n${more}`],
    [['plot', 'a\u001b[2Jb.yaml'], 'cannot read a?[2Jb.yaml: there is no such file or folder\n'],
  ])('%j', async (args, err) => {
    expect(await inProcess(...args)).toEqual({ exit: 2, out: '', err })
  })

  it.each([
    [['plto', 'x.yaml'], `error: unknown command 'plto'\n(Did you mean plot?)\n${more}`],
    [['new', 'spine'], 'there is no kind of ramp called `spine`; say one of: quarter, flat\n'],
    [['plot', 'a\u001b[2Jb.yaml'], 'cannot read a?[2Jb.yaml: there is no such file or folder\n'],
  ])('%j as it is shipped', async (args, err) => {
    expect(await traceply(args)).toEqual({ exit: 2, signal: null, out: '', err })
  })

  it('lengths with letters beyond ASCII are read as it is shipped: its text is kept as one byte a letter', async () => {
    for (const name of readdirSync(join(root(), 'dist')).filter((file) => file.endsWith('.cjs')))
      expect(readFileSync(join(root(), 'dist', name), 'utf8'), name).toMatch(/^[\0-\x7f]*$/)
    const design = readFileSync(template('quarter-in'), 'utf8')
    for (const deck of ['19 5/8– in', '19⅝ in', '19 5/8”']) {
      const changed = design.replace(/\n( +)deck: 25 [^\n]*/, `\n$1deck: "${deck}"`)
      expect(changed).not.toBe(design)
      writeFileSync(join(work(), 'signed.yaml'), changed)
      expect((await traceply(['figures', 'signed.yaml'])).out, deck).toContain('deck 19 5/8')
    }
  })

  it('without a command all commands are listed, and it is no success', async () => {
    const { exit, out, err } = await traceply([])
    expect([exit, out]).toEqual([2, ''])
    expect((await traceply(['--help'])).out).toBe(err)
  })

  it('--help names every command, and each command its options', async () => {
    const { exit, out, err } = await traceply(['--help'])
    expect([exit, err]).toEqual([0, ''])
    const commands = [...out.matchAll(/^ {2}([a-z]+) (?:\[|<)/gm)].map(([, name]) => name!)
    for (const name of ['new', 'figures', 'plot', 'square', 'gauge', 'reprint', 'offsets'])
      expect(commands).toContain(name)
    for (const name of commands.filter((command) => command !== 'help')) {
      const help = await inProcess(name, '--help')
      expect([help.exit, help.err]).toEqual([0, ''])
      expect(help.out).toMatch(new RegExp(`^Usage: traceply ${name} `))
      expect((await inProcess('help', name)).out).toBe(help.out)
    }
    const options = (await traceply(['plot', '-h'])).out
    expect(options).toBe((await inProcess('plot', '--help')).out)
    for (const option of [
      '--paper',
      '--cover',
      '--margin',
      '--overlap',
      '--printer',
      '--out',
      '--force',
      '--json',
    ])
      expect(options).toContain(`  ${option} `)
  })

  it('--version is that of the package', async () => {
    for (const option of ['--version', '-V'])
      expect(await traceply([option])).toEqual({
        exit: 0,
        signal: null,
        out: `${manifest.version}\n`,
        err: '',
      })
  })
})

it('of six runs at once to one place one wins and the others keep it', async () => {
  const cwd = work('race')
  const out = join(cwd, 'set.pdf')
  const papers = ['a4', 'a3', 'letter', 'legal', 'a2', 'tabloid']
  // a long command, and one that is as good as at once
  for (const [round, command] of [['plot', template('quarter-mm')], ['square']].entries()) {
    const target = round === 0 ? out : join(cwd, 'again.pdf')
    const runs = await Promise.all(
      papers.map((paper) => traceply([...command, '--paper', paper, '--out', target], { cwd })),
    )
    const winners = papers.filter((_, i) => runs[i]!.exit === 0)
    expect(winners).toHaveLength(1)
    for (const { exit, err } of runs.filter((ran) => ran.exit !== 0))
      expect([exit, err]).toEqual([
        2,
        `${target} exists and is kept; choose another name, or add --force to replace it\n`,
      ])
    // whole, and of the one that says that it won
    const alone = join(cwd, `alone-${round}.pdf`)
    await inProcess(...command, '--paper', winners[0]!, '--out', alone)
    expect(readFileSync(target).equals(readFileSync(alone))).toBe(true)
  }
  expect(readdirSync(cwd).sort()).toEqual(['again.pdf', 'alone-0.pdf', 'alone-1.pdf', 'set.pdf'])
})

it('runs at once with --force leave one whole file', async () => {
  const cwd = work('forced')
  const target = join(cwd, 'set.pdf')
  const runs = await Promise.all(
    ['a4', 'a3', 'letter', 'legal'].map((paper) =>
      traceply(['plot', template('quarter-in'), '--paper', paper, '--out', target, '--force'], { cwd }),
    ),
  )
  expect(runs.map(({ exit }) => exit)).toEqual([0, 0, 0, 0])
  expect((await readPdf(bytesOf(target))).pages.length).toBeGreaterThan(5)
  expect(readdirSync(cwd)).toEqual(['set.pdf'])
})

describe('a run that is ended in the middle of a write', () => {
  const half = 'sound(file, content.slice(0, 99), options)'
  const kill = (signal: string): string => `process.kill(process.pid, '${signal}')`
  it.each([
    [
      'killed when half is written',
      'writeFileSync',
      `(file, content, options) => { ${half}; ${kill('SIGKILL')} }`,
    ],
    ['killed before the name is taken', 'renameSync', `() => { ${kill('SIGKILL')} }`],
    ['killed after it', 'renameSync', `(...args) => { sound(...args); ${kill('SIGKILL')} }`],
    ['asked to end', 'writeFileSync', `(...args) => { ${kill('SIGTERM')}; sound(...args) }`],
  ])('%s: the file is the old one or the new one, and the next run clears up', async (how, step, instead) => {
    const cwd = work(`ended-${how.replaceAll(' ', '-')}`)
    const path = join(cwd, 'ramp.yaml')
    const args = ['new', 'quarter', '--out', 'ramp.yaml', '--force']
    await traceply(args, { cwd })
    const whole = readFileSync(path, 'utf8')
    writeFileSync(path, 'before')
    const hook = join(work(), 'end.cjs')
    writeFileSync(hook, `const fs = require('node:fs'); const sound = fs.${step}; fs.${step} = ${instead}\n`)
    const ended = await traceply(args, { cwd, node: ['--require', hook] })
    // one that is asked comes to the end of its write
    expect(ended.signal ?? ended.exit).toSatisfy((by: unknown) => by === 'SIGKILL' || by === 143 || by === 0)
    expect(['before', whole]).toContain(readFileSync(path, 'utf8'))
    if (ended.signal === null) expect(readdirSync(cwd)).toEqual(['ramp.yaml'])
    expect((await traceply(args, { cwd })).exit).toBe(0)
    expect(readdirSync(cwd)).toEqual(['ramp.yaml'])
    expect(readFileSync(path, 'utf8')).toBe(whole)
  })
})

describe('words that cannot be printed', () => {
  it('a reader that goes away is no fault, and the PDF is written', async () => {
    const target = join(work('gone'), 'set.pdf')
    const ran = await traceply(['plot', template('pair-mm'), '--json', '--out', target], { stdout: 'closed' })
    expect(ran.exit).toBe(0)
    expect(ran.err).not.toMatch(/EPIPE|\n {4}at /)
    expect(readFileSync(target, 'latin1').startsWith('%PDF-')).toBe(true)
  })

  it('a full device is said, exit 2', async ({ skip }) => {
    skip(!existsSync('/dev/full'), 'no /dev/full here')
    const handle = openSync('/dev/full', 'w')
    try {
      expect(await traceply(['new', 'quarter'], { stdout: handle })).toEqual({
        exit: 2,
        signal: null,
        out: '',
        err: 'cannot print: the disk is full; make room or choose another one\n',
      })
    } finally {
      closeSync(handle)
    }
  })

  it('a standard output that a shell closed is said, exit 2, what is asked for beside it is written; one thrown away is not', ({
    skip,
  }) => {
    skip(!existsSync('/proc/self/fd/1'), 'no system that tells')
    const out = join(work('closed'), 'set.pdf')
    const by = (shell: string, redirect: string, stdio: 'pipe' | 'ignore', ...args: readonly string[]) => {
      const program = [process.execPath, join(root(), 'dist', 'traceply.cjs'), ...args]
      const words = program.map((word) => `'${word}'`).join(' ')
      const { status, stderr } = spawnSync(shell, ['-c', `${words} ${redirect}; exit $?`], {
        encoding: 'utf8',
        stdio: ['ignore', stdio, 'pipe'],
      })
      return [status, stderr]
    }
    const said = [2, 'cannot print: standard output is closed\n']
    const quiet = ['new', 'flat']
    expect(by('sh', '>&-', 'pipe', 'figures', template('quarter-mm'))).toEqual(said)
    expect(by('sh', '>&-', 'pipe', 'new', 'quarter')).toEqual(said)
    expect(by('sh', '>&-', 'pipe', '--help')).toEqual(said)
    expect(by('sh', '>&-', 'pipe', 'square', '--out', out)).toEqual(said)
    expect(readFileSync(out, 'latin1').startsWith('%PDF-')).toBe(true)
    expect(by('sh', '>/dev/null', 'pipe', ...quiet)).toEqual([0, ''])
    expect(by('sh', '', 'ignore', ...quiet)).toEqual([0, ''])
  })
})

it('a fault of ours is told as such: its own exit, no stack trace, nothing left', async () => {
  const cwd = work('fault')
  writeFileSync(
    join(work(), 'break.cjs'),
    "require('node:zlib').deflateSync = () => { throw new TypeError('the press is jammed') }\n",
  )
  const ran = await traceply(['plot', template('quarter-mm'), '--out', join(cwd, 'set.pdf')], {
    node: ['--require', join(work(), 'break.cjs')],
  })
  expect(ran).toEqual({
    exit: 3,
    signal: null,
    out: '',
    err: 'this is a fault of traceply, not yours: the press is jammed\nplease report it with your design file and the command line\n',
  })
  expect(readdirSync(cwd)).toEqual([])
})

it('npm run demo plots a template of ours into out/ and says five steps', async () => {
  const demo = (): string =>
    execFileSync('npm', ['run', 'demo', '--silent'], { cwd: root(), encoding: 'utf8', stdio: 'pipe' })
  const said = demo()
  expect(said.match(/^[1-9]\. /gm)).toEqual(['1. ', '2. ', '3. ', '4. ', '5. '])
  const read = await readPdf(bytesOf(join(root(), 'out', 'quarter-mm.pdf')))
  expect(read.title).toBe('Low ramp for the boathouse')
  expect(said).toContain(`out/quarter-mm.pdf: ${read.pages.length} pages on a4`)
  // a second time it replaces its own
  expect(demo()).toBe(said)
})

describe('the program', () => {
  it('reads a design from standard input', () => {
    const args = [join(root(), 'dist', 'traceply.cjs'), 'figures', '-']
    const input = readFileSync(template('quarter-mm'))
    const piped = execFileSync(process.execPath, args, { encoding: 'utf8', input })
    const [program, command] = args
    expect(piped).toBe(
      execFileSync(process.execPath, [program!, command!, template('quarter-mm')], { encoding: 'utf8' }),
    )
  })

  it('waits for what another program is slow to pipe in', () => {
    const program = `'${process.execPath}' '${join(root(), 'dist', 'traceply.cjs')}' offsets -`
    const design = template('quarter-mm')
    const slow = `(sleep 0.5; head -3 '${design}'; sleep 0.5; tail -n +4 '${design}') | ${program}`
    const piped = execFileSync('sh', ['-c', slow], { encoding: 'utf8' })
    expect(piped).toMatch(/^Low ramp for the boathouse/)
  })

  it('passes a set on from program to program', () => {
    const program = join(root(), 'dist', 'traceply.cjs')
    const piped = (args: readonly string[], input: Buffer): Buffer =>
      execFileSync(process.execPath, [program, ...args], { input, stdio: 'pipe' })
    const set = piped(['plot', '-', '--out', '-'], readFileSync(template('quarter-mm')))
    const page = piped(['reprint', '-', 'map', '--out', '-'], set)
    expect(page.subarray(0, 5).toString()).toBe('%PDF-')
    expect(page.length).toBeLessThan(set.length)
  })

  it('is a file that can be read, three with one command each, what V8 made of them, and one that starts them', async () => {
    expect(manifest.bin.traceply).toBe('dist/traceply.cjs')
    expect(readdirSync(join(root(), 'dist'))).toEqual([
      'booklet.cjs',
      'booklet.code',
      'figures.cjs',
      'figures.code',
      'index.js',
      'plot.cjs',
      'plot.code',
      'program.cjs',
      'program.code',
      'traceply.cjs',
      'traceply.html',
      'types',
    ])
    const starter = readFileSync(join(root(), 'dist', 'traceply.cjs'), 'utf8')
    expect(starter.startsWith('#!/usr/bin/env node\n')).toBe(true)
    for (const [name, own, other] of [
      ['program', 'plotJob = (', null],
      ['booklet', 'bookletJob = (', 'plotCommand'],
      ['plot', 'plotJob = (', 'figuresCommand'],
      ['figures', 'figuresJob = (', 'plotCommand'],
    ] as const) {
      const program = readFileSync(join(root(), 'dist', `${name}.cjs`), 'utf8')
      // names and lines as they were written, and no place of the machine that built it
      expect(program).toContain(`var ${own}`)
      for (const place of [root(), await builtOnce(), process.cwd()]) expect(program).not.toContain(place)
      // half of what all commands take
      if (other) expect(program).not.toContain(other)
    }
  })

  it.each(['booklet', 'figures', 'plot'] as const)('says the same of %s in either file', async (command) => {
    const asked = [['--help'], [], ['--hlep'], ['none.yaml', 'two.yaml'], ['none.yaml']]
    const lines = asked.map((args) => [command, ...args])
    const whole = await asMany('program', lines)
    expect(whole).toHaveLength(asked.length)
    for (const { out, err } of whole) expect(`${out}${err}`).not.toBe('')
    expect(await asMany(command, lines)).toEqual(whole)
    // the one as it is started
    const [{ exit, out, err }] = [whole[1]!]
    const started = spawnSync(process.execPath, [join(root(), 'dist', `${command}.cjs`), command], {
      encoding: 'utf8',
    })
    expect([started.status, started.stdout, started.stderr]).toEqual([exit, out, err])
  })

  it('draws the picture that figures in their own file cannot', async () => {
    const picture = join(work('picture'), 'ramp.svg')
    const said = await traceply(['figures', template('quarter-mm'), '--picture', picture])
    expect([said.exit, said.err]).toEqual([0, ''])
    expect(said.out).toBe((await inProcess('figures', template('quarter-mm'))).out)
    expect(readFileSync(picture, 'utf8')).toMatch(/^<svg /)
  })

  it('runs as it is now, whatever was kept of another one', () => {
    const alone = mkdtempSync(join(tmpdir(), 'traceply-alone-'))
    const env = { ...process.env, NODE_COMPILE_CACHE: join(alone, 'kept') }
    const [program, code] = ['program.cjs', 'program.code'].map((name) => join(alone, name)) as [
      string,
      string,
    ]
    const said = (...node: readonly string[]): string =>
      execFileSync(process.execPath, [...node, join(alone, 'traceply.cjs'), 'new', 'quarter'], {
        encoding: 'utf8',
        env,
      })
    const tag = versionTag()
    /** As the build seals what V8 made. */
    const sealed = (made: Buffer): Buffer => {
      const seal = Buffer.alloc(4)
      seal.writeUInt32LE(sealOf(made, readFileSync(program), tag))
      return Buffer.concat([seal, made])
    }
    try {
      for (const name of ['traceply.cjs', 'program.cjs', 'program.code'])
        copyFileSync(join(root(), 'dist', name), join(alone, name))
      const whole = said()
      expect(said()).toBe(whole)
      const good = readFileSync(code)
      const made = good.subarray(4)
      expect(sealed(made).equals(good)).toBe(true)
      // other flags are another V8
      expect(said('--no-lazy')).toBe(whole)
      // of the same length
      const text = readFileSync(program, 'utf8')
      const changed = text.replaceAll('outside to outside of the sides', 'outside to OUTSIDE of the sides')
      expect(changed).not.toBe(text)
      writeFileSync(program, changed)
      const now = whole.replace('outside to outside of the sides', 'outside to OUTSIDE of the sides')
      expect(said()).toBe(now)
      // V8 does take what is sealed, though it was made of another text: without the seal it would have above
      writeFileSync(code, sealed(made))
      expect(said()).toBe(whole)
      const torn = Buffer.from(made)
      for (let i = 500; i < torn.length; i += 997) torn[i]! ^= 4
      for (const bad of [
        Buffer.concat([good.subarray(0, 4), torn]),
        good.subarray(0, -1),
        good.subarray(0, 40),
        Buffer.alloc(0),
        Buffer.alloc(good.length, 'no code'),
        // whole, of this text, and of no V8
        sealed(Buffer.alloc(made.length, 'no code')),
        sealed(Buffer.alloc(0)),
      ]) {
        writeFileSync(code, bad)
        expect(said()).toBe(now)
      }
      rmSync(code)
      expect(said()).toBe(now)
      // what Node keeps by itself is damaged
      for (const name of readdirSync(alone, { recursive: true, encoding: 'utf8' })) {
        const path = join(alone, name)
        if (!name.startsWith('kept') || !statSync(path).isFile()) continue
        const bytes = readFileSync(path)
        writeFileSync(
          path,
          bytes.map((b, i) => (i % 997 === 500 ? b ^ 4 : b)),
        )
      }
      expect(said()).toBe(now)
    } finally {
      rmSync(alone, { recursive: true })
    }
  })
})
