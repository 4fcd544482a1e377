import type { RampDesign } from '../../design/design.ts'
import { same } from '../check/offer.ts'
import { aside } from '../frame/aside.ts'
import { wallMiddles } from '../frame/bays.ts'
import type { Stretch } from '../frame/stretch.ts'
import { timberDistance } from '../frame/timber.ts'
import type { Seam } from './seams.ts'
import type { SkinLayer } from './skin.ts'
import { type Crossed, type FlatToCurve, type Framing, meets, practice } from './skin-framing.ts'

export interface ScrewRow {
  /** from the layer's toe end on the flat sheet */
  readonly at: number
  /** the same as a place on the curve */
  readonly place: number
  readonly on: 'stud' | 'seam' | 'between'
  /** index of the stud that it meets; null between studs */
  readonly stud: number | null
  /** screws, from the ramp's left outer face */
  readonly across: readonly number[]
}

/** How far a screw stays off a stud's end, and off another screw. mm */
export const studEnd = 20
export const screwApart = 15

export type RowPlace = Omit<ScrewRow, 'across'>

/** One row on every stud that the layer covers, two on a seam. */
export const studRows = (
  { curve, studs, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: FlatToCurve,
  seams: readonly Seam[],
): readonly RowPlace[] => {
  const { gap, edge } = practice[units]
  const row = (at: number, on: ScrewRow['on'], i: number): readonly RowPlace[] => {
    const place = placeAt(at)
    return meets(curve, place, studs[i]!, units) ? [{ at, place, on, stud: i }] : []
  }
  return studs.flatMap((stud, i) => {
    const mark = markOf(stud)
    const seam = seams.find((s) => s.stud === i || s.second === i)
    if (seam) {
      const sides = seam.second === null ? [-1, 1] : [seam.stud === i ? -1 : 1]
      return sides.flatMap((side) => row(seam.at + side * (gap / 2 + edge), 'seam', i))
    }
    const at = Math.max(edge, Math.min(mark, layer.length - edge))
    // a seam that found no stud may come near
    if (seams.some((s) => Math.abs(s.at - at) < gap / 2 + edge - same)) return []
    return row(at, 'stud', i)
  })
}

/** Midway between neighbouring studs, where all timber keeps its distance. */
export const betweenRows = (
  { curve, studs, timbers, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: FlatToCurve,
  seams: readonly Seam[],
): readonly RowPlace[] => {
  const { gap, edge, between } = practice[units]
  return studs.slice(1).flatMap((stud, i): readonly RowPlace[] => {
    const before = studs[i]!
    // half way from face to face, not from middle to middle: a flat one is wider
    const half = (before.at + before.width / 2 + stud.at - stud.width / 2) / 2
    const at = markOf({ ...stud, at: half })
    const place = placeAt(at)
    if (at < edge || at > layer.length - edge) return []
    // a seam that found no stud may lie there
    if (seams.some((s) => Math.abs(s.at - at) < gap / 2 + edge - same)) return []
    const clear = [...studs, ...timbers].every((t) => timberDistance(t, curve.point(place)) >= between - same)
    return clear ? [{ at, place, on: 'between', stud: null }] : []
  })
}

/** How far a screw into a timber stays off the middle of a wall, mm; `timber`: its index, null where it goes into none. */
export const offWall = ({ sides }: RampDesign, { timbers, off }: Crossed, timber: number | null): number =>
  Math.max(sides.thickness / 2 + studEnd, timber !== null && timbers.includes(timber) ? off : 0)

/**
 * Evenly along each sheet, off its edges, sides and ribs, moved clear of the screws below, with more where that leaves
 * over `spacing` between two. `keep`: off the middle of a wall; `open`: middles of gaps that no screw may go into. mm
 */
export const screwsAcross = (
  { design, units }: Pick<Framing, 'design' | 'units'>,
  keep: number,
  widths: readonly Stretch[],
  spacing: number,
  shifted: boolean,
  below: readonly number[],
  open: readonly number[] = [],
): readonly number[] => {
  const { edge, gap } = practice[units]
  const walls = wallMiddles(design)
  const offWalls = (p: number): boolean => walls.every((m) => Math.abs(p - m) >= keep - same)
  const screws: number[] = []
  for (const { from, length } of widths) {
    let [low, high] = [from + edge, from + length - edge]
    for (const m of walls) if (Math.abs(low - m) < keep) low = m + keep
    for (const m of [...walls].reverse()) if (Math.abs(high - m) < keep) high = m - keep
    if (low > high + same) continue
    const count = Math.max(1, Math.ceil((high - low) / spacing - 1e-9))
    const step = (high - low) / count
    const wanted = shifted
      ? Array.from({ length: count }, (_, i) => low + (i + 0.5) * step)
      : Array.from({ length: count + 1 }, (_, i) => low + i * step)
    const free = (p: number): number | null =>
      p >= low - same &&
      p <= high + same &&
      offWalls(p) &&
      below.every((other) => Math.abs(other - p) >= screwApart - same) &&
      open.every((seam) => Math.abs(seam - p) >= edge + gap / 2 - same) &&
      screws.every((other) => Math.abs(other - p) >= screwApart - same)
        ? p
        : null
    for (const p of wanted) {
      const found = free(p) ?? aside(p, step / 2, free)
      if (found !== null) screws.push(found)
    }
    screws.push(
      ...moreWithin(
        screws.filter((p) => p >= from).sort((a, b) => a - b),
        spacing,
        free,
      ),
    )
  }
  return screws.sort((a, b) => a - b)
}

/** One more between any two that are farther apart than told, nearest to their middle, as long as there is room for one. */
const moreWithin = (
  sorted: readonly number[],
  spacing: number,
  free: (p: number) => number | null,
): readonly number[] =>
  sorted.slice(1).flatMap((b, i): readonly number[] => {
    const a = sorted[i]!
    const middle = (a + b) / 2
    if (b - a <= spacing + same) return []
    const found = free(middle) ?? aside(middle, (b - a) / 2 - screwApart, free)
    return found === null ? [] : [found, ...moreWithin([a, found, b], spacing, free)]
  })
