import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Flatten from '@flatten-js/core'
import { afterAll, describe, expect, it } from 'vitest'
import { showLength } from '../../src/length.ts'
import { sidePattern } from '../../src/pattern/side.ts'
import { withOffsets } from '../booklet/solved.ts'
import { polygon } from '../ramp/framed.ts'
import { templates } from '../support/templates.ts'
import { figuresOf } from '../support/traceply.ts'

const folder = mkdtempSync(join(tmpdir(), 'figures-'))
afterAll(() => rmSync(folder, { recursive: true }))

const template = (name: string): string => readFileSync(`templates/${name}.yaml`, 'utf8')
/** A template with some of its lines said otherwise. */
const changed = (name: string, ...lines: readonly (readonly [was: string, is: string])[]): string =>
  lines.reduce((text, [was, is]) => {
    expect(text).toContain(`${was} `)
    return text.replace(`${was} `, `${is} `)
  }, template(name))

interface Said {
  readonly text: string
  readonly ramp: Ramp
}
/** Both ways that they are printed. */
const figures = async (design: string): Promise<Said> => {
  const file = join(folder, 'ramp.yaml')
  writeFileSync(file, design)
  const [table, json] = [await figuresOf(file), await figuresOf(file, '--json')]
  expect([table.err, json.err]).toEqual(['', ''])
  return { text: table.out, ramp: JSON.parse(json.out).ramps[0] }
}
interface Timber {
  readonly x: number
  readonly lies: string
  readonly role: string
}
interface Ramp {
  readonly studs: readonly { readonly at: number; readonly lies: string; readonly depth: number }[]
  readonly deckTimbers: readonly Timber[]
  readonly deckBoard: {
    readonly from: number
    readonly length: number
    readonly screws: { readonly count: number }
  }
  readonly coping: { readonly notch: { readonly along: number; readonly down: number } }
}
/** A row of the table, lines that go on below joined. */
const row = (text: string, label: string): string => {
  const found = new RegExp(`^  ${label} +(.*(?:\\n {11}.*)*)`, 'm').exec(text)
  expect(found, `${label} in\n${text}`).not.toBeNull()
  return found![1]!.replace(/\n +/g, ' ')
}
const flat = ({ lies }: { readonly lies: string }): string => (lies === 'flat' ? ' flat' : '')

describe('the figures of a low ramp, in words', () => {
  it('keep the decimals of what is measured with a caliper, and round what is cut with a saw', async () => {
    const { text, ramp } = await figures(template('quarter-mm'))
    expect(row(text, 'pipe')).toBe('60.3 thick; stands 8 above the deck board, 6 out of the ridden face')
    const { along, down } = ramp.coping.notch
    expect(row(text, 'notch')).toBe(`square, ${along.toFixed(1)} along, ${down.toFixed(1)} down`)
    expect(row(text, 'height')).toMatch(/^frame 625 {3}deck 640 {3}/)
  })
  it('name section, length and number of the timbers', async () => {
    const { text, ramp } = await figures(template('quarter-mm'))
    // 1216 less two sides of 18
    const counts = `${ramp.studs.length} studs and ${ramp.deckTimbers.length} behind the lip`
    expect(row(text, 'timber')).toBe(`38 × 89 between the sides, 1180 long: ${counts}`)
    const three = await figures(
      changed('quarter-mm', ['width: 1216', 'width: 1800'], ['count: 2', 'count: 4']),
    )
    // 1800 less four sides of 18, in three bays
    const each = [three.ramp.studs.length, three.ramp.deckTimbers.length] as const
    expect(row(three.text, 'timber')).toBe(
      `38 × 89 between the sides, 576 long: in each of 3 bays ${each[0]} studs and ${each[1]} behind the lip, ${3 * (each[0] + each[1])} in all`,
    )
  })
  it('list every stud up the curve and every timber behind the lip, with what lies flat', async () => {
    for (const design of [template('quarter-mm'), template('quarter-mm-round'), template('pair-mm')]) {
      const { text, ramp } = await figures(design)
      expect(row(text, `studs ${ramp.studs.length}`)).toBe(
        `up the curve from the toe to their middles: ${ramp.studs.map((s) => `${s.at.toFixed(0)}${flat(s)}`).join(', ')}`,
      )
      const words = row(text, `behind ${ramp.deckTimbers.length}`)
      expect(words).toMatch(
        /^along the floor from the toe to their middles, upright unless flat \(number on the paper\): /,
      )
      const named = {
        pipe: 'under the pipe',
        backing: 'backing behind the pipe',
        deck: 'under the deck board',
        back: 'back bottom corner',
      }
      for (const [role, name] of Object.entries(named)) {
        const own = ramp.deckTimbers.flatMap((timber, i) => (timber.role === role ? [{ ...timber, i }] : []))
        if (own.length === 0) expect(words).not.toContain(name)
        else
          expect(words).toContain(
            `${name} ${own.map((t) => `${t.x.toFixed(0)}${flat(t)} (${ramp.studs.length + t.i + 1})`).join(', ')}`,
          )
      }
    }
  })
  it('number every timber behind the lip as the paper does', async () => {
    let told = 0
    for (const name of templates) {
      const { text } = await figures(template(name))
      const rows = [...text.matchAll(/^ {2}behind \d+ +.*(?:\n {11}.*)*/gm)].map(([found]) =>
        found.replace(/\n +/g, ' '),
      )
      const { design, quarters } = withOffsets(template(name))
      expect(rows).toHaveLength(quarters.length)
      quarters.forEach((ramp, k) => {
        // a label stands within its timber
        const { labels } = sidePattern(ramp, [ramp.name], design.units)
        for (const timber of ramp.deckTimbers) {
          const label = labels.find(({ places: [at] }) =>
            polygon(timber).contains(new Flatten.Point(at!.x, at!.y)),
          )
          const [, number] = /^timber (\d+) /.exec(label!.words)!
          expect(rows[k]).toContain(` ${showLength(timber.x, design.units)}${flat(timber)} (${number})`)
          told++
        }
      })
    }
    expect(told).toBeGreaterThan(25)
  })
  it('say to what a stud is ripped', async () => {
    const { text, ramp } = await figures(
      changed('quarter-mm', ['toe: 40', 'toe: 18'], ['every: 200', 'every: 100']),
    )
    const first = ramp.studs[0]!
    expect(first.depth).toBeLessThan(38)
    expect(row(text, 'studs \\d+')).toContain(
      `${first.at.toFixed(0)} flat (ripped to ${Number(first.depth.toFixed(1))})`,
    )
  })
  it('give sheets, seams and screws of every layer and of the deck board', async () => {
    const { text, ramp } = await figures(template('quarter-mm'))
    const { from, length, screws } = ramp.deckBoard
    expect(row(text, 'board')).toBe(
      `15 plywood, ${length.toFixed(0)} deep, from ${from.toFixed(0)} behind the toe to the back; 1 sheet, ${screws.count} screws of 40`,
    )
    expect(row(text, 'screws')).toBe(
      "250 apart at most (top sheet 175), 10.5 off a sheet's edge, 20 off a stud's end, 15 off any below; gaps 3",
    )
    const high = await figures(template('quarter-mm-round'))
    expect(row(high.text, 'skin 1')).toMatch(
      /^9 plywood, 1475 long; 2 sheets up \(\d+ and \d+, seam \d+ on stud \d\), \d+ screws of 40$/,
    )
    const wide = await figures(changed('quarter-mm', ['width: 1216', 'width: 3000']))
    expect(row(wide.text, 'skin 2')).toMatch(/; 2 sheets across \(seam 559\), \d+ screws of 50$/)
  })
})

