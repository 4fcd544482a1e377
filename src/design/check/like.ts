import { quote } from '../../length/quote.ts'
import type { RampKind } from '../design.ts'
import type { Entry, EntryMap } from '../file/entry.ts'
import type { Report } from '../report.ts'
import { type Row, rowKey } from '../row.ts'
import { rampPath, rowAt, rowsUnder } from '../schema.ts'
import { type NamedRamp, noSuchRamp } from './names.ts'
import { leftBehind, openIn } from './open-figures.ts'

/**
 * `base` with what `own` says on top. Maps merge key by key; a word, a list or a length replaces; and a key that excludes
 * others (`height: {frame}` over `height: {deck}`) replaces those.
 */
const mergeMaps = (base: EntryMap, own: EntryMap, row: Row): EntryMap => {
  const entries = new Map(base.entries)
  const alternatives = row.value.kind === 'map' ? row.value.alternatives : []
  for (const { sets } of alternatives) {
    const chosen = sets.find((set) => set.some((key) => own.entries.has(key)))
    if (chosen === undefined) continue
    for (const key of sets.flat()) if (!chosen.includes(key)) entries.delete(key)
  }
  for (const [key, entry] of own.entries) {
    const below: Entry | undefined = entries.get(key)
    const both = below?.kind === 'map' && entry.kind === 'map'
    entries.set(key, both ? mergeMaps(below, entry, rowAt(`${row.path}.${key}`)) : entry)
  }
  return { kind: 'map', entries, keys: own.keys, place: own.place }
}

/** A ramp with all that it takes over, but what a figure is found by that it says itself. */
const mergeRamps = (base: EntryMap, own: EntryMap, row: Row): EntryMap => {
  const merged = mergeMaps(base, own, row)
  const [there, here] = [base, merged].map((map) => openIn(map).map(({ figure }) => figure))
  const entries = new Map(merged.entries)
  for (const key of leftBehind(there!, here!)) {
    const said = own.entries.get(key)
    if (said === undefined) entries.delete(key)
    else entries.set(key, said)
  }
  return { ...merged, entries }
}

/** Each ramp with all that it takes over. `undefined` where `like` leads nowhere; that is reported. */
export const resolveLikes = (
  ramps: readonly NamedRamp[],
  report: Report,
): readonly (EntryMap | undefined)[] => {
  const resolved: (EntryMap | undefined)[] = []
  ramps.forEach((ramp, i) => {
    const like = ramp.map.entries.get('like')
    if (like === undefined) {
      resolved.push(ramp.map)
      return
    }
    const from = like.kind === 'text' ? ramps.findIndex((other) => other.name === like.text) : -1
    if (like.kind === 'text' && (from < 0 || from >= i))
      report('like', `${ramp.path}.like`, like.place, wrongLike(like.text, from, ramps, i))
    const other = from >= 0 && from < i ? ramps[from]!.kind : ramp.kind
    if (like.kind === 'text' && other !== ramp.kind)
      report('like', `${ramp.path}.like`, like.place, otherKind(like.text, other, ramp.kind))
    const base = from < i && other === ramp.kind ? resolved[from] : undefined
    resolved.push(base === undefined ? undefined : mergeRamps(base, ramp.map, rowAt(rampPath(ramp.kind))))
  })
  return resolved
}

const otherKind = (name: string, other: RampKind, own: RampKind): string =>
  `the ramp ${quote(name)} is a ${other} and this is a ${own}, so most of what it says means nothing here; ` +
  `name an earlier ${own}, or leave \`like\` out and write what a ${own} needs: ${requiredKeys(own).join(', ')}`

const requiredKeys = (kind: RampKind): readonly string[] => {
  const path = rampPath(kind)
  const { value } = rowAt(path)
  const one = value.kind === 'map' ? value.alternatives.map(({ sets }) => sets.map(String).join(' or ')) : []
  return [
    ...rowsUnder(path)
      .filter(({ unsaid }) => unsaid.kind === 'required')
      .map(rowKey),
    ...one,
  ]
}

const wrongLike = (name: string, from: number, ramps: readonly NamedRamp[], i: number): string => {
  if (from < 0) return noSuchRamp(name, ramps.slice(0, i), 'earlier')
  if (from === i) return `the ramp ${quote(name)} cannot be like itself; name an earlier ramp`
  return `the ramp ${quote(name)} comes later; \`like\` takes over from an earlier one: put it above this ramp`
}
