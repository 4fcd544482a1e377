import { describe, expect, test } from 'vitest'
import { draftStyle } from '../../src/drafting/line-types.ts'
import { layTable, type Table, tableFits, tableHeight, tableMarks } from '../../src/drafting/table.ts'
import { assertNear } from '../support/near.ts'
import { boxOf, opened, segmentInBox } from '../support/strokes.ts'

const table: Table = {
  columns: [
    { head: '', kind: 'box' },
    { head: 'stud', kind: 'right', face: 'bold' },
    { head: 'up the curve', kind: 'figure' },
    { head: 'what it is for', kind: 'words' },
    { head: 'as sawn', kind: 'blank' },
  ],
  rows: Array.from({ length: 40 }, (_, i) => [
    '',
    `${i + 1}`,
    i % 3 === 0 ? `${i} 7/16` : i % 3 === 1 ? `${10 * i}` : '3/4–',
    i % 4 === 0
      ? 'carries a seam of the first layer and takes two rows of screws, one on each side'
      : 'inner',
    '',
  ]),
}

describe('a table', () => {
  test('keeps to its width, and no words lie on others or on its lines', () => {
    for (const width of [100, 130, 180]) {
      const laid = layTable(table, width, draftStyle)
      expect(laid.width).toBeLessThanOrEqual(width + 1e-6)
      const { lines, words } = opened(tableMarks(laid, { x: 10, y: 300 }), undefined, 1e6)
      expect(words.length).toBeGreaterThan(120)
      const faults: string[] = []
      words.forEach(({ text, corners }, i) => {
        const box = boxOf(corners)
        if (box.x0 < 10 - 1e-6 || box.x1 > 10 + width + 1e-6) faults.push(`${text} leaves the table`)
        for (const other of words.slice(i + 1)) {
          const it = boxOf(other.corners)
          if (
            box.x0 < it.x1 - 1e-6 &&
            it.x0 < box.x1 - 1e-6 &&
            box.y0 < it.y1 - 1e-6 &&
            it.y0 < box.y1 - 1e-6
          )
            faults.push(`${text} on ${other.text}`)
        }
        for (const { points } of lines)
          for (let k = 1; k < points.length; k++)
            if (segmentInBox(points[k - 1]!, points[k]!, box)) faults.push(`a line in ${text}`)
      })
      expect(faults).toEqual([])
    }
  })

  test('shows every word of every cell', () => {
    const laid = layTable(table, 110, draftStyle)
    const shown = opened(tableMarks(laid, { x: 0, y: 0 }))
      .words.map(({ text }) => text)
      .join(' ')
      .split(' ')
    const counts = (all: readonly string[]) => all.filter((word) => word === 'screws,').length
    expect(counts(shown)).toBe(10)
    for (const word of ['stud', 'curve', '7/16', '3/4–', 'inner']) expect(shown).toContain(word)
  })

  test('sets the figures of a column on one seam', () => {
    const laid = layTable(table, 180, draftStyle)
    const marks = tableMarks(laid, { x: 0, y: 0 })
    // right ends of what stands before the fraction
    const ends = marks.flatMap((mark) =>
      mark.kind === 'text' && mark.align === 'right' && mark.face === 'regular' ? [mark.at.x] : [],
    )
    expect(ends.length).toBeGreaterThan(20)
    for (const x of ends) assertNear(x, ends[0]!, 1e-9)
  })

  test('goes on under its head on the next page, with every row once', () => {
    const laid = layTable(table, 120, draftStyle)
    let [from, pages] = [0, 0]
    const numbers: string[] = []
    while (from < table.rows.length) {
      const count = tableFits(laid, from, 60)
      expect(count).toBeGreaterThan(0)
      expect(tableHeight(laid, from, count)).toBeLessThanOrEqual(60 + 1e-6)
      const marks = tableMarks(laid, { x: 0, y: 0 }, from, count)
      const { words } = opened(marks)
      expect(words.map(({ text }) => text)).toContain('up the curve')
      const lowest = Math.min(...opened(marks).lines.flatMap(({ points }) => points.map((p) => p.y)))
      assertNear(lowest, -tableHeight(laid, from, count), 1e-9)
      numbers.push(
        ...marks.flatMap((mark) =>
          mark.kind === 'text' && mark.face === 'bold' && /^\d+$/.test(mark.text) ? [mark.text] : [],
        ),
      )
      from += count
      pages++
    }
    expect(pages).toBeGreaterThan(2)
    expect(numbers).toEqual(Array.from({ length: 40 }, (_, i) => `${i + 1}`))
  })
})