describe('screws are counted by length', () => {
  interface Layer {
    readonly rows: readonly { readonly across: readonly number[]; readonly length: number | null }[]
    readonly screws: {
      readonly count: number
      readonly length: number
      readonly lengths: readonly { readonly length: number | null; readonly count: number }[]
    }
  }
  it('where a stud ripped to a low toe takes shorter ones', async () => {
    const { text, ramp } = await figures(changed('quarter-in', ['toe: 1 1/2', 'toe: 1/2']))
    // the first of eight rows of six lies on the ripped stud: 3/8 of skin, 1/2 of toe
    expect(row(text, 'skin 1')).toMatch(/, 42 screws of 1 5\/8, 6 of 3\/4$/)
    const layers = (ramp as unknown as { readonly skin: readonly Layer[] }).skin
    const [first] = layers
    expect(first!.screws.count).toBe(48)
    expect(first!.screws.lengths).toEqual([
      { length: first!.screws.length, count: 42 },
      { length: 0.75 * 25.4, count: 6 },
    ])
    for (const { rows, screws } of layers) {
      expect(screws.lengths.reduce((sum, { count }) => sum + count, 0)).toBe(screws.count)
      for (const { length, count } of screws.lengths)
        expect(count).toBe(
          rows.filter((one) => one.length === length).reduce((sum, { across }) => sum + across.length, 0),
        )
      const longest = screws.lengths.map(({ length }) => length ?? 0)
      expect(longest).toEqual([...longest].sort((a, b) => b - a))
    }
  })
  it('of the deck board too, and those that no usual length fits are told apart', async () => {
    const { text, ramp } = await figures(
      changed('quarter-mm', ['section: 38 x 89', 'section: 20 x 89'], ['deck: 500', 'deck: 300']),
    )
    const { lengths } = (ramp.deckBoard as unknown as Layer).screws
    expect(row(text, 'board')).toMatch(
      new RegExp(
        `, ${lengths.map(({ length, count }, i) => `${count}${i === 0 ? ' screws' : ''} of ${length}`).join(', ')}$`,
      ),
    )
    const thin = await figures(
      changed(
        'quarter-mm',
        ['section: 38 x 89', 'section: 10 x 10'],
        ['[9 plywood, 9 plywood, 6 hardboard]', '[1 hardboard]'],
      ),
    )
    expect(row(thin.text, 'skin 1')).toMatch(/ that no usual length fits$/)
  })
})

it('one ramp keeps to one screen, 120 columns and 48 lines, for every template and as wide and high as it is built', async () => {
  const designs = [
    template('quarter-mm'),
    template('quarter-in'),
    template('quarter-in-plain'),
    template('quarter-mm-round'),
    changed('quarter-mm', ['width: 1216', 'width: 3600']),
    changed('quarter-mm-round', ['width: 2400', 'width: 3000']),
    changed('quarter-in', ['width: 47 1/2', 'width: 120']),
  ]
  for (const design of designs) {
    const { text } = await figures(design)
    const lines = text.trimEnd().split('\n')
    expect(lines.length).toBeLessThanOrEqual(48)
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(120)
  }
})
