import { expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { wheelSinks } from '../../../src/ramp/hazard/lip-groove.ts'
import { assertNear } from '../../support/near.ts'
import { bare, piped, plain, plywood, said, transitionOf, wholeOf } from '../ramps.ts'

const open: QuarterDesign = { ...plain, deckBoard: plywood(15) }

test('the groove lies between the ridden edge and the board, as deep as the lower of them is high', () => {
  const { lipGroove } = wholeOf(open)
  const { curve, face, lip } = transitionOf(open)
  const edge = face.point(curve.lip)
  assertNear(lipGroove!.width, lip.x - edge.x, 1e-9)
  assertNear(lipGroove!.depth, edge.y - lip.y, 1e-9)
  // sawn so, the board's front lies on the skin's ends from the lip to the ridden edge
  assertNear(lipGroove!.forward, lip.x - edge.x, 1e-9)
  assertNear(Math.tan(lipGroove!.bevel), (lip.x - edge.x) / (edge.y - lip.y), 1e-9)
  // a lower board ends lower on them
  const lower = wholeOf({ ...open, deckBoard: plywood(12) }).lipGroove!
  assertNear(lower.depth, 12, 1e-9)
  assertNear(lower.forward, (12 * (lip.x - edge.x)) / (edge.y - lip.y), 1e-9)
})

test('a pipe covers it, and without a board or a skin there is none', () => {
  for (const design of [
    { ...open, coping: piped() },
    { ...open, deckBoard: null },
    { ...open, skin: [] },
  ])
    expect(wholeOf(design).lipGroove).toBeNull()
})

test('a wheel sinks as far as the lower half of its circle hangs under a chord so long', () => {
  // 26² = 24² + 10²
  assertNear(wheelSinks({ width: 20, depth: 13 }), 2, 1e-9)
  assertNear(wheelSinks({ width: 20, depth: 1 }), 1, 1e-9)
  assertNear(wheelSinks({ width: 60, depth: 40 }), 40, 1e-9)
})

test('says how wide, how deep, and how it is closed', () => {
  // 24 sin a1 = 18.93, 24 cos a1 = 14.76, a1 = acos(1060 / 1724) = 52.1°
  expect(said(open, 'lip-groove')).toEqual([
    "note: no pipe covers the lip: between the skin's ends, square to the curve, and the deck board an open groove 18.9 mm wide and 14.8 mm deep runs across the ramp; a wheel 52 mm across sinks 1.8 mm into it; saw the deck board 18.9 mm longer, the underside of its front edge bevelled 52.1° off square to lie on the skin's ends, or glue in a strip of wood planed to that wedge",
  ])
})

test('is a warning where a wheel stops in it', () => {
  // 6 deep in 2 √(26² − 20²) = 33.17, the mouth of a skin so thick at a1 = acos(1084 / 1724)
  const limit = (2 * Math.sqrt(26 ** 2 - 20 ** 2)) / Math.sqrt(1 - (1084 / 1724) ** 2)
  const skinned = (s: number): QuarterDesign => ({
    ...bare(1724, 640, 40),
    skin: [plywood(s)],
    deckBoard: plywood(27),
  })
  expect(said(skinned(limit - 0.01), 'lip-groove').join()).toMatch(/^note: .* sinks 6 mm into it; saw/)
  expect(said(skinned(limit + 0.01), 'lip-groove').join()).toMatch(
    /^warn: .* sinks just over 6 mm into it and stops as at a step so high, at more than 6 mm; saw/,
  )
})
