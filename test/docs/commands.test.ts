import { describe, expect, it } from 'vitest'
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
const names = (said: string, part: 'Commands' | 'Options'): readonly string[] => {
  const from = said.indexOf(`${part}:\n`)
  const lines = from < 0 ? [] : said.slice(from).split('\n').slice(1)
  const end = lines.findIndex((line) => line.trim() === '')
  return lines
    .slice(0, end < 0 ? undefined : end)
    .flatMap((line) => /^ {2}(?:-\w, )?([\w-]+)/.exec(line)?.[1] ?? [])
    .filter((name) => name !== 'help' && name !== '--help' && name !== '--version')
}

const commands = names(await help(), 'Commands')

/** The README's part about a command. */
const section = (command: string): string | undefined => {
  const parts = readme.prose.split(/^### /m)
  return parts.find((part) => part.startsWith(`\`traceply ${command}`))?.split(/^## /m)[0]
}

describe('the commands of the README', () => {
  it('are those of --help', () => {
    const told = [...readme.prose.matchAll(/^### `traceply ([\w-]+)/gm)].map((match) => match[1])
    expect(told).toEqual(commands)
  })

  it.each(commands)('%s has all of its options in its table, and no other', async (command) => {
    const own = names(await help(command), 'Options')
    const told = [...section(command)!.matchAll(/^\| `(--[\w-]+)/gm)].map((match) => match[1])
    expect([...told].sort()).toEqual([...own].sort())
  })

  it.each(commands)('%s tells the words that an option takes', async (command) => {
    const said = (await help(command)).replace(/\s+/g, ' ')
    const text = section(command)!
    for (const word of [
      'whole',
      'line',
      'ribbon',
      'letter',
      'legal',
      'tabloid',
      'a4',
      'a3',
      'a2',
      'a1',
      'a0',
    ])
      if (new RegExp(`[ :;]${word}[:,; ]`).test(said) && /--(paper|cover)/.test(said))
        expect(text, word).toContain(`\`${word}\``)
  })
})

describe('no page', () => {
  it('names a command or an option that there is not', async () => {
    const options = new Set(
      (await Promise.all(commands.map((c) => help(c)))).flatMap((said) => names(said, 'Options')),
    )
    for (const { path, text } of builderPages) {
      for (const [, command] of text.matchAll(/(?:`traceply|traceply\.cjs) ([a-z][\w-]*)/g))
        expect(commands, `${path}: traceply ${command}`).toContain(command)
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
