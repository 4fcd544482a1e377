import { describe, expect, test } from 'vitest'
import { type Mass, pipeMass, sheetDensities, timberDensity } from '../../src/design/densities.ts'
import { assertNear } from '../support/near.ts'

/** kg a metre in a pound a foot, kg/m² in a pound a square foot */
const perFoot = 0.45359237 / 0.3048
const perSquareFoot = 0.45359237 / 0.3048 ** 2

const holds = ({ least, usual, most }: Mass, value: number): void => {
  expect(least).toBeLessThanOrEqual(value)
  expect(most).toBeGreaterThanOrEqual(value)
  expect(usual).toBeGreaterThanOrEqual(least)
  expect(usual).toBeLessThanOrEqual(most)
}

// lb a foot at 35 lb/ft³, published with PS 20 to two decimals; the second is 2.005
test.each([
  [1.5, 3.5, 1.28],
  [1.5, 5.5, 2.0],
  [1.5, 7.25, 2.64],
])('a board %d × %d in weighs what the published table says', (thickness, width, pounds) => {
  const area = thickness * width * 0.0254 ** 2
  assertNear(area * timberDensity.usual, pounds * perFoot, 0.006 * perFoot)
})

test('timber: the formula of the NDS Supplement lies in the range, and so does its worked example', () => {
  // ρ = 62.4 [G / (1 + 0.009 G m)] (1 + m / 100) lb/ft³
  const nds = (g: number, m: number): number => ((62.4 * g) / (1 + 0.009 * g * m)) * (1 + m / 100)
  const cubic = 0.45359237 / 0.3048 ** 3
  assertNear(nds(0.51, 30), 36.4, 0.05)
  for (const [g, m] of [
    [0.36, 12],
    [0.42, 15],
    [0.51, 30],
    [0.55, 19],
  ] as const)
    holds(timberDensity, nds(g, m) * cubic)
})

describe('sheets', () => {
  test('plywood weighs 3 lb/ft² an inch, give or take 15 %', () => {
    const { least, usual, most } = sheetDensities.plywood
    assertNear(usual * 0.0254, 3 * perSquareFoot, 1e-9)
    assertNear(least / usual, 0.85, 1e-12)
    assertNear(most / usual, 1.15, 1e-12)
  })
  test('hardboard 50 to 65 lb/ft³', () => {
    assertNear(sheetDensities.hardboard.least, 800.9, 0.05)
    assertNear(sheetDensities.hardboard.most, 1041.2, 0.05)
  })
})

// ASME B36.10M, schedule 40, lb a foot
test.each([
  [1.66, 2.27],
  [1.9, 2.72],
  [2.375, 3.66],
  [2.875, 5.8],
])('steel pipe %d in outside weighs what the standard says', (outside, pounds) => {
  const mass = pipeMass({ outside: outside * 25.4, material: 'steel' })
  assertNear(mass.usual, pounds * perFoot, 0.007 * pounds * perFoot)
})

test('a pipe of no table has a wide range about it', () => {
  const known = pipeMass({ outside: 60.3, material: 'steel' })
  const odd = pipeMass({ outside: 62, material: 'steel' })
  holds(odd, known.usual)
  expect(odd.most / odd.least).toBeGreaterThan(2)
  expect(pipeMass({ outside: 60.3, material: 'plastic' }).most).toBeLessThan(known.least / 4)
})
