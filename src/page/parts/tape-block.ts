import { type Drawing, text } from '../../drawing/drawing.ts'
import { wrapWords } from '../../drawing/paragraph.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { letters } from '../../pattern/pens.ts'
import type { TapeRow } from '../../pattern/tape-rows.ts'
import type { Block } from './block.ts'
import type { Size } from './pack.ts'

const size = letters.mark
const leading = 3.4

/** A line no longer than the eye keeps; between columns; and before and behind the longest line together, mm. */
const longest = 220
const between = 3
const spare = 0.6

interface Line {
  readonly at: number
  readonly words: string
  readonly face: 'bold' | 'regular'
}

/**
 * What lies evenly and has no strip, a row each, by the place where the tape is hooked: one block, or as many as a page's room asks
 * for.
 */
export const tapeBlocks = (rows: readonly TapeRow[], room: Size): readonly Block[] => {
  const most = Math.min(longest, Math.max(room.width, room.height) - spare)
  const names = between + Math.max(...rows.map(({ what }) => textWidth(what, size, 'bold')))
  const wrapped = (words: string, at: number, face: Line['face']): readonly (readonly Line[])[] =>
    wrapWords(words, most - at, size, face).map((line) => [{ at, words: line, face }])
  const lines = [...new Set(rows.map(({ zero }) => zero))].flatMap((zero) => [
    ...wrapped(`No strip: mark with a tape from the ${zero.replace(/^the /, '')}`, 0, 'bold'),
    ...rows
      .filter((row) => row.zero === zero)
      .flatMap(({ what, words, figures }) => {
        const [first, ...more] = wrapped(`${figures.join(', ')}: ${words}`, names, 'regular')
        return [[{ at: 0, words: what, face: 'bold' as const }, ...first!], ...more]
      }),
  ])
  const held = Math.floor(Math.min(room.width, room.height) / leading)
  return Array.from({ length: Math.ceil(lines.length / held) }, (_, i) =>
    linesBlock(lines.slice(i * held, (i + 1) * held)),
  )
}

const linesBlock = (lines: readonly (readonly Line[])[]): Block => {
  const height = lines.length * leading
  return {
    width: spare + Math.max(...lines.flat().map(({ at, words, face }) => at + textWidth(words, size, face))),
    height,
    places: [],
    draw: (): Drawing =>
      lines.flatMap((line, i) =>
        line.map(({ at, words, face }) =>
          text('note', { x: spare / 2 + at, y: height - (i + 1) * leading + 0.9 }, size, words, { face }),
        ),
      ),
  }
}
