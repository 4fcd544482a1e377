import { describe, expect, test } from 'vitest'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { runOutStrips } from '../../src/ramp/beside/run-out-strips.ts'
import { stepLimit } from '../../src/ramp/check/practice.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { rowsHigh } from '../../src/stock/list/strip-lines.ts'
import { designOf } from '../support/design-of.ts'
import { atLeast, atMost, below } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const radius = 2600
const long = `title: Long run-out
units: mm
ramps:
  - width: 1216
    height: { deck: 1100 }
    transition: { circle: { surface: ${radius} } }
    toe: 40
    deck: 900
    studs: { section: 45 x 95, every: 180 }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 2 steel }
    deck-board: 18 plywood
    coping: none
`

const stripsIn = (said: string) =>
  [...said.matchAll(/(\d+) high at (\d+)/g)].map(([, high, before]) => ({
    high: Number(high),
    before: Number(before),
  }))

describe('what hangs free under a run-out', () => {
  test('is packed before the sheet is laid, each strip as high as the circle lies over the floor there', () => {
    const said = bookletSaid(long, ['deck'])
    const strips = stripsIn(said)
    const solved = solveDesign(designOf(long))
    if (solved.stopped) throw new Error('stopped')
    const { toeStep, bridge, face } = curvedOf(solved.ramps)[0]!.transition
    // the circle touches the floor straight under its middle
    assertNear(radius * Math.acos(1 - toeStep / radius), bridge, 1e-6)
    const middle = -face.point(face.toe).x + Math.sqrt(radius ** 2 - (radius - toeStep) ** 2)
    expect(strips.length).toBeGreaterThan(3)
    for (const { high, before } of strips)
      assertNear(high, radius - Math.sqrt(radius ** 2 - (middle - before) ** 2), 0.7)
    // along the sheet no two are farther apart than the note of `figures` lets hang free
    const [, free] = /pack under it where over (\d+) mm hangs free/.exec(
      solved.checks.map(({ message }) => message).join(' '),
    )!
    expect(Number(free)).toBe(100)
    const places = [0, ...strips.map(({ high }) => bridge - radius * Math.acos(1 - high / radius))]
    places.slice(1).forEach((at, i) => {
      atMost(at - places[i]!, Number(free) + 8)
    })
    // a screw of 4.5 mm splits a lower one
    expect(strips.some(({ high }) => high < 12)).toBe(true)
    expect(said).toContain('but glued where a strip is lower than 12.')
    // 1216 wide: pieces no farther apart than 600; each end at a strip that is not too low takes one, the sides none
    const held = strips.filter(({ high }) => high >= 12).length
    const [, pieces, length, count] =
      /by short pieces, (\d+) in each gap .* one screw of 4\.5 × (\d+) \([A-Z]\) .*, (\d+) in all/.exec(said)!
    expect([Number(pieces), Number(count)]).toEqual([4, 4 * (2 * held - 1)])
    // those that come from both ends of a piece do not meet in it
    atMost(2 * (Number(length) - 18), strips[1]!.before - strips[0]!.before - 18)
    const bought = bookletSaid(long, ['buying'])
    expect(bought).toMatch(new RegExp(`4\\.5 × ${length} mm, countersunk .*run-out strips`))
    expect(bought).toMatch(/waterproof wood glue for .*low strips under the run-out/)
    expect(said.indexOf('Pack under it')).toBeLessThan(said.indexOf('Lay it over the skin'))
  })

  test('is on the list where no rest of the panels holds it, with its size', () => {
    const lines = (text: string) => {
      const job = buyJob(designOf(text))
      if (isRefusal(job)) throw new Error('refused')
      return job.facts.stock.list!.filter(({ what }) => what.startsWith('strips'))
    }
    // whole panels of 2440 × 1220 leave rests that hold strips of 1216
    expect(lines(long)).toEqual([])
    const strips = stripsIn(bookletSaid(long, ['deck']))
    const wide = long.replace('width: 1216', 'width: 3660\n    sides: { thickness: 18, count: 4 }')
    const [line, ...others] = lines(wide)
    expect(others).toEqual([])
    expect(line).toMatchObject({
      what: 'strips 18 thick under the run-out, 3660 mm long',
      count: strips.length,
    })
    expect(line!.note).toContain(`${strips[0]!.high}, ${strips[1]!.high}, `)
    // the step names what the list does: offcuts or a board
    expect(line!.note).toContain('plywood or a board')
    expect(bookletSaid(wide, ['deck'])).toMatch(/strips of offcut or board .* Shorter offcuts do end to end/)
  })

  test('asks of a rest as much as its strips and short pieces take, row by row', () => {
    const joints = {
      strips: [
        { before: 80, high: 30 },
        { before: 178, high: 10 },
      ],
      pieces: 4,
      screws: null,
      glued: true,
    }
    const ramp = { width: 320, design: { sides: { thickness: 18 } } } as never
    // gaps of 80: three in 320 with cuts of 3, so two rows of four; each row 30 or 10 and a cut
    assertNear(rowsHigh(ramp, joints, 3), 3 * 33 + 3 * 13, 1e-9)
    assertNear(rowsHigh({ ...(ramp as object), width: 332 } as never, joints, 3), 2 * 33 + 2 * 13, 1e-9)
  })

  test('is not packed near the floor, where it lies lower than a strip is sawn', () => {
    const solved = solveDesign(designOf(long))
    if (solved.stopped) throw new Error('stopped')
    const { transition } = curvedOf(solved.ramps)[0]!
    const last = runOutStrips(transition, 'mm').at(-1)!
    const { face, toeStep, bridge } = transition
    const middle = -face.point(face.toe).x + Math.sqrt(radius ** 2 - (radius - toeStep) ** 2)
    const free = radius * Math.asin((middle - last.before) / radius)
    atLeast(last.high, 3)
    // one strip more, evenly on, would be lower
    const bay = bridge / Math.ceil(bridge / 100)
    below(radius * (1 - Math.cos((free - bay) / radius)), 3)
    // a step of the limit itself is none, for whatever lies in its last bits
    const atLimit = { ...transition, toeStep: stepLimit + 1e-9 }
    expect(runOutStrips(atLimit, 'mm')).toEqual([])
  })

  test('is not packed where figures ask for none', () => {
    const low = templateText('quarter-mm')
    const asked = (text: string): boolean => {
      const solved = solveDesign(designOf(text))
      return solved.checks.some(({ message }) => message.includes('pack under it'))
    }
    const unbridged = [
      // steps back, and a step of 5.99 mm: under the 6 that a wheel rolls over
      low.replace(/^( *)sheet: .*$/m, '$1step-back: 20'),
      low.replace(/skin: \[.*\]/, 'skin: [4 plywood]').replace(/toe: [\d.]+/, 'toe: 2'),
    ]
    for (const [text, packs] of [
      [low, true],
      [long, true],
      ...unbridged.map((one) => [one, false] as const),
    ] as const)
      expect([asked(text), bookletSaid(text, ['deck']).includes('Pack under it')]).toEqual([packs, packs])
  })
})
