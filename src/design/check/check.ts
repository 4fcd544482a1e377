import { nearWord } from '../../length/near.ts'
import { quote } from '../../length/quote.ts'
import type { Units } from '../../length.ts'
import type { Sheet } from '../design.ts'
import { slipIn } from '../file/colon-slip.ts'
import type { Entry, EntryMap } from '../file/entry.ts'
import type { Tree, TreeList, TreeMap, TreeScalar } from '../file/tree.ts'
import type { Place } from '../problem.ts'
import type { Report } from '../report.ts'
import {
  type Alternatives,
  isRamp,
  kindOf,
  type Row,
  rowExample,
  rowKey,
  rowTitle,
  type Value,
} from '../row.ts'
import { itemRow, keysUnder, kindsWith, parentsOf, rowAt, rowsUnder } from '../schema.ts'
import { calledIn } from './names.ts'
import { checkPrices } from './prices.ts'
import {
  anglesValue,
  angleValue,
  choiceValue,
  countValue,
  type Fault,
  lengthValue,
  pairValue,
  type Reading,
  sheetValue,
  textValue,
  yesNoFault,
} from './value.ts'

export interface Checking {
  /** undefined while the file does not say: then sizes are not judged */
  readonly units: Units | undefined
  readonly report: Report
}

/** One value against its row. What is wrong is reported and becomes `bad`, so that nobody asks for it again. */
export const checkValue = (tree: Tree, row: Row, path: string, on: Checking): Entry => {
  const shapes = exampleOf(row, on)
  const bad = badAt(tree.place, path, on)
  if (tree.kind === 'scalar') {
    const word = row.words.find((w) => w === tree.text.trim().toLowerCase())
    if (word !== undefined) return { kind: 'word', word, place: tree.place }
    if (tree.text.trim() === '' && row.value.kind !== 'text')
      return bad('shape', `\`${rowTitle(row)}\` has no value${shapes}`)
  }
  const { value } = row
  const wanted = wantedTree(value)
  if (tree.kind !== wanted) {
    const slip = wanted === 'map' && tree.kind === 'scalar' ? slipIn(tree.text, keysUnder(row.path)) : null
    return bad('shape', `${wrongShape(tree, row)}${slip ? `; ${slip.message}` : shapes}`)
  }
  switch (tree.kind) {
    case 'map':
      return value.kind === 'prices' ? checkPrices(tree, value, path, on) : checkMap(tree, row, path, on)
    case 'list':
      return value.kind === 'maps' ? checkMaps(tree, row, value, path, on) : checkItems(tree, row, path, on)
    case 'scalar':
      return checkScalar(tree, row, path, on)
    default:
      return tree satisfies never
  }
}

/** Reports a fault, of the value at `place` unless told otherwise, and is what stands there then. */
const badAt =
  (place: Tree['place'], path: string, on: Checking) =>
  (code: string, message: string, at = place, meant?: string): Entry => {
    on.report(code, path, at, message, meant)
    return { kind: 'bad', place }
  }

/** A list of maps, as the ramps are. */
const checkMaps = (
  { items, place }: TreeList,
  row: Row,
  { least, most }: { readonly least: number; readonly most: number },
  path: string,
  on: Checking,
): Entry => {
  const bad = badAt(place, path, on)
  if (items.length < least) return bad('shape', `\`${rowTitle(row)}\` is an empty list${exampleOf(row, on)}`)
  if (items.length > most)
    return bad(
      'too-many',
      `\`${rowTitle(row)}\` has ${items.length} entries; at most ${most}`,
      items[most]!.place,
    )
  const of = itemRow(row)
  return {
    kind: 'list',
    items: items.map((item, i) => checkValue(item, of, `${path}[${i}]`, on)),
    place,
  }
}

