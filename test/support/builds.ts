import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { isFresh } from './fresh.ts'

/** `npm test` builds what is not there as it now is; beside that, a folder for all workers of a run, in which the first that needs something makes it (`test/support/made-once.ts`). */
export default (project: TestProject): (() => void) => {
  if (process.env.npm_lifecycle_event === 'test' && !isFresh())
    execFileSync('npm', ['run', 'build'], { stdio: 'inherit' })
  const folder = mkdtempSync(join(tmpdir(), 'traceply-builds-'))
  project.provide('builds', folder)
  return () => rmSync(folder, { recursive: true, force: true })
}
