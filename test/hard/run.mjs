import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildSync } from 'esbuild'
import { sowFaults } from './sow.mjs'

/**
 * `npm run hard -- --designs 2000 --hostile 20000 --from 0 --nodes PROGRAM,PROGRAM`: many cases, the same for the same
 * numbers; prints what was seen. With `--faults` also sows faults in a copy and tells which test saw each.
 */
const said = (name, otherwise) => {
  const at = process.argv.indexOf(`--${name}`)
  return at < 0 ? otherwise : process.argv[at + 1]
}
const count = (name, otherwise) => Number(said(name, otherwise))

// beside what it loads late
const folder = mkdtempSync(join('dist', 'hard-'))
const bundle = (name) => {
  const outfile = join(folder, `${name}.mjs`)
  buildSync({
    entryPoints: [`test/hard/${name}.ts`],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    banner: {
      js: "import { createRequire as hardRequire } from 'node:module'; import { fileURLToPath as hardPath } from 'node:url'; const require = hardRequire(import.meta.url); const __filename = hardPath(import.meta.url);",
    },
    logLevel: 'warning',
  })
  return resolve(outfile)
}
try {
  const { runAll } = await import(pathToFileURL(bundle('all')).href)
  const failed = await runAll({
    designs: count('designs', 400),
    hostile: count('hostile', 4000),
    from: count('from', 0),
    nodes: said('nodes', '')
      .split(',')
      .filter((path) => path !== ''),
    marks: bundle('marks'),
  })
  const unseen = process.argv.includes('--faults') ? sowFaults() : 0
  process.exitCode = failed + unseen > 0 ? 1 : 0
} finally {
  rmSync(folder, { recursive: true })
}