/** A list of lengths or of sheets. */
const checkItems = ({ items, place }: TreeList, row: Row, path: string, on: Checking): Entry => {
  const { value } = row
  const bad = badAt(place, path, on)
  if (value.kind !== 'lengths' && value.kind !== 'sheets')
    throw new TypeError(`no list of ${value.kind} at ${path}`)
  if (items.length > value.entries)
    return bad(
      'too-many',
      `\`${rowTitle(row)}\` has ${items.length} entries; at most ${value.entries}`,
      items[value.entries]!.place,
    )
  const entries = items.map((item, i) => checkItem(item, row, value, `${path}[${i}]`, on))
  if (value.kind === 'lengths' && entries.length === 0)
    return bad(
      'shape',
      `\`${rowTitle(row)}\` is an empty list; give at least one length${exampleOf(row, on)}`,
    )
  if (entries.some((entry) => entry === undefined)) return { kind: 'bad', place }
  return value.kind === 'lengths'
    ? { kind: 'lengths', mm: entries as number[], place }
    : { kind: 'sheets', sheets: entries as Sheet[], place }
}

/** A single value. */
const checkScalar = ({ text, place, comment }: TreeScalar, row: Row, path: string, on: Checking): Entry => {
  const { value } = row
  const bad = badAt(place, path, on)
  const one = <T>(read: Reading<T>, entry: (value: T) => Entry): Entry =>
    'fault' in read ? bad(read.code, sentence(row, read, on), place, read.meant) : entry(read.value)
  switch (value.kind) {
    case 'text':
      return one(textValue(text, value.most, comment), (t) => ({ kind: 'text', text: t, place }))
    case 'choice':
      return one(choiceValue(text, value.of, rowKey(row)), (word) => ({ kind: 'word', word, place }))
    case 'count':
      return one(countValue(text, value), (count) => ({ kind: 'count', count, place }))
    case 'length':
      return one(lengthValue(text, on.units, value), (mm) => ({ kind: 'length', mm, place }))
    case 'angle':
      return one(angleValue(text, value), (of) => ({ kind: 'angles', degrees: of, place }))
    case 'angles':
      return one(anglesValue(text, value), (of) => ({ kind: 'angles', degrees: of, place }))
    case 'pair':
      return one(pairValue(text, on.units, value), (mm) => ({ kind: 'lengths', mm, place }))
    case 'sheet':
      return one(
        yesNoFault(text, row.words.includes('none')) ?? sheetValue(text, on.units, value),
        (sheet) => ({ kind: 'sheets', sheets: [sheet], place }),
      )
    default:
      throw new TypeError(`no single ${value.kind} at ${path}`)
  }
}

/** Choices name their key themselves: "unknown kind `flat`". */
const sentence = (row: Row, { code, fault, example }: Fault, on: Checking): string => {
  if (code === 'choice') return fault
  const like = example ? exampleOf(row, on) : ''
  return code === 'text' ? `\`${rowTitle(row)}\` ${fault}` : `\`${rowTitle(row)}\`: ${fault}${like}`
}

const exampleOf = (row: Row, { units = 'mm' }: Checking): string =>
  `; e.g. ${quote(rowExample(row, units), 80)}`

const checkItem = (
  tree: Tree,
  row: Row,
  value: Value & { readonly kind: 'lengths' | 'sheets' },
  path: string,
  on: Checking,
): number | Sheet | undefined => {
  const read: Reading<number | Sheet> =
    tree.kind !== 'scalar'
      ? {
          code: 'shape',
          fault: `a ${tree.kind} stands where one ${value.kind === 'lengths' ? 'length' : 'sheet'} belongs`,
        }
      : value.kind === 'lengths'
        ? lengthValue(tree.text, on.units, value)
        : sheetValue(tree.text, on.units, value)
  if ('value' in read) return read.value
  on.report(read.code, path, tree.place, sentence(row, read, on), read.meant)
  return undefined
}

const wantedTree = (value: Value): Tree['kind'] => {
  switch (value.kind) {
    case 'map':
    case 'prices':
      return 'map'
    case 'maps':
    case 'lengths':
    case 'sheets':
      return 'list'
    default:
      return 'scalar'
  }
}

