import { execFileSync, spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { buildSync } from 'esbuild'
import { pageBench } from './page.mjs'

/** Ratios side by side in one run: nothing here is a time that must hold on another machine. */
const folder = mkdtempSync(join(tmpdir(), 'traceply-bench-'))
const program = 'dist/traceply.cjs'
const demo = 'templates/quarter-mm.yaml'

/** Runs of each at most: an argument. */
const most = Number(process.argv[2]) || 41

/** Time on the processor in ms, peak memory in MB, and what was printed: a busy machine slows these the least. */
const cost = (args) => {
  const options = { encoding: 'utf8', maxBuffer: 2 ** 28 }
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['-r', './test/bench/cost.cjs', ...args],
    options,
  )
  const [, time, peak] = /\ncost ([\d.]+) (\d+)/.exec(stderr) ?? []
  if (status !== 0 || !time) throw new Error(stderr)
  return { time: Number(time), peak: Number(peak) / 1024, stdout }
}

const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)]

/** Median of the ratios of runs taken in turn, and both medians. */
const compared = (mine, other, runs) => {
  const pairs = Array.from({ length: Math.min(runs, most) }, (_, i) => {
    // each comes first as often: the pace of a machine drifts
    const times = (i % 2 === 0 ? [mine, other] : [other, mine]).map((args) => cost(args).time)
    return i % 2 === 0 ? times : times.reverse()
  })
  return {
    ratio: middle(pairs.map(([a, b]) => a / b)),
    mine: middle(pairs.map(([a]) => a)),
    other: middle(pairs.map(([, b]) => b)),
  }
}

const row = (name, { ratio, mine, other }, goal) =>
  console.log(
    `${name.padEnd(62)} ${mine.toFixed(0).padStart(5)} ms / ${other.toFixed(0).padStart(5)} ms = ${ratio.toFixed(2)}   goal ${goal}`,
  )

if (process.argv[2] === 'cover') cover()
else if (process.argv[2] !== 'page') pages()
if (process.argv[2] !== 'cover') await pageBench()
rmSync(folder, { recursive: true })

/** Time and memory of whole processes, then of the steps within one. */
function pages() {
  const out = join(folder, 'set.pdf')
  const many = (ramps) => {
    const file = join(folder, `${ramps}.yaml`)
    writeFileSync(file, quarters(ramps, 700))
    return file
  }
  const plot = (file, ...more) => [program, 'plot', file, '--out', out, '--force', ...more]
  const count = (args) => Number(/: (\d+) pages/.exec(cost(args).stdout)?.[1])
  const bare = (pages) => ['test/bench/pdf-lib-pages.cjs', String(pages), join(folder, 'plain.pdf')]

  for (const [name, file, runs, goal] of [
    ['the demo', demo, 9, '1.5'],
    ['20 ramps', many(20), 3, '3'],
  ]) {
    const pages = count(plot(file))
    row(
      `plot ${name}, ${pages} pages, against pdf-lib with one stroke a page`,
      compared(plot(file), bare(pages), runs),
      goal,
    )
  }
  const pair = 'templates/pair-mm.yaml'
  const booklet = [program, 'booklet', pair, '--out', join(folder, 'booklet.pdf'), '--force']
  row('booklet of two ramps against plot of them', compared(booklet, plot(pair), 9), '1.5')
  row('figures against node -e 0', compared([program, 'figures', demo], ['-e', '0'], 21), '3')
  const [having, lacking] = ['with', 'without'].map((stock) => shipped('figures-stock', stock))
  for (const file of [demo, pair, 'templates/quarter-and-flat-mm.yaml'])
    row(
      `figures of ${basename(file, '.yaml')} with against without stock`,
      compared([...having, file], [...lacking, file], 41),
      '1.1',
    )
  for (const more of [[], ['--strips']])
    for (const [from, to] of [
      [5, 10],
      [10, 20],
    ])
      row(
        `${[`${to} ramps against ${from}`, ...more].join(' ')}`,
        compared(plot(many(to), ...more), plot(many(from), ...more), 3),
        '2.1',
      )
  row('20 ramps --strips against without', compared(plot(many(20), '--strips'), plot(many(20)), 3), '1.5')

  // ramps of different outlines on windows that wide margins keep small
  const large = join(folder, 'large.yaml')
  writeFileSync(large, quarters(20, 2400))
  const wide = plot(large, '--cover', 'whole', '--margin', '85,60,85,60')
  const found = cost(wide)
  const written = Number(/: (\d+) pages/.exec(found.stdout)?.[1])
  console.log(
    `\n${written} pages: ${(found.time / written).toFixed(2)} ms and ${(statSync(out).size / written).toFixed(0)} bytes a page, ${found.peak.toFixed(0)} MB   goal 200 MB`,
  )

  console.log(
    `\nwarm, ms of the processor   goals: covers 5, layout 8, a page 2\n${cost([bundled('warm'), demo]).stdout}`,
  )
  console.log(
    `panels, ms of the processor   goals: C1-P1 2000, a pair 1000\n${cost([bundled('stock'), pair]).stdout}`,
  )
}

/** A script of this folder in place of the program's figures, with what V8 makes of it, as the build keeps it: what to run, all but the design. */
function shipped(name, asked) {
  const own = join(folder, asked)
  mkdirSync(own)
  copyFileSync(program, join(own, 'traceply.cjs'))
  const script = bundled(name, join(own, 'figures.cjs'))
  execFileSync(process.execPath, ['.build-code.cjs', script, 'figures', asked, demo])
  return [join(own, 'traceply.cjs'), 'figures', asked]
}

/** A script of this folder in one file. */
function bundled(name, outfile = join(folder, `${name}.cjs`)) {
  buildSync({
    entryPoints: [`test/bench/${name}.ts`],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    charset: 'ascii',
    outfile,
    logLevel: 'warning',
  })
  return outfile
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
