import type { Polygon } from './raster-stroke.ts'

/** A picture in grey: rows from the top, 0 black, 1 white. */
export interface Canvas {
  readonly width: number
  readonly height: number
  readonly grey: Float32Array
  /** how much of each pixel of a row is covered, while it is filled; 0 between rows */
  readonly cover: Float64Array
}

export const blankCanvas = (width: number, height: number): Canvas => ({
  width,
  height,
  grey: new Float32Array(width * height).fill(1),
  cover: new Float64Array(width + 1),
})

/** An edge going down: `way` is +1 where the polygon goes down too. */
interface Edge {
  readonly top: number
  readonly bottom: number
  readonly x: number
  readonly slope: number
  readonly way: 1 | -1
  /** where the band's middle line crosses it, while it is filled */
  at: number
}

/** The finest band of a row; bands end at corners too, so that level edges are exact. */
const bandsPerRow = 8

/**
 * Fills polygons together by the non-zero rule. Each row is cut into bands that end at every corner; within a band edges are
 * straight, so that its middle line gives the exact area between them, and the share of each pixel nearly so.
 * Pixels, y down from the top.
 */
export const fillPolygons = (canvas: Canvas, polygons: readonly Polygon[], grey: number): void => {
  const edges: Edge[] = []
  for (const polygon of polygons) addEdges(edges, polygon)
  edges.sort((a, b) => a.top - b.top)
  if (edges.length === 0) return
  const top = Math.max(0, edges[0]!.top)
  const bottom = edges.reduce((most, edge) => Math.max(most, Math.min(edge.bottom, canvas.height)), 0)
  if (!(top < bottom)) return
  const { low, high } = polygonReach(polygons)
  const [first, last] = [Math.max(0, Math.floor(low)), Math.min(canvas.width, Math.ceil(high))]
  const stops = bandStops(edges, top, bottom)
  const { cover } = canvas
  const active: Edge[] = []
  let count = 0
  let next = 0
  for (let i = 0; i + 1 < stops.length; ) {
    const row = Math.floor(stops[i]!)
    for (; i + 1 < stops.length && stops[i]! < row + 1; i++) {
      if (stops[i] === stops[i + 1]) continue
      const middle = (stops[i]! + stops[i + 1]!) / 2
      while (next < edges.length && edges[next]!.top <= middle) active[count++] = edges[next++]!
      count = crossBand(active, count, middle)
      coverBand(cover, canvas.width, active, count, stops[i + 1]! - stops[i]!)
    }
    paintRow(canvas, row, grey, first, last)
  }
}

/** From the leftmost to the rightmost corner. */
const polygonReach = (polygons: readonly Polygon[]): { readonly low: number; readonly high: number } => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const polygon of polygons)
    for (const { x } of polygon) {
      if (x < low) low = x
      if (x > high) high = x
    }
  return { low, high }
}

/**
 * Of the first `count` drops the edges that have ended and sorts the others by where they cross: nearly sorted already, band after
 * band. How many there are then.
 */
const crossBand = (active: Edge[], count: number, middle: number): number => {
  let kept = 0
  for (let i = 0; i < count; i++) {
    const edge = active[i]!
    if (edge.bottom <= middle) continue
    const at = edge.x + edge.slope * (middle - edge.top)
    edge.at = at
    let place = kept++
    for (; place > 0 && active[place - 1]!.at > at; place--) active[place] = active[place - 1]!
    active[place] = edge
  }
  return kept
}

const addEdges = (edges: Edge[], polygon: Polygon): void => {
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i]!
    const b = polygon[i + 1 < polygon.length ? i + 1 : 0]!
    if (a.y === b.y) continue
    const slope = (b.x - a.x) / (b.y - a.y)
    if (a.y < b.y) edges.push({ top: a.y, bottom: b.y, x: a.x, slope, way: 1, at: 0 })
    else edges.push({ top: b.y, bottom: a.y, x: b.x, slope, way: -1, at: 0 })
  }
}

/** Where bands end, ascending: even parts of every row, and every corner; some of them twice. */
const bandStops = (edges: readonly Edge[], top: number, bottom: number): readonly number[] => {
  const corners: number[] = []
  for (const edge of edges) {
    if (edge.top > top && edge.top < bottom) corners.push(edge.top)
    if (edge.bottom > top && edge.bottom < bottom) corners.push(edge.bottom)
  }
  const sorted = Float64Array.from(corners).sort()
  const stops = [top]
  let next = 0
  for (let k = Math.ceil(top * bandsPerRow); k <= bottom * bandsPerRow; k++) {
    const even = k / bandsPerRow
    while (next < sorted.length && sorted[next]! < even) stops.push(sorted[next++]!)
    stops.push(even)
  }
  while (next < sorted.length) stops.push(sorted[next++]!)
  stops.push(bottom)
  return stops
}

/** Adds what one band covers of each pixel of its row. */
const coverBand = (
  cover: Float64Array,
  width: number,
  active: readonly Edge[],
  count: number,
  weight: number,
): void => {
  let winding = 0
  let from = 0
  for (let i = 0; i < count; i++) {
    const { at, way } = active[i]!
    if (winding === 0) from = at
    winding += way
    if (winding === 0) coverSpan(cover, Math.max(0, from), Math.min(width, at), weight)
  }
}

const coverSpan = (cover: Float64Array, from: number, to: number, weight: number): void => {
  if (!(from < to)) return
  const first = Math.floor(from)
  const last = Math.floor(to)
  if (first === last) {
    cover[first]! += (to - from) * weight
    return
  }
  cover[first]! += (first + 1 - from) * weight
  for (let x = first + 1; x < last; x++) cover[x]! += weight
  cover[last]! += (to - last) * weight
}

/** Lays the row's cover, nothing outside of `first` to `last`, over the picture and clears it for the next. */
const paintRow = (
  { width, grey: pixels, cover }: Canvas,
  row: number,
  grey: number,
  first: number,
  last: number,
): void => {
  for (let x = first; x < last; x++) {
    const share = Math.min(1, cover[x]!)
    if (share > 0) pixels[row * width + x] = pixels[row * width + x]! * (1 - share) + grey * share
  }
  // a span that ends on the last pixel's edge leaves a nothing behind it
  cover.fill(0, first, last + 1)
}
