import { rowKey } from '../row.ts'
import { schema } from '../schema.ts'
import type { Tree, TreeScalar } from './tree.ts'

/** A blank that YAML takes for a letter. Offsets in the text. */
export interface OddBlank {
  readonly from: number
  readonly to: number
  readonly message: string
}

const odd = '\\u00a0\\u1680\\u2000-\\u200d\\u202f\\u205f\\u2060\\u3000\\ufeff'

const anyOdd = new RegExp(`[${odd}]`)

/** Before the first word of a line, or behind the colon of its key. */
const inLine = new RegExp(`^(?:[ -]*|[ ${odd}-]*[a-z-]{1,40} ?:)[${odd}]`, 'm')

/** A key that took in what stands before it, or its colon and its value. */
const inKey = new RegExp(`^[${odd}]|:[${odd}]|[${odd}]$`)

const keyInValue = new RegExp(`^([a-z-]{1,40}):[${odd}]`)

/** The mark of its code that a file may begin with is none of them. */
const withoutMark = (file: string): string => file.replace(/^\ufeff/, ' ')

/** Where a fault of the syntax may come from one, the fault itself last; null where none is in its way. */
export const oddBlank = (file: string, fault: number): OddBlank | null => {
  const text = withoutMark(file)
  if (!anyOdd.test(text)) return null
  const found = inLine.exec(text)
  if (found) return blankAt(text, found.index + found[0].length - 1)
  return anyOdd.test(text.charAt(fault)) ? blankAt(text, fault) : null
}

/** The first one that made a key, or a key and its value, one word. */
export const oddBlankIn = (file: string, tree: Tree): OddBlank | null => {
  const text = withoutMark(file)
  return anyOdd.test(text) ? blankIn(text, tree) : null
}

const blankIn = (text: string, tree: Tree): OddBlank | null => {
  switch (tree.kind) {
    case 'list':
      return firstOf(tree.items, (item) => blankIn(text, item))
    case 'map':
      return firstOf(tree.pairs, ({ key, value }) =>
        inKey.test(typed(text, key)) ? firstIn(text, key) : blankIn(text, value),
      )
    case 'scalar': {
      const key = keyInValue.exec(typed(text, tree))?.[1]
      return key !== undefined && isKey(key) ? firstIn(text, tree) : null
    }
    default: {
      const never: never = tree
      return never
    }
  }
}

const isKey = (word: string): boolean => schema.some((row) => rowKey(row) === word)

const firstOf = <T>(all: readonly T[], find: (one: T) => OddBlank | null): OddBlank | null => {
  for (const one of all) {
    const found = find(one)
    if (found) return found
  }
  return null
}

const typed = (text: string, { place }: TreeScalar): string => text.slice(place.offset, place.end)

const firstIn = (text: string, scalar: TreeScalar): OddBlank =>
  blankAt(text, scalar.place.offset + typed(text, scalar).search(anyOdd))

const blankAt = (text: string, from: number): OddBlank => {
  const letter = text[from]!
  const code = `U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`
  const lines = text.split('\n').filter((line) => anyOdd.test(line)).length
  const copied = 'as text copied from a mail or a web page may hold'
  const many = lines > 1 ? `; ${lines} lines of the file hold such` : ''
  const message = unseen.test(letter)
    ? `a sign without width (${code}) stands here, ${copied}; take it out`
    : `this blank is none of the space bar's (${code}), ${copied}; type a plain one`
  return { from, to: from + 1, message: `${message}${many}` }
}

const unseen = /[\u200b-\u200d\u2060\ufeff]/
