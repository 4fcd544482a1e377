import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign, Stock } from '../../../src/design/design.ts'
import type { DeckBoard } from '../../../src/ramp/skin/deck-board.ts'
import { above, atMost, below, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { bays, job, polygon } from '../framed.ts'
import { notch, piped, plain, plywood, said, sawnSeed, solve, studded, transitionOf } from '../ramps.ts'

/** A skin's and a board's gap to the pipe; between sheets; a screw from its sheet's edge, inside a timber's long edge. mm */
const [toPipe, gap, edge] = [2, 3, 10.5]

const board = (design: QuarterDesign, panel?: Stock['panel']): DeckBoard => {
  const { ramp, findings } = solve(design, 'mm', panel)
  if (!ramp.deckBoard) throw new Error(findings.map((f) => f.message).join('\n'))
  return ramp.deckBoard
}
const deck = (value: number): Pick<QuarterDesign, 'back'> => ({ back: { from: 'deck', value } })

describe('the deck board', () => {
  const notched: QuarterDesign = { ...plain, coping: piped({}, notch(48, 33)) }
  test('reaches from behind the notch, a gap off the pipe, to the back edge', () => {
    const { from, length, pieces, widths } = board(notched)
    assertNear(from, transitionOf(plain).run + 48 + toPipe, 1e-9)
    assertNear(length, 500 - 48 - toPipe, 1e-9)
    expect(pieces).toHaveLength(1)
    assertNear(pieces[0]!.length, 450, 1e-9)
    expect(widths).toEqual([{ from: 0, length: 1216 }])
  })
  test('starts at the lip where there is no pipe', () => {
    assertNear(board(plain).from, transitionOf(plain).run, 1e-9)
    assertNear(board(plain).length, 500, 1e-9)
  })
  test('is none where the design has none, or a stop', () => {
    expect(solve({ ...plain, deckBoard: null }).ramp.deckBoard).toBeNull()
    expect(solve({ ...plain, back: { from: 'length', value: 700 } }).ramp.deckBoard).toBeNull()
  })
  test('has a row of screws on each timber under it, 25 mm and more into it', () => {
    const { rows, screws } = board(notched)
    // backing: 38 thick behind the wall, so 19 − 2; the last flush with the back: 450 − 19; one half way
    ;[17, 224, 431].forEach((at, i) => {
      assertNear(rows[i]!.at, at, 1e-6, `row ${i + 1}`)
    })
    expect(rows).toHaveLength(3)
    // 15 + 25 = 40; from 18 + 20 to 1216 − 38 in 5 steps of 228
    expect(screws).toEqual({ count: 3 * 6, length: 40 })
    rows[0]!.across.forEach((p, i) => {
      assertNear(p, 38 + 228 * i, 1e-9)
    })
  })
  test('deeper than a sheet is wide it meets on the farthest timber that a sheet reaches, with two rows there', () => {
    const long = { ...plain, ...deck(2000) }
    const { pieces, seams, rows } = board(long)
    // from 19 to 1981 in 7 bays of 280.29: 1220 and half a gap reach the fifth timber
    const fifth = 19 + (4 * 1962) / 7
    assertNear(seams[0]!.at, fifth, 1e-6)
    expect(seams).toHaveLength(1)
    assertNear(pieces[0]!.length, fifth - gap / 2, 1e-6)
    assertNear(pieces[1]!.length, 2000 - fifth - gap / 2, 1e-6)
    const near = rows.filter(({ at }) => Math.abs(at - fifth) < 100).map(({ at }) => at)
    ;[fifth - gap / 2 - edge, fifth + gap / 2 + edge].forEach((at, i) => {
      assertNear(near[i]!, at, 1e-6)
    })
    expect(near).toHaveLength(2)
    expect(said(long, 'deck-seam')).toEqual([])
  })
  test('names the place where no timber takes a seam', () => {
    const thin = { ...plain, ...deck(2000), studs: studded({ section: [19, 89] }) }
    const { seams } = board(thin)
    expect(seams).toEqual([{ at: 1220 + gap / 2, timber: null }])
    expect(said(thin, 'deck-seam')).toEqual([
      `note: the deck board is 2000 mm from front to back, a sheet is 1220 mm wide: sheets meet ${(transitionOf(plain).run + 1221.5).toFixed(0)} mm behind the toe, where no timber takes two rows of screws; add one there, or double the one beside it`,
    ])
  })
  test('wider than a sheet is long it meets over a rib, or over blocks', () => {
    const wide = { ...plain, width: 3018, sides: { thickness: 18, count: 3 } }
    expect(board(wide).acrossSeams).toEqual([{ at: 1509, rib: true }])
    const open = { ...wide, skin: [], sides: { thickness: 18, count: 2 } }
    expect(board(open).acrossSeams).toEqual([{ at: 2440 + gap / 2, rib: false }])
    expect(said(open, 'seam-across')).toEqual([
      'note: sheets reach 2440 mm across, the ramp is 3018 mm wide; they meet: the deck board 2442 mm from the left. Where no rib lies, set blocks between the timbers under the seam',
    ])
    expect(said({ ...wide, skin: [plywood(9)] }, 'seam-across')).toEqual([
      'note: sheets reach 2440 mm across, the ramp is 3018 mm wide; they meet: layer 1 and the deck board 1509 mm from the left, over a rib',
    ])
  })
  test('takes a shorter screw where a timber lies flat and is thin, and says so', () => {
    // a panel 130 high has no room for timbers 140 deep: flat, 19 deep; 15 + 19 − 2 = 32 takes 30 and not 40
    const low: QuarterDesign = {
      ...plain,
      height: { layer: 'frame', value: 130 },
      toe: 30,
      studs: studded({ section: [19, 140], every: 1000 }),
      ...deck(700),
    }
    const { rows, screws } = board(low)
    expect(rows.length).toBeGreaterThan(0)
    expect(rows.every(({ length }) => length === 30)).toBe(true)
    expect(screws.length).toBe(40)
    expect(said(low, 'screw-through').filter((m) => m.includes('deck board'))[0]).toMatch(
      /^note: deck board: a screw of 40 mm comes through at the timber \d+ mm behind the toe \(30 mm at most\)/,
    )
  })
})

test('a panel narrower than any piece ends the board all the same', () => {
  const { pieces } = board({ ...plain, ...deck(190) }, [40, 2440])
  expect(pieces.every(({ length }) => length > 0 && length <= 40)).toBe(true)
  assertNear(pieces.reduce((sum, { length }) => sum + length, 0) + gap * (pieces.length - 1), 190, 1e-6)
})

test('on 500 ramps: sheets fit a panel and make up the board; screws find timber, off edges, sides and ribs', () => {
  let [screws, seamed] = [0, 0]
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  const jobs = fc.record({ one: job, deck: real(200, 2600), every: real(200, 500), thickness: real(9, 22) })
  for (const { one, deck: value, every, thickness } of fc.sample(jobs, { numRuns: 500, seed: sawnSeed })) {
    const design: QuarterDesign = {
      ...one.design,
      ...deck(value),
      deckBoard: plywood(thickness),
      studs: { ...one.design.studs, deck: every },
    }
    const { ramp } = solve(design, one.units, one.panel)
    if (!ramp.deckBoard) continue
    const { from, length, pieces, widths, seams, rows } = ramp.deckBoard
    const between = { mm: 3, in: 3.175 }[one.units]
    const sum = (of: typeof pieces): number =>
      of.reduce((total, piece) => total + piece.length, 0) + between * (of.length - 1)
    assertNear(sum(pieces), length, 1e-6)
    assertNear(sum(widths), design.width, 1e-6)
    assertNear(from + length, ramp.length!, 1e-6)
    if (ramp.coping) above(from, ramp.coping.centre.x + ramp.coping.outside / 2 + 1.9)
    for (const piece of pieces) atMost(piece.length, one.panel[0] + 1e-6)
    for (const piece of widths) atMost(piece.length, one.panel[1] + 1e-6)
    for (const { at, timber } of seams) {
      seamed++
      if (timber === null) continue
      const { xmin, xmax } = polygon(ramp.deckTimbers[timber]!).box
      above(from + at - between / 2 - 10, xmin)
      below(from + at + between / 2 + 10, xmax)
    }
    for (const row of rows) {
      const { box } = polygon(ramp.deckTimbers[row.timber]!)
      assertNear(box.ymax, ramp.side!.height, 1e-6, 'the timber bears the board')
      above(from + row.at, box.xmin + 2.9)
      below(from + row.at, box.xmax - 2.9)
      hold(pieces.some((p) => row.at > p.from + 10 && row.at < p.from + p.length - 10))
      if (row.length !== null) above(ramp.side!.height + thickness - row.length, box.ymin + 2 - 1e-6)
      for (const p of row.across) {
        screws++
        hold(bays(design).some(([a, b]) => p >= a + 19.9 && p <= b - 19.9))
        hold(widths.some((w) => p > w.from + 10 && p < w.from + w.length - 10))
      }
    }
  }
  expect(screws).toBeGreaterThan(5000)
  expect(seamed).toBeGreaterThan(100)
})
