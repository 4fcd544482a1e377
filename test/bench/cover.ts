import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { pathLength } from '../../src/geometry/length.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { type Cover, covers } from '../../src/page/cover/cover.ts'
import { patternCover } from '../../src/page/cover/coverage.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../src/page/sheet/paper.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { emptiest, exhaustive, halfDegrees, type Window } from './exhaustive.ts'
import { generatedQuarter, patternsOf, quarterText } from './ramps.ts'

/** Arguments: how many ramps to generate, then template files. */
const [count, ...templates] = process.argv.slice(2)
const papers = ['letter', 'a4'] as const

const coverIn = (pattern: Pattern, cover: Cover, { width, height, overlap }: Window) =>
  patternCover(pattern, cover, { x0: 0, y0: 0, x1: width, y1: height }, overlap).found()

const windowOf = (name: (typeof papers)[number]): Window => {
  const { width, height } = paperOf(name)
  const margin = defaultMargins(name)
  return {
    width: width - margin.left - margin.right,
    height: height - margin.top - margin.bottom,
    overlap: defaultOverlap,
  }
}

const [high] = patternsOf(
  quarterText([
    {
      height: 2400,
      radius: 3000,
      toe: 25,
      deck: 1200,
      coping: '{ outside: 60.3, up: 8, out: 6, seat: square }',
    },
  ]),
)
const start = performance.now()
for (const cover of covers) coverIn(high!, cover, windowOf('letter'))
console.log(
  `all three covers of an 8 ft ramp, first thing in a process: ${(performance.now() - start).toFixed(0)} ms   goal 300`,
)

const jobs = [
  ...templates.flatMap((file) =>
    patternsOf(readFileSync(file, 'utf8')).map((pattern) => ({
      name: `${basename(file)} ${pattern.ramp}`,
      pattern,
    })),
  ),
  ...Array.from({ length: Number(count) }, (_, number) => ({
    name: `generated ${number}`,
    pattern: patternsOf(quarterText([generatedQuarter(number)]))[0]!,
  })),
]

interface Result {
  readonly what: string
  readonly cover: Cover
  readonly mine: number
  readonly fewest: number
  /** the line's length over the window's diagonal */
  readonly bound: number
  readonly emptiest: number
  readonly ms: number
}

const results = jobs.flatMap(({ name, pattern }) =>
  papers.flatMap((paper) =>
    covers.map((cover): Result => {
      const window = windowOf(paper)
      const begun = performance.now()
      const { lattice, cells } = coverIn(pattern, cover, window)
      const ms = performance.now() - begun
      const paths = cover === 'whole' ? [pattern.cut, ...pattern.markPaths] : [pattern.line]
      const runs = paths.map((path) => pathSample(path, 5))
      const place = {
        pages: cells.length,
        landscape: lattice.layout === 'landscape',
        angle: Math.atan2(-lattice.toFrame[1], lattice.toFrame[0]),
        across: lattice.overlap / 2 - lattice.toFrame[4],
        up: lattice.overlap / 2 - lattice.toFrame[5],
      }
      return {
        what: `${name} on ${paper}`,
        cover,
        mine: cells.length,
        fewest: exhaustive(runs, window, { angles: cover === 'ribbon' ? halfDegrees : [0], offset: 1 }).pages,
        bound: pathLength(paths[0]!) / Math.hypot(window.width, window.height),
        emptiest: emptiest(runs, window, place),
        ms,
      }
    }),
  ),
)

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length
const worstOf = (list: readonly Result[], worth: (r: Result) => number): Result =>
  list.reduce((a, b) => (worth(b) > worth(a) ? b : a))

console.log(`\n${jobs.length} sides, letter and a4; against every millimetre and half degree   goal 1.02`)
console.log(
  'cover    mean     worst                                           over diagonal   emptiest page, mm   ms',
)
for (const cover of covers) {
  const list = results.filter((result) => result.cover === cover)
  const worst = worstOf(list, (r) => r.mine / r.fewest)
  console.log(
    [
      cover.padEnd(8),
      mean(list.map((r) => r.mine / r.fewest)).toFixed(4),
      `${(worst.mine / worst.fewest).toFixed(3)} (${worst.mine}/${worst.fewest}, ${worst.what})`.padEnd(48),
      mean(list.map((r) => r.mine / r.bound))
        .toFixed(2)
        .padStart(10),
      `${Math.min(...list.map((r) => r.emptiest)).toFixed(0)} … ${mean(list.map((r) => r.emptiest)).toFixed(0)}`.padStart(
        18,
      ),
      mean(list.map((r) => r.ms))
        .toFixed(1)
        .padStart(8),
    ].join('  '),
  )
}
const lost = results.filter((r) => r.mine > r.fewest)
const won = results.filter((r) => r.mine < r.fewest)
console.log(
  `${lost.length} of ${results.length} take more pages than the search that tries all, ${won.length} fewer (between its millimetres)`,
)
