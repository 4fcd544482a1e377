import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { sidePattern } from '../../src/pattern/side.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { bare, inch, solve, transitionOf } from '../ramp/ramps.ts'
import { assertNear } from '../support/near.ts'

/** From the text of a file, as a builder would type it. */
const solved = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map((p) => p.message).join('\n'))
  const solved = solveDesign(reading.design)
  if (solved.stopped) throw new Error(solved.checks.map(({ message }) => message).join('\n'))
  return { ramp: curvedOf(solved.ramps)[0]!, checks: solved.checks }
}

describe('a notch that was given, worked by hand: inches', () => {
  const { ramp, checks } = solved(`title: worked case
units: in
ramps:
  - width: 48
    height: { frame: 21 7/8 }
    transition: { circle: { frame: 62 }, tangent: { frame: 0 } }
    toe: 1 5/8
    length: 57 3/4
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
    run-out: { sheet: 1/16 steel }
    deck-board: 5/8 plywood
    coping: { outside: 2 3/8, notch: { along: 1 7/8, down: 1 3/8 } }
`)
  // centre at (0, 62): lip and toe lie below it by 62 less their heights
  const lipX = Math.sqrt(62 ** 2 - (62 - 21.875) ** 2)
  const toeX = Math.sqrt(62 ** 2 - (62 - 1.625) ** 2)
  // pipe: its back on the wall, its bottom on the floor of the notch
  const r = 2.375 / 2
  const [pipeX, pipeY] = [lipX + 1.875 - r, 21.875 - 1.375 + r]
  // how far its front reaches past the ridden face, radius 62 less 1 of skin
  const out = 61 - (Math.hypot(pipeX, 62 - pipeY) - r)

  test('the figures of the curve', () => {
    const t = ramp.transition!
    assertNear(t.run / inch, lipX - toeX, 1e-9, 'run')
    assertNear(ramp.deck! / inch, 57.75 - (lipX - toeX), 1e-9, 'deck')
    assertNear(t.arc / inch, 62 * (Math.acos(40.125 / 62) - Math.acos(60.375 / 62)), 1e-9, 'arc')
    // the skin lies on a curve that runs level at the floor: the ridden face is 1 in over it there
    assertNear(t.toeStep / inch, 62 - 61 * (60.375 / 62), 1e-9, 'toe step')
  })

  test('the pipe stands exactly 3/8 over the deck board', () => {
    // 2 3/8 − 1 3/8 − 5/8
    assertNear(ramp.coping!.up / inch, 3 / 8, 1e-12)
  })

  test('and lies 0.459 in behind the ridden face', () => {
    assertNear(out, -0.459, 0.0005, 'by hand')
    assertNear(ramp.coping!.out / inch, out, 1e-9)
  })

  test('it is solved and drawn, with a warning and no stop', () => {
    expect(checks.filter((c) => c.level === 'stop')).toEqual([])
    const [warning, ...more] = checks.filter((c) => c.id === 'pipe-behind-face')
    expect(more).toEqual([])
    // flush is 1.28 along, so 1 1/4; 0.459 is 15/32 to the nearest 32nd
    expect([warning!.level, warning!.message]).toEqual([
      'warn',
      'the pipe lies 1/2– in behind the ridden face instead of standing out; ' +
        'a notch 1 1/4 in along at this depth brings it flush, less brings it out',
    ])
    expect(ramp.side).not.toBeNull()
    expect(sidePattern(ramp, [], 'in').edges.map((e) => e.traced)).toContain(true)
  })
})

describe('common practice, no source', () => {
  const degree = Math.PI / 180
  const base = bare(66 * inch, 23.25 * inch)

  test('frame radius 66 in, level at the floor, frame 23 1/4 high: lip 49.63°', () => {
    assertNear(transitionOf(base).lipAngle / degree, 49.63, 0.005)
  })

  test('pivot 20 7/8 from the end of a sheet of 96, side 61 1/4: toe 1.475, arc 43.19, deck 24.84', () => {
    // the side takes the far end of the sheet: its toe lies 96 − 61 1/4 − 20 7/8 from the pivot along the floor
    const away = 96 - 61.25 - 20.875
    const toe = 66 - Math.sqrt(66 ** 2 - away ** 2)
    assertNear(toe, 1.475, 0.0005, 'toe, by hand')
    const design: QuarterDesign = { ...base, toe: toe * inch, back: { from: 'length', value: 61.25 * inch } }
    const { ramp } = solve(design)
    assertNear(-ramp.transition!.centre.x / inch, away, 1e-9, 'pivot before the toe')
    assertNear(ramp.transition!.arc / inch, 43.19, 0.005, 'arc')
    assertNear(ramp.deck! / inch, 24.84, 0.005, 'deck')
    // a 2×4 laid flat is 1 1/2 thick: the toe stud is ripped by a hair or moved, never left out
    expect(ramp.studs[0]!.lies).toBe('flat')
  })

  test('sides of 5/8 and a width of 96: the studs are trimmed by 1 1/4', () => {
    const { ramp } = solve({ ...base, width: 96 * inch, sides: { thickness: 0.625 * inch, count: 2 } }, 'in')
    assertNear(ramp.studLength / inch, 96 - 1.25, 1e-9)
    // with a middle rib of the same three sides are taken off, and two bays share the rest
    const ribbed = solve(
      { ...base, width: 96 * inch, sides: { thickness: 0.625 * inch, count: 3 } },
      'in',
    ).ramp
    assertNear(ribbed.studLength / inch, (96 - 3 * 0.625) / 2, 1e-9)
  })

  test('studs every 8 in along the curve, the first and the last flat, the others on edge and square to it', () => {
    const design: QuarterDesign = {
      ...base,
      toe: 1.5 * inch,
      studs: { ...base.studs, section: [1.5 * inch, 3.5 * inch], every: 8 * inch },
    }
    const { studs, transition } = solve(design, 'in').ramp
    expect(studs.map(({ lies }) => lies)).toEqual(['flat', ...studs.slice(2).map(() => 'edge'), 'flat'])
    // 43.2 in of curve: 8, 16, 24 and 32; 40 is the lip stud's
    expect(studs).toHaveLength(6)
    studs.slice(1, -1).forEach(({ at, angle }, i) => {
      assertNear(at / inch, 8 * (i + 1), 1e-9)
      assertNear(angle, transition!.toeAngle + at / transition!.radius.frame, 1e-12, 'slope (radians)')
    })
  })
})
