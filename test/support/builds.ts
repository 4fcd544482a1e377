import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'

/** A folder for all workers of a run, in which the first that needs something makes it (`test/support/made-once.ts`). */
export default (project: TestProject): (() => void) => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-builds-'))
  project.provide('builds', folder)
  return () => rmSync(folder, { recursive: true, force: true })
}
