import { describe, expect, test } from 'vitest'
import { rampParts } from '../../../src/ramp/hazard/masses.ts'
import type { SolvedQuarter } from '../../../src/ramp/ramp.ts'
import { balancePoint } from '../../../src/stock/balance.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { weigh } from '../../../src/stock/weight.ts'
import { designOf } from '../../support/design-of.ts'
import { assertNear } from '../../support/near.ts'
import { templateText } from '../../support/templates.ts'
import { wholeDesign } from '../../support/whole.ts'

const of = (text: string) => {
  const design = designOf(text)
  const solved = wholeDesign(design)
  return {
    ramp: solved.ramps[0] as SolvedQuarter,
    weights: weigh(design, solved, partsOf(design, solved)).parts,
  }
}

describe('a ramp whose sides are joined', () => {
  const joined = of(templateText('quarter-mm').replace('deck: 500 ', 'deck: 2300 '))
  const parts = rampParts(joined.ramp.design, { ...joined.ramp, stored: [] })

  test('has the plates over its joints, and shorter timbers between them: the weights of its parts by their outlines', () => {
    expect(joined.ramp.splices.length).toBeGreaterThan(0)
    const listed = joined.weights.filter(({ words }) => !/^(screws|wheels|run-out)/.test(words))
    expect(listed.filter(({ words }) => words.startsWith('plate'))).not.toEqual([])
    for (const key of ['least', 'usual', 'most'] as const) {
      const all = parts.reduce((sum, { mass }) => sum + mass[key], 0)
      assertNear(all / listed.reduce((sum, part) => sum + part[key], 0), 1, 0.002)
    }
  })

  test('hangs level where the moments of plates and all else are alike', () => {
    const { splices, design } = joined.ramp
    const bare = rampParts(design, { ...joined.ramp, splices: [], stored: [] })
    // plywood of 36, timber of 35 pounds to the cubic foot (published weights); a plate for each side
    const pound = 0.45359237 / 0.3048 ** 3
    const kilos = (area: number): number =>
      (area * design.sides.thickness * design.sides.count * 36 * pound) / 1e9
    let [mass, moment] = [0, 0]
    for (const { mass: own, middle } of bare) {
      mass += own.usual
      moment += own.usual * middle.x
    }
    for (const { plate, top, foot, timber } of splices) {
      const { width, depth } = [...joined.ramp.studs, ...joined.ramp.deckTimbers][timber]!
      const lost = (width * depth * design.sides.thickness * design.sides.count * 35 * pound) / 1e9
      const own = kilos(plate.size[0] * plate.size[1])
      mass += own - lost
      // the plate lies along the joint from just under its top
      const way = Math.hypot(foot.x - top.x, foot.y - top.y)
      moment += own * (top.x + ((foot.x - top.x) * (plate.size[1] / 2 + 5)) / way) - lost * top.x
    }
    assertNear(balancePoint(joined.ramp).x, moment / mass, 0.5)
  })
})
