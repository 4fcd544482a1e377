import { describe, expect, test } from 'vitest'
import type { FlatDesign, QuarterDesign, Sheet } from '../../../src/design/design.ts'
import { solveFlat } from '../../../src/ramp/kinds/flat-findings.ts'
import { remediesOf } from '../check/remedy.ts'
import { level } from '../flats.ts'
import { notch, piped, plain, plywood, said, solve, stock, studded } from '../ramps.ts'

const hardboard = (thickness: number): Sheet => ({ thickness, material: 'hardboard' })
const ids = (design: QuarterDesign): readonly string[] =>
  solve(design).drafts.map(({ level, id }) => `${level} ${id}`)

/** On a straight-edged gap L between studs: 20 · t² / 6 borne, F L / 4 on 0.58 L + 50 (docs/geometry.md). */
const least = (gap: number): number => Math.sqrt((6 * 1500 * gap) / (4 * 20 * (0.58 * gap + 50)))

describe('skin that a rider may break', () => {
  // the widest gap of `plain` is 162, from stud to stud on edge every 200
  const only = (thickness: number): QuarterDesign => ({
    ...plain,
    deckBoard: null,
    skin: [plywood(thickness)],
  })
  const gapOf = (design: QuarterDesign): number => {
    const { studs } = solve(design).ramp
    return Math.max(...studs.slice(1).map((s, i) => s.at - s.width / 2 - studs[i]!.at - studs[i]!.width / 2))
  }
  test('speaks just under the thickness that bears 1500 N, by hand', () => {
    const limit = least(gapOf(only(11)))
    expect(ids(only(limit + 0.01))).not.toContain('warn skin-load')
    expect(ids(only(limit - 0.01))).toContain('warn skin-load')
  })
  test('two of 9 mm over 610 bear it, but sag', () => {
    const wide = { ...plain, skin: [plywood(9), plywood(9)], studs: studded({ every: 610 }) }
    expect(said(wide, 'skin-load').join()).toMatch(
      /spans 5\d\d(?:\.\d)? mm from stud to stud and (?:bears|sags) about/,
    )
  })
  test('3 mm of hardboard over 610 says what it bears, and nothing is known of other sheets', () => {
    const thin = { ...plain, skin: [hardboard(3)], studs: studded({ every: 610 }) }
    expect(said(thin, 'skin-load').join()).toMatch(
      /bears about 1[12]0 N \(20 lb\) there, a rider who lands is taken as 1500 N/,
    )
    expect(ids({ ...thin, skin: [{ thickness: 3, material: 'other' }] })).not.toContain('warn skin-load')
  })
  test('its ways out work', () => {
    for (const skin of [[plywood(9)], [plywood(6), plywood(6)], [plywood(9), plywood(9)]]) {
      const design = { ...plain, skin, studs: studded({ every: skin.length > 1 ? 300 : 200 }) }
      const finding = solve(design).findingsOf('skin-load')[0]!
      for (const way of remediesOf(design, finding, 'mm'))
        expect(ids(way.design)).not.toContain('warn skin-load')
    }
  })
})

describe('skin that hangs free', () => {
  test('over a notch that eats the curve, with the notch that leaves it', () => {
    const eaten = { ...plain, coping: piped({}, notch(48, 300)) }
    const message = said(eaten, 'skin-free').join()
    expect(message).toMatch(
      /for \d+(?:\.\d)? mm below the upper end of the skin \(\d+(?:\.\d)? mm of it over the notch\)/,
    )
    const down = Number(/a notch (\d+) mm down or less/.exec(message)![1])
    expect(ids({ ...eaten, coping: piped({}, notch(48, down)) })).not.toContain('warn skin-free')
    expect(ids({ ...eaten, coping: piped({}, notch(48, down + 1)) })).toContain('warn skin-free')
  })
  test('thin skin below a pipe', () => {
    const thin = { ...plain, skin: [plywood(8)], coping: piped({ outside: 114, by: notch(100, 90) }) }
    expect(ids(thin)).toContain('warn skin-free')
    expect(ids({ ...thin, coping: null })).not.toContain('warn skin-free')
  })
})

describe('a deck board', () => {
  const over = (thickness: number, deck: number): QuarterDesign => ({
    ...plain,
    back: { from: 'deck', value: 1100 },
    deckBoard: plywood(thickness),
    studs: studded({ deck }),
  })
  test('3 mm over 1000 is said, with what bears', () => {
    const message = said(over(3, 1000), 'board-load').join()
    expect(message).toContain('the deck board (3 mm plywood) spans')
    const thick = Number(/a deck board (\d+) mm thick/.exec(message)![1])
    expect(ids(over(thick, 1000))).not.toContain('warn board-load')
    expect(ids(over(thick - 1, 1000))).toContain('warn board-load')
  })
  test('15 mm over 300 is not', () => expect(ids(over(15, 300)).join()).not.toContain('board'))
})

describe('a flat', () => {
  const design = (every: number): FlatDesign => ({
    ...level,
    studs: { ...level.studs, every },
    skin: [plywood(9), plywood(9)],
  })
  const findings = (every: number) =>
    solveFlat(design(every), 'mm', stock).findings.filter(({ id }) => id === 'skin-load')
  test('names the widest spacing that bears', () => {
    const message = findings(600)[0]!.message
    const every = Number(/studs every (\d+) mm$/.exec(message)![1])
    expect(findings(every)).toEqual([])
    expect(findings(every + 1)).toHaveLength(1)
  })
})
