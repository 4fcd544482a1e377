import { isMap, type YAMLMap } from 'yaml'
import { figureAt, leftBehind } from './check/open-figures.ts'
import type { RampKind } from './design.ts'
import { editDesign, likeOf, parseToEdit, rivalsOf, rowOf, saidKeys, saidKind } from './edit.ts'
import type { KeyPath } from './file/said-keys.ts'
import { rowKey } from './row.ts'
import { rampPath, schema, solveWord } from './schema.ts'

const isUnder = (path: KeyPath, top: KeyPath): boolean => path === top || path.startsWith(`${top}.`)

const ownPaths = (said: ReadonlyMap<KeyPath, string>, ramp: number): readonly KeyPath[] =>
  [...said.keys()].filter((path) => path.startsWith(`ramps.${ramp}.`))

/** The maps of its ramp that a key stands in, the outermost first, and the key. */
const withMaps = (path: KeyPath): readonly KeyPath[] => {
  const parts = path.split('.')
  return parts.slice(2).map((_, i) => parts.slice(0, i + 3).join('.'))
}

/** What a ramp does not take over, as one of its own keys excludes it: `length` where it says `deck`. */
const ruledOut = (said: ReadonlyMap<KeyPath, string>, ramp: number): readonly KeyPath[] => {
  const own = ownPaths(said, ramp).flatMap(withMaps)
  return own.flatMap((path) =>
    rivalsOf(said, path).map((key) => `${path.slice(0, path.lastIndexOf('.'))}.${key}`),
  )
}

/** What a ramp does not take over of what a figure is found by there, since it says the figure otherwise. */
const foundThere = (
  said: ReadonlyMap<KeyPath, string>,
  ramp: number,
  base: ReadonlyMap<KeyPath, string>,
  from: number,
): readonly KeyPath[] => {
  const openAt = (all: ReadonlyMap<KeyPath, string>, at: number): readonly string[] =>
    ownPaths(all, at)
      .filter((path) => all.get(path) === solveWord)
      .map((path) => path.slice(`ramps.${at}.`.length))
  const figures = (keys: readonly string[]) => keys.flatMap((key) => figureAt(key) ?? [])
  const there = openAt(base, from)
  const out = [...ownPaths(said, ramp), ...ruledOut(said, ramp)]
  const taken = there.filter(
    (key) => !out.some((one) => isUnder(`ramps.${ramp}.${key}`, one) || isUnder(one, `ramps.${ramp}.${key}`)),
  )
  return leftBehind(figures(there), figures([...openAt(said, ramp), ...taken])).map(
    (key) => `ramps.${ramp}.${key}`,
  )
}

/** What a ramp takes over by its `like`, as it is typed there, at the paths that it would have here. Nothing that it says itself. */
export const takenOver = (said: ReadonlyMap<KeyPath, string>, ramp: number): ReadonlyMap<KeyPath, string> => {
  const from = likeOf(said, ramp)
  if (from === undefined) return new Map()
  const [here, there] = [`ramps.${ramp}`, `ramps.${from}`]
  const own = [`${here}.name`, ...ownPaths(said, ramp)]
  const base = new Map([...said, ...takenOver(said, from)])
  const rivals = [...ruledOut(said, ramp), ...foundThere(said, ramp, base, from)]
  const isTaken = (path: KeyPath): boolean =>
    !own.some((one) => isUnder(path, one) || isUnder(one, path)) &&
    !rivals.some((rival) => isUnder(path, rival))
  return new Map(
    ownPaths(base, from)
      .map((path) => [`${here}${path.slice(there.length)}`, base.get(path)!] as const)
      .filter(([path]) => isTaken(path)),
  )
}

/** A text in which a ramp is called otherwise, also by those that are like it or stored inside it. */
export const renameRamp = (text: string, ramp: number, name: string): string => {
  const said = saidKeys(text)
  const own = `ramps.${ramp}.name`
  const along = [...said].filter(
    ([path, value]) => /^ramps\.\d+\.(like|stores-inside\.ramp)$/.test(path) && value === said.get(own),
  )
  return [own, ...along.map(([path]) => path)].reduce((all, path) => editDesign(all, path, name), text)
}

/** What each kind measures in its own way: as another's it makes no ramp that anyone meant. */
const ofItsKind = ['height', 'length']

/** Keys of a ramp, the outermost, that mean nothing where it is of another kind, or something else. */
const strangeKeys = (
  said: ReadonlyMap<KeyPath, string>,
  ramp: number,
  kind: RampKind,
): readonly KeyPath[] => {
  if (saidKind(said)(ramp) === kind) return []
  const isStrange = (path: KeyPath): boolean => {
    const row = rowOf(path, () => kind)
    if (row === undefined || ofItsKind.some((key) => path === `ramps.${ramp}.${key}`)) return true
    return said.get(path) === solveWord && !row.words.includes(solveWord)
  }
  return [...new Set(ownPaths(said, ramp).flatMap((path) => withMaps(path).find(isStrange) ?? []))]
}

