import { execFileSync } from 'node:child_process'
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { buildSync } from 'esbuild'
import { writeTypeSources } from './.build-type.mjs'

// pdf-lib's core alone: the rest is for documents that are read and drawn on
const alias = { 'pdf-lib': 'pdf-lib/es/core/index.js' }
const shared = {
  absWorkingDir: import.meta.dirname,
  bundle: true,
  charset: 'ascii',
  legalComments: 'none',
  alias,
  logLevel: 'warning',
  // a folder reached by a link would write where it really lies, a path of this machine, into the program
  preserveSymlinks: true,
}

const often = ['figures', 'plot']

writeTypeSources()

rmSync('dist', { recursive: true, force: true })
mkdirSync('dist')

/** The program in one file that can be read; the commands asked most often each in one of their own, as a process reads all of its file. */
buildSync({
  ...shared,
  entryPoints: ['program', ...often].map((name) => `src/cli/programs/${name}.ts`),
  outdir: 'dist',
  outExtension: { '.js': '.cjs' },
  platform: 'node',
  target: 'node20',
  format: 'cjs',
})
writeFileSync(
  'dist/traceply.cjs',
  `#!/usr/bin/env node
// Node 22 and later keep what they compile of a file from run to run, if they are asked before it is loaded
require('node:module').enableCompileCache?.()
require(${JSON.stringify(often)}.includes(process.argv[2]) ? \`./\${process.argv[2]}.cjs\` : './program.cjs')
`,
  { mode: 0o755 },
)

/** The library in one file, for Node and for browsers; its types lie beside. */
buildSync({
  ...shared,
  entryPoints: ['src/index.ts'],
  outfile: 'dist/index.js',
  platform: 'browser',
  target: 'es2022',
  format: 'esm',
})
execFileSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', '.tsconfig.types.json'], { stdio: 'inherit' })

await import('./.build-page.mjs')
