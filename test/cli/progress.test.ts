import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { run } from '../../src/cli/run.ts'
import { lineProgress } from '../../src/cli/words/progress.ts'

/** What a terminal shows in its line, by a clock that a test sets. */
const shown = () => {
  const said: string[] = []
  const clock = { ms: 0 }
  const progress = lineProgress(
    (text) => said.push(text),
    () => clock.ms,
  )
  return { said, clock, progress }
}

it('is told from half a second on, ten times a second at most, and taken away at the end', () => {
  const { said, clock, progress } = shown()
  for (const [page, ms] of [200, 499, 500, 540, 599, 600, 650].entries()) {
    clock.ms = ms
    progress.at(page + 1, 30)
  }
  expect(said).toEqual(['\rpages 3 of 30', '\rpages 6 of 30'])
  progress.end()
  expect(said.at(-1)).toBe('\r\u001b[K')
})

it('of what is over sooner nothing is ever shown', () => {
  const { said, clock, progress } = shown()
  clock.ms = 499
  progress.at(30, 30)
  progress.end()
  expect(said).toEqual([])
})

it('plot tells each of its pages, and ends before its words; without a terminal the same set and words', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-'))
  try {
    const told: string[] = []
    const plot = async (name: string, terminal: boolean): Promise<string> => {
      let said = ''
      const say = (text: string): void => {
        if (text !== '') told.push('words')
        said += text
      }
      const progress = {
        at: (done: number, of: number) => told.push(`${done} of ${of}`),
        end: () => told.push('end'),
      }
      const out = join(folder, name)
      const args = ['plot', 'templates/quarter-mm.yaml', '--cover', 'line', '--out', out]
      expect(await run(args, { out: say, err: say, ...(terminal && { progress }) })).toBe(0)
      return said.replaceAll(out, 'set.pdf')
    }
    const words = await plot('a.pdf', true)
    const pages = Number(/: (\d+) pages/.exec(words)![1])
    expect(told.slice(0, pages + 1)).toEqual([
      ...Array.from({ length: pages }, (_, i) => `${i + 1} of ${pages}`),
      'end',
    ])
    expect(told.slice(pages + 1).every((what) => what === 'words')).toBe(true)
    expect(await plot('b.pdf', false)).toBe(words)
    expect(readFileSync(join(folder, 'a.pdf')).equals(readFileSync(join(folder, 'b.pdf')))).toBe(true)
  } finally {
    rmSync(folder, { recursive: true })
  }
})

it('figures tells each ramp that it looks at for near misses, and ends before its words', async () => {
  const told: string[] = []
  const progress = {
    at: (done: number, of: number, what?: string) => told.push(`${what} ${done} of ${of}`),
    end: () => told.push('end'),
  }
  const out = (text: string): void => {
    if (text !== '') told.push('words')
  }
  expect(await run(['figures', 'templates/pair-mm.yaml'], { out, err: out, progress })).toBe(0)
  expect(told).toEqual(['near misses: ramp 1 of 2', 'near misses: ramp 2 of 2', 'end', 'words'])
})
