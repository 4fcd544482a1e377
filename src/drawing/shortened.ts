import type { Face } from './drawing.ts'
import { textWidth } from './text-width.ts'

/** Words as they are, or as many of their letters as fit a width, mm, and an ellipsis. */
export const shortened = (words: string, size: number, room: number, face: Face): string => {
  const slack = 1e-6
  if (textWidth(words, size, face) <= room + slack) return words
  const letters = [...words]
  const cut = (): string => `${letters.join('').trimEnd()}…`
  while (letters.length > 0 && textWidth(cut(), size, face) > room) letters.pop()
  return cut()
}
