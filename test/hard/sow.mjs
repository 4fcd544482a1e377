import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { seededFaults } from './seeded-faults.mjs'

/** Sows each fault in a copy of the project, runs the tests that have to see it, prints which did; how many none saw. */
export const sowFaults = () => {
  const copy = mkdtempSync(join(tmpdir(), 'traceply-sown-'))
  let unseen = 0
  try {
    for (const name of readdirSync('.'))
      if (name === 'node_modules' || name === 'dist') symlinkSync(resolve(name), join(copy, name))
      else if (name !== '.git') cpSync(name, join(copy, name), { recursive: true })
    for (const { fault, file, from, to, tests } of seededFaults) {
      const path = join(copy, file)
      const sound = readFileSync(path, 'utf8')
      if (sound.split(from).length !== 2) throw new Error(`${file} does not hold once: ${from}`)
      writeFileSync(
        path,
        sound.replace(from, () => to),
      )
      const seen = firstRed(copy, tests)
      writeFileSync(path, sound)
      if (seen === null) unseen++
      console.log(`${seen === null ? 'UNSEEN' : 'seen  '} ${fault}${seen === null ? '' : `: ${seen}`}`)
    }
  } finally {
    rmSync(copy, { recursive: true })
  }
  console.log(`${seededFaults.length} faults sown, ${seededFaults.length - unseen} seen`)
  return unseen
}

/** The first test that failed; null where none did. */
const firstRed = (copy, tests) => {
  const report = join(copy, 'report.json')
  rmSync(report, { force: true })
  spawnSync(
    process.execPath,
    [
      join('node_modules', 'vitest', 'vitest.mjs'),
      'run',
      ...tests,
      ...['--config', '.vitest.config.ts', '--maxWorkers', '1', '--bail', '1'],
      ...['--reporter', 'json', '--outputFile', report],
    ],
    { cwd: copy, stdio: 'ignore' },
  )
  const { testResults } = JSON.parse(readFileSync(report, 'utf8'))
  for (const { name, assertionResults } of testResults)
    for (const { status, fullName } of assertionResults)
      if (status === 'failed') return `${name.slice(name.indexOf('/test/') + 1)}: ${fullName.trim()}`
  const broken = testResults.find(({ status }) => status === 'failed')
  return broken ? `${broken.name.slice(broken.name.indexOf('/test/') + 1)} as a whole` : null
}
