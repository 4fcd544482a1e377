import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign, Units } from '../../../src/design/design.ts'
import { hasStop } from '../../../src/ramp/check/check.ts'
import { timberCorners } from '../../../src/ramp/frame/timber.ts'
import { mostWheels, wheelsAcross } from '../../../src/ramp/frame/wheels.ts'
import { atLeast, below } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { circleOf, plain, said, solve, studded } from '../ramps.ts'

const rolling = (diameter: number, height: number, leg: number, more: Partial<QuarterDesign> = {}) => ({
  ...plain,
  chamfer: leg,
  wheels: { diameter, height, count: 4 },
  ...more,
})

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Lowest point of a wheel and of the side's bottom corners when the ramp is turned about the cut's lower edge. */
const tipped = (design: QuarterDesign, centre: { x: number; y: number }, length: number, angle: number) => {
  const pivot = length - design.chamfer
  const level = (x: number, y: number): number => -(x - pivot) * Math.sin(angle) + y * Math.cos(angle)
  return {
    wheel: level(centre.x, centre.y) - design.wheels!.diameter / 2,
    upper: level(length, design.chamfer),
    toe: level(0, 0),
  }
}

test('wheels are off the floor while ridden and carry when tipped: against turning the ramp by small steps', () => {
  let seen = 0
  let recessed = 0
  fc.assert(
    fc.property(
      real(40, 125),
      real(0, 40),
      real(60, 260),
      real(400, 900),
      real(250, 700),
      fc.constantFrom<readonly [Units, number]>(['mm', 6], ['in', 25.4 / 4]),
      (diameter, mount, leg, height, deck, [units, gap]) => {
        const design = rolling(diameter, diameter + mount, leg, {
          height: { layer: 'frame', value: height },
          transition: circleOf('frame', height * 2.2),
          back: { from: 'deck', value: deck },
          studs: studded({ every: 250 }),
        })
        const { ramp, drafts } = solve(design, units)
        if (hasStop(drafts)) return
        const { wheels } = ramp
        if (!wheels) throw new Error('no stop and no wheels')
        seen++
        const length = ramp.length!
        atLeast(wheels.clearance, gap - 1e-6)
        assertNear(length - (wheels.centre.x + diameter / 2), wheels.clearance, 1e-6, 'behind')
        // in hundredths of a degree, until the wheel is on the floor
        let angle = 0
        const step = Math.PI / 18_000
        while (tipped(design, wheels.centre, length, angle).wheel > 0) angle += step
        assertNear(angle, wheels.tip.least, step, 'tip angle, radians')
        assertNear(tipped(design, wheels.centre, length, wheels.tip.least).toe, wheels.lift, 1e-6, 'lift')
        // the wheel stays lower than both edges of the cut for as long as is said
        for (const share of [0.1, 0.5, 0.9]) {
          const at = tipped(
            design,
            wheels.centre,
            length,
            wheels.tip.least + share * (wheels.tip.most - wheels.tip.least),
          )
          below(at.wheel, 0)
          below(at.wheel, at.upper)
        }
        const beyond = tipped(design, wheels.centre, length, wheels.tip.most + 0.01)
        below(beyond.upper, beyond.wheel)
        // its plate lies on the timber's outer face, as high as it is
        const [a, b] = timberCorners(wheels.timber)
        const across = { x: b!.x - a!.x, y: b!.y - a!.y }
        const off =
          ((wheels.centre.x - a!.x) * across.y - (wheels.centre.y - a!.y) * across.x) /
          Math.hypot(across.x, across.y)
        assertNear(Math.abs(off) + diameter / 2, diameter + mount, 1e-6, 'height of the wheel')
        if (wheels.recess <= 1) return
        recessed++
        assertNear(wheels.clearance, gap, 1e-6, 'no farther inside the cut than it must')
      },
    ),
    { numRuns: 600 },
  )
  expect(seen).toBeGreaterThanOrEqual(200)
  expect(recessed).toBeGreaterThan(50)
})

