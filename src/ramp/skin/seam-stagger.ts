import { type Choice, isBetter, sharedWith } from './seam-choice.ts'
import type { LayerWays, Met, Way } from './seam-ways.ts'

/** Of the ways to lay a layer so many are looked at: those with the largest smallest piece. */
const looked = 24

/** Seams on studs that the layer two below has a seam on: their screws would be the third and fourth row in one edge. */
const secondsOf = (under: readonly Met[], own: readonly Met[]): number => {
  const taken = new Set(under.flatMap(({ seat }) => seat?.studs ?? []))
  return own.filter(({ seat }) => seat?.studs.some((stud) => taken.has(stud))).length
}

/** Layers laid so far: the last of them, and those under it. */
interface Chain {
  readonly way: Way
  readonly under: Chain | null
  readonly seconds: number
  readonly smallest: number
  readonly together: number
}

const worthOf = ({ seconds, smallest, together }: Chain): readonly number[] => [
  seconds,
  Number.isFinite(smallest) ? -smallest : Number.NEGATIVE_INFINITY,
  -together,
]

const layersOf = ({ way, under }: Chain): readonly (readonly Met[])[] => [
  ...(under ? layersOf(under) : []),
  way.seams,
]

/**
 * A choice that loses no seam, in as many pieces layer by layer, with as few seams as can be on a stud that the layer two below has one
 * on: of those the largest smallest piece. As it was where none has one.
 */
export const staggered = (
  layers: readonly LayerWays[],
  { layers: chosen, lost }: Choice,
): readonly (readonly Met[])[] => {
  const seconds = chosen.reduce((sum, own, k) => sum + (k < 2 ? 0 : secondsOf(chosen[k - 2]!, own)), 0)
  if (lost > 0 || seconds === 0) return chosen
  const ways = layers.map(({ fewest, ways: waysIn }, k) =>
    waysIn(chosen[k]!.length + 1 - fewest)
      .filter(({ seams, open }) => seams.length === chosen[k]!.length && open === 0)
      .sort((a, b) => b.smallest - a.smallest)
      .slice(0, looked),
  )
  // by the last two layers: what comes next looks no further down
  let chains: readonly Chain[] = ways[0]!.map((way) => chainOn(null, way))
  for (const next of ways.slice(1)) {
    const best = new Map<Way, Map<Way, Chain>>()
    for (const chain of chains)
      for (const way of next) {
        if (sharedWith(chain.way, way) > 0) continue
        const longer = chainOn(chain, way)
        const alike = best.get(way) ?? new Map<Way, Chain>()
        best.set(way, alike)
        const other = alike.get(chain.way)
        if (!other || isBetter(worthOf(longer), worthOf(other))) alike.set(chain.way, longer)
      }
    chains = [...best.values()].flatMap((alike) => [...alike.values()])
  }
  const first = chains[0]
  if (!first) return chosen
  return layersOf(chains.reduce((most, one) => (isBetter(worthOf(one), worthOf(most)) ? one : most), first))
}

const chainOn = (under: Chain | null, way: Way): Chain => ({
  way,
  under,
  seconds: (under?.seconds ?? 0) + (under?.under ? secondsOf(under.under.way.seams, way.seams) : 0),
  smallest: Math.min(under?.smallest ?? Number.POSITIVE_INFINITY, way.smallest),
  together: (under?.together ?? 0) + (Number.isFinite(way.smallest) ? way.smallest : 0),
})
