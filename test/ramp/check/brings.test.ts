import { expect, test } from 'vitest'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { designOf } from '../../support/design-of.ts'

const checksOf = (text: string) => {
  return solveDesign(designOf(text)).checks
}
const has = (text: string, id: string): boolean => checksOf(text).some((check) => check.id === id)
const messageOf = (text: string, id: string): string =>
  checksOf(text).find((check) => check.id === id)!.message

test('a toe that is blunt enough leaves no weak end of the skin where one near to it does not', () => {
  const at = (toe: string): string => `title: Feather
units: in
ramps:
  - kind: quarter
    width: 105 1/2
    height: { frame: 9 15/16 }
    transition: { circle: { frame: 50 3/4 }, tangent: { frame: 0 } }
    toe: ${toe}
    deck: 10 5/16
    sides: { thickness: 11/16, count: 4 }
    studs: { section: 1 1/2 x 3 1/2, every: 13 5/8, foot: { every: 4 3/16, to: 20 1/4 } }
    skin: [3/8 plywood, 1/4 hardboard]
    run-out: { sheet: 1/16 steel }
    deck-board: 23/32 plywood
    chamfer: { leg: 3 5/16 }
    wheels: { diameter: 2 15/16, height: 3 15/16 }
`
  const [, toe] = /enough: a toe of (.+) in or more$/.exec(messageOf(at('3/16'), 'toe-thin'))!
  expect([has(at('3/16'), 'skin-free'), has(at('1/2'), 'skin-free'), has(at(toe!), 'skin-free')]).toEqual([
    false,
    true,
    false,
  ])
})

test('a larger radius that makes a side larger than a panel says so', () => {
  const at = (radius: string): string => `title: Steep
units: in
ramps:
  - kind: quarter
    width: 100 1/4
    height: { surface: 78 3/4 }
    transition: { circle: { surface: ${radius} }, tangent: { surface: 0 } }
    toe: 4 1/4
    deck: 2 13/16
    sides: { thickness: 11/16, count: 2 }
    studs: { section: 1 1/2 x 3 1/2, every: 9 11/16, deck: 15 7/16 }
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
    deck-board: 5/8 plywood
    coping: { outside: 1 5/8, up: 5/8, out: -1/16, seat: round }
`
  const [, radius] =
    /a surface radius of (.+) in or more keeps it under 80° \(then a side is larger than a panel\)$/.exec(
      messageOf(at('87 1/2'), 'steep'),
    )!
  expect([has(at('87 1/2'), 'panel-size'), has(at(radius!), 'panel-size')]).toEqual([false, true])
})

const low = (radius: number, skin: string): string => `title: Low
units: mm
ramps:
  - kind: quarter
    width: 1216
    height: { deck: 400 }
    transition: { circle: { surface: ${radius} } }
    toe: 40
    deck: 400
    sides: { thickness: 18, count: 2 }
    studs: { section: 38 x 89, every: 200 }
    skin: ${skin}
    run-out: { sheet: 1.5 steel }
    deck-board: 15 plywood
    coping: { outside: 60.3, up: 8, out: 6, seat: square }
    chamfer: { leg: 80 }
`

test('no skin that bends but breaks under a rider is offered in place of one that does neither', () => {
  // as thick as it is offered: two sheets of 6 for one of 12
  expect(has(low(720, '[12 plywood]'), 'skin-load')).toBe(false)
  expect(has(low(720, '[6 plywood, 6 plywood]'), 'skin-load')).toBe(true)
  expect(messageOf(low(720, '[12 plywood]'), 'skin-bend')).toMatch(
    /the other way; a surface radius of \d+ mm or more$/,
  )
})

test('a deck that tips no more but breaks its board says so where none does neither', () => {
  const light = (deck: string): string =>
    low(1400, '[9 plywood]')
      .replace('deck: 400\n    sides: { thickness: 18', `deck: ${deck}\n    sides: { thickness: 12`)
      .replace('15 plywood', '9 plywood')
      .replace(/ {4}coping.*\n {4}chamfer.*\n/, '')
  const [, deck] = /; a deck of (.+) or more from lip to back \(with this another danger comes: .*\)$/.exec(
    messageOf(light('150'), 'tips'),
  )!
  const dangers = (text: string) => ['tips', 'board-load'].filter((id) => has(text, id))
  expect([dangers(light('150')), dangers(light(deck!))]).toEqual([['tips'], ['board-load']])
})
