import type { Problem } from '../../index.ts'
import { pathOfKey } from '../words/labels.ts'

interface Named {
  readonly name: string
  readonly type: string
}

/**
 * The field in which something is mended, by its path and the key at its place in the text; none where there is none. Never a tick:
 * pressed, it takes away the whole of what is wrong.
 */
export const fieldToMend = <F extends Named>(
  path: string,
  key: string,
  fields: readonly F[],
): F | undefined => {
  const own = fields.find(({ name }) => name === path)
  if (own?.type !== 'checkbox') return own
  const said = `${path}.${key}`
  return fields.find(
    ({ name, type }) => type !== 'checkbox' && (name === said || name.startsWith(`${said}.`)),
  )
}

/** Brings the field of what is wrong into sight, else its line of the text. */
export const goToProblem = ({ path, place }: Problem): void => {
  const text = document.querySelector<HTMLTextAreaElement>('textarea[name="text"]')!
  const fields = [
    ...document.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input[name], select[name]'),
  ]
  const key = text.value.slice(place.offset, place.end)
  const shown = (path === '' ? undefined : fieldToMend(pathOfKey(path), key, fields)) ?? text
  for (let part = shown.closest('details'); part; part = part.parentElement?.closest('details') ?? null)
    part.open = true
  shown.focus()
  if (shown !== text) return
  text.setSelectionRange(place.offset, place.end)
  const lines = text.value.split('\n').length
  // a line above it stays in sight
  text.scrollTop = Math.max(0, place.line - 2) * (text.scrollHeight / lines)
}
