import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildSync } from 'esbuild'

/** `npm run hard -- --designs 2000 --hostile 20000 --from 0`: many cases, the same for the same numbers; prints what was seen. */
const asked = (name, otherwise) => {
  const at = process.argv.indexOf(`--${name}`)
  return at < 0 ? otherwise : Number(process.argv[at + 1])
}
const [designs, hostile, from] = [asked('designs', 400), asked('hostile', 4000), asked('from', 0)]

// beside what it loads late
const folder = mkdtempSync(join('dist', 'hard-'))
buildSync({
  entryPoints: ['test/hard/all.ts'],
  outfile: join(folder, 'all.mjs'),
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  banner: {
    js: "import { createRequire as hardRequire } from 'node:module'; import { fileURLToPath as hardPath } from 'node:url'; const require = hardRequire(import.meta.url); const __filename = hardPath(import.meta.url);",
  },
  logLevel: 'warning',
})
try {
  const { runAll } = await import(pathToFileURL(join(folder, 'all.mjs')).href)
  process.exitCode = (await runAll({ designs, hostile, from })) > 0 ? 1 : 0
} finally {
  rmSync(folder, { recursive: true })
}
