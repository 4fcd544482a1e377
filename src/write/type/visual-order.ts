import { joinedArabic } from './arabic-forms.ts'

const rightToLeft = /^[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]$/u
const mark = /^\p{M}$/u
const digit = /^\p{Nd}$/u
const letter = /^\p{L}$/u
const mirrored: Readonly<Record<string, string>> = {
  '(': ')',
  ')': '(',
  '[': ']',
  ']': '[',
  '<': '>',
  '>': '<',
}

/** Whether a text needs more than its letters one after the other. */
const hasOwnOrder = (text: string): boolean => [...text].some((one) => rightToLeft.test(one))

/**
 * The letters of a line from left to right as they are read, accents after their letters. For lines of one or two directions, the
 * common case of the Unicode bidirectional algorithm (UAX 9): no embeddings, no isolates.
 */
export const visualLetters = (text: string): readonly string[] => {
  const typed = [...text]
  if (!hasOwnOrder(text)) return typed
  const letters = joinedArabic(typed)
  const base = rightToLeft.test(typed.find((one) => rightToLeft.test(one) || letter.test(one))!) ? 1 : 0
  const levels = levelsOf(letters, base)
  const clusters: { text: string[]; level: number }[] = []
  letters.forEach((one, i) => {
    const level = levels[i]!
    if (mark.test(one) && clusters.length > 0) clusters.at(-1)!.text.push(one)
    else clusters.push({ text: [level % 2 === 1 ? (mirrored[one] ?? one) : one], level })
  })
  return reordered(clusters).flatMap((cluster) => cluster.text)
}

/** 0 left to right, 1 right to left, 2 left to right inside that. What has no direction takes that of both sides, else the line's. */
const levelsOf = (letters: readonly string[], base: 0 | 1): readonly number[] => {
  const own = letters.map((one) => {
    // joined forms are of the script too
    if (rightToLeft.test(one)) return 1
    if (letter.test(one)) return base === 1 ? 2 : 0
    return digit.test(one) ? 3 : undefined
  })
  const before = (list: readonly (number | undefined)[], i: number): number =>
    list.slice(0, i).findLast((level) => level !== undefined && level !== 3) ?? base
  // a number reads to the right, but among words to the left it stands as one of them
  const sides = own.map((level, i) => (level === 3 ? before(own, i) : level))
  const after = (i: number): number => sides.slice(i + 1).find((level) => level !== undefined) ?? base
  const inNumber = (i: number): boolean =>
    own[i - 1] === 3 && own[i + 1] === 3 && /^[.,:/]$/.test(letters[i]!)
  return own.map((level, i) => {
    if (level === 3 || inNumber(i)) return before(own, i) === 1 || base === 1 ? 2 : 0
    if (level !== undefined) return level
    return before(sides, i) === after(i) ? after(i) : base
  })
}

/** Rule L2: from the highest level down to 1, each run of that level or higher is turned round. */
const reordered = <T extends { readonly level: number }>(items: readonly T[]): readonly T[] => {
  const line = [...items]
  for (let level = Math.max(...line.map((item) => item.level)); level >= 1; level--)
    for (let i = 0; i < line.length; i++) {
      if (line[i]!.level < level) continue
      let end = i
      while (end < line.length && line[end]!.level >= level) end++
      line.splice(i, end - i, ...line.slice(i, end).reverse())
      i = end
    }
  return line
}
