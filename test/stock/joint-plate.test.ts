import { describe, expect, test } from 'vitest'
import { straightOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { timberDistance } from '../../src/ramp/frame/timber.ts'
import { jointPlates } from '../../src/stock/joint-plate.ts'
import { bookletSaid, designOf } from '../booklet/said.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'

const solvedOf = (name: string) => {
  const reading = readDesign(templateText(name))
  if ('problems' in reading) throw new Error(name)
  return { design: reading.design, ramps: wholeDesign(reading.design).ramps }
}

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
      expect(said.match(/against the toe of quarter/g)).toHaveLength(1)
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

  test('is none where no ramp runs out on a flat', () => {
    const { ramps, design } = solvedOf('pair-mm')
    expect(jointPlates(ramps, design.units)).toEqual([])
  })
})
