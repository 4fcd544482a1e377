import { expect, it } from 'vitest'
import { draftStyle } from '../../../src/drafting/line-types.ts'
import { boxUnion, pointsBounds } from '../../../src/geometry/bounds.ts'
import { proofTables } from '../../../src/page/pages/proof-tables.ts'
import { overlaps, wordsOf } from '../../booklet/words.ts'
import { layOut } from '../../support/lay-out.ts'
import { opened } from '../../support/strokes.ts'
import { templateText } from '../../support/templates.ts'

it.each(['quarter-mm', 'quarter-in'] as const)(
  'the two tables of %s lie inside every window, side by side where it is wide enough, and take the height that they say',
  (name) => {
    const units = name.endsWith('in') ? 'in' : 'mm'
    const [group] = layOut(templateText(name), 'a4', 'line', { strips: true })!.groups
    let [beside, under] = [0, 0]
    for (let width = 95; width <= 190; width += 2.5) {
      const { draw, height } = proofTables({ ...group!, units }, { ...draftStyle, size: 2.2 }, width)
      const marks = draw()
      const { lines, words } = opened(marks)
      const box = [...lines.map(({ points }) => points), ...words.map(({ corners }) => corners)]
        .map((points) => pointsBounds(points))
        .reduce(boxUnion)
      expect(box.x0, `${width}`).toBeGreaterThan(-0.1)
      expect(box.x1, `${width}`).toBeLessThan(width + 0.1)
      expect(box.y1, `${width}`).toBeLessThan(0.1)
      expect(box.y0, `${width}`).toBeGreaterThan(-height - 0.1)
      expect(overlaps(wordsOf(marks))).toEqual([])
      const heads = ['front', 'paper'].map((text) => words.find((word) => word.text === text)!.corners[0]!)
      if (Math.abs(heads[0]!.y - heads[1]!.y) < 1) beside++
      else under++
    }
    expect(beside).toBeGreaterThan(10)
    expect(under).toBeGreaterThan(3)
  },
)

it('what lies on paper only has no box for the wood', () => {
  let [dashes, boxes] = [0, 0]
  for (const cover of ['line', 'ribbon', 'whole'] as const)
    for (const { survey, datums, pattern } of layOut(templateText('quarter-mm'), 'a4', cover, {
      strips: true,
    })!.groups) {
      const marks = proofTables(
        { survey, datums, pattern, units: 'mm' },
        { ...draftStyle, size: 2.2 },
        190,
      ).draw()
      const { words } = opened(marks)
      const gone = survey.filter((line) => line.words.includes('on paper only')).length
      expect(words.filter(({ text }) => text === '–').length).toBe(gone)
      const drawn = JSON.stringify(marks).match(/"closed":true/g)?.length ?? 0
      dashes += gone
      boxes += 2 * survey.length - gone
      expect([cover, drawn]).toEqual([cover, 2 * survey.length - gone])
    }
  expect(dashes).toBeGreaterThan(0)
  expect(boxes).toBeGreaterThan(10)
})

it('a cross behind a joint has no distance from a corner that its piece has not', () => {
  // a joint from 1000 along the bottom edge to 600 along the top: at half the height it lies at 800
  const joints = [
    [
      { x: 600, y: 400 },
      { x: 1000, y: 0 },
    ],
  ] as const
  const words = [1, 1] as const
  const cross = (letter: string, x: number) => ({ letter, at: { x, y: 200 }, tile: 1, onWood: true, words })
  const datums = [cross('P', 790), cross('Q', 810)]
  const { draw } = proofTables(
    { survey: [], datums, pattern: { joints }, units: 'mm' },
    { ...draftStyle, size: 2.2 },
    190,
  )
  const said = opened(draw()).words.map(({ text }) => text)
  // √(790² + 200²)
  expect(said.filter((word) => /^(815|834|–)$/.test(word))).toEqual(['815', '–'])
})
