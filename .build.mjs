import { execFileSync, spawnSync } from 'node:child_process'
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { build } from 'esbuild'
import { writeTypeSources } from './.build-type.mjs'
import { alias, usedAlone } from './.build-used.mjs'

const aliases = {
  ...alias,
  // of modules alone what is used is put in, and nothing is asked of the platform
  yaml: './node_modules/yaml/browser/dist/index.js',
  // commander can start other programs for its commands, ours it need not: half its time to load
  'node:child_process': './src/cli/process/no-children.ts',
}
const shared = {
  absWorkingDir: import.meta.dirname,
  bundle: true,
  charset: 'ascii',
  legalComments: 'none',
  alias: aliases,
  plugins: [usedAlone],
  logLevel: 'warning',
  // a folder reached by a link would write where it really lies, a path of this machine, into the program
  preserveSymlinks: true,
}

writeTypeSources()

rmSync('dist', { recursive: true, force: true })
mkdirSync('dist')

/** What starts, the program in one file that can be read, the commands asked most often in one of their own: a process reads all of its file. */
for (const name of readdirSync('src/cli/programs'))
  await build({
    ...shared,
    entryPoints: [`src/cli/programs/${name}`],
    outdir: 'dist',
    outExtension: { '.js': '.cjs' },
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    // whoever asks figures for a picture is sent to the whole program
    external: name === 'figures.ts' ? ['*/pictures/picture.ts'] : [],
  })
// the code is kept for a text of one byte a letter, and regular expressions are left as they are written
for (const name of readdirSync('dist').filter((file) => file.endsWith('.cjs'))) {
  const text = readFileSync(`dist/${name}`, 'utf8')
  const escaped = text.replace(
    /[^\0-\x7f]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
  writeFileSync(`dist/${name}`, escaped)
}
chmodSync('dist/traceply.cjs', 0o755)

/** What V8 makes of each, so that it is not made anew in each process. The program is whole without it. */
spawnSync(process.execPath, ['.build-code.cjs'], { stdio: 'inherit' })

/** The library in one file, for Node and for browsers; its types lie beside. */
await build({
  ...shared,
  entryPoints: ['src/index.ts'],
  outfile: 'dist/index.js',
  platform: 'browser',
  target: 'es2022',
  format: 'esm',
})
execFileSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', '.tsconfig.types.json'], { stdio: 'inherit' })

await import('./.build-page.mjs')
