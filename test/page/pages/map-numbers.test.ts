import { expect, it } from 'vitest'
import { textWidth } from '../../../src/drawing/text-width.ts'
import { layOutAnew } from '../../support/lay-out.ts'
import { opened } from '../../support/strokes.ts'

/** So tall that a page is some millimetres on the map, its words many. */
const tall = (surface: number, radius: number): string => `units: in
title: Tall
ramps:
  - kind: quarter
    width: 10 ft
    height: { surface: ${surface} }
    transition: { circle: { surface: ${radius} } }
    toe: 2
    deck: 4 ft
    sides: { thickness: 23/32, count: 6 }
    studs: { section: 1 1/2 x 5 1/2, every: 6, foot: { every: 4, to: 30 } }
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
    run-out: { step-back: 1/4 }
    deck-board: 3/4 plywood
    coping: { outside: 2 3/8, notch: { along: 1 7/8, down: 1 1/4 } }
    chamfer: { leg: 10 }
`

it('numbers of pages stand no nearer than a figure is wide on the map where pages have room for that', () => {
  let seen = 0
  let near = 0
  for (const [surface, radius] of [
    [55, 84],
    [63, 84],
    [71, 96],
    [71, 108],
  ] as const) {
    const set = layOutAnew(tall(surface, radius), 'letter', 'ribbon')!
    const { words } = opened(set.pages.find(({ kind }) => kind === 'map')!.draw())
    // the picture comes before the steps, whose numbers are the same
    const numbers = set.groups[0]!.tiles.map(({ number }) => words.find(({ text }) => text === `${number}`)!)
    const placed = numbers.map(({ text, corners, size }) => {
      const xs = corners.map(({ x }) => x)
      return { text, size, left: Math.min(...xs), right: Math.max(...xs), foot: corners[0]!.y }
    })
    placed.forEach((one, i) => {
      for (const other of placed.slice(i + 1)) {
        const step = Math.abs(one.foot - other.foot)
        if (step >= one.size) continue
        const air = Math.max(one.left, other.left) - Math.min(one.right, other.right)
        expect(air, `${surface}/${radius}: ${one.text} and ${other.text}`).toBeGreaterThan(0.2)
        seen++
        // half a line higher they are read apart
        if (step >= one.size / 2) continue
        const figure = textWidth('0', one.size, 'bold')
        expect(air, `${surface}/${radius}: ${one.text} and ${other.text}`).toBeGreaterThan(0.4 * figure)
        if (air < figure - 0.01) near++
      }
    })
  }
  expect(seen).toBeGreaterThan(5)
  // where a page is hardly larger than its number
  expect(near).toBeLessThan(2)
})