const wrongShape = (tree: Tree, row: Row): string => {
  const words = row.words.map((w) => `\`${w}\` or `).join('')
  const found = tree.kind === 'scalar' ? quote(tree.text) : `a ${tree.kind}`
  const title = `\`${rowTitle(row) || 'the file'}\``
  switch (wantedTree(row.value)) {
    case 'map':
      if (row.value.kind === 'prices') return `${title} takes a price for each thing, not ${found}`
      return `${title} takes ${words}keys of its own (${keysUnder(row.path).join(', ')}), not ${found}`
    case 'list':
      return `${title} takes a list, not ${found}`
    default:
      return `${title} takes ${words}one value, not ${found}`
  }
}

/** The keys of one map: unknown ones, repeated ones, those that exclude each other, and each value. */
export const checkMap = (tree: TreeMap, row: Row, path: string, on: Checking): EntryMap => {
  const rows = rowsUnder(row.path)
  const entries = new Map<string, Entry>()
  const keys = new Map<string, Place>()
  for (const { key, value } of tree.pairs) {
    const own = rows.find((r) => rowKey(r) === key.text)
    const at = path === '' ? key.text : `${path}.${key.text}`
    if (own === undefined) {
      const found = slipIn(key.text, rows.map(rowKey))
      // a word alone is a key
      const slip = found && found.value !== '' ? found : null
      const near =
        slip?.key ?? (kindsWith(row, key.text).length > 0 ? undefined : nearWord(key.text, rows.map(rowKey)))
      const words = slip
        ? `unknown key ${quote(key.text)}; ${slip.message}`
        : unknownKey(key, near, row, tree)
      on.report('unknown-key', at, key.place, words, slip ? undefined : near)
      // taken for the key that was meant, so that it is not missed as well
      if (near !== undefined && !entries.has(near)) entries.set(near, { kind: 'bad', place: value.place })
    } else if (keys.has(key.text)) {
      const first = keys.get(key.text)!.line
      on.report(
        'duplicate-key',
        at,
        key.place,
        `\`${key.text}\` stands here twice (first on line ${first}); keep one`,
      )
    } else {
      keys.set(key.text, key.place)
      // ramps are walked by the reader of the whole file
      if (own.path !== 'ramps') entries.set(key.text, checkValue(value, own, at, on))
    }
  }
  if (row.value.kind === 'map')
    for (const alternatives of row.value.alternatives) checkAlternatives(alternatives, keys, row, path, on)
  return { kind: 'map', entries, keys, place: tree.place }
}

const unknownKey = (key: TreeScalar, near: string | undefined, row: Row, tree: TreeMap): string => {
  const takes = `${ownerOf(row)} takes ${keysUnder(row.path).join(', ')}`
  const [other] = kindsWith(row, key.text)
  if (other !== undefined)
    return `${quote(key.text)} belongs to a ${other}, ${calledIn(tree)} is a ${kindOf(row)}: leave it out`
  if (near !== undefined) return `unknown key ${quote(key.text)}; did you mean \`${near}\`?`
  const homes = [...new Set(parentsOf(key.text).map((path) => ownerOf(rowAt(path))))]
  const elsewhere = homes.length === 0 ? '' : `it belongs to ${homes.join(' or ')}; `
  return `unknown key ${quote(key.text)}; ${elsewhere}${takes}`
}

const checkAlternatives = (
  { sets }: Alternatives,
  keys: ReadonlyMap<string, Place>,
  row: Row,
  path: string,
  on: Checking,
): void => {
  const said = sets.map((set) => set.filter((key) => keys.has(key))).filter((set) => set.length > 0)
  if (said.length < 2) return
  const names = said.map((set) => set.map((key) => `\`${key}\``).join(', '))
  on.report(
    'one-of',
    path,
    keys.get(said[1]![0]!)!,
    `${ownerOf(row)} takes only one of ${showSets(sets)}; here stand ${names.join(' and ')}: take one away`,
  )
}

export const ownerOf = (row: Row): string => {
  if (row.path === '') return 'the top level'
  return isRamp(row) ? `a ${kindOf(row)}` : `\`${rowTitle(row)}\``
}

/** `frame`, `deck` or `surface`; keys that go together with a stroke between them */
export const showSets = (sets: Alternatives['sets']): string => {
  const shown = sets.map((set) => set.map((key) => `\`${key}\``).join('/'))
  return `${shown.slice(0, -1).join(', ')} or ${shown.at(-1)}`
}
