import { isMap, type YAMLMap } from 'yaml'
import { editDesign, likeOf, parseToEdit, rivalsOf, saidKeys } from './edit.ts'
import type { KeyPath } from './file/said-keys.ts'

const isUnder = (path: KeyPath, top: KeyPath): boolean => path === top || path.startsWith(`${top}.`)

const ownPaths = (said: ReadonlyMap<KeyPath, string>, ramp: number): readonly KeyPath[] =>
  [...said.keys()].filter((path) => path.startsWith(`ramps.${ramp}.`))

/** What a ramp does not take over, as one of its own keys excludes it: `length` where it says `deck`. */
const ruledOut = (said: ReadonlyMap<KeyPath, string>, ramp: number): readonly KeyPath[] => {
  // each key with the maps that it stands in
  const own = ownPaths(said, ramp).flatMap((path) => {
    const parts = path.split('.')
    return parts.slice(2).map((_, i) => parts.slice(0, i + 3).join('.'))
  })
  return own.flatMap((path) =>
    rivalsOf(said, path).map((key) => `${path.slice(0, path.lastIndexOf('.'))}.${key}`),
  )
}

/** What a ramp takes over by its `like`, as it is typed there, at the paths that it would have here. Nothing that it says itself. */
export const takenOver = (said: ReadonlyMap<KeyPath, string>, ramp: number): ReadonlyMap<KeyPath, string> => {
  const from = likeOf(said, ramp)
  if (from === undefined) return new Map()
  const [here, there] = [`ramps.${ramp}`, `ramps.${from}`]
  const own = [`${here}.name`, ...ownPaths(said, ramp)]
  const rivals = ruledOut(said, ramp)
  const isTaken = (path: KeyPath): boolean =>
    !own.some((one) => isUnder(path, one) || isUnder(one, path)) &&
    !rivals.some((rival) => isUnder(path, rival))
  const base = new Map([...said, ...takenOver(said, from)])
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

/** A text without a ramp; those that are like it say themselves what they took over from it. */
export const removeRamp = (text: string, ramp: number): string => {
  const said = saidKeys(text)
  const document = parseToEdit(text)
  const gone = document.getIn(['ramps', ramp])
  if (said.size === 0 || !isMap(gone)) return text
  const like = gone.get('like')
  for (let i = ramp + 1; document.hasIn(['ramps', i]); i++) {
    const other = document.getIn(['ramps', i])
    if (!isMap(other) || likeOf(said, i) !== ramp) continue
    if (like === undefined) other.delete('like')
    else other.set('like', like)
    takeIn(other, gone, `ramps.${i}`, [`ramps.${i}.name`, ...ruledOut(said, i)])
  }
  document.deleteIn(['ramps', ramp])
  return document.toString({ lineWidth: 0 })
}

/** Puts into a map what another says and it does not, with its comments. */
const takeIn = (own: YAMLMap, base: YAMLMap, path: KeyPath, not: readonly KeyPath[]): void => {
  for (const pair of base.items) {
    const at = `${path}.${pair.key}`
    const there = own.get(pair.key, true)
    if (isMap(there) && isMap(pair.value)) takeIn(there, pair.value, at, not)
    else if (there === undefined && !not.includes(at)) own.add(pair.clone())
  }
}
