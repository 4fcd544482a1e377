import { describe, expect, test } from 'vitest'
import { stockFindings } from '../../../src/ramp/beside/stock-asked.ts'
import { designOf } from '../../support/design-of.ts'
import { templateText } from '../../support/templates.ts'

const said = (stock: string): readonly string[] => {
  return stockFindings(designOf(`${templateText('quarter-mm')}stock: { ${stock} }\n`)).map(
    ({ level, message }) => `${level}: ${message}`,
  )
}

describe('a stock that cannot well be meant', () => {
  test('is a saw cut of 9 mm, of 0.2 mm, or none, and no usual one', () => {
    for (const kerf of ['9', '0.2', '0', '6.1'])
      expect(said(`kerf: ${kerf}`)).toEqual([
        `warn: a saw cut of ${kerf} mm was typed: blades cut 1 mm to 6 mm wide; saw into scrap and measure yours`,
      ])
    for (const kerf of ['1', '1.8', '3.2', '6']) expect(said(`kerf: ${kerf}`)).toEqual([])
  })

  test('is a panel that nothing is sawn from', () => {
    expect(
      said('panels: [{ sheet: 12 plywood, size: 1220 x 2440 }, { sheet: 18 plywood, size: 1220 x 2440 }]'),
    ).toEqual([
      'warn: nothing is sawn from 12 plywood; the parts are of 18 plywood, 9 plywood, 6 hardboard, 15 plywood, 1.5 steel',
    ])
    expect(said('offcuts: [{ sheet: 6 plywood, size: 600 x 900 }]')).toHaveLength(1)
    expect(said('offcuts: [{ sheet: 6 hardboard, size: 600 x 900 }]')).toEqual([])
  })
})
