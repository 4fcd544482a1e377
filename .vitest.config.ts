import { defineConfig } from 'vitest/config'

/** `npm test` draws the same numbers each time; `npx vitest` alone draws new ones. */
export default defineConfig({
  test: { setupFiles: ['test/support/seed.ts'], testTimeout: 60_000, hookTimeout: 60_000, maxWorkers: '100%' },
})
