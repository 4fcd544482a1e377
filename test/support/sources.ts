import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join, relative, resolve } from 'node:path'
import { buildSync } from 'esbuild'
import type { Plugin } from 'vitest/config'

const root = resolve(import.meta.dirname, '../..')
const src = join(root, 'src/')
const typed = /\.tsx?$/

/** Begins the name of the folder in which they lie. */
export const asModules = 'traceply-modules-'

/** `src` as plain modules that import each other, beside a link to what is installed; each as if it lay where its source lies. */
const compileTo = (folder: string): void => {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => typed.test(name))
  const { outputFiles } = buildSync({
    absWorkingDir: root,
    entryPoints: ['package.json', ...files.map((name) => join(src, name))],
    tsconfig: join(src, 'web/tsconfig.json'),
    outdir: folder,
    outbase: root,
    format: 'esm',
    target: 'node20',
    sourcemap: 'inline',
    sourcesContent: false,
    sourceRoot: root,
    write: false,
  })
  for (const { path, text } of outputFiles) {
    const beside = join(root, dirname(relative(folder, path)))
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(
      path,
      text
        .replace(/\b(from |import |import\()"(\.[^"]*)\.(?:tsx?|json)"/g, '$1"$2.js"')
        .replace(/\b__dirname\b/g, JSON.stringify(beside))
        .replace(/\b__filename\b/g, JSON.stringify(join(beside, basename(path)))),
    )
  }
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'))
}

/**
 * Tests take the sources as modules of Node's own: through the module runner of the tests each name from another file is a call, and
 * each file is fetched from the main process. Where files are watched they stay with that, as it has to know who imports what.
 */
export const sourcesAsModules = (): Plugin => {
  const state: { watched?: boolean; folder?: string } = {}
  const compiled = (): string => {
    if (state.folder === undefined) {
      state.folder = realpathSync(mkdtempSync(join(tmpdir(), asModules)))
      compileTo(state.folder)
    }
    return state.folder
  }
  return {
    name: 'sources-as-modules',
    enforce: 'pre',
    configureVitest: ({ vitest }) => {
      state.watched = vitest.config.watch
    },
    resolveId: (path, importer) => {
      if (state.watched || importer === undefined || !path.startsWith('.') || !typed.test(path)) return null
      const source = resolve(dirname(importer), path)
      return source.startsWith(src)
        ? join(compiled(), 'src', source.slice(src.length).replace(typed, '.js'))
        : null
    },
    closeBundle: () => {
      if (state.folder !== undefined) rmSync(state.folder, { recursive: true, force: true })
    },
  }
}
