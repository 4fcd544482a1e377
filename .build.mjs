import { execFileSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { buildSync } from 'esbuild'

/** The program in one file, and beside it what V8 makes of it in two usual runs. */
const { outputFiles } = buildSync({
  entryPoints: ['src/cli/main.ts'],
  write: false,
  bundle: true,
  minify: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  charset: 'ascii',
  legalComments: 'none',
  external: ['@pdf-lib/fontkit'],
  // its core alone: the rest is for documents that are read and drawn on
  alias: { 'pdf-lib': 'pdf-lib/es/core/index.js' },
  logLevel: 'warning',
})
// what esbuild leaves are patterns, where an escape means the same; one byte a letter loads faster
const program = outputFiles[0].text.replaceAll(
  /[^\x00-\x7e]/g,
  (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
)
mkdirSync('dist', { recursive: true })
const starter = readFileSync('src/cli/start.cjs', 'utf8')
writeFileSync('dist/traceply.cjs', `${starter}\n/*\n${program.replaceAll('*/', '*\x7f/')}\n*/\n`)
rmSync('dist/traceply.cache', { force: true })
try {
  execFileSync(process.execPath, ['.build-cache.cjs'], { stdio: ['ignore', 'ignore', 'pipe'] })
} catch (error) {
  // it runs without, only slower
  console.warn(`no compiled form was kept: ${String(error.stderr ?? error).trim()}`)
}
await import('./.build-page.mjs')
