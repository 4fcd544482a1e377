import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { pages, root } from './pages.ts'

interface Named {
  readonly name: string
  /** from the top of the project, or the end of that */
  readonly file: string
}

/** `` `stop`, `warn` or `note` of `src/ramp/check/check.ts` ``: names, and the file that they are of. */
const namedIn = (text: string): readonly Named[] =>
  [...text.matchAll(/(`\w+`(?:(?:,| or| and) `\w+`)*) (?:of|in) `([\w./-]+\.tsx?)`/g)].flatMap(
    ([, names, file]) => [...names!.matchAll(/`(\w+)`/g)].map(([, name]) => ({ name: name!, file: file! })),
  )

const files: readonly string[] = [
  '.vitest.config.ts',
  ...['src', 'test'].flatMap((folder) =>
    readdirSync(root + folder, { recursive: true, encoding: 'utf8' })
      .map((name) => `${folder}/${name.split('\\').join('/')}`)
      .filter((path) => /\.tsx?$/.test(path)),
  ),
]

const defines = (path: string, name: string): boolean =>
  new RegExp(`^\\s*(?:export )?(?:async )?(?:const|function|interface|type|class) ${name}\\b`, 'm').test(
    readFileSync(root + path, 'utf8'),
  )

const isThere = ({ name, file }: Named): boolean =>
  files.some((path) => (path === file || path.endsWith(`/${file}`)) && defines(path, name))

it('names that a page gives a file stand in that file', () => {
  const named = pages.flatMap(({ text }) => namedIn(text))
  expect(named.length).toBeGreaterThan(20)
  expect(named.filter((one) => !isThere(one))).toEqual([])
})

it('and a name of another file would be found', () => {
  const [stop, note, moved] = namedIn(
    '`stop` or `note` of `src/ramp/check/check.ts`, `note` in `src/ramp/solve.ts`',
  )
  expect([stop, note, moved].map((one) => isThere(one!))).toEqual([true, true, false])
})
