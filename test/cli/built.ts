import { execFile, execFileSync, spawn } from 'node:child_process'
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import { crc32 } from 'node:zlib'
import { afterAll, beforeAll } from 'vitest'
import { isFresh, sources } from '../support/fresh.ts'
import { madeOnce } from '../support/made-once.ts'

export interface Ran {
  readonly exit: number | null
  readonly signal: string | null
  readonly out: string
  readonly err: string
}

export interface RunOptions {
  readonly cwd?: string
  readonly env?: NodeJS.ProcessEnv
  /** of Node, before the program */
  readonly node?: readonly string[]
  /** a file handle in place of a pipe for standard output; `closed`: a reader that goes away at once */
  readonly stdout?: number | 'closed'
}

/** A shipped program asked many times in one process: its own code, but for the call that begins it. */
const many = String.raw`
  const [program, lines] = process.argv.slice(2)
  const text = require('node:fs').readFileSync(program, 'utf8')
  const begun = text.replace(/\nstart\((commands\d*|\[\w+\])\);\n$/, '\nmodule.exports = { run: (...said) => runAmong($1, ...said) };\n')
  if (begun === text) throw new Error('where does it begin?')
  const shipped = new (require('node:module'))(program)
  shipped.paths = module.paths
  shipped._compile(begun, program)
  const ask = async (args) => {
    const said = { out: '', err: '' }
    const shell = Object.fromEntries(Object.keys(said).map((where) => [where, (words) => { said[where] += words }]))
    const exit = await shipped.exports.run(args, shell)
    return { exit, ...said }
  }
  const all = async () => {
    const said = []
    for (const args of JSON.parse(lines)) said.push(await ask(args))
    process.stdout.write(JSON.stringify(said))
  }
  all()
`

/** What a fresh clone holds after its install, in a folder where nothing that is run can touch the project. */
export const buildIn = async (folder: string): Promise<void> => {
  const built = await builtOnce()
  cloneIn(folder)
  cpSync(join(built, 'dist'), join(folder, 'dist'), { recursive: true })
}

/** What V8 says of itself, of this Node as it is started: a worker's own has the flags of whatever was tested in it before. */
export const versionTag = (): number =>
  Number(execFileSync(process.execPath, ['-p', 'v8.cachedDataVersionTag()'], { encoding: 'utf8' }))

/** The seal of what V8 made of a program's text. */
export const sealOf = (made: Buffer, text: Buffer, tag: number): number => crc32(made, crc32(text, tag))

/** Whether what V8 made lies in `dist` and is of this Node: another one may have built it. */
const isOwn = (): boolean => {
  if (!existsSync('dist/program.code')) return false
  const kept = readFileSync('dist/program.code')
  return kept.readUInt32LE() === sealOf(kept.subarray(4), readFileSync('dist/program.cjs'), versionTag())
}

/** The folder in which the program is built once for all workers. */
export const builtOnce = (): Promise<string> =>
  madeOnce('clone', (folder) => {
    cloneIn(folder)
    if (!isFresh()) return void execFileSync('npm', ['run', 'build', '--silent'], { cwd: folder })
    cpSync('dist', join(folder, 'dist'), { recursive: true })
    if (!isOwn()) execFileSync(process.execPath, ['.build-code.cjs'], { cwd: folder })
  })

const cloneIn = (folder: string): void => {
  for (const name of [...sources, 'templates'])
    if (name !== 'src') cpSync(name, join(folder, name), { recursive: true })
  for (const name of ['src', 'node_modules']) symlinkSync(resolve(name), join(folder, name))
}

/** The package as a builder has it, in a folder of its own, so that tests at the same time do not share `dist`. */
export const useBuilt = () => {
  let root = ''
  beforeAll(async () => {
    root = mkdtempSync(join(tmpdir(), 'traceply-built-'))
    await buildIn(root)
    mkdirSync(join(root, 'work'))
  })
  afterAll(() => rmSync(root, { recursive: true, force: true }))
  return {
    root: (): string => root,
    /** a folder to work in, made where it is not there */
    work: (name = ''): string => {
      const path = join(root, 'work', name)
      mkdirSync(path, { recursive: true })
      return path
    },
    /** Lines one after the other in one process: a process costs a third of a second, most lines far less. */
    asMany: async (
      program: 'booklet' | 'figures' | 'plot' | 'program',
      lines: readonly (readonly string[])[],
      { cwd = join(root, 'work'), env = {} }: Pick<RunOptions, 'cwd' | 'env'> = {},
    ): Promise<readonly Pick<Ran, 'exit' | 'out' | 'err'>[]> => {
      const script = join(root, 'many.cjs')
      writeFileSync(script, many)
      const { stdout } = await promisify(execFile)(
        process.execPath,
        [script, join(root, 'dist', `${program}.cjs`), JSON.stringify(lines)],
        { cwd, env: { PATH: process.env.PATH, HOME: root, ...env }, maxBuffer: 2 ** 28 },
      )
      return JSON.parse(stdout)
    },
    traceply: (
      args: readonly string[],
      { cwd = join(root, 'work'), env = {}, node = [], stdout = -1 }: RunOptions = {},
    ) =>
      new Promise<Ran>((done, failed) => {
        const child = spawn(process.execPath, [...node, join(root, 'dist', 'traceply.cjs'), ...args], {
          cwd,
          env: { PATH: process.env.PATH, HOME: root, ...env },
          stdio: ['ignore', typeof stdout === 'number' && stdout >= 0 ? stdout : 'pipe', 'pipe'],
        })
        let [out, err] = ['', '']
        child.stdout?.setEncoding('utf8').on('data', (text) => {
          out += text
        })
        if (stdout === 'closed') child.stdout?.destroy()
        child.stderr?.setEncoding('utf8').on('data', (text) => {
          err += text
        })
        child.on('error', failed)
        child.on('close', (exit, signal) => done({ exit, signal, out, err }))
      }),
  }
}
