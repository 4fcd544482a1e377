import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

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

/** The same ramp on ever smaller windows: wide margins make many pages of it. */
const design = readFileSync(demo, 'utf8')
const big = join(folder, 'big.yaml')
console.log('\npages   ms a page   bytes a page   memory')
for (const { scale, margin } of [
  { scale: 1, margin: '10' },
  { scale: 3, margin: '40, 35' },
  { scale: 9, margin: '60, 45' },
]) {
  writeFileSync(big, scaled(design, scale))
  const args = [program, 'plot', big, '--out', out, '--force', '--json', '--margin', fourMargins(margin)]
  const run = spawnSync(process.execPath, ['--expose-gc', '-r', './test/bench/memory.cjs', ...args], {
    encoding: 'utf8',
  })
  if (run.status !== 0) {
    console.log(run.stderr)
    continue
  }
  const count = JSON.parse(run.stdout).pages.length
  const time = medians([args], 3)[0]
  const peak = Number(/peak (\d+)/.exec(run.stderr)?.[1]) / 1024
  console.log(
    `${String(count).padStart(5)}   ${(time / count).toFixed(2).padStart(9)}   ${(statSync(out).size / count).toFixed(0).padStart(12)}   ${peak.toFixed(0)} MB`,
  )
}
rmSync(folder, { recursive: true })

function fourMargins(text) {
  const [upright, side] = text.split(',').map((part) => part.trim())
  return side === undefined ? upright : `${upright},${side},${upright},${side}`
}

/** Every length of the demo that shapes the side, times `scale`. */
function scaled(text, scale) {
  return text.replace(
    /(deck|surface|length|leg): (\d+)/g,
    (_, key, value) => `${key}: ${Number(value) * scale}`,
  )
}
