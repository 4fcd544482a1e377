import { type Document, isCollection, isMap, isNode, isPair, parseDocument } from 'yaml'
import { kinds, type RampKind } from './design.ts'
import { parseDesign } from './file/parse.ts'
import { type Row, rowKey } from './row.ts'
import { rampPath, schema } from './schema.ts'

/** `ramps.0.height.deck`: keys from the top of the file, ramps by their number from 0. */
export type KeyPath = string

const partsOf = (path: KeyPath): readonly (string | number)[] =>
  path.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part))

/** What the file itself says of each key, as typed there; a map is said by its keys, a list whole. Empty where it is no YAML. */
export const saidKeys = (text: string): ReadonlyMap<KeyPath, string> => {
  const said = new Map<KeyPath, string>()
  if (!isSound(text)) return said
  const document = parse(text)
  const visit = (node: unknown, path: string): void => {
    if (isMap(node))
      for (const { key, value } of node.items) visit(value, path === '' ? String(key) : `${path}.${key}`)
    else if (path === 'ramps' && isCollection(node))
      for (const [i, item] of node.items.entries()) visit(item, `ramps.${i}`)
    else if (isNode(node) && node.range) {
      const value = 'value' in node && typeof node.value === 'string' ? node.value : undefined
      said.set(path, value ?? text.slice(node.range[0], node.range[1]))
    }
  }
  visit(document.contents, '')
  return said
}

/** Bounded in size and depth, and YAML: asked before anything walks through it. */
const isSound = (text: string): boolean => parseDesign(text, () => {}) !== undefined

// failsafe: every scalar stays the text that was typed
const parse = (text: string): Document =>
  parseDocument(text, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' })

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
    const like = said.get(`ramps.${ramp}.like`)
    for (let i = 0; like !== undefined && i < ramp; i++)
      if (said.get(`ramps.${i}.name`) === like) return saidKind(said)(i)
    return 'quarter'
  }

/**
 * The text of a design with one key set, or taken out where `value` is null. Comments, order and all other figures stay as
 * they are; where a key is new or goes, blanks may be set anew. Keys that exclude the one set are taken out; a word in the place of its map (`coping: none`) gives way; a map that
 * is left empty goes too. A text that is no YAML comes back unchanged.
 */
export const editDesign = (text: string, path: KeyPath, value: string | null): string =>
  designEditor(text)(path, value)

/** The same for a text of which many values are tried: it is read once. */
export const designEditor = (text: string): ((path: KeyPath, value: string | null) => string) => {
  if (!isSound(text)) return () => text
  const document = parse(text)
  return (path, value) => {
    const old = document.getIn(partsOf(path), true)
    return value !== null &&
      isNode(old) &&
      old.range &&
      (!isCollection(old) || old.flow) &&
      old.range[1] > old.range[0]
      ? `${text.slice(0, old.range[0])}${scalarOf(value)}${text.slice(old.range[1])}`
      : rewritten(text, path, value)
  }
}

/** Where maps come or go. */
const rewritten = (text: string, path: KeyPath, value: string | null): string => {
  const document = parse(text)
  const parts = partsOf(path)
  if (value === null) {
    if (!document.hasIn(parts)) return text
    document.deleteIn(parts)
    dropEmpty(document, parts.slice(0, -1))
  } else {
    makeMaps(document, parts.slice(0, -1))
    for (const rival of rivalsOf(text, path)) document.deleteIn([...parts.slice(0, -1), rival])
    document.setIn(parts, valueNode(document, value))
  }
  return document.toString({ lineWidth: 0 })
}

/** As it may stand behind a colon: quoted where YAML would read something else. */
const scalarOf = (value: string): string => {
  const document = parse(`key: ${value}`)
  const flat = !/[\r\n]/.test(value)
  const plain =
    flat && document.errors.length === 0 && document.get('key') === value && !/\s#|[,{}[\]]/.test(value)
  return plain || (flat && /^\s*[[{]/.test(value) && document.errors.length === 0)
    ? value
    : JSON.stringify(value)
}

const valueNode = (document: Document, value: string): unknown => {
  const read = parse(`key: ${value}`)
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
const rivalsOf = (text: string, path: KeyPath): readonly string[] => {
  const row = rowOf(path, saidKind(saidKeys(text)))
  if (row === undefined) return []
  const key = rowKey(row)
  const parent = schema.find(({ path: at }) => at === row.path.slice(0, row.path.lastIndexOf('.')))
  if (parent?.value.kind !== 'map') return []
  return parent.value.alternatives.flatMap(({ sets }) =>
    sets.some((set) => set.includes(key)) ? sets.filter((set) => !set.includes(key)).flat() : [],
  )
}
