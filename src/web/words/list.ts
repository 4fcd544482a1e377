import type { Row } from '../../index.ts'

export const isList = ({ value }: Row): boolean => value.kind === 'lengths' || value.kind === 'sheets'

/** A list as its field shows it: without the brackets that it has in the file, `none` where it has no entries. */
export const listShown = (said: string): string =>
  said === '[]' ? 'none' : ((/^\[ (.*) \]$/.exec(said) ?? /^\[(.*)\]$/.exec(said))?.[1] ?? said)

/** What is typed in the field of a list, as it stands in the file; brackets may be typed too, and the key before them. */
export const listTyped = (typed: string, key: string): string => {
  const list = typed.replace(new RegExp(`^\\s*${key}:\\s*(?=\\[)`), '')
  if (/^\s*\[/.test(list)) return list
  return list.trim() === 'none' ? '[]' : `[${list}]`
}
