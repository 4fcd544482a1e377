import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildSync } from 'esbuild'

/** Ratios side by side in one run: nothing here is a time that must hold on another machine. */
const folder = mkdtempSync(join(tmpdir(), 'traceply-bench-'))
const program = 'dist/traceply.cjs'
const demo = 'templates/quarter-mm.yaml'

const once = (args) => {
  const start = process.hrtime.bigint()
  execFileSync(process.execPath, args, { stdio: 'ignore' })
  return Number(process.hrtime.bigint() - start) / 1e6
}

/** Median of the runs of each, taken in turn so that a busy machine slows all alike. */
const medians = (commands, runs = 15) => {
  const times = commands.map(() => [])
  for (let i = 0; i <= runs; i++)
    commands.forEach((args, k) => {
      const time = once(args)
      if (i > 0) times[k].push(time)
    })
  return times.map((list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)])
}

const row = (name, mine, other, goal) =>
  console.log(
    `${name.padEnd(58)} ${mine.toFixed(0).padStart(5)} ms / ${other.toFixed(0).padStart(5)} ms = ${(mine / other).toFixed(2)}   goal ${goal}`,
  )

if (process.argv[2] === 'cover') cover()
else pages()
rmSync(folder, { recursive: true })

/** Time, size and memory of whole processes. */
function pages() {
  const out = join(folder, 'set.pdf')
  const plot = [program, 'plot', demo, '--out', out, '--force', '--json']
  const { pages } = JSON.parse(execFileSync(process.execPath, plot, { stdio: ['ignore', 'pipe', 'ignore'] }))
  const plain = ['test/bench/pdf-lib-pages.cjs', String(pages.length), join(folder, 'plain.pdf')]
  const [plotTime, plainTime] = medians([plot, plain])
  row(`plot, ${pages.length} pages, against pdf-lib with one stroke a page`, plotTime, plainTime, '1.3')

  const [figuresTime, nodeTime] = medians([
    [program, 'figures', demo],
    ['-e', '0'],
  ])
  row('figures against node -e 0', figuresTime, nodeTime, '2')

  /** Ramps of different outlines in one file, on windows that wide margins keep small. */
  const many = join(folder, 'many.yaml')
  console.log('\npages   ms a page   bytes a page   memory   goal 200 MB')
  for (const { ramps, height, margin } of [
    { ramps: 1, height: 700, margin: '10' },
    { ramps: 2, height: 2400, margin: '85,60,85,60' },
    { ramps: 15, height: 2400, margin: '85,60,85,60' },
  ]) {
    writeFileSync(many, quarters(ramps, height))
    const args = [program, 'plot', many, '--out', out, '--force', '--cover', 'whole', '--margin', margin]
    const run = (...more) => {
      const options = { encoding: 'utf8', maxBuffer: 2 ** 28 }
      const { status, stdout, stderr } = spawnSync(process.execPath, [...more, ...args], options)
      if (status !== 0) throw new Error(stderr)
      return { stdout, stderr }
    }
    const count = Number(/: (\d+) pages/.exec(run().stdout)?.[1])
    const peaks = [1, 2, 3].map(() =>
      Number(/peak (\d+)/.exec(run('-r', './test/bench/memory.cjs').stderr)?.[1]),
    )
    const peak = peaks.sort((a, b) => a - b)[1] / 1024
    const [time] = medians([args], 3)
    console.log(
      `${String(count).padStart(5)}   ${(time / count).toFixed(2).padStart(9)}   ${(statSync(out).size / count).toFixed(0).padStart(12)}   ${peak.toFixed(0).padStart(6)}`,
    )
  }
}

function quarters(count, height) {
  return [
    'title: Boathouse row',
    'units: mm',
    'paper: a4',
    'ramps:',
    ...Array.from(
      { length: count },
      (_, i) =>
        `  - { name: ramp ${i + 1}, kind: quarter, width: 1216, height: { frame: ${height} }, transition: { circle: { frame: ${height + 500 + 5 * i} }, tangent: { frame: 0 } }, ` +
        'toe: 30, deck: 800, studs: { section: 38 x 89, every: 250 }, skin: [9 plywood, 9 plywood], deck-board: 15 plywood, ' +
        'coping: { outside: 60.3, up: 8, out: 6, seat: square }, chamfer: none }',
    ),
    '',
  ].join('\n')
}

/** Page counts against a search that tries all; minutes. */
function cover() {
  const bundle = join(folder, 'cover.cjs')
  buildSync({
    entryPoints: ['test/bench/cover.ts'],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outfile: bundle,
    logLevel: 'warning',
  })
  const templates = readdirSync('templates').map((name) => join('templates', name))
  execFileSync(process.execPath, [bundle, '110', ...templates], { stdio: 'inherit' })
}
