import type { Units } from '../../length.ts'
import { type Entry, type EntryMap, emptyMap } from '../file/entry.ts'
import type { Tree } from '../file/tree.ts'
import { type DefaultText, isRamp, type Row, rowExample, rowKey, rowTitle } from '../row.ts'
import { itemRow, rowsUnder } from '../schema.ts'
import { type Checking, checkValue, ownerOf, showSets } from './check.ts'

/** Fills in what is not said and reports what must be. Keys that an alternative rules out stay away. */
export const completeMap = (map: EntryMap, row: Row, path: string, on: Checking): EntryMap => {
  const units = on.units ?? 'mm'
  const entries = new Map(map.entries)
  const ruledOut = new Set<string>()
  for (const { sets, required } of row.value.kind === 'map' ? row.value.alternatives : []) {
    const chosen = sets.find((set) => set.some((key) => entries.has(key)))
    for (const set of sets) if (set !== (chosen ?? sets[0])) for (const key of set) ruledOut.add(key)
    if (chosen !== undefined || !required) continue
    for (const key of sets[0]!) ruledOut.add(key)
    on.report(
      'missing-key',
      path,
      map.place,
      `${ownerOf(row)} needs exactly one of ${showSets(sets)}; e.g. \`${isRamp(row) ? exampleOf(sets[0]![0]!, row, units) : rowExample(row, units)}\``,
    )
  }
  for (const child of rowsUnder(row.path)) {
    const key = rowKey(child)
    const at = path === '' ? key : `${path}.${key}`
    const said = entries.get(key)
    if (said?.kind === 'map') entries.set(key, completeMap(said, child, at, on))
    if (said?.kind === 'list')
      entries.set(key, {
        ...said,
        items: said.items.map((item, i) =>
          item.kind === 'map' ? completeMap(item, itemRow(child), `${at}[${i}]`, on) : item,
        ),
      })
    if (said !== undefined || ruledOut.has(key) || child.path === 'ramps') continue
    const filled = fillIn(child, map, at, on)
    if (filled !== undefined) entries.set(key, filled)
  }
  return { ...map, entries }
}

const exampleOf = (key: string, row: Row, units: Units): string =>
  rowExample(rowsUnder(row.path).find((child) => rowKey(child) === key)!, units)

const fillIn = (child: Row, map: EntryMap, path: string, on: Checking): Entry | undefined => {
  const { unsaid } = child
  const units = on.units ?? 'mm'
  switch (unsaid.kind) {
    case 'required':
      on.report('missing-key', path, map.place, missing(child, units))
      return { kind: 'bad', place: map.place }
    case 'default':
      return checkValue(defaultTree(unsaid.text[units], map), child, path, { ...on, units })
    case 'keys':
      return completeMap(emptyMap(map.place), child, path, on)
    case 'open':
      return undefined
    default:
      return unsaid satisfies never
  }
}

export const missing = (row: Row, units: Units): string =>
  `missing key \`${rowTitle(row)}\`: ${row.help}; e.g. \`${rowExample(row, units)}\``

const defaultTree = (text: DefaultText, { place }: EntryMap): Tree =>
  typeof text === 'string'
    ? { kind: 'scalar', text, place }
    : { kind: 'list', items: text.map((item) => ({ kind: 'scalar', text: item, place })), place }
