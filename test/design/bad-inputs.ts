import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'esbuild'

/** Stands for the test runner: keeps the tables of the cases and runs none. */
const keeper = `
export const tables = []
const nothing = () => {}
export const it = Object.assign(nothing, { each: (table) => (tables.push(...table), nothing) })
export const describe = Object.assign((_, body) => body(), { each: () => nothing })
export const expect = nothing
`

/** Every text that bad-input.test.ts holds up to the reader, whatever table it stands in. */
export const badInputs = async (): Promise<readonly string[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-inputs-'))
  try {
    const outfile = join(folder, 'inputs.mjs')
    await build({
      stdin: {
        contents: "import './bad-input.test.ts'\nexport { tables } from 'vitest'",
        resolveDir: fileURLToPath(new URL('.', import.meta.url)),
        loader: 'ts',
      },
      bundle: true,
      // a test does nothing but what it does when it is loaded
      ignoreAnnotations: true,
      format: 'esm',
      platform: 'node',
      outfile,
      external: ['fast-check', 'yaml'],
      logLevel: 'error',
      plugins: [
        {
          name: 'keeper',
          setup: (on) => {
            on.onResolve({ filter: /^vitest$/ }, () => ({ path: 'keeper', namespace: 'keeper' }))
            on.onResolve({ filter: /^(fast-check|yaml)$/ }, ({ path }) => ({
              path: import.meta.resolve(path),
              external: true,
            }))
            on.onLoad({ filter: /./, namespace: 'keeper' }, () => ({ contents: keeper }))
          },
        },
      ],
    })
    const { tables } = (await import(pathToFileURL(outfile).href)) as {
      readonly tables: readonly (readonly unknown[])[]
    }
    return tables.flatMap((row) => (typeof row[1] === 'string' ? [row[1]] : []))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
