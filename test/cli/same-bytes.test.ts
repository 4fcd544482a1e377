import { execFile } from 'node:child_process'
import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import { templates } from '../support/templates.ts'
import { figuresOf, traceply as inProcess } from '../support/traceply.ts'
import { useBuilt } from './built.ts'

const { root, work, traceply } = useBuilt()
const template = (name: string): string => join(root(), 'templates', `${name}.yaml`)

describe('same input, same bytes', () => {
  const places = [
    { name: 'a', env: { TZ: 'Pacific/Kiritimati', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' } },
    { name: 'deep/er', env: { TZ: 'America/Los_Angeles', LANG: 'tr_TR.UTF-8', LC_ALL: 'C', COLUMNS: '40' } },
  ] as const
  type Place = (typeof places)[number]

  /** The set, the plan and the figures, with the design in a folder of its own. */
  const asked = (name: string, place: string) => {
    const cwd = work(`same/${place}`)
    const [design, out] = [join(cwd, `${name}.yaml`), join(cwd, `${name}.pdf`)]
    cpSync(template(name), design)
    return {
      cwd,
      out,
      lines: [
        ['plot', design, '--out', out, '--json', '--force'],
        ['figures', design, '--json'],
        ['figures', design],
      ],
    }
  }
  interface Said {
    readonly exit: number | null
    readonly out: string
  }
  const alike = (said: readonly Said[], there: readonly Said[], out: string, thereOut: string): void => {
    expect(said.map(({ exit }) => exit)).toEqual([0, 0, 0])
    expect(there.map(({ exit }) => exit)).toEqual([0, 0, 0])
    expect(there.map((one) => one.out)).toEqual(said.map((one) => one.out))
    expect(readFileSync(thereOut).equals(readFileSync(out))).toBe(true)
  }
  const here = async (name: string) => {
    const { lines, out } = asked(name, 'here')
    const [plot, ...figures] = lines
    const said: Said[] = [await inProcess(...plot!)]
    for (const [, design, ...json] of figures) said.push(await figuresOf(design!, ...(json as '--json'[])))
    return { said, out }
  }

  // an inch file and one in mm, each command in a process of its own
  it.each([
    ['quarter-in', places[0]],
    ['quarter-mm', places[1]],
  ] as const)(
    '%s in other processes, folders, time zones and languages; the sources say what is shipped',
    async (name, where) => {
      const { said, out } = await here(name)
      const there = asked(name, where.name)
      const ran: Said[] = []
      for (const args of there.lines) ran.push(await traceply(args, { cwd: there.cwd, env: where.env }))
      alike(said, ran, out, there.out)
    },
  )

  /** The shipped program asked for all templates in one process: its own code, but for the call that begins it. */
  const many = String.raw`
    const [program, ...names] = process.argv.slice(2)
    const text = require('node:fs').readFileSync(program, 'utf8')
    const begun = text.replace(/\nstart\(commands\d*\);\n$/, (call) => '\nmodule.exports = { run: (...said) => runAmong(' + call.slice(7, -3) + ', ...said) };\n')
    if (begun === text) throw new Error('where does it begin?')
    const shipped = new (require('node:module'))(program)
    shipped.paths = module.paths
    shipped._compile(begun, program)
    const ask = async (args) => {
      let out = ''
      const exit = await shipped.exports.run(args, { out: (said) => { out += said }, err: () => {} })
      return { exit, out }
    }
    const all = async () => {
      const said = []
      for (const args of JSON.parse(names[0])) said.push(await ask(args))
      process.stdout.write(JSON.stringify(said))
    }
    all()
  `
  const manyAt = new Map<Place, Promise<ReadonlyMap<string, readonly Said[]>>>()
  const saidAt = (where: Place): Promise<ReadonlyMap<string, readonly Said[]>> => {
    const before = manyAt.get(where)
    if (before) return before
    const script = join(work(), 'many.cjs')
    writeFileSync(script, many)
    const all = templates.map((name) => asked(name, where.name))
    const args = [join(root(), 'dist', 'program.cjs'), JSON.stringify(all.flatMap(({ lines }) => lines))]
    const env = { PATH: process.env.PATH, HOME: root(), ...where.env }
    const now = promisify(execFile)(process.execPath, [script, ...args], {
      cwd: all[0]!.cwd,
      env,
      maxBuffer: 2 ** 28,
    }).then(({ stdout }) => {
      const said: readonly Said[] = JSON.parse(stdout)
      return new Map(templates.map((name, i) => [name, said.slice(3 * i, 3 * i + 3)]))
    })
    manyAt.set(where, now)
    return now
  }

  it.each(templates.map((name) => [name] as const))(
    '%s in two other places, by the shipped program',
    async (name) => {
      const { said, out } = await here(name)
      for (const where of places)
        alike(said, (await saidAt(where)).get(name)!, out, join(work(`same/${where.name}`), `${name}.pdf`))
    },
  )
})
