import { expect, test } from 'vitest'
import { buyJob } from '../../../src/job/buy.ts'
import { isRefusal } from '../../../src/job/refusal.ts'
import { runOutBolts } from '../../../src/ramp/beside/run-out-bolts.ts'
import { runOutSheet } from '../../../src/ramp/beside/run-out-sheet.ts'
import type { Quarter } from '../../../src/ramp/ramp.ts'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { bookletSaid } from '../../booklet/said.ts'
import { designOf } from '../../support/design-of.ts'
import { above, atLeast, atMost, below } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { templateText } from '../../support/templates.ts'

const solved = (text: string) => {
  const design = designOf(text)
  const ramp = solveDesign(design).ramps[0] as Quarter
  return { ramp, runOut: runOutSheet(ramp, design.stock, design.units) }
}

test('the run-out is screwed into the first stud: off its edges, off the screws of the skin, none too far from the next', () => {
  let looked = 0
  for (const width of [900, 1216, 2436, 3000]) {
    const { ramp, runOut } = solved(templateText('quarter-mm').replace('width: 1216', `width: ${width}`))
    const { sheet, row, widths } = runOut!
    expect(sheet).toEqual({ thickness: 1.5, material: 'steel' })
    // sold 2500 long
    expect(widths).toHaveLength(width > 2500 ? 2 : 1)
    const [stud] = ramp.studs
    // 50 lap on the skin, the row in their middle: up the ridden face, so a little more up the frame's curve
    assertNear(row!.at, 25, 1e-9)
    const { face, curve } = ramp.transition!
    const up = curve.lengthTo(face.placeAtLength(50 - row!.at))
    expect(Math.abs(up - stud!.at)).toBeLessThan(stud!.width / 2)
    const others = ramp.skin.flatMap(({ rows }) =>
      rows.flatMap((one) => one.across.map((x) => ({ x, up: curve.lengthTo(one.place) }))),
    )
    for (const x of row!.across) {
      looked++
      for (const other of others) atLeast(Math.hypot(x - other.x, up - other.up), 15 - 1e-6)
      for (const { from, length } of widths) {
        if (x < from || x > from + length) continue
        above(Math.min(x - from, from + length - x), 10)
      }
    }
    for (const { from, length } of widths) {
      const own = row!.across.filter((x) => x > from && x < from + length)
      own.slice(1).forEach((x, i) => {
        atMost(x - own[i]!, 175 + 1e-6)
      })
      // they show: even
      own.slice(2).forEach((x, i) => {
        assertNear(x - own[i + 1]!, own[1]! - own[0]!, 1e-6)
      })
      below(own[0]! - from, 175)
      below(from + length - own.at(-1)!, 175)
    }
    // skin of 24 and the sheet, 25 into the stud, short of its lower face
    expect(row!.length).toBeGreaterThanOrEqual(24 + 1.5 + 25)
    expect(row!.length!).toBeLessThan(24 + 1.5 + stud!.depth)
  }
  expect(looked).toBeGreaterThan(40)
})

test('where the first stud lies higher the row goes up to it, and where it lies past the lap into the skin, counted', () => {
  const low = (toe: number, section: string) =>
    solved(
      templateText('quarter-mm')
        .replace(/^( +)toe: .*$/m, `$1toe: ${toe}`)
        .replace(/section: [0-9]+ x [0-9]+/, `section: ${section}`),
    )
  const seen = new Set<string>()
  for (const [toe, section] of [
    [40, '38 x 89'],
    [30, '38 x 89'],
    [20, '38 x 89'],
    [30, '45 x 70'],
    [25, '45 x 95'],
  ] as const) {
    const { ramp, runOut } = low(toe, section)
    const { at, into, length, across } = runOut!.row!
    seen.add(`${into} ${at === 25 ? 'middle' : 'higher'}`)
    above(across.length, 5)
    // 10 off either edge of what laps
    above(at, 10)
    below(at, 40)
    const { face, curve } = ramp.transition!
    const off = Math.abs(curve.lengthTo(face.placeAtLength(50 - at)) - ramp.studs[0]!.at)
    const half = ramp.studs[0]!.width / 2
    if (into === 'stud') {
      atMost(off, half - 3 + 0.5)
      atLeast(length!, 24 + 1.5 + 25)
    } else {
      // 24 of skin and 1.5 of steel: the longest that is sold with 2 of wood before its point; and the stud begins past the lap's edge
      expect(length).toBe(20)
      const edge = curve.lengthTo(face.placeAtLength(50 - 10.5))
      above(ramp.studs[0]!.at - half + 3, edge - 1.5)
    }
  }
  expect([...seen].sort()).toEqual(['skin middle', 'stud higher', 'stud middle'])
})

test('there is none where a flat closes the step', () => {
  expect(
    solved(templateText('quarter-and-flat-mm').replace(/ {2}- name: flat[\s\S]*?(?= {2}- name: quarter)/, ''))
      .runOut,
  ).toBeNull()
})

test('over a skin too thin for any screw bolts hold it, where screws would be, long enough for washer and nut', () => {
  const thin = (mm: number) =>
    templateText('quarter-mm')
      .replace(/^( +)toe: .*$/m, '$1toe: 30')
      .replace(/section: [0-9]+ x [0-9]+/, 'section: 45 x 70')
      .replace(/^( +)skin: .*$/m, `$1skin: [${mm} plywood]`)
  const design = designOf(thin(9))
  const { ramp, runOut } = solved(thin(9))
  expect(runOut!.row).toBeNull()
  const bolts = runOutBolts(ramp, design.stock, design.units)!
  // half of a lap of 50
  assertNear(bolts.at, 25, 1e-9)
  // 1.5 of steel and 9, washer 1 (ISO 7089), nut 4.7 (ISO 4032): 16.2; the next of ISO 10642 is 20
  expect(bolts.length).toBe(20)
  const ends = [0, 1216]
  for (const x of bolts.across) for (const end of ends) atLeast(Math.abs(x - end), 18 + 20 - 1e-6)
  bolts.across.slice(1).forEach((x, i) => {
    atMost(x - bolts.across[i]!, 175 + 1e-6)
  })
  // two layers take screws
  const thick = solved(thin(18))
  expect(thick.runOut!.row!.into).toBe('skin')
  expect(runOutBolts(thick.ramp, design.stock, design.units)).toBeNull()

  const facts = buyJob(design)
  if (isRefusal(facts)) throw new Error(JSON.stringify(facts))
  const { list } = facts.facts.stock
  const [line] = list.filter(({ what }) => what.startsWith('bolts M5'))
  expect(line).toMatchObject({
    what: 'bolts M5 × 20 mm, countersunk, washers, nuts',
    count: bolts.across.length,
    unit: 'piece',
  })
  expect(list.find(({ what }) => what === 'spanner')!.note).toContain('run-out')
  expect(bookletSaid(thin(9), ['deck'])).toContain(
    `Put in ${bolts.across.length} bolts M5 × 20, countersunk, a washer and a nut on each from below, the toe lifted onto blocks.`,
  )
})
