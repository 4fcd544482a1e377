import type { Problem } from '../../index.ts'
import { pathOfKey } from '../words/labels.ts'

/** Brings the field of what is wrong into sight, else its line of the text. */
export const goToProblem = ({ path, place }: Problem): void => {
  const [field] = path === '' ? [] : document.getElementsByName(pathOfKey(path))
  const text = document.querySelector<HTMLTextAreaElement>('textarea[name="text"]')!
  const shown = field ?? text
  for (let part = shown.closest('details'); part; part = part.parentElement?.closest('details') ?? null)
    part.open = true
  shown.focus()
  if (shown !== text) return
  text.setSelectionRange(place.offset, place.end)
  const lines = text.value.split('\n').length
  // a line above it stays in sight
  text.scrollTop = Math.max(0, place.line - 2) * (text.scrollHeight / lines)
}
