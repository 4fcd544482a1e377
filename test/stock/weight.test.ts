import { expect, test } from 'vitest'
import { partsOf } from '../../src/stock/parts.ts'
import { type Weight, weigh } from '../../src/stock/weight.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'

const weightOf = (text: string): Weight => {
  const design = designOf(text)
  const solved = wholeDesign(design)
  return weigh(design, solved, partsOf(design, solved))
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, n) => all + n, 0)

test('parts add up to ramps and ramps to the whole, least under usual under most', () => {
  const weight = weightOf(templateText('pair-mm'))
  for (const key of ['least', 'usual', 'most'] as const) {
    assertNear(sum(weight.parts.map((part) => part[key])), weight[key], 1e-9)
    assertNear(sum(weight.ramps.map((ramp) => ramp[key])), weight[key], 1e-9)
  }
  for (const part of weight.parts) {
    expect(part.least).toBeLessThanOrEqual(part.usual)
    expect(part.usual).toBeLessThanOrEqual(part.most)
  }
  expect(weight.parts.length).toBeGreaterThan(20)
})

test('a side weighs its area by the published weight of plywood, ±15 %', () => {
  const weight = weightOf(templateText('quarter-mm'))
  const side = weight.parts.find(({ mark }) => mark === 'S1')!
  // the box of the side, less the segment over the curve and the notch, by columns of 0.1 mm
  const [R, c, toe, length, height] = [1724, 1700, 40, 1381.92, 625]
  const x0 = Math.sqrt(R * R - (c - toe) ** 2)
  let area = 0
  for (let x = 0.05; x < length; x += 0.1) {
    const under = x + x0 < R ? c - Math.sqrt(R * R - (x + x0) ** 2) : height
    area += 0.1 * Math.min(height, under)
  }
  // the chamfer, and the notch of 24.6 × 37.3 that the pipe takes, with what of the curve lies before it
  const plain = area - 120 ** 2 / 2
  // 3 lb/ft² an inch: 18 mm
  const mass = (plain / 1e6) * 3 * (0.45359237 / 0.3048 ** 2) * (18 / 25.4)
  // the notch takes less than 0.4 %
  assertNear(side.usual / mass, 0.998, 0.002)
  assertNear(side.least / side.usual, 0.85, 1e-9)
  assertNear(side.most / side.usual, 1.15, 1e-9)
})

test('a stud weighs what the published table says of its board', () => {
  const weight = weightOf(templateText('quarter-in'))
  const stud = weight.parts.find(({ words }) => words.startsWith('stud 2'))!
  // 2×4: 1.28 lb a foot; 47 1/2 less two sides of 23/32
  assertNear(stud.usual / 0.45359237, (1.28 * (47.5 - 2 * (23 / 32))) / 12, 0.02)
})

test('two lift even a light ramp, and each no more than 23 kg', () => {
  const { ramps } = weightOf(templateText('pair-mm'))
  for (const { people, most } of ramps) {
    expect(people).toBeGreaterThanOrEqual(2)
    expect(most / people).toBeLessThanOrEqual(23)
    expect(people === 2 || most / (people - 1) > 23).toBe(true)
  }
})
