import { nearWord } from '../../length/near.ts'
import { kinds, type RampKind } from '../design.ts'
import type { Tree, TreeMap } from '../file/tree.ts'

const wordAt = (map: TreeMap, key: string): string | undefined => {
  const tree: Tree | undefined = map.pairs.find((pair) => pair.key.text === key)?.value
  return tree?.kind === 'scalar' ? tree.text : undefined
}

/**
 * What each ramp is, asked before its keys are read, as they depend on it: as it says, else as the earlier ramp that it is like,
 * else a quarter. A slip of the word is taken for what is meant, and reported where it is read.
 */
export const kindsOf = (ramps: readonly TreeMap[]): readonly RampKind[] => {
  const found: RampKind[] = []
  for (const ramp of ramps) {
    const said = wordAt(ramp, 'kind')?.trim().toLowerCase() ?? ''
    const meant = kinds.includes(said as RampKind) ? said : nearWord(said, kinds)
    const like = wordAt(ramp, 'like')
    const from = like === undefined ? -1 : ramps.findIndex((other) => wordAt(other, 'name') === like)
    found.push(kinds.find((kind) => kind === meant) ?? found[from] ?? 'quarter')
  }
  return found
}
