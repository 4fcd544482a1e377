import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { asModules, sourcesAsModules } from './test/support/sources.ts'

/** Those that take longest come first, so that no worker is left alone with one at the end. */
const long = [
  'web/anyone',
  'web/files',
  'web/given',
  'web/keeps',
  'web/told',
  'web/typed',
  'tape-up/packed',
  'web/first-time',
  'web/worked',
  'cli/same-bytes',
  'cli/program',
  'cli/reprint-sets',
  'tape-up/generated',
  'ramp/check/remedies',
  'ramp/kinds/flat',
  'cli/too-many-pages',
  'cli/every-command',
  'cli/offsets',
  'cli/reprint-printer',
  'tape-up/',
  'cli/figures',
  'page/cover/',
  'job/settle',
  'package/tarball',
  'hard/hard',
  'ramp/',
  'cli/',
]

const placeOf = ({ moduleId }: TestSpecification): number => {
  const place = long.findIndex((name) => moduleId.includes(`/test/${name}`))
  return place < 0 ? long.length : place
}

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((a, b) => placeOf(a) - placeOf(b))
  }
}

/**
 * V8 is asked to optimise later, and to draw less into what it optimises: a worker runs much code for a short while, and what is
 * optimised soon is soon thrown away, a fifth of the whole run. Newer Nodes do not start with these flags.
 */
const later = process.versions.node.startsWith('20.')
  ? ['--max-inlined-bytecode-size-cumulative=300', '--interrupt-budget=600000']
  : []

/**
 * `npm test` draws the same numbers each time; `npx vitest` alone draws new ones. Files of one worker share what they load: half of a
 * small file's time is loading. No test comes near its time limit: these are for what hangs, on a machine that is busy too.
 */
export default defineConfig({
  plugins: [sourcesAsModules()],
  test: {
    globalSetup: ['test/support/builds.ts'],
    setupFiles: ['test/support/seed.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: '100%',
    execArgv: later,
    unstubEnvs: true,
    sequence: { sequencer: LongestFirst },
    isolate: false,
    include: ['test/**/*.test.ts'],
    server: { deps: { external: [new RegExp(asModules)] } },
  },
})
