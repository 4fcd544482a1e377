import { expect, it } from 'vitest'
import { rowWords } from '../../../src/page/parts/strip-words.ts'
import type { StripMark } from '../../../src/pattern/story-strip.ts'

const piece = { from: 0, to: 200, number: 1, count: 1 }
const figuresOf = (marks: readonly StripMark[]) =>
  rowWords(marks, piece).flatMap((words) => {
    const own = marks.find(({ figure }) => figure === words.words)
    return own ? [{ ...words, at: own.at }] : []
  })
const ring = (at: number, figure: string): StripMark => ({ at, sign: 'ring', label: 'screw', figure })
const end = (at: number, figure: string): StripMark => ({
  at,
  sign: 'tick',
  label: null,
  aside: 'ends',
  figure,
})

it('a figure alone stands nearer to its own mark than to any other, half as far off at most', () => {
  let told = 0
  for (let apart = 3; apart < 30; apart += 0.5) {
    // screws and ends of sheets in turn, each as far from the next
    const marks = Array.from({ length: 7 }, (_, i) =>
      (i % 2 === 0 ? ring : end)(10 + apart * i, `${31 + i} 5/16`),
    )
    for (const { x, end: to, at, words } of figuresOf(marks)) {
      const away = (mark: number) => Math.max(x - mark, mark - to, 0)
      for (const other of marks)
        if (other.at !== at)
          expect([apart, words, away(other.at) > 2 * away(at)]).toEqual([apart, words, true])
      told++
    }
  }
  expect(told).toBeGreaterThan(40)
})

it('a screw on a tick has its figure though both are as near', () => {
  const marks: readonly StripMark[] = [
    { at: 100, sign: 'tick', label: null, figure: '100' },
    ring(100.2, '100.2'),
  ]
  expect(figuresOf(marks).map(({ words }) => words)).toEqual(['100'])
})
