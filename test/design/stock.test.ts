import { describe, expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { inch } from '../../src/geometry/inch.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'

const text = (units: 'mm' | 'in', stock: string): string => `title: plain
units: ${units}
stock: ${stock}
ramps:
  - width: ${units === 'mm' ? 1216 : 48}
    height: { deck: ${units === 'mm' ? 640 : 25} }
    transition: { circle: { surface: ${units === 'mm' ? 1700 : 80} } }
    toe: ${units === 'mm' ? 40 : '1 1/2'}
    deck: ${units === 'mm' ? 500 : 20}
    skin: []
`

const stockOf = (units: 'mm' | 'in', stock: string) => {
  return designOf(text(units, stock)).stock
}

const problems = (stock: string): readonly string[] => {
  const read = readDesign(text('mm', stock))
  return 'problems' in read
    ? read.problems.map(({ place, message }) => `${place.line}:${place.column} ${message}`)
    : []
}

describe('panels of the stock', () => {
  test('are read with their defaults, the short side first, in either unit', () => {
    const { panels, offcuts, trim } = stockOf(
      'mm',
      '{ panels: [{ sheet: 18 plywood, size: 2440 x 1220 }], offcuts: [{ sheet: 9, size: 600 x 300, count: 3 }] }',
    )
    const plywood = (thickness: number) => ({ thickness, material: 'plywood' })
    expect(panels).toEqual([{ sheet: plywood(18), size: [1220, 2440], clamped: 1, goodFace: 'any' }])
    expect(offcuts).toEqual([{ sheet: plywood(9), size: [300, 600], count: 3 }])
    expect(trim).toBe(5)
    const own = stockOf('in', '{ panels: [{ sheet: 3/4, size: 48 x 96, clamped: 2, good-face: out }] }')
    expect(own.panels[0]).toMatchObject({ clamped: 2, goodFace: 'out' })
    assertNear(own.panels[0]!.size[0], 48 * inch, 1e-9)
    assertNear(own.panels[0]!.size[1], 96 * inch, 1e-9)
    expect(own.offcuts).toEqual([])
  })

  test('are told what is wrong with each of them, all at once', () => {
    expect(
      problems(
        '{ panels: [{ sheet: 18 plywood, size: 48 x 96 }, { sheet: 18 plywod }, { size: 1220 x 2440, clamped: 3 }, 18], offcuts: [] }',
      ),
    ).toEqual([
      expect.stringContaining(
        '`stock.panels[].size`: 48 mm is outside 300 to 6000 mm; did you mean 48 in (1219 mm)?',
      ),
      expect.stringContaining(
        'missing key `stock.panels[].size`: its two sides; the grain runs along the longer; e.g. `size: 1220 x 2440`',
      ),
      expect.stringMatching(/^3:\d+ unknown material `plywod`; did you mean `plywood`\?/),
      expect.stringMatching(/^3:\d+ missing key `stock\.panels\[\]\.sheet`/),
      expect.stringMatching(/^3:\d+ `stock\.panels\[\]\.clamped`: `3` is not a whole number from 1 to 2/),
      expect.stringMatching(
        /^3:\d+ `stock\.panels\[\]` takes keys of its own \(sheet, size, clamped, good-face\), not `18`/,
      ),
      expect.stringMatching(/^3:\d+ `stock\.offcuts` is an empty list; e\.g\. `offcuts: \[\{ sheet/),
    ])
  })

  test('are no more than twenty sizes', () => {
    const many = Array.from({ length: 21 }, () => '{ sheet: 18, size: 1220 x 2440 }').join(', ')
    expect(problems(`{ panels: [${many}] }`)).toEqual([
      expect.stringContaining('`stock.panels` has 21 entries; at most 20'),
    ])
    expect(problems('{ panels: { sheet: 18, size: 1220 x 2440 } }')).toEqual([
      expect.stringContaining('`stock.panels` takes a list, not a map'),
    ])
  })
})
