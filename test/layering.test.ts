import { readdirSync, readFileSync } from 'node:fs'
import { builtinModules } from 'node:module'
import { join, posix } from 'node:path'
import { transformSync } from 'esbuild'
import { describe, expect, test } from 'vitest'

interface Source {
  /** from src, with `/` */
  readonly path: string
  readonly text: string
}

/** From the ground up; folders of one row do not know each other. A folder may import those of the rows below it. */
const rows = [
  ['geometry'],
  ['length'],
  ['drawing'],
  ['design'],
  ['ramp'],
  ['stock', 'pattern'],
  ['printer'],
  ['page'],
  ['booklet'],
  ['cli'],
] as const

/** Beside the rows: what they may import is said in full. */
const aside: Readonly<Record<string, readonly string[]>> = {
  write: ['geometry', 'drawing'],
  read: ['geometry', 'drawing'],
  // the library's public names: everything but the shell
  index: [...rows.flat().filter((name) => name !== 'cli'), 'write', 'read'],
}

const dependencies: readonly string[] = Object.keys(
  JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).dependencies,
)
const packages: Readonly<Record<string, readonly string[]>> = {
  design: ['yaml'],
  write: ['pdf-lib'],
  read: ['pdf-lib'],
  cli: dependencies,
}

/** Files that are tables, and so may be long. */
const tables = ['design/schema.ts', 'drawing/helvetica.ts']
const mostLines = 300

const folderOf = (path: string): string => path.split('/')[0]!.replace(/\.ts$/, '')

const mayImport = (from: string): readonly string[] | null => {
  if (aside[from]) return [from, ...aside[from]]
  const row = rows.findIndex((names) => (names as readonly string[]).includes(from))
  if (row < 0) return null
  const below = rows.slice(0, row).flat()
  return from === 'cli' ? [from, ...below, 'write', 'read'] : [from, ...below]
}

