import { describe, expect, it } from 'vitest'
import { optionTable } from '../../src/cli/command.ts'
import { commands } from '../../src/cli/commands.ts'
import { run } from '../../src/cli/run.ts'
import { builderPages, pages, readme, scripts } from './pages.ts'

const help = async (...args: readonly string[]): Promise<string> => {
  let said = ''
  const exit = await run([...args, '--help'], {
    out: (text) => {
      said += text
    },
    err: () => {},
  })
  expect(exit).toBe(0)
  return said
}

/** Names at the start of the lines of a part of the help. */
const told = (said: string, part: 'Commands' | 'Options'): readonly string[] => {
  const from = said.indexOf(`${part}:\n`)
  const lines = from < 0 ? [] : said.slice(from).split('\n').slice(1)
  const end = lines.findIndex((line) => line.trim() === '')
  return lines
    .slice(0, end < 0 ? undefined : end)
    .flatMap((line) => /^ {2}(?:-\w, )?([\w-]+)/.exec(line)?.[1] ?? [])
}

const names = commands.map(({ name }) => name)

/** The README with each command's table of options as the rows of the command say it. */
const withTables = (text: string): string =>
  commands.reduce((page, command) => {
    const from = page.indexOf(`### \`traceply ${command.name}`)
    const next = page.slice(from + 4).search(/^#{2,3} /m)
    const end = from + 4 + next
    const section = page.slice(from, end)
    const table = /^\| option \| does \|\n(?:\|.*\n)+/m
    expect(section, `${command.name} has a part of its own with a table`).toMatch(table)
    return page.slice(0, from) + section.replace(table, () => `${optionTable(command)}\n`) + page.slice(end)
  }, text)

describe('the table of commands', () => {
  it('has one place for each, in the order of --help', async () => {
    expect(new Set(names).size).toBe(names.length)
    expect(told(await help(), 'Commands').filter((name) => name !== 'help')).toEqual(names)
  })

  it.each(commands)('$name: --help tells its options, each once, and no other', async (command) => {
    const own = command.options.map(({ name }) => `--${name}`)
    expect(new Set(own).size).toBe(own.length)
    expect(told(await help(command.name), 'Options')).toEqual([...own, '--help'])
  })

  it('is what the README says, in its order', async () => {
    const parts = [...readme.prose.matchAll(/^### `traceply ([\w-]+)/gm)].map((match) => match[1])
    expect(parts).toEqual(names)
    await expect(withTables(readme.text)).toMatchFileSnapshot('../../README.md')
  })
})

describe('no page', () => {
  it('names a command or an option that there is not', () => {
    const options = commands.flatMap((command) => command.options.map(({ name }) => `--${name}`))
    for (const { path, text } of builderPages) {
      for (const [, command] of text.matchAll(/(?:`traceply|traceply\.cjs) ([a-z][\w-]*)/g))
        expect(names, `${path}: traceply ${command}`).toContain(command)
      for (const [, option] of text.matchAll(/`(--[a-z][\w-]*)/g))
        expect([...options, '--help', '--version'], `${path}: ${option}`).toContain(option)
    }
  })

  it('tells of an npm script that there is not', () => {
    for (const { path, text } of pages)
      for (const [, script] of text.matchAll(/\bnpm run ([\w-]+)/g))
        expect(Object.keys(scripts), `${path}: npm run ${script}`).toContain(script)
  })
})
