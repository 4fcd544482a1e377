const { spawnSync } = require('node:child_process')
const { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } = require('node:fs')
const { createRequire, wrap } = require('node:module')
const { tmpdir } = require('node:os')
const { dirname, join, resolve } = require('node:path')
const { cachedDataVersionTag } = require('node:v8')
const { Script } = require('node:vm')
const { crc32 } = require('node:zlib')

/**
 * Runs a program once, then writes beside it what V8 made of its text and of each function that ran, for
 * `src/cli/programs/traceply.ts`. Arguments: the program's file, then what it is asked; OUT is a file of no use. Without
 * any each of `dist` is asked what runs on a design, in a process of its own.
 */
// Node 20.15 has the sum of the seal: before, nothing is kept
if (!crc32) process.exit(0)

if (process.argv.length === 2) {
  for (const [name, asked] of [
    ['figures', 'figures templates/quarter-mm.yaml'],
    ['plot', 'plot templates/quarter-mm.yaml --out OUT'],
    ['booklet', 'booklet templates/quarter-and-flat-mm.yaml --out OUT'],
    ['program', 'cuts templates/quarter-mm.yaml --out OUT'],
  ])
    spawnSync(process.execPath, [__filename, `dist/${name}.cjs`, ...asked.split(' ')], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
  process.exit(0)
}

const file = resolve(process.argv[2])
const folder = mkdtempSync(join(tmpdir(), 'traceply-code-'))
const text = readFileSync(file)
const script = new Script(wrap(text.toString('latin1')), { filename: file })

process.argv.splice(1, 2, file)
process.argv = process.argv.map((word) => (word === 'OUT' ? join(folder, 'out.pdf') : word))
const said = process.stderr.write
// what it tells of a design is no matter of the build's
process.stderr.write = () => true
process.on('exit', (exit) => {
  process.stderr.write = said
  rmSync(folder, { recursive: true })
  if (exit !== 0) return process.stderr.write(`${process.argv.slice(1).join(' ')}: exit ${exit}\n`)
  const code = script.createCachedData()
  const seal = Buffer.alloc(4)
  seal.writeUInt32LE(crc32(code, crc32(text, cachedDataVersionTag())))
  const kept = file.replace(/cjs$/, 'code')
  writeFileSync(`${kept}.new`, Buffer.concat([seal, code]))
  renameSync(`${kept}.new`, kept)
})

const module_ = { exports: {} }
script.runInThisContext().call(module_.exports, module_.exports, createRequire(file), module_, file, dirname(file))
