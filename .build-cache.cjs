// Plots one starter and reckons another, then keeps what V8 compiled on the way.
const { mkdtempSync, renameSync, rmSync, writeFileSync } = require('node:fs')
const { tmpdir } = require('node:os')
const { join } = require('node:path')

const folder = mkdtempSync(join(tmpdir(), 'traceply-build-'))
const start = join(__dirname, 'dist', 'traceply.cjs')
const run = (...args) => {
  process.argv.splice(2, process.argv.length, ...args)
  delete require.cache[start]
  return require(start)
}

let script = run('plot', 'templates/quarter-mm.yaml', '--out', join(folder, 'set.pdf'), '--json')
process.once('beforeExit', () => {
  script = run('figures', 'templates/quarter-in.yaml')
})
process.on('exit', (code) => {
  rmSync(folder, { recursive: true, force: true })
  if (code !== 0) return
  const cache = join(__dirname, 'dist', 'traceply.cache')
  writeFileSync(`${cache}.part`, script.createCachedData())
  renameSync(`${cache}.part`, cache)
})
