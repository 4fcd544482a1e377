import type { TileGroup } from '../../src/page/set/tile-groups.ts'
import type { Tile } from '../../src/page/tile/tile.ts'
import type { Pt } from './pt.ts'
import { normal } from './random.ts'

/** Where a point of the pattern comes to lie on the taped paper, as drawn on a tile. */
export type Laid = (tile: Tile, p: Pt) => Pt

/** Unit vectors along the rows of a set and up its columns, in the pattern. */
const axes = (tile: Tile): { readonly u: Pt; readonly v: Pt } => {
  const [a, b, , d] = tile.window as readonly [Pt, Pt, Pt, Pt]
  const unit = (from: Pt, to: Pt): Pt => {
    const length = Math.hypot(to.x - from.x, to.y - from.y)
    return { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
  }
  return { u: unit(a, b), v: unit(a, d) }
}

/** Columns and rows of a set from 0, by the places of its windows. */
export const placeOf = ({ tiles }: TileGroup): ((tile: Tile) => { column: number; row: number }) => {
  const { u, v } = axes(tiles[0]!)
  const along = (tile: Tile, axis: Pt): number => tile.window[0]!.x * axis.x + tile.window[0]!.y * axis.y
  const steps = (axis: Pt): number[] => {
    const sorted = tiles.map((tile) => along(tile, axis)).sort((a, b) => a - b)
    return sorted.filter((value, i) => i === 0 || value - sorted[i - 1]! > 1)
  }
  const [columns, rows] = [steps(u), steps(v)]
  const index = (list: readonly number[], value: number): number =>
    list.findIndex((step) => Math.abs(step - value) < 1)
  return (tile) => ({ column: index(columns, along(tile, u)), row: index(rows, along(tile, v)) })
}

/** Every page is taped `mm` too far from its left neighbour (`along`), or from the one under it (`up`). */
export const slipped = (group: TileGroup, way: 'along' | 'up', mm: number): Laid => {
  const { u, v } = axes(group.tiles[0]!)
  const place = placeOf(group)
  const axis = way === 'along' ? u : v
  return (tile, p) => {
    const far = mm * (way === 'along' ? place(tile).column : place(tile).row)
    return { x: p.x + far * axis.x, y: p.y + far * axis.y }
  }
}

/** Every page lies `mm` too far from the one taped before it, its left or its lower neighbour, always the same way. */
export const drifted = (group: TileGroup, way: 'along' | 'up', mm: number): Laid => {
  const { u, v } = axes(group.tiles[0]!)
  const place = placeOf(group)
  const axis = way === 'along' ? u : v
  return (tile, p) => {
    const { column, row } = place(tile)
    const far = mm * (column + row)
    return { x: p.x + far * axis.x, y: p.y + far * axis.y }
  }
}

/** Every page is printed too long by a share in one direction of its drawing, and joined on its lines. */
export const stretched = (group: TileGroup, way: 'along' | 'up', share: number): Laid => {
  const { u, v } = axes(group.tiles[0]!)
  const axis = way === 'along' ? u : v
  return (_, p) => {
    const far = share * (p.x * axis.x + p.y * axis.y)
    return { x: p.x + far * axis.x, y: p.y + far * axis.y }
  }
}

/** Two pages lie in each other's places. */
export const swapped =
  (one: Tile, other: Tile): Laid =>
  (tile, p) => {
    const place = tile === one ? other : tile === other ? one : tile
    return {
      x: p.x + place.window[0]!.x - tile.window[0]!.x,
      y: p.y + place.window[0]!.y - tile.window[0]!.y,
    }
  }

/**
 * Careful taping in the order of the numbers: each page is laid to the mean of what its left and its lower neighbour ask
 * for, every joint being off by `sigma` (normal) along and across it, and turned by what its snap line's two ends are off.
 */
export const honest = (group: TileGroup, sigma: number, random: () => number): Laid => {
  const off = new Map<number, { x: number; y: number; turn: number }>()
  for (const tile of group.tiles) {
    const asked = tile.joints
      .filter((joint) => joint.over)
      .map((joint) => {
        const from = off.get(joint.neighbour)!
        return { x: from.x + sigma * normal(random), y: from.y + sigma * normal(random) }
      })
    const mean = (axis: 'x' | 'y'): number =>
      asked.length === 0 ? 0 : asked.reduce((sum, a) => sum + a[axis], 0) / asked.length
    const turn = (sigma * Math.SQRT2 * normal(random)) / tile.width
    off.set(tile.number, { x: mean('x'), y: mean('y'), turn })
  }
  return (tile, p) => {
    const { x, y, turn } = off.get(tile.number)!
    const [a, , c] = tile.window as readonly [Pt, Pt, Pt, Pt]
    const from = { x: p.x - (a.x + c.x) / 2, y: p.y - (a.y + c.y) / 2 }
    return { x: p.x + x - turn * from.y, y: p.y + y + turn * from.x }
  }
}

/** The tile on whose own part a point is drawn; where waste keeps it off all of them, the nearest. */
const carrierOf = ({ tiles }: TileGroup, p: Pt): Tile => {
  const outside = (tile: Tile): number =>
    Math.max(
      ...tile.cell.map((a, i) => {
        const b = tile.cell[(i + 1) % tile.cell.length]!
        return ((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y)
      }),
    )
  return tiles.reduce((best, tile) => (outside(tile) < outside(best) ? tile : best))
}

const carriers = new WeakMap<TileGroup, Map<string, Tile>>()

/** The same however the pages are taped, so found once for thousands of tapings. */
const carrier = (group: TileGroup, p: Pt): Tile => {
  const own = carriers.get(group) ?? new Map<string, Tile>()
  carriers.set(group, own)
  const key = `${p.x} ${p.y}`
  const tile = own.get(key) ?? carrierOf(group, p)
  own.set(key, tile)
  return tile
}

/** Where the curve is farthest from its chord: half-way up its own arc, by the circle through three of its points. */
export interface CurvePlaces {
  readonly toe: Pt
  readonly lip: Pt
  readonly middle: Pt
}

/** What a tape reads between the places that a line of the survey names; mm. Throws on words that it does not know. */
export const surveyed = (group: TileGroup, curve: CurvePlaces, words: string, laid: Laid): number => {
  const distance = (a: Pt, b: Pt): number => Math.hypot(a.x - b.x, a.y - b.y)
  const lies = (p: Pt): Pt => laid(carrier(group, p), p)
  const crosses = /^cross ([P-W]) to cross ([P-W])/.exec(words)
  if (crosses) {
    const [a, b] = crosses.slice(1).map((letter) => {
      const datum = group.datums.find((d) => d.letter === letter)
      if (!datum) throw new Error(`no cross ${letter}`)
      return laid(group.tiles.find((tile) => tile.number === datum.tile)!, datum.at)
    })
    return distance(a!, b!)
  }
  const [toe, lip, middle] = [lies(curve.toe), lies(curve.lip), lies(curve.middle)]
  if (words.startsWith('TOE to LIP')) return distance(toe, lip)
  if (words.startsWith('from the middle of that line')) {
    // square to the chord, so the middle's place along it does not count
    const length = distance(toe, lip)
    return Math.abs(((middle.x - toe.x) * (lip.y - toe.y) - (middle.y - toe.y) * (lip.x - toe.x)) / length)
  }
  throw new Error(`the test does not know how to survey: ${words}`)
}
