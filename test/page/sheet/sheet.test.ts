import { describe, expect, it } from 'vitest'
import { affineApply } from '../../../src/geometry/affine.ts'
import type { Box } from '../../../src/geometry/bounds.ts'
import { paperOf } from '../../../src/page/sheet/paper.ts'
import {
  layoutMap,
  layoutSize,
  type Sheet,
  sheetWindow,
  sheetWritten,
} from '../../../src/page/sheet/sheet.ts'
import type { Correction } from '../../../src/printer/correction.ts'
import { hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'

const margins = { top: 5, right: 17, bottom: 9.5, left: 26 }
const lean = Math.tan((0.4 * Math.PI) / 180)

/** Every mix of ±2.5 % across and down with ±0.4° of lean of either axis. */
const corrections = [0.975, 1, 1.025].flatMap((a) =>
  [0.975, 1, 1.025].flatMap((d) =>
    [-lean, 0, lean].flatMap((b) => [-lean, 0, lean].map((c): Correction => [a, b, c, d])),
  ),
)

const corners = (box: Box) => [
  { x: box.x0, y: box.y0 },
  { x: box.x1, y: box.y0 },
  { x: box.x1, y: box.y1 },
  { x: box.x0, y: box.y1 },
]

describe.each(['letter', 'a4', 'tabloid', 'a0'] as const)('the window of %s', (name) => {
  const paper = paperOf(name)
  const free = { width: paper.width - 43, height: paper.height - 14.5 }

  it('is the paper less its margins where nothing is corrected', () => {
    const window = sheetWindow({ paper, margins, correction: [1, 0, 0, 1] })
    for (const [actual, expected] of [
      [window.x0, 26],
      [window.y0, 9.5],
      [window.x1, paper.width - 17],
      [window.y1, paper.height - 5],
    ] as const)
      assertNear(actual, expected, 1e-9)
  })

  it.each(corrections)('stays inside the margins under %f %f %f %f', (a, b, c, d) => {
    const sheet: Sheet = { paper, margins, correction: [a, b, c, d] }
    const window = sheetWindow(sheet)
    const [cx, cy] = [paper.width / 2, paper.height / 2]
    for (const { x, y } of corners(window)) {
      // ideal offsets from the middle of the page to written ones, as docs/architecture.md says
      const written = { x: cx + a * (x - cx) + c * (y - cy), y: cy + b * (x - cx) + d * (y - cy) }
      expect(written.x).toBeGreaterThanOrEqual(26 - 1e-9)
      expect(written.x).toBeLessThanOrEqual(paper.width - 17 + 1e-9)
      expect(written.y).toBeGreaterThanOrEqual(9.5 - 1e-9)
      expect(written.y).toBeLessThanOrEqual(paper.height - 5 + 1e-9)
      const mapped = affineApply(sheetWritten(sheet), { x, y })
      assertNear(mapped.x, written.x, 1e-9, 'written x')
      assertNear(mapped.y, written.y, 1e-9, 'written y')
    }
    // and gives up no more than the lean of the other axis takes at both ends
    const width = (free.width - 2 * Math.abs(c) * (paper.height / 2) * 1.03) / a
    const height = (free.height - 2 * Math.abs(b) * (paper.width / 2) * 1.03) / d
    expect(window.x1 - window.x0).toBeGreaterThanOrEqual(width - 1e-9)
    expect(window.y1 - window.y0).toBeGreaterThanOrEqual(height - 1e-9)
  })
})

describe('a layout', () => {
  const window = { x0: 12, y0: 7, x1: 200, y1: 280 }
  it.each(['portrait', 'landscape'] as const)(
    '%s puts the drawing on the window, turned at most',
    (layout) => {
      const { width, height } = layoutSize(window, layout)
      const map = layoutMap(window, layout)
      const placed = corners({ x0: 0, y0: 0, x1: width, y1: height }).map((p) => affineApply(map, p))
      for (const corner of corners(window))
        hold(placed.some((p) => Math.hypot(p.x - corner.x, p.y - corner.y) < 1e-9))
      expect(map[0] * map[3] - map[1] * map[2]).toBe(1)
      // a landscape page is read from its right edge
      const x = affineApply(map, { x: 1, y: 0 })
      const o = affineApply(map, { x: 0, y: 0 })
      expect([x.x - o.x, x.y - o.y]).toEqual(layout === 'portrait' ? [1, 0] : [0, 1])
    },
  )
})
