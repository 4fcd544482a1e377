import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { showBriefly, showChecks } from '../../src/cli/words/show-checks.ts'
import type { Check } from '../../src/ramp/check/check.ts'
import { traceply } from '../support/traceply.ts'

const check = (ramp: string, message: string, level: Check['level'] = 'note'): Check => ({
  id: 'zinc-fume',
  level,
  ramp,
  message,
  offers: [],
})

it('what holds for several ramps alike is said once, for all of them by name', () => {
  const said = showChecks(
    [
      check('outer', 'mind the fume', 'warn'),
      check('outer', 'one'),
      check('inner', 'two'),
      check('inner', 'one'),
    ],
    true,
  )
  expect(said).toEqual([
    'watch outer: mind the fume [zinc-fume]',
    'note  outer, inner: one [zinc-fume]',
    'note  inner: two [zinc-fume]',
  ])
})

it('the same words at another level stay apart', () => {
  expect(showChecks([check('a', 'x', 'warn'), check('b', 'x')], true)).toHaveLength(2)
})

it('a single ramp goes without its name', () => {
  expect(showChecks([check('outer', 'one')], false)).toEqual(['note  one [zinc-fume]'])
})

describe('briefly', () => {
  const notes = [check('a', 'one'), check('b', 'one'), check('b', 'two')]
  it('stops stand alone', () => {
    const all = [check('a', 'no wood', 'stop'), check('a', 'mind', 'warn'), ...notes]
    expect(showBriefly(all, true, 'a.yaml')).toEqual(['STOP  a: no wood [zinc-fume]'])
  })
  it('what to watch stands in full, and notes are counted as figures shows them', () => {
    expect(showBriefly([check('a', 'mind', 'warn'), ...notes], true, 'a.yaml')).toEqual([
      'watch a: mind [zinc-fume]',
      '2 notes: `traceply figures a.yaml` shows them, and looks for what a small change would save',
    ])
    for (const [file, typed] of [
      ['my ramp.yaml', '"my ramp.yaml"'],
      ['-', '-'],
      ['d/$1 "x".yaml', `'d/$1 "x".yaml'`],
      ["it's.yaml", '"it\'s.yaml"'],
    ] as const)
      expect(showBriefly([check('a', 'one')], false, file)).toEqual([
        `1 note: \`traceply figures ${typed}\` shows it, and looks for what a small change would save`,
      ])
    expect(showBriefly([check('a', 'mind', 'warn')], false, 'a.yaml')).toEqual(['watch mind [zinc-fume]'])
    expect(showBriefly([], false, 'a.yaml')).toEqual([])
  })
  it.each(['plot', 'offsets'] as const)(
    '%s counts the notes that figures shows, and its own report is whole',
    async (command) => {
      const design = 'templates/quarter-in.yaml'
      const { checks } = JSON.parse((await traceply('figures', design, '--json')).out) as {
        checks: readonly Check[]
      }
      expect(new Set(checks.map(({ level }) => level))).toEqual(new Set(['note']))
      // what a smaller figure would save is looked for by figures alone
      const count = checks.filter(({ id }) => id !== 'near-miss').length
      expect(count).toBeGreaterThan(1)
      const folder = mkdtempSync(join(tmpdir(), 'traceply-brief-'))
      try {
        const { exit, out, err } = await traceply(command, design, '--out', join(folder, 'set.pdf'))
        expect(exit).toBe(0)
        expect(err).toBe(
          `${count} notes: \`traceply figures ${design}\` shows them, and looks for what a small change would save\n`,
        )
        if (command === 'plot')
          for (const step of [1, 2, 3, 4, 5]) expect(out).toMatch(new RegExp(`^${step}\\. `, 'm'))
        // a stop, and notes besides
        const bad = join(folder, 'bad.yaml')
        writeFileSync(bad, readFileSync(design, 'utf8').replace('leg: 5 ', 'leg: 30 '))
        const said = await traceply(command, bad, '--out', join(folder, 'bad.pdf'))
        expect([said.exit, said.out]).toEqual([1, ''])
        expect(said.err).toMatch(/^STOP /)
        expect(said.err).not.toMatch(/^(note|watch|\d+ notes?)/m)
        expect(said.err.endsWith(`nothing written; \`traceply figures ${bad}\` shows what is solved\n`)).toBe(
          true,
        )
        expect((await traceply('figures', bad)).out).toMatch(/^note /m)
      } finally {
        rmSync(folder, { recursive: true })
      }
    },
  )
})