/** Every module that a source names: imports, exports from elsewhere, imports for the side effect, `import()`, `require()`. */
const importsOf = (text: string): readonly string[] =>
  [
    /^\s*(?:import|export)\b[^'"`;]*?\bfrom\s*(['"])(.+?)\1/gm,
    /^\s*import\s*(['"])(.+?)\1/gm,
    /\b(?:import|require)\s*\(\s*(['"`])(.+?)\1/g,
  ].flatMap((form) => [...text.matchAll(form)].map((match) => match[2]!))

const isBuiltin = (name: string): boolean => name.startsWith('node:') || builtinModules.includes(name)
const packageOf = (name: string): string =>
  name
    .split('/')
    .slice(0, name.startsWith('@') ? 2 : 1)
    .join('/')

const importFaults = ({ path, text }: Source): readonly string[] => {
  const folder = folderOf(path)
  const allowed = mayImport(folder)
  if (!allowed) return [`${path}: the folder ${folder} has no place in the order`]
  return importsOf(text).flatMap((name) => {
    if (name.startsWith('.')) {
      const target = posix.normalize(posix.join(posix.dirname(path), name))
      if (target.startsWith('..'))
        return target === '../package.json' && folder === 'cli'
          ? []
          : [`${path}: imports ${name}, outside src`]
      return allowed.includes(folderOf(target)) ? [] : [`${path}: ${folder} may not import ${target}`]
    }
    if (isBuiltin(name))
      return folder === 'cli' ? [] : [`${path}: imports ${name}; only cli knows the platform`]
    return packages[folder]?.includes(packageOf(name))
      ? []
      : [`${path}: ${folder} may not import the package ${name}`]
  })
}

/** What a pure core does not touch. */
const impure: readonly (readonly [string, RegExp])[] = [
  ['process', /\bprocess\s*[.[]/],
  ['console', /\bconsole\s*[.[]/],
  ['Date', /(?<!['"])\bDate\b(?!['"])/],
  ['Math.random', /\bMath\s*\.\s*random\b/],
  ['globalThis', /\bglobalThis\b/],
  ['a timer', /\b(?:setTimeout|setInterval|setImmediate|performance)\b/],
]

/** Comments and types are gone; statements of the module itself start at the line's start. */
const plainCode = (text: string): string =>
  transformSync(text, { loader: 'ts', target: 'es2022', legalComments: 'none' }).code

const codeFaults = ({ path, text }: Source): readonly string[] => {
  const code = plainCode(text)
  const inner = folderOf(path) !== 'cli'
  return [
    ...impure
      .filter(([, form]) => inner && form.test(code))
      .map(([name]) => `${path}: mentions ${name}; only cli knows the platform`),
    ...(/^(?:export )?(?:let|var)\s/m.test(code) ? [`${path}: a \`let\` at the level of the module`] : []),
  ]
}

const shapeFaults = ({ path, text }: Source): readonly string[] => {
  const lines = text.trimEnd().split('\n').length
  return [
    ...(lines >= mostLines && !tables.includes(path)
      ? [`${path}: ${lines} lines; split at ${mostLines}`]
      : []),
    ...(/(?:^|[/.-])(?:utils?|helpers?|misc|common)(?:[/.-]|$)/.test(path)
      ? [`${path}: a name that says nothing`]
      : []),
  ]
}

const faultsOf = (sources: readonly Source[]): readonly string[] =>
  sources.flatMap((source) => [...importFaults(source), ...codeFaults(source), ...shapeFaults(source)])

const src = new URL('../src', import.meta.url).pathname
const own: readonly Source[] = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ path: name.split('\\').join('/'), text: readFileSync(join(src, name), 'utf8') }))

describe('the sources', () => {
  test('keep the order, the purity and the size that the design asks for', () => {
    expect(own.length).toBeGreaterThan(60)
    expect(faultsOf(own)).toEqual([])
  })

  test('have every file that is excused for its length', () => {
    for (const table of tables) expect(own.map(({ path }) => path)).toContain(table)
  })

  test('are read: the solver is seen to import the geometry and the design', () => {
    const quarter = own.find(({ path }) => path === 'ramp/kinds/quarter.ts')!
    expect(importsOf(quarter.text)).toContain('../../design/design.ts')
    const all = new Set(own.flatMap(({ text }) => importsOf(text)))
    for (const name of ['yaml', 'pdf-lib', 'commander']) expect([...all]).toContain(name)
  })
})

describe('a broken rule is found', () => {
  const faults = (path: string, text: string): readonly string[] => faultsOf([{ path, text }])

  test.each([
    ['geometry/arc.ts', "import { x } from '../length.ts'", 'geometry may not import length.ts'],
    [
      'drawing/text.ts',
      "import type { Design } from '../design/design.ts'",
      'drawing may not import design/design.ts',
    ],
    ['design/read.ts', "import { solve } from '../ramp/solve.ts'", 'design may not import ramp/solve.ts'],
    [
      'ramp/kinds/bank.ts',
      "import { p } from '../../pattern/side.ts'",
      'ramp may not import pattern/side.ts',
    ],
    ['stock/cut.ts', "import { p } from '../pattern/side.ts'", 'stock may not import pattern/side.ts'],
    ['pattern/side.ts', "import { cut } from '../stock/cut.ts'", 'pattern may not import stock/cut.ts'],
    ['page/set.ts', "import { book } from '../booklet/book.ts'", 'page may not import booklet/book.ts'],
    ['booklet/book.ts', "import { run } from '../cli/run.ts'", 'booklet may not import cli/run.ts'],
    ['write/pdf.ts', "import type { Ramp } from '../ramp/ramp.ts'", 'write may not import ramp/ramp.ts'],
    ['write/pdf.ts', "import { showLength } from '../length.ts'", 'write may not import length.ts'],
    ['read/pdf.ts', "import { w } from '../write/pdf.ts'", 'read may not import write/pdf.ts'],
    ['page/set.ts', "import { w } from '../write/pdf.ts'", 'page may not import write/pdf.ts'],
    ['index.ts', "export { run } from './cli/run.ts'", 'index may not import cli/run.ts'],
    ['page/set.ts', "import {\n  a,\n  b,\n} from '../cli/run.ts'", 'page may not import cli/run.ts'],
    ['page/set.ts', "export * from '../cli/run.ts'", 'page may not import cli/run.ts'],
    ['page/set.ts', "import '../cli/run.ts'", 'page may not import cli/run.ts'],
    ['page/set.ts', "const f = () => import('../cli/run.ts')", 'page may not import cli/run.ts'],
    ['extra/new.ts', 'export const x = 1', 'the folder extra has no place in the order'],
    ['design/read.ts', "import pack from '../../package.json'", 'imports ../../package.json, outside src'],
    ['page/set.ts', "import { readFileSync } from 'node:fs'", 'imports node:fs; only cli knows the platform'],
    ['page/set.ts', "import { readFileSync } from 'fs'", 'imports fs; only cli knows the platform'],
    ['page/set.ts', "const fs = require('fs/promises')", 'imports fs/promises; only cli knows the platform'],
    ['ramp/solve.ts', "import { parse } from 'yaml'", 'ramp may not import the package yaml'],
    [
      'page/set.ts',
      "import { PDFName } from 'pdf-lib/cjs/core'",
      'page may not import the package pdf-lib/cjs/core',
    ],
    ['design/read.ts', "import { Command } from 'commander'", 'design may not import the package commander'],
    ['cli/run.ts', "import { test } from 'vitest'", 'cli may not import the package vitest'],
    [
      'ramp/solve.ts',
      'export const f = () => process.env.HOME',
      'mentions process; only cli knows the platform',
    ],
    [
      'ramp/solve.ts',
      "export const f = () => console.log('x')",
      'mentions console; only cli knows the platform',
    ],
    ['ramp/solve.ts', 'export const f = () => new Date()', 'mentions Date; only cli knows the platform'],
    ['ramp/solve.ts', 'export const f = () => Date.now()', 'mentions Date; only cli knows the platform'],
    [
      'ramp/solve.ts',
      'export const f = () => Math.random()',
      'mentions Math.random; only cli knows the platform',
    ],
    ['ramp/solve.ts', 'let count = 0\nexport const f = () => count++', 'a `let` at the level of the module'],
    ['ramp/solve.ts', 'export let count = 0', 'a `let` at the level of the module'],
    ['cli/run.ts', 'var count = 0\nexport const f = () => count++', 'a `let` at the level of the module'],
    ['ramp/solve.ts', 'export const x = [\n0,'.concat('\n0,'.repeat(298), ']'), '300 lines; split at 300'],
    ['ramp/utils.ts', 'export const x = 1', 'a name that says nothing'],
    ['page/tile-helpers.ts', 'export const x = 1', 'a name that says nothing'],
    ['common/x.ts', 'export const x = 1', 'a name that says nothing'],
  ])('%s (case %#)', (path, text, fault) => {
    expect(faults(path, text)).toContain(`${path}: ${fault}`)
  })

  test.each([
    ['geometry/arc.ts', "import { point } from './point.ts'"],
    [
      'ramp/kinds/quarter.ts',
      "import type { Units } from '../../design/design.ts'\nimport { showLength } from '../../length.ts'",
    ],
    ['printer/gauge.ts', "import { square } from '../pattern/square.ts'"],
    [
      'cli/run.ts',
      "import { Command } from 'commander'\nimport { readFileSync } from 'node:fs'\nimport { pdf } from '../write/pdf.ts'",
    ],
    ['write/pdf.ts', "import { PDFName } from 'pdf-lib'\nimport { segmentAt } from '../geometry/at.ts'"],
    // words in comments, types and names are no use of the platform
    [
      'ramp/solve.ts',
      "// console.log(process.env, Date.now(), Math.random())\nexport const processed = 'CreationDate'",
    ],
    ['ramp/solve.ts', 'export const f = () => {\n  let count = 0\n  return ++count\n}'],
    ['ramp/solve.ts', `export const x = [${'\n0,'.repeat(297)}\n]`],
    ['design/schema.ts', `export const x = [${'\n0,'.repeat(500)}\n]`],
  ])('and nothing is found in %s (case %#)', (path, text) => {
    expect(faults(path, text)).toEqual([])
  })
})