/**
 * A text in which a ramp is of another kind: what means nothing there goes, what this kind needs comes with the schema's examples. What it
 * took over by `like`, from a ramp of the kind before, it says itself, and so do those that are like it: they stay what they were.
 */
export const changeKind = (text: string, ramp: number, kind: RampKind): string => {
  const at = `ramps.${ramp}`
  const alone = onItsOwn(withoutTwins(text, ramp), ramp)
  const said = saidKeys(alone)
  const kept = strangeKeys(said, ramp, kind).reduce((all, path) => editDesign(all, path, null), alone)
  const changed = editDesign(kept, `${at}.kind`, kind)
  const units = said.get('units') === 'in' ? 'in' : 'mm'
  const own = ownPaths(saidKeys(changed), ramp).map((path) => path.slice(at.length + 1))
  return neededKeys(own, rampPath(kind), '').reduce((all, key) => {
    const row = rowOf(`${at}.${key}`, () => kind)!
    return editDesign(all, `${at}.${key}`, row.example[units])
  }, changed)
}

/** What a map of the table needs and does not have, its own required maps among them; of keys that exclude each other the first set. */
const neededKeys = (own: readonly KeyPath[], map: string, before: string): readonly KeyPath[] => {
  const has = (key: string): boolean => own.some((path) => isUnder(path, `${before}${key}`))
  const value = schema.find(({ path }) => path === map)!.value
  const sets = value.kind === 'map' ? value.alternatives.filter(({ required }) => required) : []
  const children = schema.filter(({ path }) => path.slice(0, path.lastIndexOf('.')) === map)
  return [
    ...sets.flatMap((one) => (one.sets.flat().some(has) ? [] : one.sets[0]!.map((key) => `${before}${key}`))),
    ...children.flatMap((row): readonly KeyPath[] => {
      const key = rowKey(row)
      if (row.unsaid.kind !== 'required') return []
      if (row.value.kind === 'map') return neededKeys(own, row.path, `${before}${key}.`)
      return has(key) ? [] : [`${before}${key}`]
    }),
  ]
}

/** A text without a ramp; those that are like it say themselves what they took over from it. */
export const removeRamp = (text: string, ramp: number): string => {
  if (saidKeys(text).size === 0) return text
  const document = parseToEdit(withoutTwins(text, ramp))
  if (!document.hasIn(['ramps', ramp])) return text
  document.deleteIn(['ramps', ramp])
  return document.toString({ lineWidth: 0 })
}

/** A text in which none is like a ramp: those that were say themselves what they took over from it. */
const withoutTwins = (text: string, ramp: number): string => {
  const said = saidKeys(text)
  const ramps = [...said.keys()].flatMap((path) => /^ramps\.(\d+)\.like$/.exec(path)?.[1] ?? [])
  return written(
    text,
    ramps.map(Number).filter((i) => likeOf(said, i) === ramp),
    ramp,
  )
}

/** A text in which a ramp is like no other. */
const onItsOwn = (text: string, ramp: number, below = ramp): string => {
  const from = likeOf(saidKeys(text), ramp)
  // a key that stands there twice may lead to the same one again
  return from === undefined || from >= below ? text : onItsOwn(written(text, [ramp], from), ramp, from)
}

/** A text in which ramps that are like `from` say themselves what they took over from it, and are like what that is like. */
const written = (text: string, twins: readonly number[], from: number): string => {
  if (twins.length === 0) return text
  const document = parseToEdit(text)
  const alike = document.getIn(['ramps', from])
  if (!isMap(alike)) return text
  const said = saidKeys(text)
  const like = alike.get('like')
  const base = new Map([...said, ...takenOver(said, from)])
  for (const i of twins) {
    const other = document.getIn(['ramps', i])
    if (!isMap(other)) continue
    if (like === undefined) other.delete('like')
    else other.set('like', like)
    const not = [`ramps.${i}.name`, ...ruledOut(said, i), ...foundThere(said, i, base, from)]
    takeIn(other, alike, `ramps.${i}`, not)
  }
  return document.toString({ lineWidth: 0 })
}

/** Puts into a map what another says and it does not, with its comments. */
const takeIn = (own: YAMLMap, base: YAMLMap, path: KeyPath, not: readonly KeyPath[]): void => {
  for (const pair of base.items) {
    const at = `${path}.${pair.key}`
    const there = own.get(pair.key, true)
    if (not.includes(at)) continue
    if (isMap(there) && isMap(pair.value)) takeIn(there, pair.value, at, not)
    else if (there === undefined) own.add(pair.clone())
  }
}
