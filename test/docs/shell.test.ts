import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildIn } from '../cli/built.ts'
import { assertNear } from '../support/near.ts'
import { pageOf, readme, root, scripts, shellLines } from './pages.ts'

/** A copy of what a fresh clone holds after its install: nothing that is run can touch the project. */
const folder = mkdtempSync(join(tmpdir(), 'traceply-readme-'))
const node = (...args: readonly string[]): string =>
  execFileSync(process.execPath, args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] })

/** The commands of a line; `npm ci` and `npm test` are not run, as they would run this test. */
const steps = shellLines(readme).flatMap((line) => line.split('&&').map((step) => step.trim()))

beforeAll(async () => {
  // `npm ci` builds it
  await buildIn(folder)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the commands of the README', () => {
  it('are read as commands', () => {
    expect(steps.length).toBeGreaterThan(5)
    expect(scripts.prepare).toBe('npm run build')
    expect(existsSync(join(root, 'package-lock.json'))).toBe(true)
  })

  it.each(steps.map((step) => [step]))('%s', (step) => {
    const [program, ...args] = step.split(/\s+/)
    if (program === 'node') {
      expect(node(...args)).not.toBe('')
      return
    }
    expect(program).toBe('npm')
    if (args[0] === 'ci') return
    const name = args[0] === 'run' ? args[1]! : args[0]!
    expect(Object.keys(scripts)).toContain(name)
    if (name !== 'demo') return
    // as npm would: one command after the other, with what a shell would unquote
    for (const command of scripts.demo!.split('&&').map((part) => part.trim()))
      node(...[...command.matchAll(/"((?:\\.|[^"])*)"|(\S+)/g)].map((m) => m[1] ?? m[2]!).slice(1))
    expect(readFileSync(join(folder, 'out/quarter-mm.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('leave behind what the README says', () => {
    expect(existsSync(join(folder, 'my-ramp.yaml'))).toBe(true)
    expect(readFileSync(join(folder, 'my-ramp.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    // and its program of your own reads the 80 in of the starter
    writeFileSync(join(folder, 'own.mjs'), /^```js\n([\s\S]*?)^```$/m.exec(readme.text)![1]!)
    assertNear(Number(node('own.mjs')), 80 * 25.4, 1e-9)
  })
})

it('the commands for contributors are npm scripts, or make pictures', () => {
  for (const line of shellLines(pageOf('DEVELOPERS.md'))) {
    const [program, verb, name] = line.split(/\s+/)
    if (program === 'pdftoppm') {
      expect(line).toMatch(/ out\/quarter-mm\.pdf docs\/images\/[\w-]+$/)
      expect(existsSync(join(root, `${line.split(' ').at(-1)}.png`)), line).toBe(true)
      continue
    }
    expect(program, line).toBe('npm')
    if (verb !== 'ci') expect(Object.keys(scripts), line).toContain(verb === 'run' ? name : verb)
  }
})
