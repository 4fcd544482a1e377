import Flatten from '@flatten-js/core'
import { expect, test } from 'vitest'
import { readDesign } from '../../../src/design/read.ts'
import { outerPolygon } from '../../../src/geometry/polygon/outer-polygon.ts'
import { cutsJob } from '../../../src/job/cuts.ts'
import { isRefusal } from '../../../src/job/refusal.ts'
import { largestRest } from '../../../src/stock/panel/largest-rest.ts'
import { templates, templateText } from '../../support/templates.ts'

test('what is left of a panel with curved pieces lies a kerf off all of them, and is no less than beside their boxes', () => {
  let [curved, more] = [0, 0]
  for (const name of templates) {
    const reading = readDesign(templateText(name))
    if ('problems' in reading) throw new Error(name)
    const { design } = reading
    const job = cutsJob(design)
    if (isRefusal(job)) throw new Error(name)
    for (const { pieces, rest, size, steps } of job.sheets.flatMap(({ panels }) => panels)) {
      // nothing was parted from the panel before
      if (pieces.every(({ second }) => second === null) || steps.some(({ kind }) => kind !== 'out')) continue
      curved++
      const { x0, y0, x1, y1 } = rest!
      const free = new Flatten.Polygon([
        [
          [x0, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
        ].map(([x, y]) => new Flatten.Point(x, y)),
      ])
      for (const { outline } of pieces) {
        const polygon = new Flatten.Polygon([
          outerPolygon(outline, 0.02).map(({ x, y }) => new Flatten.Point(x, y)),
        ])
        expect(polygon.distanceTo(free)[0]).toBeGreaterThan(design.stock.kerf - 1e-3)
        expect(polygon.contains(free.vertices[0]!)).toBe(false)
      }
      const whole = { x0: 0, y0: 0, x1: size[1], y1: size[0] }
      const boxed = largestRest(
        whole,
        pieces.map(({ box }) => box),
        design.stock.kerf,
      )!
      const area = (x1 - x0) * (y1 - y0)
      const before = (boxed.x1 - boxed.x0) * (boxed.y1 - boxed.y0)
      expect(area).toBeGreaterThan(before - 1)
      if (area > before * 1.01) more++
    }
  }
  expect(curved).toBeGreaterThan(3)
  expect(more).toBeGreaterThan(0)
})
