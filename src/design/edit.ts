import { type Document, isCollection, isMap, isPair, parseDocument } from 'yaml'
import { kinds, type RampKind } from './design.ts'
import { parseDesign, withLineFeeds } from './file/parse.ts'
import { type KeyPath, saidIn } from './file/said-keys.ts'
import type { Tree } from './file/tree.ts'
import { type OpenReading, readOpenDesign, readOpenTree } from './read.ts'
import { type Row, rowKey } from './row.ts'
import { rampPath, schema } from './schema.ts'

const partsOf = (path: KeyPath): readonly (string | number)[] =>
  path.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part))

/** What the file itself says of each key, as typed there; a map is said by its keys, a list whole. Empty where it is no YAML. */
export const saidKeys = (text: string): ReadonlyMap<KeyPath, string> => saidIn(treeOf(text), text)

/** Bounded in size and depth, and YAML: asked before anything walks through it. */
const treeOf = (text: string): Tree | undefined => parseDesign(text, () => {})

// failsafe: every scalar stays the text that was typed
export const parseToEdit = (text: string): Document =>
  parseDocument(withLineFeeds(text), { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' })

/** The row of the key at a path of this design; undefined for a path that no kind of ramp has. */
export const rowOf = (path: KeyPath, kindAt: (ramp: number) => RampKind): Row | undefined => {
  const inRamp = /^ramps\.(\d+)(\..+)?$/.exec(path)
  const at = inRamp ? `${rampPath(kindAt(Number(inRamp[1])))}${inRamp[2] ?? ''}` : path
  return schema.find((row) => row.path === at)
}

/** The kind that a ramp of this text has; `quarter` where it is not said or not known. */
export const saidKind =
  (said: ReadonlyMap<KeyPath, string>) =>
  (ramp: number): RampKind => {
    const kind = said.get(`ramps.${ramp}.kind`)
    if (kind !== undefined) return kinds.find((one) => one === kind) ?? 'quarter'
    const like = likeOf(said, ramp)
    return like === undefined ? 'quarter' : saidKind(said)(like)
  }

/** The earlier ramp that one is `like`, by its number. */
export const likeOf = (said: ReadonlyMap<KeyPath, string>, ramp: number): number | undefined => {
  const like = said.get(`ramps.${ramp}.like`)
  for (let i = 0; like !== undefined && i < ramp; i++) if (said.get(`ramps.${i}.name`) === like) return i
  return undefined
}

/**
 * The text of a design with one key set, or taken out where `value` is null. Comments, order and all other figures stay as
 * they are; where a key is new or goes, blanks may be set anew. Keys that exclude the one set are taken out; a word in the place of its map (`coping: none`) gives way; a map that
 * is left empty goes too. A text that is no YAML comes back unchanged.
 */
export const editDesign = (text: string, path: KeyPath, value: string | null): string =>
  designEditor(text)(path, value)

/** The same for a text of which many values are tried: it is read once. */
const designEditor = (text: string): ((path: KeyPath, value: string | null) => string) => {
  const tree = treeOf(text)
  if (tree === undefined) return () => text
  return (path, value) => {
    const old = treeAt(tree, partsOf(path))
    return value !== null && old !== undefined && standsInLine(old, text)
      ? `${text.slice(0, old.place.offset)}${scalarOf(value)}${text.slice(old.place.end)}`
      : rewritten(text, tree, path, value)
  }
}

/** What stands for itself wherever it is typed. */
const plain = /^[\w ./-]+$/

/**
 * What a text means with one key set, for many values: where a plain one is typed in the place of another, the text is not taken apart
 * again. Places are those of the text as it is.
 */
export const designTrier = (text: string): ((path: KeyPath, value: string) => OpenReading) => {
  const tree = treeOf(text)
  const edited = designEditor(text)
  return (path, value) => {
    const parts = partsOf(path)
    const old = treeAt(tree, parts)
    return tree !== undefined && old?.kind === 'scalar' && standsInLine(old, text) && plain.test(value)
      ? readOpenTree(withScalar(tree, parts, value))
      : readOpenDesign(edited(path, value))
  }
}

/** A tree with another text at the end of a path that it has. */
const withScalar = (tree: Tree, [part, ...rest]: readonly (string | number)[], text: string): Tree => {
  if (part === undefined || tree.kind === 'scalar') return { kind: 'scalar', text, place: tree.place }
  if (tree.kind === 'list')
    return {
      ...tree,
      items: tree.items.map((item, i) => (i === Number(part) ? withScalar(item, rest, text) : item)),
    }
  const at = tree.pairs.findIndex(({ key }) => key.text === String(part))
  return {
    ...tree,
    pairs: tree.pairs.map((pair, i) =>
      i === at ? { ...pair, value: withScalar(pair.value, rest, text) } : pair,
    ),
  }
}

/** Where maps come or go. */
const rewritten = (text: string, tree: Tree, path: KeyPath, value: string | null): string => {
  const document = parseToEdit(text)
  const parts = partsOf(path)
  if (value === null) {
    if (!document.hasIn(parts)) return text
    document.deleteIn(parts)
    dropEmpty(document, parts.slice(0, -1))
  } else {
    makeMaps(document, parts.slice(0, -1))
    const said = saidIn(tree, text)
    // a map that comes with the key excludes others as the key does
    for (let depth = 1; depth <= parts.length; depth++)
      for (const rival of rivalsOf(said, parts.slice(0, depth).join('.')))
        document.deleteIn([...parts.slice(0, depth - 1), rival])
    document.setIn(parts, valueNode(document, value))
  }
  return document.toString({ lineWidth: 0 })
}

const treeAt = (tree: Tree | undefined, [part, ...rest]: readonly (string | number)[]): Tree | undefined => {
  if (part === undefined || tree === undefined) return tree
  if (tree.kind === 'list') return treeAt(tree.items[Number(part)], rest)
  if (tree.kind === 'scalar') return undefined
  return treeAt(tree.pairs.find(({ key }) => key.text === String(part))?.value, rest)
}

/** Whether another value can be typed in its place: what has lines of its own stands by its indent. */
const standsInLine = ({ kind, place: { offset, end } }: Tree, text: string): boolean =>
  end > offset && (kind === 'scalar' || text[offset] === '[' || text[offset] === '{')

/** As it may stand behind a colon: quoted where YAML would read something else. */
const scalarOf = (value: string): string => {
  const document = parseToEdit(`key: ${value}`)
  const flat = !/[\r\n]/.test(value)
  const plain =
    flat && document.errors.length === 0 && document.get('key') === value && !/\s#|[,{}[\]]/.test(value)
  return plain || (flat && /^\s*[[{]/.test(value) && document.errors.length === 0)
    ? value
    : JSON.stringify(value)
}

const valueNode = (document: Document, value: string): unknown => {
  const read = parseToEdit(`key: ${value}`)
  const map = read.errors.length === 0 && isMap(read.contents) ? read.contents.items[0]?.value : undefined
  return isCollection(map) ? map : document.createNode(value)
}

/** Every map on the way is there; a word that stands for one makes room. */
const makeMaps = (document: Document, parts: readonly (string | number)[]): void => {
  for (let depth = 1; depth <= parts.length; depth++) {
    const at = parts.slice(0, depth)
    if (!isCollection(document.getIn(at, true))) {
      const map = document.createNode({})
      map.flow = depth > 2
      document.setIn(at, map)
    }
  }
}

const dropEmpty = (document: Document, parts: readonly (string | number)[]): void => {
  for (let depth = parts.length; depth > 2; depth--) {
    const at = parts.slice(0, depth)
    const map = document.getIn(at, true)
    if (!isMap(map) || map.items.some(isPair)) return
    document.deleteIn(at)
  }
}

/** Keys of the same map that may not stand beside this one. */
export const rivalsOf = (said: ReadonlyMap<KeyPath, string>, path: KeyPath): readonly string[] => {
  const row = rowOf(path, saidKind(said))
  if (row === undefined) return []
  const key = rowKey(row)
  const parent = schema.find(({ path: at }) => at === row.path.slice(0, row.path.lastIndexOf('.')))
  if (parent?.value.kind !== 'map') return []
  return parent.value.alternatives.flatMap(({ sets }) =>
    sets.some((set) => set.includes(key)) ? sets.filter((set) => !set.includes(key)).flat() : [],
  )
}
