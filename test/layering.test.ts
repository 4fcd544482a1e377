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
  ['drafting', 'design'],
  ['ramp'],
  ['stock', 'pattern'],
  ['printer'],
  ['page'],
  ['booklet'],
  ['job'],
  ['cli', 'web'],
] as const

/** They touch the platform; all else is pure. */
const shells: readonly string[] = ['cli', 'web']

/** Beside the rows: what they may import is said in full. */
const aside: Readonly<Record<string, readonly string[]>> = {
  write: ['geometry', 'drawing'],
  read: ['geometry', 'drawing'],
  // the library's public names: everything but the shell
  index: [...rows.flat().filter((name) => !shells.includes(name)), 'write', 'read'],
  // the page in a browser sees the public names alone
  web: ['index'],
}

/**
 * Rooms of a folder from the ground up, with a row for each: a file imports those of its own room and of the rooms below. `.` is
 * what lies in the folder itself, but for the files that a row names: they are a room together.
 */
const rooms: Readonly<Record<string, readonly (readonly string[])[]>> = {
  geometry: [['.'], ['polygon']],
  drafting: [['.'], ['dimension', 'hatch']],
  design: [['.'], ['file'], ['check'], ['edit.ts', 'edit-ramps.ts', 'asks.ts', 'read.ts', 'resolve.ts']],
  ramp: [
    ['curve', 'check'],
    ['side'],
    ['frame'],
    ['splice'],
    ['skin'],
    ['screws'],
    ['.'],
    ['storing'],
    ['beside', 'hazard', 'match'],
    ['kinds'],
    ['solve.ts'],
  ],
  stock: [['.'], ['panel', 'timber'], ['list'], ['stock.ts', 'stock-figures.ts']],
  pattern: [['.'], ['lip']],
  page: [
    ['sheet', 'room'],
    ['cover'],
    ['tile'],
    ['timber', 'ruler'],
    ['proof'],
    ['parts'],
    ['pages'],
    ['set'],
  ],
  booklet: [['.'], ['cuts', 'list', 'offsets'], ['views'], ['book']],
  job: [['.'], ['settle', 'proving'], ['choose', 'figures.ts'], ['near']],
  write: [
    ['.'],
    ['type'],
    ['raster'],
    ['pdf.ts', 'pdf-content.ts', 'pdf-fonts.ts', 'pdf-forms.ts', 'pdf-marks.ts', 'png.ts'],
  ],
  cli: [
    ['shell.ts'],
    ['words'],
    ['.'],
    ['pdf', 'process'],
    ['out-format.ts', 'pictures', 'reprint'],
    ['commands'],
    ['commands.ts', 'run.ts'],
    ['programs'],
  ],
  web: [['kept.ts', 'words'], ['worker'], ['state'], ['drawing', 'fields'], ['column'], ['.']],
}

/** Not yet so: folders that are still too full. */
const pending: { readonly full: readonly string[] } = { full: [] }

const dependencies: readonly string[] = Object.keys(
  JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).dependencies,
)
const packages: Readonly<Record<string, readonly string[]>> = {
  design: ['yaml'],
  write: ['pdf-lib'],
  read: ['pdf-lib'],
  cli: dependencies,
  // bundled into the page when it is built
  web: ['preact', 'fflate', '@noble/hashes'],
}

/** Files that are tables, and so may be long. */
const tables = ['design/schema.ts', 'drawing/typeface.ts', 'write/type/programs.ts']
const mostLines = 300
const mostFiles = 20

const folderOf = (path: string): string => path.split('/')[0]!.replace(/\.tsx?$/, '')

