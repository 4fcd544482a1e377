import { cpSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { templates } from '../support/templates.ts'
import { figuresOf, traceply as inProcess } from '../support/traceply.ts'
import { type Ran, useBuilt } from './built.ts'

const { root, work, traceply, asMany } = useBuilt()
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
  type Said = Pick<Ran, 'exit' | 'out'>
  const alike = (said: readonly Said[], there: readonly Said[], out: string, thereOut: string): void => {
    expect(said.length).toBeGreaterThan(1)
    for (const { exit } of [...said, ...there]) expect(exit).toBe(0)
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
  /** Of the three lines of a design those that a place is asked: pages everywhere, figures as JSON in the one, in words in the other. */
  const linesAt = ({ name }: Place): readonly number[] => [0, name === places[0].name ? 1 : 2]

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

  const manyAt = new Map<Place, Promise<ReadonlyMap<string, readonly Said[]>>>()
  const saidAt = (where: Place): Promise<ReadonlyMap<string, readonly Said[]>> => {
    const before = manyAt.get(where)
    if (before) return before
    const all = templates.map((name) => asked(name, where.name))
    const lines = all.flatMap(({ lines }) => linesAt(where).map((line) => lines[line]!))
    const now = asMany('program', lines, { cwd: all[0]!.cwd, env: where.env }).then((said) => {
      const each = linesAt(where).length
      return new Map(templates.map((name, i) => [name, said.slice(each * i, each * (i + 1))]))
    })
    manyAt.set(where, now)
    return now
  }

  it.each(templates.map((name) => [name] as const))(
    '%s in two other places, by the shipped program',
    async (name) => {
      const { said, out } = await here(name)
      for (const where of places) {
        const own = linesAt(where).map((line) => said[line]!)
        alike(own, (await saidAt(where)).get(name)!, out, join(work(`same/${where.name}`), `${name}.pdf`))
      }
    },
  )
})
