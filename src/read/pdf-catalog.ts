import {
  PDFArray,
  type PDFContext,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
  PDFString,
} from 'pdf-lib'

/** Deeper trees, longer lists are no document that anyone made on purpose: they turn in a circle. */
const deepest = 32
const longest = 100_000

const name = PDFName.of

/** A text of a dictionary; throws where there is none. */
export const textOf = (dict: PDFDict, key: string): string =>
  dict.lookup(name(key), PDFString, PDFHexString).decodeText()

const refsOf = (array: PDFArray): readonly PDFRef[] =>
  array.asArray().map((item) => {
    if (item instanceof PDFRef) return item
    throw new RangeError('a direct object where a reference is due')
  })

/** Names of the optional-content groups, sorted. */
export const layerNames = (catalog: PDFDict): readonly string[] =>
  refsOf(catalog.lookup(name('OCProperties'), PDFDict).lookup(name('OCGs'), PDFArray))
    .map((ref) => textOf(catalog.context.lookup(ref, PDFDict), 'Name'))
    .sort()

/** The pages in their order (ISO 32000-1, 7.7.3). */
export const pageRefs = (catalog: PDFDict): readonly PDFRef[] => {
  const seen = new Set<PDFDict>()
  const walk = (node: PDFDict, depth: number): readonly PDFRef[] => {
    // kids that two nodes share would double at each level
    if (depth > deepest || seen.has(node)) throw new RangeError('a page tree without end')
    seen.add(node)
    return refsOf(node.lookup(name('Kids'), PDFArray)).flatMap((ref) => {
      const kid = node.context.lookup(ref, PDFDict)
      return kid.has(name('Kids')) ? walk(kid, depth + 1) : [ref]
    })
  }
  return walk(catalog.lookup(name('Pages'), PDFDict), 0)
}

/**
 * Whether what a page needs lies only so deep below it: whoever copies it goes down as far as that. `below`: what is known of how far
 * down objects go, for all pages of a file, which share most of theirs.
 */
export const isShallow = (page: PDFDict, below: Map<unknown, number>): boolean => {
  const { context } = page
  // no way down is longer; else the shortest ones may still be
  if (depthOf(page.get(name('Resources')), context, below) < deepest) return true
  const seen = new Set<unknown>()
  let level: readonly unknown[] = [page.get(name('Resources'))]
  for (let depth = 0; depth < deepest && level.length > 0; depth++)
    level = level.flatMap((item) => {
      const object = item instanceof PDFRef ? context.lookup(item) : item
      if (seen.has(object)) return []
      seen.add(object)
      if (object instanceof PDFArray) return object.asArray()
      const dict = object instanceof PDFRawStream ? object.dict : object
      return dict instanceof PDFDict ? dict.values() : []
    })
  return level.length === 0
}

/** The longest way down from an object, in steps; without end where it turns in a circle or goes on and on. */
const depthOf = (item: unknown, context: PDFContext, below: Map<unknown, number>, level = 0): number => {
  const object = item instanceof PDFRef ? context.lookup(item) : item
  const dict = object instanceof PDFRawStream ? object.dict : object
  if (!(dict instanceof PDFDict || dict instanceof PDFArray)) return 1
  const known = below.get(object)
  if (known !== undefined) return known
  // until it is known: whoever comes by again went round
  below.set(object, Number.POSITIVE_INFINITY)
  if (level > deepest) return Number.POSITIVE_INFINITY
  let most = 0
  for (const kid of dict instanceof PDFArray ? dict.asArray() : dict.values())
    most = Math.max(most, depthOf(kid, context, below, level + 1))
  below.set(object, most + 1)
  return most + 1
}

/** Keys and values of a name or number tree (ISO 32000-1, 7.9.6). */
const treeEntries = (root: PDFDict, leaf: 'Names' | 'Nums') => {
  const seen = new Set<PDFDict>()
  const walk = (node: PDFDict, depth: number): readonly (readonly [unknown, PDFDict])[] => {
    if (depth > deepest || seen.has(node)) throw new RangeError('a tree without end')
    seen.add(node)
    const own = node.lookupMaybe(name(leaf), PDFArray)
    const kids = node.lookupMaybe(name('Kids'), PDFArray)
    return [
      ...Array.from({ length: Math.floor((own?.size() ?? 0) / 2) }, (_, i) => {
        const [key, value] = [own!.lookup(2 * i), own!.lookup(2 * i + 1, PDFDict)]
        return [key, value] as const
      }),
      ...(kids ? refsOf(kids) : []).flatMap((ref) => walk(node.context.lookup(ref, PDFDict), depth + 1)),
    ]
  }
  return walk(root, 0)
}

/** Labels by page index; ours give each page its own. */
export const pageLabels = (catalog: PDFDict): ReadonlyMap<number, string> =>
  new Map(
    treeEntries(catalog.lookup(name('PageLabels'), PDFDict), 'Nums').flatMap(([key, value]) =>
      key instanceof PDFNumber && value.has(name('P')) ? [[key.asNumber(), textOf(value, 'P')] as const] : [],
    ),
  )

/** Titles of the outline's first level by the page they lead to. */
export const bookmarks = (catalog: PDFDict): ReadonlyMap<PDFRef, string> => {
  const titles = new Map<PDFRef, string>()
  let item = catalog.lookup(name('Outlines'), PDFDict).lookupMaybe(name('First'), PDFDict)
  for (let i = 0; item && i < longest; i++) {
    const page = item.lookupMaybe(name('Dest'), PDFArray)?.get(0)
    if (page instanceof PDFRef) titles.set(page, textOf(item, 'Title'))
    item = item.lookupMaybe(name('Next'), PDFDict)
  }
  return titles
}

/** An attached file; undefined where nothing of that name is attached. */
export const attachedFile = (
  catalog: PDFDict,
  wanted: string,
): { readonly stream: PDFRawStream; readonly type: string; readonly description: string } | undefined => {
  const files = catalog.lookupMaybe(name('Names'), PDFDict)?.lookupMaybe(name('EmbeddedFiles'), PDFDict)
  const isWanted = (key: unknown): boolean =>
    (key instanceof PDFHexString || key instanceof PDFString) && key.decodeText() === wanted
  const spec = files && treeEntries(files, 'Names').find(([key]) => isWanted(key))?.[1]
  if (!spec) return undefined
  const stream = spec.lookup(name('EF'), PDFDict).lookup(name('F'))
  if (!(stream instanceof PDFRawStream)) throw new RangeError(`${wanted} is no stream`)
  return {
    stream,
    type: stream.dict.lookup(name('Subtype'), PDFName).decodeText(),
    description: textOf(spec, 'Desc'),
  }
}
