import { defineConfig } from 'vitest/config'

/** A module that these replace would stay replaced for the files that follow in the same worker. */
const alone = ['test/cli/files.test.ts']

/**
 * `npm test` draws the same numbers each time; `npx vitest` alone draws new ones. Files of one worker share what they load: half of a
 * small file's time is loading. No test comes near its time limit: these are for what hangs, on a machine that is busy too.
 */
export default defineConfig({
  test: {
    globalSetup: ['test/support/builds.ts'],
    setupFiles: ['test/support/seed.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: '100%',
    unstubEnvs: true,
    projects: [
      { extends: true, test: { name: 'shared', isolate: false, include: ['test/**/*.test.ts'], exclude: alone } },
      { extends: true, test: { name: 'alone', include: alone } },
    ],
  },
})
