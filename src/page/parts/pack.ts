import { type Box, boxOverlaps } from '../../geometry/bounds.ts'

export interface Size {
  readonly width: number
  readonly height: number
}

/** As it is or turned. */
export const fits = ({ width, height }: Size, room: Size): boolean =>
  (width <= room.width && height <= room.height) || (height <= room.width && width <= room.height)

/** Where a rectangle lies on its page: from the page's low corner, turned by a quarter or not. */
export interface Packed {
  readonly index: number
  readonly turned: boolean
  readonly box: Box
}

/**
 * What each try finds of rectangles on few pages, `gap` apart; the first `leading` ones on the first pages, where that takes no
 * more. Free room is kept as all largest free boxes, which may overlap (Jylänki, A thousand ways to pack the bin, 2010: maximal
 * rectangles). Throws RangeError where one fits no page.
 */
export const packings = (
  sizes: readonly Size[],
  page: Size,
  gap: number,
  leading = 0,
): readonly (readonly (readonly Packed[])[])[] =>
  orders.flatMap((order) =>
    turnCosts.map((turnCost) =>
      packInOrder(sizes, page, gap, (size, i) => order(size, i < leading), turnCost),
    ),
  )

/** Each rectangle upright beside the one before it, page after page: nothing is out of order. Throws RangeError where one fits no page. */
export const packColumns = (
  sizes: readonly Size[],
  page: Size,
  gap: number,
): readonly (readonly Packed[])[] => {
  const pages: Packed[][] = []
  let x = Number.POSITIVE_INFINITY
  sizes.forEach(({ width, height }, index) => {
    const turned = width > height
    const [wide, high] = turned ? [height, width] : [width, height]
    if (wide > page.width + 1e-9 || high > page.height + 1e-9)
      throw new RangeError(`${width} × ${height} mm fits no page`)
    if (x + wide > page.width + 1e-9) {
      pages.push([])
      x = 0
    }
    pages.at(-1)!.push({ index, turned, box: { x0: x, y0: 0, x1: x + wide, y1: high } })
    x += wide + gap
  })
  return pages
}

const longest = ({ width, height }: Size): number => Math.max(width, height)

/** As given, in which a builder finds most; else the longest first, after those that lead or among them. */
const orders: readonly ((size: Size, leads: boolean) => number)[] = [
  () => 0,
  (size, leads) => (leads ? Number.MAX_VALUE : longest(size)),
  longest,
]

/** Nothing is turned that fits as it is; or turning costs nothing. mm */
const turnCosts = [1e6, 0] as const

const packInOrder = (
  sizes: readonly Size[],
  page: Size,
  gap: number,
  order: (size: Size, index: number) => number,
  turnCost: number,
): readonly (readonly Packed[])[] => {
  const sorted = sizes.map((size, index) => ({ size, index }))
  sorted.sort((a, b) => order(b.size, b.index) - order(a.size, a.index) || a.index - b.index)
  // what is thinner than the thinnest holds none of them
  const least = Math.min(...sizes.map(({ width, height }) => Math.min(width, height))) + gap - 1e-6
  const pages: { placed: Packed[]; free: readonly Box[] }[] = []
  for (const { size, index } of sorted) {
    let on: (typeof pages)[number] | undefined
    let place: Place | null = null
    for (on of pages) {
      place = bestIn(on.free, size, gap, turnCost)
      if (place) break
    }
    if (!on || !place) {
      on = { placed: [], free: [wholePage(page, gap)] }
      pages.push(on)
      place = bestIn(on.free, size, gap, turnCost)
      if (!place) throw new RangeError(`${size.width} × ${size.height} mm fits no page`)
    }
    on.placed.push({ index, ...place })
    on.free = without(on.free, { ...place.box, x1: place.box.x1 + gap, y1: place.box.y1 + gap }, least)
  }
  return pages.map(({ placed }) => placed)
}

/** Each rectangle takes its gap with it at its far sides, so the page holds one more there. */
const wholePage = ({ width, height }: Size, gap: number): Box => ({
  x0: 0,
  y0: 0,
  x1: width + gap,
  y1: height + gap,
})

type Place = Omit<Packed, 'index'>

const bestIn = (free: readonly Box[], size: Size, gap: number, turnCost: number): Place | null => {
  let best: Place | null = null
  let least = Number.POSITIVE_INFINITY
  for (const turned of [false, true]) {
    const [width, height] = turned ? [size.height, size.width] : [size.width, size.height]
    for (const { x0, y0, x1, y1 } of free) {
      const left = Math.min(x1 - x0 - width, y1 - y0 - height) - gap
      const cost = left + (turned ? turnCost : 0)
      if (left < -1e-9 || cost >= least - 1e-9) continue
      least = cost
      best = { turned, box: { x0, y0, x1: x0 + width, y1: y0 + height } }
    }
  }
  return best
}

/** The largest free boxes once another is taken, those at least so wide and high, mm. */
const without = (free: readonly Box[], taken: Box, least: number): readonly Box[] => {
  const cut = free.flatMap((box): readonly Box[] => {
    if (!boxOverlaps(box, taken)) return [box]
    return [
      { ...box, x1: taken.x0 },
      { ...box, x0: taken.x1 },
      { ...box, y1: taken.y0 },
      { ...box, y0: taken.y1 },
    ].filter((part) => part.x1 - part.x0 >= least && part.y1 - part.y0 >= least)
  })
  const holds = (a: Box, b: Box): boolean => a.x0 <= b.x0 && a.y0 <= b.y0 && a.x1 >= b.x1 && a.y1 >= b.y1
  return cut.filter(
    (box, i) => !cut.some((other, k) => k !== i && holds(other, box) && (!holds(box, other) || k < i)),
  )
}