describe('what cannot be', () => {
  const offered = (message: string): number => Number(/leg: ([\d.]+) mm/.exec(message)![1])

  test('wheels need the corner cut, and the cut that is offered takes them; a smaller one does not', () => {
    const bare = rolling(75, 100, 0)
    const [message] = said(bare, 'wheels-fit')
    expect(message).toMatch(
      /^stop: wheels stand on the cut of the back bottom corner, and that is not cut; a chamfer of \{ leg: \d+ mm \} takes the wheels.*, or leave the wheels out$/,
    )
    const leg = offered(message!)
    expect(said({ ...bare, chamfer: leg }, 'wheels-fit')).toEqual([])
    expect(said({ ...bare, chamfer: leg - 1 }, 'wheels-fit')).toHaveLength(1)
  })

  test('large wheels in a small cut: the cut or the wheel that is offered fits', () => {
    const large = rolling(150, 180, 60)
    const [message] = said(large, 'wheels-fit')
    expect(message).toContain('would not reach out of a cut')
    expect(said({ ...large, chamfer: offered(message!) }, 'wheels-fit')).toEqual([])
    const smaller = Number(/wheels of ([\d.]+) mm or less/.exec(message!)![1])
    expect(said({ ...large, wheels: { ...large.wheels!, diameter: smaller } }, 'wheels-fit')).toEqual([])
    expect(
      said({ ...large, wheels: { ...large.wheels!, diameter: smaller + 1 } }, 'wheels-fit'),
    ).toHaveLength(1)
  })

  test('smaller wheels that are offered fit, and a millimetre more does not', () => {
    let offers = 0
    fc.assert(
      fc.property(
        fc.integer({ min: 90, max: 250 }),
        fc.integer({ min: 10, max: 60 }),
        fc.integer({ min: 40, max: 160 }),
        fc.integer({ min: 400, max: 900 }),
        (diameter, mount, leg, height) => {
          const design = rolling(diameter, diameter + mount, leg, {
            height: { layer: 'frame', value: height },
            transition: circleOf('frame', height * 2.2),
            studs: studded({ every: 250 }),
          })
          const [message] = said(design, 'wheels-fit')
          const smaller = /wheels of ([\d.]+) mm or less/.exec(message ?? '')
          if (!smaller) return
          offers++
          const withWheels = (across: number): QuarterDesign => ({
            ...design,
            wheels: { ...design.wheels!, diameter: across },
          })
          expect(said(withWheels(Number(smaller[1])), 'wheels-fit')).toEqual([])
          expect(said(withWheels(Number(smaller[1]) + 1), 'wheels-fit')).toHaveLength(1)
        },
      ),
      { numRuns: 80 },
    )
    expect(offers).toBeGreaterThanOrEqual(12)
  })

  test('no cut that the side has room for takes giants', () => {
    expect(said(rolling(400, 480, 60, { back: { from: 'deck', value: 60 } }), 'wheels-fit')[0]).toContain(
      'leave the wheels out',
    )
  })
})

test('the first and last wheel stand near the outer sides, the others evenly, none under a rib', () => {
  const places = (count: number, sides: number): readonly number[] =>
    solve(
      rolling(75, 100, 180, {
        wheels: { diameter: 75, height: 100, count },
        sides: { thickness: 18, count: sides },
      }),
    ).ramp.wheels!.across
  // 1216 wide, sides of 18, 60 off their faces
  places(4, 2).forEach((at, i) => {
    assertNear(at, 78 + (i * 1060) / 3, 1e-9)
  })
  for (const at of places(3, 3)) expect(Math.abs(at - 608)).toBeGreaterThanOrEqual(9 + 60 - 1e-9)
})

test('no two wheels stand in one place, none under a wall; where they find no room, none packed from the left find any', () => {
  let moved = 0
  let none = 0
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 8 }),
      fc.integer({ min: 2, max: 6 }),
      fc.integer({ min: 300, max: 2440 }),
      (count, sides, width) => {
        const thickness = 18
        const design = rolling(75, 100, 180, {
          width,
          wheels: { diameter: 75, height: 100, count },
          sides: { thickness, count: sides },
        })
        const across = wheelsAcross(design)
        const walls = Array.from({ length: sides }, (_, i) => 9 + (i * (width - 18)) / (sides - 1))
        const inset = Math.min(78, width / 4)
        const free = (at: number): boolean =>
          at >= inset - 1e-6 &&
          at <= width - inset + 1e-6 &&
          walls.slice(1, -1).every((wall) => Math.abs(at - wall) >= 69 - 1e-6)
        if (across === null) {
          none++
          let packed = 0
          for (let at = inset; at <= width - inset; at += 0.5)
            if (free(at)) {
              packed++
              at += 80 - 0.5
            }
          below(packed, count)
          below(mostWheels(design), count)
          return
        }
        expect(across).toHaveLength(count)
        across.forEach((at, i) => {
          if (!free(at)) throw new Error(`${at} lies under a wall`)
          if (i > 0) atLeast(at - across[i - 1]!, 80 - 1e-6)
          const even = inset + (i * (width - 2 * inset)) / (count - 1)
          if (Math.abs(at - even) > 1e-6) moved++
        })
      },
    ),
    { numRuns: 600 },
  )
  expect(moved).toBeGreaterThan(100)
  expect(none).toBeGreaterThan(50)
})

test('a rib moves a wheel to the nearer of its faces', () => {
  const narrow = rolling(75, 100, 180, { width: 540, sides: { thickness: 18, count: 3 } })
  // the rib's middle is at 270, its room from 201 to 339; even places are 206 and 334
  expect(solve(narrow).ramp.wheels!.across).toEqual([78, 201, 339, 462])
  const five = { ...narrow, wheels: { diameter: 75, height: 100, count: 5 } }
  expect(said(five, 'wheels-fit')).toEqual([
    'stop: 5 wheels find no room side by side between the sides and ribs; take 4 (wheels: { count: 4 })',
  ])
})
