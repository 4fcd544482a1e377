import type { Polygon } from './raster-stroke.ts'

/** A picture in grey: rows from the top, 0 black, 1 white. */
export interface Canvas {
  readonly width: number
  readonly height: number
  readonly grey: Float32Array
}

export const blankCanvas = (width: number, height: number): Canvas => ({
  width,
  height,
  grey: new Float32Array(width * height).fill(1),
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
  const edges = polygons.flatMap(polygonEdges).sort((a, b) => a.top - b.top)
  if (edges.length === 0) return
  const top = Math.max(0, edges[0]!.top)
  const bottom = edges.reduce((most, edge) => Math.max(most, Math.min(edge.bottom, canvas.height)), 0)
  if (!(top < bottom)) return
  const { low, high } = polygonReach(polygons)
  const [first, last] = [Math.max(0, Math.floor(low)), Math.min(canvas.width, Math.ceil(high))]
  const stops = bandStops(edges, top, bottom)
  const cover = new Float64Array(canvas.width + 1)
  const active: Edge[] = []
  let next = 0
  for (let i = 0; i + 1 < stops.length; ) {
    const row = Math.floor(stops[i]!)
    for (; i + 1 < stops.length && stops[i]! < row + 1; i++) {
      const middle = (stops[i]! + stops[i + 1]!) / 2
      while (next < edges.length && edges[next]!.top <= middle) active.push(edges[next++]!)
      crossBand(active, middle)
      coverBand(cover, canvas.width, active, stops[i + 1]! - stops[i]!)
    }
    paintRow(canvas, row, cover, grey, first, last)
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

/** Drops the edges that have ended and sorts the others by where they cross: nearly sorted already, band after band. */
const crossBand = (active: Edge[], middle: number): void => {
  let kept = 0
  for (const edge of active) {
    if (edge.bottom <= middle) continue
    edge.at = edge.x + edge.slope * (middle - edge.top)
    let place = kept++
    for (; place > 0 && active[place - 1]!.at > edge.at; place--) active[place] = active[place - 1]!
    active[place] = edge
  }
  active.length = kept
}

const polygonEdges = (polygon: Polygon): readonly Edge[] =>
  polygon.flatMap((a, i): Edge[] => {
    const b = polygon[(i + 1) % polygon.length]!
    if (a.y === b.y) return []
    const slope = (b.x - a.x) / (b.y - a.y)
    return [
      a.y < b.y
        ? { top: a.y, bottom: b.y, x: a.x, slope, way: 1, at: 0 }
        : { top: b.y, bottom: a.y, x: b.x, slope, way: -1, at: 0 },
    ]
  })

/** Where bands end, ascending: even parts of every row, and every corner. */
const bandStops = (edges: readonly Edge[], top: number, bottom: number): readonly number[] => {
  const stops = new Set([top, bottom])
  for (let k = Math.ceil(top * bandsPerRow); k <= bottom * bandsPerRow; k++) stops.add(k / bandsPerRow)
  for (const edge of edges) for (const y of [edge.top, edge.bottom]) if (y > top && y < bottom) stops.add(y)
  return [...stops].sort((a, b) => a - b)
}

/** Adds what one band covers of each pixel of its row. */
const coverBand = (cover: Float64Array, width: number, active: readonly Edge[], weight: number): void => {
  let winding = 0
  let from = 0
  for (const { at, way } of active) {
    if (winding === 0) from = at
    winding += way
    if (winding === 0) coverSpan(cover, Math.max(0, from), Math.min(width, at), weight)
  }
}

const coverSpan = (cover: Float64Array, from: number, to: number, weight: number): void => {
  if (!(from < to)) return
  const [first, last] = [Math.floor(from), Math.floor(to)]
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
  { width, grey: pixels }: Canvas,
  row: number,
  cover: Float64Array,
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
