import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { skinThickness } from '../../../src/ramp/side/skin-thickness.ts'
import { solveTransition } from '../../../src/ramp/side/solve-transition.ts'
import type { Transition } from '../../../src/ramp/side/transition.ts'
import { steepnessWord } from '../../../src/ramp/steepness.ts'
import { assertNear } from '../../support/near.ts'
import { anyRamp, circleOf, kept, plain, sawnSeed, solve, transitionOf } from '../ramps.ts'

/** Only what can be solved, with a lip that stands up enough for its angle to tell its height. */
const solved = kept(anyRamp, (design) => {
  const { transition } = solveTransition(design, 'mm')
  return transition !== null && transition.lipAngle > 0.3
})

const assertSame = (a: Transition, b: Transition): void => {
  const numbers = (t: Transition): readonly (readonly [string, number])[] => [
    ...Object.entries(t.heights),
    ...Object.entries(t.radius),
    ['centre y', t.centre.y],
    ['run', t.run],
    ['arc', t.arc],
    ['toe step', t.toeStep],
    ['lip angle over the radius', t.lipAngle * t.radius.frame],
  ]
  numbers(a).forEach(([name, value], i) => {
    // a toe near the lowest point magnifies the last bits of the centre's height: R (1 − cos) is flat there
    const loose = name === 'run' || name === 'arc' ? 1e-9 / Math.max(Math.sin(a.toeAngle), 1e-3) : 1e-9
    assertNear(value, numbers(b)[i]![1], loose, name)
  })
}

describe('each reading of a height, a radius and a tangent says the same ramp', () => {
  test.each(['frame', 'deck', 'surface'] as const)('height fed back as that of the %s', (layer) => {
    fc.assert(
      fc.property(solved, (design) => {
        const first = transitionOf(design)
        assertSame(first, transitionOf({ ...design, height: { layer, value: first.heights[layer] } }))
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })

  test.each(['frame', 'surface'] as const)('radius fed back as that of the %s', (layer) => {
    fc.assert(
      fc.property(solved, (design) => {
        const first = transitionOf(design)
        const circle = { layer, radius: first.radius[layer] }
        assertSame(first, transitionOf({ ...design, transition: { ...design.transition, circle } }))
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })

  test.each(['frame', 'surface'] as const)('tangent fed back as that of the %s', (layer) => {
    fc.assert(
      fc.property(solved, (design) => {
        const first = transitionOf(design)
        const tangent = { layer, height: first.centre.y - first.radius[layer] }
        assertSame(first, transitionOf({ ...design, transition: { ...design.transition, tangent } }))
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })
})

test('the curve lies where its heights, its toe and its radius say', () => {
  fc.assert(
    fc.property(solved, (design) => {
      const t = transitionOf(design)
      const s = skinThickness(design)
      const toCentre = (p: { readonly x: number; readonly y: number }) =>
        Math.hypot(p.x - t.centre.x, p.y - t.centre.y)
      assertNear(t.radius.frame - t.radius.surface, s, 1e-9, 'skin between the two radii')
      assertNear(toCentre(t.toe), t.radius.frame, 1e-6, 'toe on the circle')
      assertNear(toCentre(t.lip), t.radius.frame, 1e-6, 'lip on the circle')
      expect([t.toe.x, t.toe.y]).toEqual([0, design.toe])
      expect(t.lip.y).toBe(t.heights.frame)
      // the ridden face on the normal through a point: the point moved by the skin toward the centre
      const face = (p: { readonly x: number; readonly y: number }) =>
        p.y + (s * (t.centre.y - p.y)) / toCentre(p)
      assertNear(t.heights.surface, face(t.lip), 1e-6, 'ridden face at the lip')
      assertNear(t.heights.surface, t.heights.frame + s * Math.cos(t.lipAngle), 1e-9, 'h + s cos a1')
      assertNear(t.toeStep, face(t.toe), 1e-6, 'ridden face over the toe')
      assertNear(t.toeStep, t.centre.y - t.radius.surface * Math.cos(t.toeAngle), 1e-9, 'c − (R − s) cos a0')
      assertNear(t.heights.deck - t.heights.frame, design.deckBoard?.thickness ?? 0, 1e-9, 'deck board')
      // length and run by many chords
      const steps = 4000
      let [length, before] = [0, t.curve.point(t.curve.toe)]
      for (let i = 1; i <= steps; i++) {
        const p = t.curve.point(t.curve.toe + ((t.curve.lip - t.curve.toe) * i) / steps)
        length += Math.hypot(p.x - before.x, p.y - before.y)
        before = p
      }
      assertNear(t.arc, length, 1e-3, 'arc')
      assertNear(t.run, before.x, 1e-6, 'run')
    }),
    { numRuns: 150, seed: sawnSeed, endOnFailure: true },
  )
})

test('where the ridden face is level at the floor, the bridge is what is missing of it', () => {
  const t = transitionOf(plain)
  // from the place under the centre to the normal through the toe, on a circle of radius R − s
  const [cx, x] = [0, -t.centre.x]
  const angle = Math.asin((x - cx) / t.radius.frame)
  assertNear(t.bridge, t.radius.surface * angle, 1e-9)
})

const isStop = ({ level }: { readonly level: string }): boolean => level === 'stop'

test('a toe at the lowest point of the curve starts level, however the sum is rounded', () => {
  for (let i = 0; i < 2000; i++) {
    // thirds and sevenths of an inch: sums whose last bits differ
    const height = (i * 25.4) / 21
    const radius = 300 + (i * 25.4) / 7
    const design: QuarterDesign = {
      ...plain,
      transition: circleOf('frame', radius, 'frame', height),
      toe: height,
      height: { layer: 'frame', value: height + 200 },
    }
    // the whole ramp takes a hundred times as long as its curve
    const { transition, findings } = solveTransition(design, 'mm')
    expect([...findings, ...(i % 25 === 0 ? solve(design).drafts : [])].filter(isStop)).toEqual([])
    assertNear(transition!.toeAngle * radius, 0, 1e-3, `toe angle ${i}`)
  }
})

describe('steepness in plain words beside the lip angle', () => {
  // words by radius over height: common practice, no source
  test.each([
    [3, 'very mellow'],
    [2.99, 'mellow'],
    [2.5, 'mellow'],
    [2.49, 'middle'],
    [2, 'middle'],
    [1.99, 'lively'],
    [1.75, 'lively'],
    [1.74, 'quick'],
    [1.5, 'quick'],
    [1.49, 'steep'],
    [1.33, 'steep'],
    [1.32, 'very steep'],
    [1, 'very steep'],
  ])('radius %d times the height: %s', (ratio, word) => {
    expect(steepnessWord(Math.acos(1 - 1 / ratio))).toBe(word)
  })
})
