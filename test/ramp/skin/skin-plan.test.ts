import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign, Units } from '../../../src/design/design.ts'
import { screwsAcross } from '../../../src/ramp/skin/screw-rows.ts'
import { seamStudsOf } from '../../../src/ramp/skin/seam-studs.ts'
import { above, atLeast, atMost, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { alongFrame, bays, bent, type Job, job, polygon } from '../framed.ts'
import { circleOf, inch, plain, plywood, sawnSeed, solve, studded } from '../ramps.ts'

/** What is promised of gaps, edges and distances; common practice, no source. mm */
const practice = {
  mm: { gap: 3, edge: 10.5, base: 250, top: 175, between: 25, stagger: 300 },
  in: { gap: 3.175, edge: 11.1125, base: 254, top: 177.8, between: 25.4, stagger: 304.8 },
}
const apart = 15

const jobs = fc.sample(job, { numRuns: 600, seed: sawnSeed })
const drafted = ({ design, units, panel }: Job) => {
  const { ramp, drafts } = solve(design, units, panel)
  return { ramp, drafts }
}
const solved = jobs.map((one) => ({ ...one, ...drafted(one) }))
const warned = (drafts: readonly { readonly id: string; readonly level: string }[], id: string): boolean =>
  drafts.some((f) => f.id === id && f.level === 'warn')
const isBetween = ({ design }: Job): boolean => design.fasten === 'between' && design.skin.length > 1

describe('on 600 ramps that can be sawn', () => {
  test('the ramps meet what is tested: seams, ribs, sheets side by side, both ways to fasten', () => {
    const plans = solved.flatMap(({ ramp }) => ramp.skin)
    expect(plans.filter(({ seams }) => seams.length > 0).length).toBeGreaterThan(500)
    expect(plans.filter(({ seams }) => seams.length > 1).length).toBeGreaterThan(50)
    expect(plans.filter(({ acrossSeams }) => acrossSeams.some(({ rib }) => rib)).length).toBeGreaterThan(100)
    expect(plans.filter(({ acrossSeams }) => acrossSeams.some(({ rib }) => !rib)).length).toBeGreaterThan(100)
    const between = solved.filter((one) => isBetween(one) && one.ramp.skin.at(-1)!.rows.length > 1)
    expect(between.length).toBeGreaterThan(100)
    expect(solved.filter(({ drafts }) => warned(drafts, 'seam-stud')).length).toBeLessThan(60)
  })

  test('every seam lies on a stud, or a warning says which does not', () => {
    for (const { ramp, drafts } of solved) {
      const lost = ramp.skin.flatMap(({ seams }) => seams.filter((s) => s.stud === null || s.shared))
      hold(lost.length > 0 === warned(drafts, 'seam-stud'))
      ramp.skin.forEach((plan, i) => {
        for (const seam of plan.seams) {
          if (seam.stud === null) continue
          // on a joint each half of the gap has a stud of its own
          const halves = seam.second === null ? [0] : [-1, 1]
          halves.forEach((side, k) => {
            const stud = ramp.studs[k === 0 ? seam.stud! : seam.second!]!
            hold(polygon(stud).contains(bent(ramp, i, seam.at + side, 2)))
          })
        }
      })
    }
  })

  test('neighbouring layers never meet on the same stud, but where that is said', () => {
    for (const { ramp } of solved)
      ramp.skin.slice(1).forEach((plan, i) => {
        const below = ramp.skin[i]!.seams.flatMap(seamStudsOf)
        for (const seam of plan.seams)
          hold(seamStudsOf(seam).some((stud) => below.includes(stud)) === seam.shared)
      })
  })

  test('seams across lie 300 mm (12 in) or more from those of the layer below, in no more pieces than that takes', () => {
    /** Whether so many pieces can do it, tried in whole 10 mm. */
    const withPieces = (
      count: number,
      {
        width,
        most,
        below,
        apart,
      }: Record<'width' | 'most' | 'apart', number> & { below: readonly number[] },
      from = 0,
    ): boolean => {
      const rest = width - from
      if (count === 1) return rest >= 250 && rest <= most
      for (let length = 250; length <= most && from + length < width; length += 10) {
        const at = from + length
        if (below.some((other) => Math.abs(other - at) < apart)) continue
        if (withPieces(count - 1, { width, most, below, apart }, at)) return true
      }
      return false
    }
    let met = 0
    for (const { ramp, panel, design, units } of solved)
      ramp.skin.slice(1).forEach((plan, i) => {
        const below = ramp.skin[i]!.acrossSeams.map(({ at }) => at)
        for (const { at } of plan.acrossSeams)
          for (const other of below) atLeast(Math.abs(at - other), practice[units].stagger - 1e-6)
        const fewer = plan.widths.length - 1
        if (fewer < 2) return
        met++
        // a panel shorter by its gap and by the step of the trial
        const most = panel[1] - practice[units].gap - 10
        const apart = practice[units].stagger
        hold(!withPieces(fewer, { width: design.width, most, below, apart }))
      })
    above(met, 20)
  })

  test('pieces fit a panel, and with their gaps make up the layer and the width', () => {
    for (const { ramp, panel, units, design } of solved)
      ramp.skin.forEach((plan) => {
        const { gap } = practice[units]
        const sum = (of: readonly { readonly length: number }[]): number =>
          of.reduce((total, { length }) => total + length, 0) + gap * (of.length - 1)
        if (plan.length === 0) return
        assertNear(sum(plan.pieces), plan.length, 1e-6, 'up')
        assertNear(sum(plan.widths), design.width, 1e-6, 'across')
        for (const { length } of plan.pieces) {
          atMost(length, panel[0] + 1e-6)
          above(length, 0)
        }
        for (const { length } of plan.widths) {
          atMost(length, panel[1] + 1e-6)
          atLeast(length, 250 - 1e-6)
        }
        plan.seams.forEach(({ at }, k) => {
          assertNear(plan.pieces[k]!.from + plan.pieces[k]!.length, at - gap / 2, 1e-6)
          assertNear(plan.pieces[k + 1]!.from, at + gap / 2, 1e-6)
        })
      })
  })

  test('every screw that should meets timber: under its head, and 25 mm deep or as deep as it is', () => {
    let screws = 0
    for (const one of solved) {
      const { ramp, design } = one
      ramp.skin.forEach((plan, i) => {
        for (const row of plan.rows) {
          if (row.on === 'between') continue
          const stud = ramp.studs[row.stud!]!
          const timber = polygon(stud)
          hold(timber.contains(bent(ramp, i, row.at, 1)))
          hold(timber.contains(bent(ramp, i, row.at, Math.min(25, stud.depth - 0.5))))
          for (const p of row.across) {
            screws++
            hold(bays(design).some(([a, b]) => p >= a + 19.9 && p <= b - 19.9))
          }
        }
      })
    }
    above(screws, 50_000)
  })

  test('every screw between studs misses all timber by its distance, sides and ribs too', () => {
    let ends = 0
    for (const one of solved) {
      const { ramp, design, units } = one
      const top = ramp.skin.length - 1
      const rows = ramp.skin[top]?.rows ?? []
      if (!isBetween(one)) {
        hold(!rows.some((row) => row.on === 'between'))
        continue
      }
      // but in a sheet that has room for none; the others have one row into a stud at each end that no run-out laps
      ramp.skin[top]!.pieces.forEach(({ from, length }, i) => {
        const own = rows.filter(({ at }) => at > from && at < from + length)
        if (own.every(({ on }) => on !== 'between')) return
        hold(own.slice(1, -1).every(({ on }) => on === 'between'))
        const lapped = i === 0 && design.runOut.kind === 'sheet'
        hold(!lapped || own[0]!.on === 'between')
        ends += Number(own[0]!.on !== 'between') + Number(own.at(-1)!.on !== 'between')
      })
      const across = ramp.skin.slice(0, top).flatMap((plan) => plan.acrossSeams)
      const timber = [...ramp.studs, ...ramp.deckTimbers].map(polygon)
      for (const row of rows.filter(({ on }) => on === 'between')) {
        const foot = bent(ramp, top, row.at, 0)
        for (const t of timber) {
          hold(!t.contains(foot))
          above(foot.distanceTo(t)[0], practice[units].between - 1e-3)
        }
        for (const p of row.across) {
          hold(bays(design).some(([a, b]) => p >= a + 19.9 && p <= b - 19.9))
          // nor goes into the gap between two sheets below
          for (const { at } of across)
            above(Math.abs(p - at), practice[units].gap / 2 + practice[units].edge - 1e-6)
        }
      }
      // and never reaches out of the skin
      rows.forEach(({ on }, i) => {
        const length = ramp.skin[top]!.rows[i]!.length
        if (on === 'between' && length !== null) atMost(length, ramp.skinThickness - 2 + 1e-6)
      })
    }
    above(ends, 100)
  })

  test('screws keep off the edges of their sheet', () => {
    for (const { ramp, units } of solved)
      ramp.skin.forEach((plan) => {
        const inside = (p: number, of: readonly { readonly from: number; readonly length: number }[]) =>
          of.some(({ from, length }) => p >= from + 10 && p <= from + length - 10)
        for (const row of plan.rows) {
          hold(inside(row.at, plan.pieces))
          for (const p of row.across) hold(inside(p, plan.widths))
        }
        for (const { stud, second, at } of plan.seams) {
          const rows = plan.rows
            .filter((row) => row.on === 'seam' && (row.stud === stud || row.stud === second))
            .map((row) => row.at)
          if (stud === null || plan.rows.some(({ on }) => on === 'between')) continue
          const { gap, edge } = practice[units]
          hold(rows.length === 2)
          assertNear(rows[0]!, at - gap / 2 - edge, 1e-6)
          assertNear(rows[1]!, at + gap / 2 + edge, 1e-6)
        }
      })
  })

  test('no screw meets one of a layer below', () => {
    for (const { ramp } of solved) {
      const placed = ramp.skin.map((plan, i) =>
        plan.rows.map((row) => ({ along: alongFrame(ramp, i, row.at), across: row.across })),
      )
      placed.forEach((rows, i) => {
        for (const row of rows)
          for (const lower of placed.slice(0, i).flat()) {
            if (Math.abs(lower.along - row.along) >= apart) continue
            const gaps = row.across.flatMap((p) => lower.across.map((q) => Math.abs(p - q)))
            above(Math.min(...gaps), apart - 1e-6)
          }
      })
    }
  })

  test('every layer that goes on studs has a row on each stud that it covers', () => {
    for (const one of solved) {
      const { ramp } = one
      ramp.skin.forEach((plan, i) => {
        if (isBetween(one) && i === ramp.skin.length - 1) return
        const { length, marks } = plan
        marks.forEach((mark, j) => {
          if (mark < 12 || mark > length - 12) return
          // a seam without a stud may lie over one
          if (plan.seams.some((s) => s.stud === null && Math.abs(s.at - mark) < 20)) return
          const rows = plan.rows.filter((row) => row.stud === j)
          // two on one under a seam, one on each of two
          hold(rows.length === (plan.seams.some(({ stud, second }) => stud === j && second === null) ? 2 : 1))
        })
      })
    }
  })

  test('screws of a sheet stand no farther apart than told, but over a rib where no more find room', () => {
    let wide = 0
    for (const { ramp, units } of solved)
      ramp.skin.forEach((plan, i) => {
        const most = i > 0 && i === ramp.skin.length - 1 ? practice[units].top : practice[units].base
        for (const row of plan.rows)
          for (const { from, length } of plan.widths) {
            const own = row.across.filter((p) => p > from && p < from + length)
            own.slice(1).forEach((b, k) => {
              const a = own[k]!
              if (b - a <= most + 1e-6) return
              wide++
              const ribs = bays(ramp.design)
                .slice(1)
                .map(([right]) => right - ramp.design.sides.thickness / 2)
              hold(row.stud !== null && ribs.some((rib) => rib > a && rib < b))
              // off the points of the rib's own screws, off those of the layers below and of the pipe
              const keep = Math.max(ramp.design.sides.thickness / 2 + 20, ramp.endScrews[row.stud!]!.off ?? 0)
              const others = ramp.skin
                .slice(0, i)
                .flatMap(({ rows }, j) =>
                  rows.filter(
                    ({ at }) => Math.abs(alongFrame(ramp, j, at) - alongFrame(ramp, i, row.at)) < apart,
                  ),
                )
                .flatMap(({ across }) => across)
                .concat(ramp.pipe?.holes ?? [])
              for (let p = a + apart; p <= b - apart; p += 0.5)
                hold(
                  ribs.some((rib) => Math.abs(rib - p) < keep + 0.5) ||
                    others.some((q) => Math.abs(q - p) < apart + 0.5),
                )
            })
          }
      })
    above(wide, 10)
  })

  test('no more screws find room where two stand farther apart than told', () => {
    const design = { ...plain, width: 1127, sides: { thickness: 18, count: 4 } }
    const [keep, told] = [69, practice.mm.top]
    // walls' middles: 9, 378.67, 748.33, 1118; two layers and a pipe below
    const walls = [0, 1, 2, 3].map((i) => 9 + (i * (1127 - 18)) / 3)
    const others = [
      93, 308.75, 448.1, 563.5, 659.9, 818.2, 1034, 199.4, 293.2, 463.1, 644.9, 833.2, 927.6,
    ].concat([78, 675, 1049])
    const row = screwsAcross({ design, units: 'mm' }, keep, [{ from: 0, length: 1127 }], told, false, others)
    const wide = row.slice(1).flatMap((b, i) => (b - row[i]! > told ? [[row[i]!, b] as const] : []))
    // each over a rib
    expect(wide).toHaveLength(2)
    for (const [a, b] of wide)
      for (let p = a + apart; p <= b - apart; p += 0.5)
        hold(walls.some((m) => Math.abs(m - p) < keep) || others.some((q) => Math.abs(q - p) < apart))
  })
})

describe('a wide ramp without ribs, worked by hand', () => {
  // 1216 wide, sides 18: screws from 18 + 20 to 1216 − 38 = 1178, 1140 in 5 steps of 228 or in 7 of 162.857
  const { ramp } = solve(plain)
  test('base rows lie half a step apart from layer to layer, below the top sheet', () => {
    const [first, second] = ramp.skin.map(({ rows }) => rows[1]!.across)
    expect(first).toHaveLength(6)
    expect(second).toHaveLength(5)
    first!.forEach((p, i) => {
      assertNear(p, 38 + 228 * i, 1e-9)
    })
    second!.forEach((p, i) => {
      assertNear(p, 38 + 228 * (i + 0.5), 1e-9)
    })
  })
  test('the top sheet has closer screws; those that would meet one below are moved by the least', () => {
    const top = ramp.skin[2]!.rows[1]!.across
    expect(top).toHaveLength(8)
    const below = [...ramp.skin[0]!.rows[1]!.across, ...ramp.skin[1]!.rows[1]!.across]
    top.forEach((p, i) => {
      const wanted = 38 + (1140 / 7) * i
      const free = below.every((q) => Math.abs(q - wanted) >= apart)
      // to the nearest whole millimetre that is clear; the first and last find theirs inward
      assertNear(p, wanted, free ? 1e-9 : 16, `screw ${i + 1}`)
    })
  })
  test('counts: one row for each of 6 studs', () => {
    expect(ramp.skin.map(({ screws }) => screws.count)).toEqual([6 * 6, 6 * 5, 6 * 8])
  })
})

describe('a high ramp', () => {
  // marks of the first layer lie (R − 4.5)/R of their place up the frame
  const high: QuarterDesign = {
    ...plain,
    height: { layer: 'frame', value: 1300 },
    transition: circleOf('frame', 2400),
    // thick enough for a seam each
    studs: studded({ section: [45, 89] }),
    skin: [plywood(9), plywood(9), { thickness: 6, material: 'hardboard' }],
  }
  test('a seam lies on the stud that leaves the largest smallest piece, the next layer on the next best', () => {
    const { ramp } = solve(high)
    const share = (i: number): number => (2400 - [4.5, 13.5, 21][i]!) / 2400
    // studs every 200; about 2090 long: halves of 1000, 800 at the least beside one at 1200
    const places = ramp.skin.map(({ seams }) => seams[0]!.at)
    ;[1000, 1200, 1000].forEach((at, i) => {
      assertNear(places[i]!, at * share(i), 1e-6, `layer ${i + 1}`)
    })
    assertNear(ramp.skin[0]!.pieces[0]!.length, 1000 * share(0) - 1.5, 1e-6)
  })
  test('sheets that a rib is under meet on it, others are said to take blocks', () => {
    const wide = { ...high, width: 3018, sides: { thickness: 18, count: 3 } }
    // ribs' middles: 9, 1509, 3009; the second layer keeps off the first one's seam
    expect(solve(wide).ramp.skin.map(({ acrossSeams }) => acrossSeams)).toEqual([
      [{ at: 1509, rib: true }],
      [{ at: 2441.5, rib: false }],
      [{ at: 1509, rib: true }],
    ])
    // 9, 1009, 2009, 3009
    const ribbed = solve({ ...wide, sides: { thickness: 18, count: 4 } }).ramp
    expect(ribbed.skin.map(({ acrossSeams }) => acrossSeams)).toEqual([
      [{ at: 2009, rib: true }],
      [{ at: 1009, rib: true }],
      [{ at: 2009, rib: true }],
    ])
    const open = solve({ ...wide, sides: { thickness: 18, count: 2 } })
    expect(open.ramp.skin.map(({ acrossSeams }) => acrossSeams)).toEqual([
      [{ at: 2441.5, rib: false }],
      [{ at: 576.5, rib: false }],
      [{ at: 2441.5, rib: false }],
    ])
    const notes = open.findingsOf('seam-across')
    expect(notes).toEqual([
      {
        id: 'seam-across',
        level: 'note',
        message:
          'sheets reach 2440 mm across, the ramp is 3018 mm wide; they meet: layers 1 and 3 and the deck board 2442 mm from the left; ' +
          'layer 2 577 mm from the left. Where no rib lies, set blocks between the timbers under the seam',
      },
    ])
  })
})

describe('a seam that finds no stud', () => {
  const long: QuarterDesign = {
    ...plain,
    height: { layer: 'frame', value: 1000 },
    transition: circleOf('frame', 2400),
  }
  const added = (design: QuarterDesign, units: Units = 'mm') =>
    solve(design, units).ramp.studs.filter(({ role }) => role === 'seam')
  const said = (design: QuarterDesign): readonly string[] =>
    solve(design)
      .findingsOf('seam-stud', 'stud-added')
      .map(({ level, message }) => `${level}: ${message}`)

  test('gets one of its own, so that the smallest piece is as large as it can be', () => {
    const wide = { ...long, studs: studded({ section: [46, 89], every: 900 }) }
    // layers 1 and 3 take the stud at 900; layer 2, 1739 long, one 100 off it: 100 below leaves more than 100 above
    expect(added(wide).map(({ at }) => at)).toEqual([800])
    expect(said(wide)).toEqual(['note: added where sheets meet: a stud 800 mm along'])
    expect(solve(wide).ramp.skin.map(({ seams }) => seams.map(({ stud }) => stud))).toEqual([[2], [1], [2]])
    // the same in sixteenths
    const [own] = added(wide, 'in')
    assertNear((own!.at / inch) * 16, Math.round((own!.at / inch) * 16), 1e-9)
  })

  test('gets a twin of one too thin for two rows, and lies on their joint', () => {
    // 3 of gap, twice 10.5 to the edge and 10 inside the stud: 44
    expect(added({ ...long, studs: studded({ section: [44.1, 89] }) })).toEqual([])
    // where none has room for a twin, nor a place of its own, 3 inside is enough: 30
    const dense = solve({ ...long, studs: studded({ section: [31, 89], every: 60 }) }).ramp
    expect(dense.studs.filter(({ role }) => role === 'seam')).toEqual([])
    for (const { seams } of dense.skin) expect(seams).toMatchObject([{ second: null }])
    const thin = { ...long, studs: studded({ section: [29, 89] }) }
    // beside the one at 800 for layers 1 and 3, and at 1000 for layer 2: nearest to the middle
    expect(added(thin).map(({ at }) => at)).toEqual([829, 971])
    const { skin } = solve(thin).ramp
    expect(skin.map(({ seams }) => seams.map(({ stud, second }) => [stud, second]))).toEqual([
      [[4, 5]],
      [[6, 7]],
      [[4, 5]],
    ])
    assertNear(skin[0]!.seams[0]!.at, (814.5 * 2395.5) / 2400, 1e-6)
    expect(said(thin)).toEqual(['note: added where sheets meet: studs 829 and 971 mm along'])
    // one row on each of the two
    const rows = skin[0]!.rows.filter(({ on }) => on === 'seam')
    expect(rows.map(({ stud }) => stud)).toEqual([4, 5])
    for (const [k, side] of [-1, 1].entries())
      assertNear(rows[k]!.at - skin[0]!.seams[0]!.at, side * 12, 1e-9)
  })

  test('says what is missing where not even two take the rows', () => {
    // a row is 12 off the joint and 3 inside the stud, and one to spare: 16; alone 31
    expect(said({ ...long, studs: studded({ section: [14, 89] }) })[0]).toMatch(
      /^warn: layer 1: no stud .*; a seam takes two rows of screws: studs 31 mm thick or more, or 16 mm where two stand side by side$/,
    )
    expect(said({ ...long, studs: studded({ section: [16, 89] }) })[0]).toMatch(/^note: added/)
    const close = { section: [25, 89], every: 45 } as const
    expect(said({ ...long, studs: studded(close) })[0]).toMatch(
      /; studs every 50 mm or more leave room for a second one beside each$/,
    )
    expect(said({ ...long, studs: studded({ ...close, every: 50 }) })[0]).toMatch(/^note: added/)
  })
})

describe('a top sheet between the studs', () => {
  const between: QuarterDesign = { ...plain, fasten: 'between' }
  test('lies midway between their faces', () => {
    const { ramp } = solve(between)
    const { transition, studs } = ramp
    const rows = ramp.skin[2]!.rows
    // faces of studs 2 and 3, 38 thick, 200 and 400 up: 219 and 381, so 300; on the middle of the third layer
    const share = (transition!.radius.frame - 21) / transition!.radius.frame
    assertNear(rows[1]!.at, 300 * share, 1e-6)
    expect(rows.filter(({ on }) => on === 'between')).toHaveLength(studs.length - 1)
    expect(ramp.skin[0]!.rows.every((row) => row.on !== 'between')).toBe(true)
  })
  test('whose ends a row into the stud holds, but where a run-out laps over them', () => {
    const endsOf = (design: QuarterDesign) =>
      solve(design)
        .ramp.skin[2]!.rows.map(({ on, stud, length }, i, all) => ({
          on,
          stud,
          length,
          end: i === 0 || i === all.length - 1,
        }))
        .filter(({ on }) => on !== 'between')
        .map(({ stud, length, end }) => [stud, length, end])
    const last = solve(between).ramp.studs.length - 1
    // 24 of skin and 25 into the stud: 50 is the next that is sold
    expect(endsOf({ ...between, runOut: { kind: 'none' } })).toEqual([
      [0, 50, true],
      [last, 50, true],
    ])
    expect(
      endsOf({ ...between, runOut: { kind: 'sheet', sheet: { thickness: 3, material: 'steel' } } }),
    ).toEqual([[last, 50, true]])
  })
  test('whose studs stand too close goes on them: the way out is said and works', () => {
    const close = { ...between, studs: studded({ every: 85 }) }
    const { findingsOf, ramp } = solve(close)
    // beside the toe stud and the lip stud one is left out; 25 on either side makes 50 from face to face
    const faces = ramp.studs
      .slice(1)
      .map((s, i) => s.at - s.width / 2 - ramp.studs[i]!.at - ramp.studs[i]!.width / 2)
    const wide = faces.filter((room) => room >= 50).length
    expect(wide).toBe(2)
    expect(findingsOf('fasten-between')).toEqual([
      {
        id: 'fasten-between',
        level: 'warn',
        message: `only ${wide} of ${ramp.studs.length - 1} bays between studs have room for screws 25 mm off all timber; say \`fasten: studs\``,
        offers: [[{ of: 'own', key: 'fasten', value: 'studs' }]],
      },
    ])
    const again = solve({ ...close, fasten: 'studs' })
    expect(again.findingsOf('fasten-between')).toEqual([])
    expect(again.ramp.skin[2]!.rows.length).toBeGreaterThan(10)
    // 38 + 2 × 25 = 88 is room for one
    expect(solve({ ...between, studs: studded({ every: 89 }) }).ramp.skin[2]!.rows.length).toBeGreaterThan(5)
  })
  test('that is the only layer goes on the studs all the same, and that is said', () => {
    const { ramp, findingsOf } = solve({ ...between, skin: [plywood(12)] })
    expect(ramp.skin[0]!.rows.every((row) => row.on === 'stud')).toBe(true)
    expect(findingsOf('fasten-between')[0]?.level).toBe('note')
  })
})
