import { expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { draftQuarter } from '../../../src/ramp/kinds/quarter.ts'
import { plain, stock } from '../ramps.ts'

const said = (
  design: QuarterDesign,
  timber: readonly number[],
  stored: readonly string[] = [],
): readonly string[] =>
  draftQuarter(design, 'mm', { ...stock, timber }, stored)
    .drafts.filter(({ id }) => id === 'timber-short')
    .map(({ level, message }) => `${level}: ${message}`)

// 1216 less two sides of 18
test('a stud longer than every timber is a stop, with the length to buy and the ribs that do', () => {
  expect(said(plain, [1180])).toEqual([])
  expect(said(plain, [760, 1179.9])).toHaveLength(1)
  const [message] = said(plain, [760])
  expect(message).toMatch(/^stop: a stud is 1180 mm long, and the longest timber of your stock 760 mm: /)
  const offered = Number(/buy timber of (\d+) mm or more/.exec(message!)![1])
  expect(said(plain, [offered])).toEqual([])
  expect(said(plain, [offered - 1])).toHaveLength(1)
  const sides = Number(/sides: \{ count: (\d) \}/.exec(message!)![1])
  expect(said({ ...plain, sides: { ...plain.sides, count: sides } }, [760])).toEqual([])
  expect(sides).toBe(3)
})

test('it is told beside a stop that leaves the ramp without a curve', () => {
  const { drafts } = draftQuarter({ ...plain, height: { layer: 'frame', value: 2400 } }, 'mm', {
    ...stock,
    timber: [760],
  })
  expect(drafts.flatMap(({ id, level }) => (level === 'stop' ? [id] : []))).toEqual([
    'overhang',
    'timber-short',
  ])
})

test('no rib is offered where another ramp is kept inside', () => {
  expect(said(plain, [760], ['inner']).join()).not.toContain('rib')
})
