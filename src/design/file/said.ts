import type { Prices, Sheet } from '../design.ts'
import type { Entry, EntryMap } from './entry.ts'

/** Looking up what a complete map says. A key of another kind is a fault of the schema, not of the file: TypeError. */

const entryOf = <K extends Entry['kind']>(
  map: EntryMap,
  key: string,
  kind: K,
): Extract<Entry, { kind: K }> => {
  const entry = map.entries.get(key)
  if (entry?.kind !== kind) throw new TypeError(`${key} should hold a ${kind}, not ${entry?.kind}`)
  return entry as Extract<Entry, { kind: K }>
}

export const says = (map: EntryMap, key: string): boolean => map.entries.has(key)
export const saidMap = (map: EntryMap, key: string): EntryMap => entryOf(map, key, 'map')
/** The maps of a list; none where it is not said. */
export const saidMaps = (map: EntryMap, key: string): readonly EntryMap[] =>
  says(map, key)
    ? entryOf(map, key, 'list').items.map((item) => {
        if (item.kind !== 'map') throw new TypeError(`${key} should hold maps, not a ${item.kind}`)
        return item
      })
    : []
export const saidText = (map: EntryMap, key: string): string => entryOf(map, key, 'text').text
export const saidCount = (map: EntryMap, key: string): number => entryOf(map, key, 'count').count
/** mm */
export const saidLength = (map: EntryMap, key: string): number => entryOf(map, key, 'length').mm
export const saidLengths = (map: EntryMap, key: string): readonly number[] => entryOf(map, key, 'lengths').mm
/** degrees */
export const saidAngles = (map: EntryMap, key: string): readonly number[] =>
  entryOf(map, key, 'angles').degrees
export const saidPair = (map: EntryMap, key: string): readonly [number, number] =>
  saidLengths(map, key) as readonly [number, number]
export const saidSheets = (map: EntryMap, key: string): readonly Sheet[] => entryOf(map, key, 'sheets').sheets
export const saidPrices = (map: EntryMap, key: string): Prices => entryOf(map, key, 'prices').prices
/** One of the words that the row allows; the caller names its type. */
export const saidWord = <T extends string>(map: EntryMap, key: string): T =>
  entryOf(map, key, 'word').word as T
/** The word that stands for the whole value, undefined where the value itself stands. */
export const wordFor = (map: EntryMap, key: string): string | undefined => {
  const entry = map.entries.get(key)
  return entry?.kind === 'word' ? entry.word : undefined
}