const mayImport = (from: string): readonly string[] | null => {
  if (aside[from]) return [from, ...aside[from]]
  const row = rows.findIndex((names) => (names as readonly string[]).includes(from))
  if (row < 0) return null
  const below = rows.slice(0, row).flat()
  return from === 'cli' || from === 'job' ? [from, ...below, 'write', 'read'] : [from, ...below]
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

/** Modules of src that a source imports, from src. */
const targetsOf = ({ path, text }: Source): readonly string[] =>
  importsOf(text)
    .filter((name) => name.startsWith('.'))
    .map((name) => posix.normalize(posix.join(posix.dirname(path), name)))

const roomOf = (path: string): string => (path.split('/').length > 2 ? path.split('/')[1]! : '.')

const roomFaults = (source: Source): readonly string[] => {
  const { path } = source
  const folder = folderOf(path)
  const order = rooms[folder]
  if (!order) return []
  const rowOf = (name: string): number => order.findIndex((names) => names.includes(name))
  const isNamed = (file: string): boolean => rowOf(posix.relative(folder, file)) >= 0
  const rank = (file: string): number => rowOf(isNamed(file) ? posix.relative(folder, file) : roomOf(file))
  const isAtHome = (target: string): boolean =>
    isNamed(path) || isNamed(target)
      ? isNamed(path) && isNamed(target) && rank(path) === rank(target)
      : roomOf(path) === roomOf(target)
  if (rank(path) < 0) return [`${path}: the room ${roomOf(path)} has no place in the order of ${folder}`]
  return targetsOf(source)
    .filter((target) => folderOf(target) === folder && !isAtHome(target) && rank(target) >= rank(path))
    .map((target) => `${path}: the room ${roomOf(path)} may not import ${target}`)
}

const fullFolders = (paths: readonly string[]): readonly string[] => {
  const folders = paths.map((path) => posix.dirname(path))
  return [...new Set(folders)].flatMap((folder) => {
    const count = folders.filter((other) => other === folder).length
    return count > mostFiles ? [`${folder}: ${count} files; make rooms from ${mostFiles + 1} on`] : []
  })
}

/** Every group of files that lead to each other (Tarjan 1972: strongly connected components). */
const circlesOf = (sources: readonly Source[]): readonly (readonly string[])[] => {
  const leads = new Map(sources.map((source) => [source.path, targetsOf(source)]))
  const [order, low] = [new Map<string, number>(), new Map<string, number>()]
  const [open, found] = [[] as string[], [] as (readonly string[])[]]
  const visit = (path: string): void => {
    order.set(path, order.size)
    low.set(path, order.get(path)!)
    open.push(path)
    for (const next of leads.get(path)!) {
      if (!leads.has(next)) continue
      if (!order.has(next)) visit(next)
      if (open.includes(next)) low.set(path, Math.min(low.get(path)!, low.get(next)!))
    }
    if (low.get(path) !== order.get(path)) return
    const group = open.splice(open.indexOf(path))
    if (group.length > 1) found.push(group.sort())
  }
  for (const { path } of sources) if (!order.has(path)) visit(path)
  return found
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
const plainCode = ({ path, text }: Source): string =>
  transformSync(text, {
    loader: path.endsWith('x') ? 'tsx' : 'ts',
    jsx: 'automatic',
    target: 'es2022',
    legalComments: 'none',
  }).code

const codeFaults = (source: Source): readonly string[] => {
  const { path } = source
  const code = plainCode(source)
  const inner = !shells.includes(folderOf(path))
  return [
    ...impure
      .filter(([, form]) => inner && form.test(code))
      .map(([name]) => `${path}: mentions ${name}; only cli knows the platform`),
    // Safari before 16.4 (March 2023) refuses the whole program for one such pattern
    ...(folderOf(path) !== 'cli' && /\(\?<[=!]/.test(code) ? [`${path}: a pattern that looks behind`] : []),
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
  sources.flatMap((source) => [
    ...importFaults(source),
    ...roomFaults(source),
    ...codeFaults(source),
    ...shapeFaults(source),
  ])

const src = new URL('../src', import.meta.url).pathname
const own: readonly Source[] = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => ({ path: name.split('\\').join('/'), text: readFileSync(join(src, name), 'utf8') }))

describe('the sources', () => {
  test('keep the order, the purity and the size that the design asks for', () => {
    expect(own.length).toBeGreaterThan(60)
    expect(faultsOf(own)).toEqual([])
  })

  test('do not import each other in a circle', () => {
    expect(circlesOf(own)).toEqual([])
  })

  test('lie in folders that one can look over', () => {
    const full = fullFolders(own.map(({ path }) => path))
    expect(full.filter((words) => !pending.full.includes(words.split(':')[0]!))).toEqual([])
    // what is not pending any more is held from then on
    for (const folder of pending.full) expect(full.map((words) => words.split(':')[0])).toContain(folder)
  })

  test('have every file that is excused for its length, and every room that has a place', () => {
    const named = Object.entries(rooms).flatMap(([folder, order]) =>
      order.flat().map((room) => (room === '.' ? folder : `${folder}/${room}`)),
    )
    const paths = own.map(({ path }) => path)
    const there = new Set([...paths, ...paths.map((path) => posix.dirname(path))])
    for (const path of [...tables, ...named]) expect([...there]).toContain(path)
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
    [
      'drafting/level.ts',
      "import type { Design } from '../design/design.ts'",
      'drafting may not import design/design.ts',
    ],
    [
      'design/read.ts',
      "import { hatch } from '../drafting/hatch/hatch.ts'",
      'design may not import drafting/hatch/hatch.ts',
    ],
    [
      'drawing/text.ts',
      "import { hatch } from '../drafting/hatch/hatch.ts'",
      'drawing may not import drafting/hatch/hatch.ts',
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
    ['length/read.ts', 'export const x = /(?<=a)b/', 'a pattern that looks behind'],
    ['ramp/solve.ts', 'export const x = [\n0,'.concat('\n0,'.repeat(298), ']'), '300 lines; split at 300'],
    [
      'page/tile/tile.ts',
      "import { d } from '../proof/datum.ts'",
      'the room tile may not import page/proof/datum.ts',
    ],
    [
      'page/sheet/sheet.ts',
      "import { w } from '../room/word-room.ts'",
      'the room sheet may not import page/room/word-room.ts',
    ],
    ['page/attic/x.ts', 'export const x = 1', 'the room attic has no place in the order of page'],
    ['page/x.ts', 'export const x = 1', 'the room . has no place in the order of page'],
    [
      'design/file/tree.ts',
      "import { r } from '../check/check.ts'",
      'the room file may not import design/check/check.ts',
    ],
    ['design/problem.ts', "import { r } from './read.ts'", 'the room . may not import design/read.ts'],
    [
      'booklet/cuts/timber-page.ts',
      "import { v } from '../views/view.ts'",
      'the room cuts may not import booklet/views/view.ts',
    ],
    [
      'job/settle/judge.ts',
      "import { f } from '../figures.ts'",
      'the room settle may not import job/figures.ts',
    ],
    ['write/svg.ts', "import { p } from './png.ts'", 'the room . may not import write/png.ts'],
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
    ['page/set/set.ts', "import { t } from '../tile/tile.ts'\nimport { d } from './draft.ts'"],
    ['design/read.ts', "import { p } from './file/parse.ts'\nimport { r } from './resolve.ts'"],
    ['job/near/near-misses.ts', "import { f } from '../figures.ts'\nimport { s } from '../settle/settle.ts'"],
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

  test('circles are found, through types and folders too, and files that only share one are none', () => {
    const source = (path: string, ...names: readonly string[]): Source => ({
      path,
      text: names.map((name) => `import type { X } from '${name}'`).join('\n'),
    })
    expect(
      circlesOf([
        source('a.ts', './b/b.ts', './d.ts'),
        source('b/b.ts', '../c.ts', '../d.ts'),
        source('c.ts', './a.ts'),
        source('d.ts', './e.ts'),
        source('e.ts'),
      ]),
    ).toEqual([['a.ts', 'b/b.ts', 'c.ts']])
    expect(circlesOf([source('a.ts', './b.ts'), source('b.ts')])).toEqual([])
  })

  test('a folder of more than 20 files is found, its rooms not counted', () => {
    const paths = Array.from({ length: 20 }, (_, i) => `page/p${i}.ts`)
    expect(fullFolders([...paths, 'page/set/set.ts'])).toEqual([])
    expect(fullFolders([...paths, 'page/more.ts'])).toEqual(['page: 21 files; make rooms from 21 on'])
  })
})
