import { expect, test } from 'vitest'
import { drawingBounds } from '../../../src/drawing/drawing-bounds.ts'
import { fits } from '../../../src/page/parts/pack.ts'
import { tapeBlocks } from '../../../src/page/parts/tape-block.ts'

const rowsOf = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    what: `ramp ${i}, layer 1`,
    words: 'the screws of each row',
    zero: i % 2 === 0 ? "the left side's outer face" : "the pipe's left end",
    figures: Array.from({ length: 3 + (i % 40) }, (_, k) => `${k * 100 + i}`),
  }))

test.each([0, 1, 7, 64, 400])(
  '%i rows: each figure stands once and every block has room on a page',
  (count) => {
    const rows = rowsOf(count)
    const room = { width: 180, height: 260 }
    const blocks = tapeBlocks(rows, room)
    const said = blocks.flatMap((block) => {
      const marks = block.draw()
      expect(fits(block, room)).toBe(true)
      const box = drawingBounds(marks)!
      expect(Math.min(box.x0, box.y0)).toBeGreaterThanOrEqual(-0.5)
      expect(box.x1).toBeLessThanOrEqual(block.width)
      expect(box.y1).toBeLessThanOrEqual(block.height)
      return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    })
    for (const { what } of rows) expect(said.filter((words) => words === what)).toHaveLength(1)
    const figures = (words: string): readonly string[] => words.match(/\b\d+\b/g) ?? []
    const wanted = rows.flatMap((row) => row.figures)
    const found = said.filter((words) => !words.startsWith('ramp')).flatMap(figures)
    expect(found.sort()).toEqual(wanted.sort())
  },
)
