import type { Packed, Size } from './pack.ts'

/** What lies on each page. */
export type Pages = readonly (readonly Packed[])[]

/** A piece in its place: its low corner stays, whatever comes to lie there. */
interface Spot {
  readonly page: number
  readonly packed: Packed
  /** what can lie here at most, along the page's width, mm */
  readonly room: number
}

/** The strip that a rectangle is a piece of; null for what stands alone. Pieces are numbered in the order of their strips. */
export type Groups = readonly (number | null)[]

/**
 * The same places, with pieces in their order from page to page, from above, then from the left, as far as each fits where it comes
 * to lie. Pieces as high as each other, lying the same way, share their places; then those of one strip, so that nothing parts them.
 */
export const inOrder = (pages: Pages, groups: Groups, page: Size, gap: number): Pages => {
  const spots = pages.flatMap((placed, number) => spotsOf(placed, number, page, gap))
  const kindOf = ({ packed: { index, turned, box } }: Spot): string | null =>
    groups[index] === null ? null : `${turned} ${(box.y1 - box.y0).toFixed(6)}`
  const laid = shared(spots, kindOf)
  const inStrips = shared(laid, (spot) => {
    const kind = kindOf(spot)
    return kind === null ? null : `${groups[spot.packed.index]} ${kind}`
  })
  return pages.map((_, i) => inStrips.filter((spot) => spot.page === i).map(({ packed }) => packed))
}

/** How many pairs of pieces of one strip still lie the other way round. */
export const wrongPairs = (pages: Pages, groups: Groups): number => {
  const strips = new Map<number, number[]>()
  for (const placed of pages)
    for (const { index } of [...placed].sort(reading)) {
      const strip = groups[index]
      if (strip === null || strip === undefined) continue
      strips.set(strip, [...(strips.get(strip) ?? []), index])
    }
  let wrong = 0
  for (const order of strips.values())
    order.forEach((a, i) => {
      for (const b of order.slice(i + 1)) if (a > b) wrong++
    })
  return wrong
}

/** How often a piece is followed, as the pages are read, by one of another strip although its own goes on. */
export const partings = (pages: Pages, groups: Groups): number => {
  const read = pages.flatMap((placed) => [...placed].sort(reading).map(({ index }) => groups[index] ?? null))
  return read.filter((strip, i) => strip !== null && read[i + 1] !== strip && read.includes(strip, i + 1))
    .length
}

/** From above, then from the left. */
const reading = (a: Packed, b: Packed): number =>
  Math.abs(a.box.y0 - b.box.y0) > 1e-6 ? a.box.y0 - b.box.y0 : a.box.x0 - b.box.x0

/** The rectangles of one page, each with the room up to the page's edge or to what lies beside it. */
const spotsOf = (placed: readonly Packed[], page: number, { width }: Size, gap: number): readonly Spot[] =>
  placed.map((packed) => {
    const { x0, y0, y1 } = packed.box
    const beside = placed.flatMap(({ box }) =>
      box.x0 > x0 + 1e-9 && box.y0 < y1 + gap - 1e-6 && box.y1 > y0 - gap + 1e-6 ? [box.x0 - gap] : [],
    )
    return { page, packed, room: Math.min(width, ...beside) - x0 }
  })

/** Spots of one kind share out their pieces; those of no kind stay. */
const shared = (spots: readonly Spot[], kindOf: (spot: Spot) => string | null): readonly Spot[] => {
  const kinds = new Map<string, Spot[]>()
  const kept: Spot[] = []
  for (const spot of spots) {
    const kind = kindOf(spot)
    const alike = kind === null ? kept : (kinds.get(kind) ?? [])
    alike.push(spot)
    if (kind !== null) kinds.set(kind, alike)
  }
  return [...kept, ...[...kinds.values()].flatMap(sharedOut)]
}

const wideOf = ({ box }: Packed): number => box.x1 - box.x0

/**
 * Spot by spot as they are read, each gets the first piece that fits there and leaves none without a place: as many pieces fit as
 * before when the widest can still be laid where there is most room, the next widest in the next, and so on.
 */
const sharedOut = (spots: readonly Spot[]): readonly Spot[] => {
  const ordered = [...spots].sort((a, b) => a.page - b.page || reading(a.packed, b.packed))
  const left = spots.map(({ packed }) => packed).sort((a, b) => a.index - b.index)
  const rooms = ordered.map(({ room }) => room)
  const anywhere = Math.max(...left.map(wideOf)) <= Math.min(...rooms) + 1e-9
  return ordered.map((spot, i) => {
    const others = rooms.slice(i + 1)
    const next = anywhere
      ? 0
      : left.findIndex(
          (piece) =>
            wideOf(piece) <= spot.room + 1e-9 &&
            allFit(
              left.filter((other) => other !== piece),
              others,
            ),
        )
    const [piece] = left.splice(next, 1)
    return { ...spot, packed: movedTo(piece!, spot.packed) }
  })
}

const allFit = (pieces: readonly Packed[], rooms: readonly number[]): boolean => {
  const wide = pieces.map(wideOf).sort((a, b) => a - b)
  return [...rooms].sort((a, b) => a - b).every((room, i) => wide[i]! <= room + 1e-9)
}

const movedTo = (piece: Packed, { box: { x0, y0, y1 } }: Packed): Packed => ({
  ...piece,
  box: { x0, y0, x1: x0 + wideOf(piece), y1 },
})
