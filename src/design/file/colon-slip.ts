import { nearWord } from '../../length/near.ts'
import { quote } from '../../length/quote.ts'
import { rowKey } from '../row.ts'
import { schema } from '../schema.ts'

/** A key without its colon, or without the blank behind that. */
export interface ColonSlip {
  readonly key: string
  /** what stands behind it; empty where nothing does */
  readonly value: string
  /** where the slip stands in the text: `toe 1 1/2` */
  readonly from: number
  readonly to: number
  readonly message: string
}

/** A word, then no colon with a blank behind it: a blank alone, a colon alone, or a sign that was taken for the colon. */
const slip =
  /^(?<before>\s*(?:-\s+)?)(?<key>[\p{L}-]+)(?:(?<colon>:)(?=[^\s:])|\s*[=;]\s*|\s+(?![:\s])|$)(?<rest>.*)$/u

/** No line that a hand types is longer. */
const longest = 200

const allKeys = (): readonly string[] => [...new Set(schema.filter(({ path }) => path !== '').map(rowKey))]

/** The slip in one line, or in a value that was meant as a map; null where its first word is no key. */
export const slipIn = (line: string, keys: readonly string[] = allKeys()): ColonSlip | null => {
  if (line.length > longest) return null
  const bare = line.replace(/(?:^|\s+)#.*$/, '').trimEnd()
  const { before, key: typed, colon, rest } = slip.exec(bare)?.groups ?? {}
  if (typed === undefined) return null
  const key = keys.includes(typed) ? typed : nearWord(typed, keys)
  // a sentence may begin with a word that is near a key
  if (key === undefined || (key !== typed && /^\p{L}/u.test(rest!))) return null
  const meant = `${key}: ${rest}`.trim()
  const lacks =
    colon !== undefined
      ? 'a blank belongs behind the colon'
      : `a colon and a blank belong behind ${quote(typed)}`
  return {
    key,
    value: rest!,
    from: before!.length,
    to: bare.length,
    message:
      rest === ''
        ? `a colon belongs behind ${quote(typed)}: write \`${meant}\``
        : `${lacks}: write ${quote(meant, 80)}`,
  }
}

/** The slip that a fault of the syntax comes from: on its own line, or on the one before it that says something. */
export const colonSlip = (text: string, offset: number): ColonSlip | null => {
  let start = text.lastIndexOf('\n', offset - 1) + 1
  for (let tried = 0; tried < 2; ) {
    const end = text.indexOf('\n', start)
    const line = text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '')
    if (!/^\s*(#|$)/.test(line)) {
      const found = slipIn(line)
      if (found) return { ...found, from: start + found.from, to: start + found.to }
      tried++
    }
    // nothing above, or an empty first line
    if (start < 2) return null
    start = text.lastIndexOf('\n', start - 2) + 1
  }
  return null
}
