import { type Box, boxGrow, boxOverlaps } from '../../geometry/bounds.ts'
import type { Packed, Size } from './pack.ts'

/** What lies on each page. */
export type Pages = readonly (readonly Packed[])[]

interface Spot {
  readonly page: number
  readonly packed: Packed
}

/** The strip that a rectangle is a piece of; null for what stands alone. Pieces are numbered in the order of their strips. */
export type Groups = readonly (number | null)[]

/**
 * The same places, with pieces in their order from page to page, from above, then from the left: two that lie the other way round
 * change places where each fits in the other's. Those of one strip come last, so that nothing parts them again.
 */
export const inOrder = (pages: Pages, groups: Groups, page: Size, gap: number): Pages => {
  const spots = spotsOf(pages)
  for (const alike of [false, true]) {
    // each swap takes a pair out of its wrong order; the count of rounds is only a bound
    for (let rounds = spots.length; rounds > 0; rounds--) {
      let changed = false
      for (let i = 0; i < spots.length; i++)
        for (let k = i + 1; k < spots.length; k++) {
          if (!wrong(spots[i]!, spots[k]!, groups, alike)) continue
          const swapped = swap(spots, i, k, page, gap)
          if (!swapped) continue
          spots[i] = swapped[0]
          spots[k] = swapped[1]
          changed = true
        }
      if (!changed) break
    }
  }
  return pages.map((_, i) => spots.filter((spot) => spot.page === i).map(({ packed }) => packed))
}

/** How many pairs of pieces of one strip still lie the other way round. */
export const wrongPairs = (pages: Pages, groups: Groups): number => {
  const spots = spotsOf(pages)
  return spots.reduce(
    (sum, a, i) => sum + spots.slice(i + 1).filter((b) => wrong(a, b, groups, true)).length,
    0,
  )
}

const wrong = (a: Spot, b: Spot, groups: Groups, alike: boolean): boolean => {
  const [p, q] = [groups[a.packed.index], groups[b.packed.index]]
  if (p === null || q === null || (alike && p !== q)) return false
  return a.packed.index > b.packed.index === before(a, b)
}

const spotsOf = (pages: Pages): Spot[] =>
  pages.flatMap((placed, page) => placed.map((packed) => ({ page, packed })))

const before = (a: Spot, b: Spot): boolean => {
  const [p, q] = [a.packed.box, b.packed.box]
  if (a.page !== b.page) return a.page < b.page
  return Math.abs(p.y0 - q.y0) > 1e-6 ? p.y0 < q.y0 : p.x0 < q.x0
}

/** Each at the other's corner, lying as the other lay; null where one does not fit. */
const swap = (
  spots: readonly Spot[],
  i: number,
  k: number,
  page: Size,
  gap: number,
): readonly [Spot, Spot] | null => {
  const [a, b] = [spots[i]!, spots[k]!]
  const toB = moved(a.packed, b)
  const toA = moved(b.packed, a)
  const rest = spots.filter((_, n) => n !== i && n !== k)
  const fits = (one: Spot, all: readonly Spot[]): boolean => {
    const { x0, y0, x1, y1 } = one.packed.box
    if (x0 < 0 || y0 < 0 || x1 > page.width + 1e-9 || y1 > page.height + 1e-9) return false
    const around = boxGrow(one.packed.box, gap - 1e-9)
    return all.every((other) => other.page !== one.page || !boxOverlaps(around, other.packed.box))
  }
  return fits(toB, rest) && fits(toA, [...rest, toB]) ? [toB, toA] : null
}

const moved = ({ index, turned, box }: Packed, { page, packed }: Spot): Spot => {
  const [wide, high] = [box.x1 - box.x0, box.y1 - box.y0]
  const [width, height] = turned === packed.turned ? [wide, high] : [high, wide]
  const { x0, y0 } = packed.box
  const at: Box = { x0, y0, x1: x0 + width, y1: y0 + height }
  return { page, packed: { index, turned: packed.turned, box: at } }
}
