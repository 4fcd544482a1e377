import { describe, expect, test } from 'vitest'
import { curvedOf, straightOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { convexContains } from '../../src/geometry/clip.ts'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { flatMet } from '../../src/ramp/beside/meeting-trial.ts'
import { timberCorners, timberDistance } from '../../src/ramp/frame/timber.ts'
import type { SolvedRamp } from '../../src/ramp/ramp.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { jointPlates } from '../../src/stock/joint-plate.ts'
import { jointLines, plateLines, platePieces } from '../../src/stock/list/joint-lines.ts'
import { takenFrom } from '../../src/stock/list/rests.ts'
import { bookletSaid } from '../booklet/said.ts'
import { designOf } from '../support/design-of.ts'
import { above, hold } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { randomFrom } from '../support/random.ts'
import { templateText } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'

const solvedOf = (name: string) => {
  const reading = readDesign(templateText(name))
  if ('problems' in reading) throw new Error(name)
  return { design: reading.design, ramps: wholeDesign(reading.design).ramps }
}

/** A flat 1216 wide and a quarter that runs out on it. */
const met = (of: {
  readonly surface: number
  readonly every: number
  readonly length: number
  readonly width: number
  readonly section: string
  readonly quarter: string
  readonly deck: number
}): string => `title: Met
units: mm
ramps:
  - name: flat
    kind: flat
    width: 1216
    length: ${of.length}
    height: { surface: ${of.surface} }
    studs: { section: ${of.section}, every: ${of.every} }
    skin: [18 plywood, 6 hardboard]
  - name: quarter
    width: ${of.width}
    height: { deck: 700 }
    transition: { circle: { surface: 1700 }, tangent: { surface: ${of.surface} } }
    toe: ${of.surface - 24}
    deck: ${of.deck}
    studs: ${of.quarter}
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: flat
    deck-board: 15 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
`

describe('the plate over the joint of a quarter and a flat', () => {
  test.each(['quarter-and-flat-mm', 'quarter-and-flat-in'])(
    '%s: its holes stay an inch off every timber and off its own ends, its upper edge within both sides',
    (name) => {
      const { ramps, design } = solvedOf(name)
      const inch = design.units === 'mm' ? 25 : 25.4
      const [flat] = straightOf(ramps)
      const quarter = ramps.find((ramp) => ramp.name !== flat!.name)!
      const [plate, ...others] = jointPlates(ramps, design.units)
      expect(others).toEqual([])
      const { size, holes, bolt, thickness } = plate!
      let looked = 0
      for (const [own, ramp] of [
        [holes.quarter, quarter],
        [holes.flat, flat!],
      ] as const)
        for (const x of own) {
          expect(size[0] / 2 - x).toBeGreaterThanOrEqual(inch - 1e-6)
          for (const timber of ramp.studs) {
            // the walls of timbers stand upright at the plate or lean away from it
            expect(timberDistance(timber, { x, y: holes.up })).toBeGreaterThanOrEqual(inch * 0.99)
            looked++
          }
        }
      expect(looked).toBeGreaterThan(20)
      assertNear(holes.up * 2, size[1], 1e-9)
      expect(size[1]).toBeLessThanOrEqual(flat!.heights.frame)
      // both thicknesses, and 10 mm for washers and nut; common practice, no source
      expect(bolt).toBeGreaterThan(2 * thickness + 10)
      expect(bolt).toBeLessThan(2 * thickness + 10 + 15)
    },
  )

  test.each(['low first', 'high first'])(
    '%s: the flat at the level of the ridden face gets it, in the booklet too',
    (way) => {
      const flatOf = (name: string, surface: number): string => `  - name: ${name}
    kind: flat
    width: 1216
    length: 2440
    height: { surface: ${surface} }
    skin: [18 plywood, 6 hardboard]
`
      const flats = [flatOf('low', 113), flatOf('high', 213)]
      const text = `title: Two flats
units: mm
ramps:
${(way === 'low first' ? flats : flats.toReversed()).join('')}  - name: quarter
    kind: quarter
    width: 1216
    height: { deck: 800 }
    transition: { circle: { surface: 2000 }, tangent: { surface: 213 } }
    toe: 189
    deck: 500
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: flat
    deck-board: 15 plywood
`
      const design = designOf(text)
      expect(jointPlates(wholeDesign(design).ramps, 'mm').map(({ flat }) => flat)).toEqual(['high'])
      const said = bookletSaid(text, ['flat'])
      expect(said.match(/Push the toe of quarter against/g)).toHaveLength(1)
      expect(said).toContain('The two ridden faces lie level: 213')
    },
  )

  // two thicknesses, and 1/2 in for washers and nut: just as long as that
  test.each([
    ['1/2', 1.5],
    ['5/8', 1.75],
    ['3/4', 2],
  ])('sides of %s in take bolts of %d in', (thickness, bolt) => {
    const text = templateText('quarter-and-flat-in').replaceAll(
      /thickness: 23\/32/g,
      `thickness: ${thickness}`,
    )
    const [plate] = jointPlates(wholeDesign(designOf(text)).ramps, 'in')
    assertNear(plate!.bolt, bolt * 25.4, 1e-6)
  })

  test('quarters share flats that are alike; a third on one flat gets none, and is told', () => {
    const text = templateText('quarter-and-flat-mm')
    const more = (...names: readonly string[]): string =>
      names
        .map((name) => `  - { name: ${name}, like: ${name.startsWith('flat') ? 'flat' : 'quarter'} }\n`)
        .join('')
    const pairs = (all: string): readonly string[] =>
      jointPlates(wholeDesign(designOf(all)).ramps, 'mm').map(({ quarter, flat }) => `${quarter} at ${flat}`)
    expect(pairs(text + more('flat b', 'far'))).toEqual(['quarter at flat', 'far at flat b'])
    expect(pairs(text + more('flat b', 'far', 'third', 'fourth'))).toEqual([
      'quarter at flat',
      'far at flat b',
      'third at flat',
      'fourth at flat b',
    ])
    const three = text + more('second', 'third')
    expect(pairs(three)).toEqual(['quarter at flat', 'second at flat'])
    const told = solveDesign(designOf(three)).checks.filter(({ id }) => id === 'flat-missing')
    expect(told.map(({ level, ramp }) => [level, ramp])).toEqual([['warn', 'third']])
    expect(told[0]!.message).toMatch(
      /a flat has two ends: `quarter` at `flat` and `second` at `flat` take them/,
    )
    // those at flats of another height or width take no end from it
    const low =
      three +
      '  - { name: slim flat, like: flat, width: 600 }\n  - { name: slim, like: quarter, width: 600 }\n' +
      '  - { name: low flat, like: flat, height: { surface: 60 } }\n' +
      '  - { name: low, like: quarter, toe: 60, transition: { tangent: { surface: 60 } } }\n'
    expect(pairs(low)).toEqual(expect.arrayContaining(['low at low flat', 'slim at slim flat']))
    expect(solveDesign(designOf(low)).checks.find(({ id }) => id === 'flat-missing')!.message).toContain(
      'two ends: `quarter` at `flat` and `second` at `flat` take them',
    )
    // narrower ones may stand side by side: none of them is as wide as the flat
    const narrow =
      text.replace(/(kind: quarter[\s\S]*?width: )1216/, (_, before: string) => `${before}600`) +
      more('second', 'third')
    expect(solveDesign(designOf(narrow)).checks.filter(({ id }) => id === 'flat-missing')).toEqual([])
  })

  test('what no rest holds is on the list: plates lie side by side in a rest, a saw cut between', () => {
    const { ramps, design } = solvedOf('quarter-and-flat-mm')
    const joints = jointPlates(ramps, design.units)
    const { size, thickness } = joints[0]!
    const [long, high] = size
    const lacking = (rest: readonly [number, number], sheet = thickness): number =>
      takenFrom([{ sheet: { thickness: sheet, material: 'plywood' }, rests: [rest] }], platePieces(joints), 3)
        .lacking.length
    expect(lacking([2 * high + 3, long])).toBe(0)
    expect(lacking([2 * high + 2.9, long])).toBe(1)
    expect(lacking([high, long - 0.1])).toBe(2)
    expect(lacking([2 * high + 3, long], thickness + 3)).toBe(2)
    const all = platePieces(joints)
    const bought = plateLines(all, all, 'mm')
    expect(bought.map(({ what, count }) => [what, count])).toEqual([
      [`plates of plywood ${thickness} mm thick, ${long} × ${high}`, 2],
    ])
    // two are needed: where one is bought it is said whence the other comes
    const [one] = plateLines(all.slice(1), all, 'mm')
    expect(one!.what).toBe(`plate of plywood ${thickness} mm thick, ${long} × ${high}`)
    expect(one!.note).toMatch(/no rest of the panels holds it; 1 more is sawn from a rest$/)
    // the bolts' line calls offcut only what is none of the list's
    const plates = `${long} × ${high}, over each joint of a flat and a quarter`
    expect(jointLines(joints, [], 'mm')[0]!.note).toBe(`two plates of offcut, ${plates}`)
    expect(jointLines(joints, all, 'mm')[0]!.note).toBe(`two plates of plywood, ${plates}`)
    expect(jointLines(joints, all.slice(1), 'mm')[0]!.note).toBe(
      `two plates of offcut and plywood, ${plates}`,
    )
    // what they leave of a rest is what strips under a run-out may take: less both and a cut after each
    const { left } = takenFrom(
      [{ sheet: { thickness, material: 'plywood' }, rests: [[600, 1220]] }],
      platePieces(joints),
      3,
    )
    const [[along, across]] = left[0]!.rests as [readonly [number, number]]
    assertNear(along, 600, 1e-9)
    assertNear(across, 1220 - 2 * (high + 3), 1e-9)
  })

  test('is none where no ramp runs out on a flat', () => {
    const { ramps, design } = solvedOf('pair-mm')
    expect(jointPlates(ramps, design.units)).toEqual([])
  })

  test('no bolt meets a timber or a plate over a joint of a side, in many designs; where none has room there is no plate', () => {
    const random = randomFrom(11)
    const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
    const seen = { plates: 0, holes: 0, front: 0, none: 0 }
    for (let i = 0; i < 120; i++) {
      const section = one(['38 x 89', '45 x 70', '45 x 95', '38 x 140'])
      const text = met({
        surface: one([60, 80, 113]),
        every: one([110, 130, 170, 250, 300]),
        length: one([900, 2440, 3000]),
        width: 1216,
        section,
        quarter: `{ section: ${section}, every: ${one([110, 130, 170, 250])} }`,
        deck: one([500, 1600]),
      })
      const solved = solveDesign(designOf(text))
      if (solved.stopped) continue
      const [flat] = straightOf(solved.ramps)
      const [quarter] = curvedOf(solved.ramps)
      if (!flatMet(quarter!, [quarter!, flat!])) continue
      const [plate] = jointPlates(solved.ramps, 'mm')
      if (!plate) {
        seen.none++
        // 25 of wood round a bolt, on whole steps of 5, 600 from the joint at most
        const isFree = (own: SolvedRamp, x: number): boolean =>
          [...own.studs.map(timberCorners), ...own.splices.map(({ plate: over }) => over.corners)].every(
            (corners) => {
              const xs = corners.map((corner) => corner.x)
              return x >= Math.max(...xs) + 25 || x <= Math.min(...xs) - 25
            },
          )
        const steps = Array.from({ length: 120 }, (_, k) => 5 * (k + 1))
        const onFlat = steps.filter((x) => isFree(flat!, x) && isFree(flat!, flat!.length - x))
        hold(onFlat.length === 0 || !steps.some((x) => isFree(quarter!, x)), text)
        continue
      }
      seen.plates++
      const { up } = plate.holes
      if (plate.holes.quarter[0]! < timberCorners(quarter!.studs[0]!)[1]!.x) seen.front++
      for (const [own, x] of [
        ...plate.holes.quarter.map((x) => [quarter!, x] as const),
        ...plate.holes.flat.flatMap((x) => [[flat!, x] as const, [flat!, flat!.length - x] as const]),
      ]) {
        // a hole of 9 and its washer of 24 (ISO 7089: from memory)
        for (const timber of own.studs) hold(timberDistance(timber, { x, y: up }) >= 12, `${text} ${x}`)
        for (const { plate: over } of own.splices)
          for (let turn = 0; turn < 24; turn++)
            hold(
              !convexContains(over.corners, {
                x: x + 12 * Math.cos((turn * Math.PI) / 12),
                y: up + 12 * Math.sin((turn * Math.PI) / 12),
              }),
              `${text} ${x}`,
            )
        seen.holes++
      }
    }
    above(seen.plates, 50)
    above(seen.holes, 200)
    above(seen.front, 0)
    above(seen.none, 0)
  })

  test('is none between two that differ in width: the list has no bolts for it, the booklet says why', () => {
    const text = met({
      surface: 113,
      every: 300,
      length: 2440,
      width: 1000,
      section: '38 x 89',
      quarter: '{ section: 38 x 89, every: 200 }',
      deck: 500,
    })
    const job = buyJob(designOf(text))
    if (isRefusal(job)) throw new Error(JSON.stringify(job))
    expect(job.facts.stock.joints).toEqual([])
    expect(job.facts.stock.list!.filter(({ what }) => what.includes('M8'))).toEqual([])
    const said = bookletSaid(text, ['flat']).replace(/\s+/g, ' ')
    expect(said).toContain('this ramp is 1000 mm wide and flat is 1216 mm: their edges do not line up')
    expect(said).toContain('No plate goes over the joint of flat and quarter.')
    expect(said).not.toContain('Drill plate and side')
  })
})
