import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'

/** The tests beside what a change touches: of a source file those of its own name, else those of its room; and the order of imports. */
const git = (...args) => execFileSync('git', args, { encoding: 'utf8' }).split('\n').filter(Boolean)
const base = git('merge-base', 'HEAD', 'origin/main')[0]
const changed = [...git('diff', '--name-only', base), ...git('ls-files', '--others', '--exclude-standard')]

const testsIn = (folder) =>
  existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.test.ts')) : []

const testsOf = (file) => {
  if (/^test\/.*\.test\.ts$/.test(file)) return existsSync(file) ? [file] : []
  if (!file.startsWith('src/')) return /\.md$|^templates\//.test(file) ? ['test/docs'] : []
  const name = basename(file).replace(/\.tsx?$/, '')
  let folder = join('test', dirname(file).slice('src/'.length))
  while (!existsSync(folder)) folder = dirname(folder)
  const own = testsIn(folder).filter((test) => test === `${name}.test.ts` || test.startsWith(`${name}-`))
  // whole commands take minutes: those of another name are for `npm test`
  const room = /^test(\/(cli|job|web))?$/.test(folder) ? [] : testsIn(folder)
  return (own.length > 0 ? own : room).map((test) => join(folder, test))
}

const tests = [...new Set([...changed.flatMap(testsOf), 'test/layering.test.ts'])]
console.log(tests.join('\n'))
const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--config', '.vitest.config.ts', ...tests]
process.exitCode = spawnSync(process.execPath, vitest, { stdio: 'inherit' }).status ?? 1
