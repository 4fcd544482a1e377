import type { Tree } from './tree.ts'

/** `ramps.0.height.deck`: keys from the top of the file, ramps by their number from 0. */
export type KeyPath = string

/** What a text says of each key, as typed there; a map is said by its keys, a list whole. Empty where nothing could be read. */
export const saidIn = (tree: Tree | undefined, text: string): ReadonlyMap<KeyPath, string> => {
  const said = new Map<KeyPath, string>()
  const visit = (node: Tree, path: KeyPath): void => {
    if (node.kind === 'map')
      for (const { key, value } of node.pairs) visit(value, path === '' ? key.text : `${path}.${key.text}`)
    else if (node.kind === 'scalar') said.set(path, node.text)
    else if (path === 'ramps') for (const [i, item] of node.items.entries()) visit(item, `ramps.${i}`)
    else said.set(path, text.slice(node.place.offset, node.place.end))
  }
  if (tree !== undefined) visit(tree, '')
  return said
}
