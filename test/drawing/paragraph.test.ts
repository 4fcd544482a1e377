import { expect, it } from 'vitest'
import { paragraph, wrapWords } from '../../src/drawing/paragraph.ts'
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

it('a size stays on one line where that has room for it, else is broken behind its ×; nothing is lost', () => {
  const words =
    'K1 layer 1; 47 1/2 × 17 3/16+ in, then 1216 mm × 590 mm and 3 × side, 18 × 343 × 2440 mm of it'
  const sizes = ['47 1/2 × 17 3/16+ in,', '1216 mm × 590 mm', '18 × 343 × 2440 mm']
  const size = 2.4
  let [whole, broken] = [0, 0]
  for (let width = 12; width < 120; width += 0.5) {
    const lines = wrapWords(words, width, size)
    expect(lines.join(' ')).toBe(words)
    for (const one of sizes)
      if (textWidth(one, size, 'regular') <= width) {
        expect(
          lines.some((line) => line.includes(one)),
          `${one} in ${width} mm`,
        ).toBe(true)
        whole++
      } else broken += Number(!lines.some((line) => line.includes(one)))
    for (const line of lines) expect(line).not.toMatch(/^×/)
  }
  expect(whole).toBeGreaterThan(300)
  expect(broken).toBeGreaterThan(30)
})
