import { expect, it } from 'vitest'
import { paragraph } from '../../src/drawing/paragraph.ts'
import { textWidth } from '../../src/drawing/text-width.ts'

it('an even paragraph leaves no short word alone on its last line, and has all words in as few lines', () => {
  const words =
    'Saws, routers and wood dust hurt: eyes, ears and lungs covered, work clamped, blade and cord watched, tools unplugged for changes.'
  let [alone, mended] = [0, 0]
  for (let width = 60; width < 188; width += 0.5) {
    const style = { layer: 'note', width, size: 2.4 } as const
    const linesOf = (even: boolean): readonly string[] =>
      paragraph({ x: 0, y: 0 }, words, { ...style, even }).marks.flatMap((mark) =>
        mark.kind === 'text' ? [mark.text] : [],
      )
    const [plain, even] = [linesOf(false), linesOf(true)]
    expect(even.join(' ')).toBe(words)
    expect(even.length).toBe(plain.length)
    for (const line of even) expect(textWidth(line, 2.4, 'regular')).toBeLessThanOrEqual(width + 1e-6)
    const isAlone = (lines: readonly string[]) => textWidth(lines.at(-1)!, 2.4, 'regular') < width / 10
    if (!isAlone(plain)) expect(even).toEqual(plain)
    else if (isAlone(even)) alone++
    else mended++
  }
  expect(mended).toBeGreaterThan(15)
  // where no line has a word to give
  expect(alone).toBeLessThan(mended / 4)
})
