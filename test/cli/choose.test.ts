import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { run } from '../../src/cli/run.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import { assertNear } from '../support/near.ts'
import { traceply } from '../support/traceply.ts'
import { useFolder } from './reprint-run.ts'

const { file } = useFolder()

describe('traceply choose', () => {
  it('who knows only "2 ft high, mellow, one panel" has a design in one command', async () => {
    const out = file('ramp.yaml')
    const { exit, err } = await traceply(
      ...['choose', '--units', 'in', '--height', '2 ft', '--rider', 'mellow', '--panels', '1'],
      ...['--pick', '2', '--out', out],
    )
    expect([exit, err]).toEqual([0, ''])
    const figures = await traceply('figures', out, '--json')
    expect(figures.exit).toBe(0)
    const { ramps, checks } = JSON.parse(figures.out)
    assertNear(ramps[0].heights.deck, 609.6, 1e-9)
    expect(checks.filter(({ level }: { level: string }) => level !== 'note')).toEqual([])
    // radius over height 2.5 to 3 is mellow: cos(lip) = 1 − h/R
    const ratio = 1 / (1 - Math.cos((ramps[0].transition.lipAngle * Math.PI) / 180))
    expect(ratio).toBeGreaterThanOrEqual(2.5)
    expect(ratio).toBeLessThan(3)
    expect(readFileSync(out, 'utf8')).toMatch(/# .*custom, no source/)
  })

  it('answers from mellow to steep, a row each, and its JSON says the same', async () => {
    const asked = ['choose', '--rider', '12', '--door', '900 x 2000'] as const
    const { ramps } = JSON.parse((await traceply(...asked, '--json')).out)
    expect(ramps.length).toBeGreaterThanOrEqual(3)
    expect(ramps.length).toBeLessThanOrEqual(5)
    const text = (await traceply(...asked)).out
    let before = 0
    for (const [i, ramp] of ramps.entries()) {
      expect(ramp.lip).toBeGreaterThanOrEqual(before)
      before = ramp.lip
      const row = text.split('\n').find((line) => line.startsWith(`${i + 1}  `))!
      for (const word of [
        ramp.word,
        `${ramp.lip.toFixed(0)}°`,
        ramp.radius.toFixed(0),
        ramp.height.toFixed(0),
      ])
        expect(row).toContain(word)
      const reading = readSettled(ramp.design)
      if ('problems' in reading) throw new Error(reading.problems[0]!.message)
      const job = cutsJob(reading.design)
      if ('refused' in job) throw new Error(job.refused)
      expect(ramp.panels).toBe(job.sheets.reduce((sum, { panels }) => sum + panels.length, 0))
    }
    expect(text).toContain('custom, no source')
  })

  it('tells all that is wrong with the command line at once, and where nothing is found a way that works', async () => {
    const wrong = await traceply(
      'choose',
      '--units',
      'cm',
      '--rider',
      'melow',
      '--panels',
      'two',
      '--out',
      'x',
    )
    expect(wrong).toMatchObject({ exit: 2, out: '' })
    for (const words of ['--units cm', 'did you mean mellow?', '--panels', '--out needs --pick'])
      expect(wrong.err).toContain(words)
    expect(await traceply('choose', '--rider=-3')).toMatchObject({ exit: 2, out: '' })
    expect((await traceply('choose', '--rider=Very-mellow', '--pick', '9')).err).toMatch(/^--pick 9/)
    // no side is higher than a panel is wide
    expect((await traceply('choose', '--height', '9 ft', '--panels', '1')).err).toBe(
      '--height 9 ft is outside 200 to 1220 mm\n',
    )
    expect((await traceply('choose', '--rider', '12', '--pick', '9')).err).toMatch(
      /say a number from 1 to \d/,
    )
    const none = await traceply('choose', '--height', '900', '--rider', 'mellow', '--timbers', '5')
    expect(none).toMatchObject({ exit: 1, out: '' })
    const [, height] = /--height "([^"]+)"/.exec(none.err)!
    const way = await traceply('choose', '--height', height!, '--rider', 'mellow', '--timbers', '5', '--json')
    expect(JSON.parse(way.out).ramps.length).toBeGreaterThan(0)
    expect(none.err).toContain('no --timbers')
    // no ramp is so small: whoever means cm sees what was read
    expect((await traceply('choose', '--garage', '400x300', '--rider', 'mellow')).err).toContain(
      'no --garage (it is read as 400 x 300 mm)',
    )
  })

  it('asks step by step where somebody sits at a terminal, and never replaces a file', async () => {
    const [taken, free] = [file('taken.yaml'), file('free one.yaml')]
    writeFileSync(taken, 'mine')
    const answers = ['', 'melow', 'mellow', '600', '', '', '', '', '', '', '', '1', taken, '1', free]
    const asked: string[] = []
    let [out, err] = ['', '']
    const exit = await run(['choose'], {
      out: (text) => {
        out += text
      },
      err: (text) => {
        err += text
      },
      ask: async (question) => {
        asked.push(question)
        return answers.shift() ?? ''
      },
    })
    expect(exit).toBe(0)
    expect(asked).toHaveLength(15)
    expect(err).toContain('did you mean mellow?')
    expect(err).toContain('--force')
    expect(readFileSync(taken, 'utf8')).toBe('mine')
    expect(existsSync(free)).toBe(true)
    expect(out).toContain(`Wrote ${free}`)
    expect(out).toContain(`  traceply plot "${free}"\n`)
  })
})
