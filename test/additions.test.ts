import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'

/**
 * What DEVELOPERS.md says under "How to add", begun: one more word in each list, all at once, in a copy of the sources. The compiler
 * must then name every file where the new thing would else go by unseen.
 */
const additions: readonly (readonly [file: string, before: string, after: string])[] = [
  // a kind of ramp, which is sawn straight
  ['src/design/design.ts', "kinds = ['quarter', 'flat']", "kinds = ['quarter', 'flat', 'box']"],
  [
    'src/design/design.ts',
    'export type RampDesign = QuarterDesign | FlatDesign',
    "interface BoxDesign extends FramedDesign { readonly kind: 'box'; readonly height: number; readonly studs: FlatDesign['studs'] }\nexport type RampDesign = QuarterDesign | FlatDesign | BoxDesign",
  ],
  [
    'src/ramp/ramp.ts',
    'export type Ramp = Quarter | Flat\nexport type SolvedRamp = SolvedQuarter | Flat',
    "interface Box extends RampOfAnyKind { readonly kind: 'box'; readonly design: Extract<RampDesign, { kind: 'box' }>; readonly length: number }\nexport type Ramp = Quarter | Flat | Box\nexport type SolvedRamp = SolvedQuarter | Flat | Box",
  ],
  [
    'src/ramp/ramp.ts',
    'import type { FlatDesign, QuarterDesign }',
    'import type { FlatDesign, QuarterDesign, RampDesign }',
  ],
  // a curve
  ['src/design/design.ts', "curveNames = ['circle']", "curveNames = ['circle', 'ellipse']"],
  [
    'src/design/design.ts',
    '  readonly circle: CircleDesign\n',
    "  readonly circle: CircleDesign\n  readonly ellipse: { readonly ellipse: readonly [number, number]; readonly tangent: CircleDesign['tangent'] }\n",
  ],
  [
    'src/ramp/side/transition.ts',
    'export type Transition = CircleTransition',
    "export type Transition = CircleTransition | (SolvedCurve & { readonly kind: 'ellipse' })",
  ],
  // a page kind, a paper, an output format of a command
  ['src/drawing/set-plan.ts', "| 'strip' | 'parts'", "| 'strip' | 'parts' | 'legend'"],
  ['src/design/design.ts', "'a0'] as const", "'a0', 'b4'] as const"],
  ['src/cli/commands/cuts.ts', "  '.txt': '',\n", "  '.txt': '',\n  '.dxf': '',\n"],
]

/** `says`: what the compiler's words have of the new thing. */
const led: Readonly<Record<string, { readonly says: RegExp; readonly files: readonly string[] }>> = {
  'a kind of ramp': {
    says: /box/i,
    files: [
      'src/booklet/book/sections/cutting/cutting.ts',
      'src/booklet/book/sections/flat.ts',
      'src/booklet/book/sections/frame-steps.ts',
      'src/booklet/book/sections/glance.ts',
      'src/booklet/figures-rows.ts',
      'src/booklet/views/front-view.ts',
      'src/booklet/views/profile.ts',
      'src/booklet/views/side-view.ts',
      'src/cli/words/flat-words.ts',
      'src/design/kind-traits.ts',
      'src/design/resolve.ts',
      'src/pattern/patterns.ts',
      'src/pattern/skin-strips.ts',
      'src/ramp/figures.ts',
      'src/ramp/solve.ts',
      'src/ramp/storing/size.ts',
      'src/stock/list/list.ts',
      'src/stock/parts.ts',
    ],
  },
  'a curve': {
    says: /ellipse|SolvedCurve|'Transition'|'CurveDesigns?'|'SwingArm'/,
    files: [
      'src/booklet/book/sections/glance.ts',
      'src/booklet/figures-rows.ts',
      'src/booklet/views/side-notes.ts',
      'src/cli/words/figures-text.ts',
      'src/design/resolve.ts',
      'src/job/choose/trial.ts',
      'src/job/near/quarter-moves.ts',
      'src/job/settle/bounds.ts',
      'src/pattern/side.ts',
      'src/ramp/check/remedy.ts',
      'src/ramp/figures.ts',
      'src/ramp/hazard/stiff-sheets.ts',
      'src/ramp/offsets-swing.ts',
      'src/ramp/side/circle-stops.ts',
      'src/ramp/side/circle-transition.ts',
      'src/ramp/side/solve-coping.ts',
      'src/ramp/side/solve-transition.ts',
      'src/ramp/skin/bend.ts',
      'src/ramp/steep-choices.ts',
      'src/stock/panel/miss.ts',
    ],
  },
  'a page kind': {
    says: /legend/,
    files: ['src/cli/words/plot-report.ts', 'src/read/pick-pages.ts', 'test/tape-up/check-page.ts'],
  },
  'a paper': { says: /b4/, files: ['src/page/sheet/paper.ts', 'test/tape-up/check-page.ts'] },
  'an output format': { says: /dxf/, files: ['src/cli/commands/cuts.ts'] },
}

const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin/tsc')
let folder = ''
let faults: readonly string[] = []

beforeAll(() => {
  mkdirSync('dist', { recursive: true })
  folder = mkdtempSync('dist/additions-')
  for (const part of ['src', 'test', 'package.json', 'tsconfig.json'])
    cpSync(part, join(folder, part), { recursive: true })
  for (const [file, before, after] of additions) {
    const text = readFileSync(join(folder, file), 'utf8')
    expect(text.split(before).length, `${file}: ${before}`).toBe(2)
    writeFileSync(join(folder, file), text.replace(before, after))
  }
  writeFileSync(
    join(folder, 'tsconfig.json'),
    JSON.stringify({
      extends: '../../tsconfig.json',
      include: ['src', 'test/tape-up/check-page.ts'],
      exclude: ['src/web'],
    }),
  )
  const { stdout } = spawnSync(process.execPath, [compiler, '--noEmit', '--pretty', 'false', '-p', folder], {
    encoding: 'utf8',
  })
  // each with the indented lines that explain it
  faults = stdout.split(/\n(?! )/)
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

test.each(Object.entries(led))(
  'the compiler leads %s to every file that must know it',
  (_, { says, files }) => {
    const own = faults.filter((fault) => says.test(fault))
    expect(faults.length).toBeGreaterThan(40)
    expect(files.filter((file) => !own.some((fault) => fault.includes(`${file}(`)))).toEqual([])
  },
)
