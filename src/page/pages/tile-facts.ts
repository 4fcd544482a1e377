import type { Units } from '../../design/design.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import type { Datum } from '../proof/datum.ts'
import type { Tile } from '../tile/tile.ts'
import type { Section } from '../timber/sections.ts'
import type { TitleFacts } from './title-block.ts'

export interface TileFacts extends Omit<TitleFacts, 'timbers'> {
  readonly units: Units
  readonly datums: readonly Datum[]
  /** of the whole cut line, on its waste side */
  readonly bands: readonly Path[]
  /** of the pattern */
  readonly tiles: readonly Tile[]
  /** which timbers each tile shows, by their places in `markPaths` */
  readonly shown: ReadonlyMap<Tile, readonly number[]>
  /** timbers of whose screws the pages do not show all, likewise */
  readonly missing: ReadonlySet<number>
  /** whether a point of the pattern lies on the wood */
  readonly wood: (p: Point) => boolean
  /** sections of timbers and plates, in the pattern */
  readonly sections: readonly Section[]
}
