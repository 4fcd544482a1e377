import type { Units } from '../length.ts'
import type { Sizes } from './plausible.ts'

/** One key of the design file: all that the reader, the messages, the docs and the starter files say about it. */
export interface Row {
  /** `ramps[quarter].height.deck`: the keys from the top; a ramp's keys by its kind */
  readonly path: string
  readonly value: Value
  /** words that stand for the whole value, such as `none` */
  readonly words: readonly string[]
  readonly unsaid: Unsaid
  /** one line of plain English, no full stop */
  readonly help: string
  /** as it would stand behind `key: ` */
  readonly example: Readonly<Record<Units, string>>
}

/** Least and most are mm, degrees for `angle` and `angles`, or a plain number for `count`, `text` and `maps`; both are allowed themselves. */
export type Value =
  | { readonly kind: 'length' | 'sheet'; readonly least: number; readonly most: number }
  | ({ readonly kind: 'pair' } & Sizes)
  /** `entries`: as many as a list may have */
  | ({ readonly kind: 'lengths' | 'sheets'; readonly entries: number } & Sizes)
  | { readonly kind: 'angle' | 'angles'; readonly least: number; readonly most: number }
  | { readonly kind: 'count' | 'maps' | 'text'; readonly least: number; readonly most: number }
  | { readonly kind: 'choice'; readonly of: readonly string[] }
  /** keys that name things, values that are money; least and most of one */
  | { readonly kind: 'prices'; readonly least: number; readonly most: number }
  | { readonly kind: 'map'; readonly alternatives: readonly Alternatives[] }

/** Keys that exclude each other: at most one set is said, exactly one where `required`; else the first set holds. */
export interface Alternatives {
  readonly sets: readonly (readonly string[])[]
  readonly required: boolean
}

/** What holds where the key is not written. */
export type Unsaid =
  | { readonly kind: 'required' }
  /** a text (or a list of texts) that is read as if it stood in the file */
  | { readonly kind: 'default'; readonly text: Readonly<Record<Units, DefaultText>> }
  /** the map is there anyway and its keys have their own defaults */
  | { readonly kind: 'keys' }
  /** nothing; `note` says when it may be left out */
  | { readonly kind: 'open'; readonly note: string }

export type DefaultText = string | readonly string[]

/** The row's own key: `deck` of `ramps[quarter].height.deck`. */
export const rowKey = (row: Row): string => row.path.slice(row.path.lastIndexOf('.') + 1)

/** Whether the row stands for a whole ramp. */
export const isRamp = (row: Row): boolean => /^ramps\[\w+\]$/.test(row.path)

/** The kind of ramp that a row belongs to. */
export const kindOf = (row: Row): string => /^ramps\[(\w+)\]/.exec(row.path)?.[1] ?? ''

/** The path as a builder reads it in a message: without the list it is in. */
export const rowTitle = (row: Row): string => row.path.replace(/^ramps\[\w+\]\./, '')

/** `key: example`, for the end of a message; `- example` for an entry of a list. */
export const rowExample = (row: Row, units: Units): string =>
  `${row.path.endsWith('[]') ? '-' : `${rowKey(row)}:`} ${row.example[units]}`
