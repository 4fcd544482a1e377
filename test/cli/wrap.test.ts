import { expect, it } from 'vitest'
import { printedColumns, wrap } from '../../src/cli/words/wrap.ts'

it('what fits is left alone, to the last column', () => {
  const line = `note  ${'a'.repeat(57)} ${'b'.repeat(56)}`
  expect(line).toHaveLength(120)
  expect(wrap(line)).toBe(line)
})

it('what does not goes on below, indented', () => {
  expect(wrap(`note  ${'a'.repeat(57)} ${'b'.repeat(57)} c`)).toBe(
    `note  ${'a'.repeat(57)}\n      ${'b'.repeat(57)} c`,
  )
})

it('no word is lost or broken', () => {
  const words = Array.from({ length: 200 }, (_, i) => 'x'.repeat(1 + (i % 11)))
  const wrapped = wrap(words.join(' '))
  expect(wrapped.split(/\s+/)).toEqual(words)
  for (const line of wrapped.split('\n')) expect(line.length).toBeLessThanOrEqual(120)
  expect(wrap('y'.repeat(300))).toBe('y'.repeat(300))
})

it('a length stays together: whole inches, fraction and unit on one line', () => {
  for (const length of ['71 3/4 in', '2 1/2– in', '3 7/8+ in', '465 mm', '1 5/8'])
    for (let before = 105; before <= 119; before++) {
      const wrapped = wrap(`${'a'.repeat(before)} ${length} or more`)
      expect(wrapped).toContain(length)
      for (const line of wrapped.split('\n')) expect(line.length).toBeLessThanOrEqual(120)
    }
})

it('a terminal that is narrower is kept to, down to 50 columns; a wider one is not filled', () => {
  const line = `note  ${'word '.repeat(60)}7 1/2 in`
  for (const [columns, widest] of [
    [60, 60],
    [20, 50],
    [200, 120],
    [null, 120],
  ] as const) {
    const lines = wrap(line, 6, columns).split('\n')
    const longest = Math.max(...lines.map(({ length }) => length))
    expect(longest).toBeLessThanOrEqual(widest)
    expect(longest).toBeGreaterThan(widest - 6)
    for (const later of lines.slice(1)) expect(later).toMatch(/^ {6}\S/)
  }
})

it('plain text is as wide as a narrow terminal, down to what its tables need, and as a file anywhere else', () => {
  expect([null, 200, 80, 60, 40].map((columns) => printedColumns(columns))).toEqual([96, 96, 80, 60, 60])
})
