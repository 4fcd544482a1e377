import { describe, expect, test } from 'vitest'
import type { FlatDesign, QuarterDesign, Sheet } from '../../../src/design/design.ts'
import { weakest } from '../../../src/ramp/hazard/bearing.ts'
import { loadWords, skinLoadFindings } from '../../../src/ramp/hazard/break-through.ts'
import { solveFlat } from '../../../src/ramp/kinds/flat-findings.ts'
import { assertNear } from '../../support/near.ts'
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

test('skin that neither closer studs nor one more layer saves is told that both are needed', () => {
  const [draft] = skinLoadFindings(
    { ...plain, skin: [plywood(6)], studs: studded({ every: 300 }) },
    [...solve({ ...plain, studs: studded({ every: 300 }) }).ramp.studs],
    { from: 0, to: 338, curveEnd: 338, known: { toe: true, lip: true } },
    'mm',
  )
  const words = (draft!.message as (trial: () => boolean) => { words: string })(() => false).words
  expect(words).toMatch(/: neither closer studs nor one more layer was found to do alone: take both$/)
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
  test("where nothing else helps, a block is the builder's own, with its timber and its place", () => {
    const bare = {
      ...plain,
      toe: 20,
      skin: [plywood(6), plywood(6), plywood(4)],
      runOut: { kind: 'stepped', back: 20 } as const,
    }
    expect(said(bare, 'skin-free').join()).toMatch(
      /: set a block between the sides there, of the studs' timber ripped to the room, as long as a stud, .*: its face follows the sides' curve, .* \(an addition of your own: no list has it\)$/,
    )
  })
  test('thin skin below a pipe', () => {
    const thin = { ...plain, skin: [plywood(8)], coping: piped({ outside: 114, by: notch(100, 90) }) }
    expect(ids(thin)).toContain('warn skin-free')
    expect(ids({ ...thin, coping: null })).not.toContain('warn skin-free')
  })
})

describe('the sag that is told', () => {
  const skin = [plywood(9), plywood(9), plywood(9)]
  // rigidity of the three for each mm of width: 3 · 3000 · 9³ / 12 (docs/geometry.md)
  const rigidity = (3 * 3000 * 9 ** 3) / 12
  const timber = (from: number) => ({ from, to: from + 38 })
  test('of a free end of 165 is that of its arm of 140 up to the load: F a³ / 3 E I', () => {
    const { free } = weakest({
      sheets: skin,
      from: 0,
      to: 300,
      timbers: [timber(165), timber(262)],
      width: 1180,
    })
    const sag = (1500 * 140 ** 3) / (3 * rigidity * (50 + 2 * 140))
    assertNear(free[0]!.deflection, sag, 1e-9)
    expect(loadWords(free[0]!, 'mm')).toContain(`sags about ${sag.toFixed(1)} mm there`)
  })
  test('of a stretch that spans from side to side is that of its width: F L³ / 48 E I', () => {
    const { between } = weakest({
      sheets: skin,
      from: 0,
      to: 900,
      timbers: [timber(0), timber(862)],
      width: 600,
    })
    assertNear(between!.deflection, (1500 * 600 ** 3) / (48 * rigidity * (0.58 * 600 + 50)), 1e-9)
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
