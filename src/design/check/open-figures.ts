import type { EntryMap } from '../file/entry.ts'
import type { Place } from '../problem.ts'
import { solveWord } from '../schema.ts'

/** The figures of a quarter that may be left to the program. */
const askedFigures = ['height', 'radius', 'tangent', 'toe', 'back', 'width'] as const
export type AskedFigure = (typeof askedFigures)[number]

/** What a figure that is left to the program is found by. */
export const foundBy = ['lip', 'limits'] as const
export type FoundBy = (typeof foundBy)[number]

/** Those that the lip's angle follows from. */
export const turnsLip: readonly AskedFigure[] = ['height', 'radius', 'tangent']

/** What a ramp does not take over of that, by the figures that are open in the other one and those that are in it. */
export const leftBehind = (
  there: readonly AskedFigure[],
  here: readonly AskedFigure[],
): readonly FoundBy[] => {
  if (there.every((figure) => here.includes(figure))) return []
  if (here.length === 0) return foundBy
  return here.some((figure) => turnsLip.includes(figure)) ? [] : ['lip']
}

/** Where each may stand, from the ramp. */
const keysOf: Readonly<Record<AskedFigure, readonly string[]>> = {
  height: ['height.frame', 'height.deck', 'height.surface'],
  radius: ['transition.circle.frame', 'transition.circle.surface'],
  tangent: ['transition.tangent.frame', 'transition.tangent.surface'],
  toe: ['toe'],
  back: ['deck', 'length'],
  width: ['width'],
}

/** The figure that a key of a ramp says: `height.deck`. */
export const figureAt = (key: string): AskedFigure | undefined =>
  askedFigures.find((figure) => keysOf[figure].includes(key))

const mapOf = (map: EntryMap, keys: readonly string[]): EntryMap | null =>
  keys.reduce<EntryMap | null>((at, key) => {
    const entry = at?.entries.get(key)
    return entry?.kind === 'map' ? entry : null
  }, map)

interface Open {
  readonly figure: AskedFigure
  /** from the ramp: `height.deck` */
  readonly key: string
  readonly place: Place
}

/** The figures that say `solve`. */
export const openIn = (map: EntryMap): readonly Open[] =>
  askedFigures.flatMap((figure) =>
    keysOf[figure].flatMap((key) => {
      const parts = key.split('.')
      const at = mapOf(map, parts.slice(0, -1))
      const entry = at?.entries.get(parts.at(-1)!)
      return entry?.kind === 'word' && entry.word === solveWord ? [{ figure, key, place: entry.place }] : []
    }),
  )
