import { type Box, boxOverlaps } from '../geometry/bounds.ts'

interface Size {
  readonly width: number
  readonly height: number
}

/** Where a rectangle lies on its page: its low corner from the page's own, turned by a quarter or not. */
export interface Packed {
  readonly index: number
  readonly turned: boolean
  readonly box: Box
}

/**
 * Rectangles on as few pages as the tries below find, `gap` apart. Free room is kept as all largest free boxes, which may
 * overlap (Jylänki, A thousand ways to pack the bin, 2010: maximal rectangles). Throws RangeError where one fits no page.
 */
export const packRectangles = (
  sizes: readonly Size[],
  page: Size,
  gap: number,
): readonly (readonly Packed[])[] => {
  let best: readonly (readonly Packed[])[] | undefined
  for (const order of orders)
    for (const rule of rules) {
      const found = packInOrder(sizes, page, gap, order, rule)
      if (!best || found.length < best.length) best = found
    }
  return best!
}

const area = ({ x0, y0, x1, y1 }: Box): number => (x1 - x0) * (y1 - y0)

type Order = (size: Size) => number

/** The first keeps the order that was given: a builder finds most there. */
const orders: readonly Order[] = [
  () => 0,
  ({ width, height }) => width * height,
  ({ width, height }) => Math.max(width, height),
  ({ width, height }) => width + height,
  ({ width, height }) => Math.min(width, height) * 1e5 + Math.max(width, height),
]

/** The lower the better: how a rectangle of a size lies in a free box. */
type Rule = (free: Box, size: Size) => number

const left = (free: Box, { width, height }: Size): readonly [number, number] => [
  free.x1 - free.x0 - width,
  free.y1 - free.y0 - height,
]

const rules: readonly Rule[] = [
  (free, size) => Math.min(...left(free, size)),
  (free, size) => Math.max(...left(free, size)),
  (free, size) => area(free) - size.width * size.height,
  (free, size) => (free.y0 + size.height) * 1e5 + free.x0,
]

const packInOrder = (
  sizes: readonly Size[],
  page: Size,
  gap: number,
  order: Order,
  rule: Rule,
): readonly (readonly Packed[])[] => {
  const sorted = sizes.map((size, index) => ({ size, index }))
  sorted.sort((a, b) => order(b.size) - order(a.size) || a.index - b.index)
  const pages: { placed: Packed[]; free: readonly Box[] }[] = []
  for (const { size, index } of sorted) {
    const found = pages.map(({ free }) => bestIn(free, size, gap, rule)).find((place) => place !== null)
    const at = pages.findIndex(({ free }) => bestIn(free, size, gap, rule) !== null)
    const on = at < 0 ? { placed: [], free: [wholePage(page, gap)] } : pages[at]!
    if (at < 0) pages.push(on)
    const place = found ?? bestIn(on.free, size, gap, rule)
    if (!place) throw new RangeError(`${size.width} × ${size.height} mm fits no page`)
    on.placed.push({ index, ...place })
    on.free = without(on.free, { ...place.box, x1: place.box.x1 + gap, y1: place.box.y1 + gap })
  }
  return pages.map(({ placed }) => placed)
}

/** Each rectangle takes its gap with it, so the page's far edges may hold one gap more. */
const wholePage = ({ width, height }: Size, gap: number): Box => ({
  x0: 0,
  y0: 0,
  x1: width + gap,
  y1: height + gap,
})

const bestIn = (free: readonly Box[], size: Size, gap: number, rule: Rule): Omit<Packed, 'index'> | null => {
  let best: { readonly place: Omit<Packed, 'index'>; readonly worth: number } | null = null
  for (const turned of [false, true]) {
    const [width, height] = turned ? [size.height, size.width] : [size.width, size.height]
    const whole = { width: width + gap, height: height + gap }
    for (const box of free) {
      if (Math.min(...left(box, whole)) < -1e-9) continue
      const worth = rule(box, whole)
      if (best && worth >= best.worth - 1e-9) continue
      const [x0, y0] = [box.x0, box.y0]
      best = { worth, place: { turned, box: { x0, y0, x1: x0 + width, y1: y0 + height } } }
    }
  }
  return best?.place ?? null
}

/** The largest free boxes once another is taken. */
const without = (free: readonly Box[], taken: Box): readonly Box[] => {
  const cut = free.flatMap((box): readonly Box[] => {
    if (!boxOverlaps(box, taken)) return [box]
    return [
      { ...box, x1: taken.x0 },
      { ...box, x0: taken.x1 },
      { ...box, y1: taken.y0 },
      { ...box, y0: taken.y1 },
    ].filter((part) => part.x1 - part.x0 > 1 && part.y1 - part.y0 > 1)
  })
  const holds = (a: Box, b: Box): boolean => a.x0 <= b.x0 && a.y0 <= b.y0 && a.x1 >= b.x1 && a.y1 >= b.y1
  return cut.filter(
    (box, i) => !cut.some((other, k) => k !== i && holds(other, box) && (!holds(box, other) || k < i)),
  )
}
