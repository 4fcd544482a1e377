import { type Drawing, fill, group, type Mark, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Affine, affineApply, affineScale, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { type Box, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { circle, type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { type Point, pointDistance } from '../../geometry/point.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { Offsets } from '../../ramp/offsets.ts'
import type { OffsetRow } from './offsets-rows.ts'

export interface Picture {
  readonly marks: Drawing
  readonly bottom: number
}

interface Room {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const outlinePen = { width: 0.6 }
const dot = 0.8
/** Room for names over the top line and figures under the bottom edge, mm on paper. */
const beside = { top: 7, bottom: 6 }

/** Level lines so far apart have their marks numbered, mm on paper. */
const leastLines = 3

/** How high the picture must be for that. */
export const numberedHeight = ({ stations, everyUp }: Offsets, outline: Path): number => {
  const { y0, y1 } = pathBounds(outline)
  const some = stations.some((station) => station.by === 'up')
  return some ? ((y1 - y0) * leastLines) / everyUp + beside.top + beside.bottom : 0
}

/** The side to scale with its marks; the notch again, larger, where it has room. Page mm. */
export const offsetsPicture = (
  room: Room,
  { stations, everyUp }: Offsets,
  outline: Path,
  rows: readonly OffsetRow[],
): Picture => {
  const box = pathBounds(outline)
  // heights and TOE stand before the front edge
  const before = Math.max(
    textWidth('TOE', 3, 'bold'),
    ...rows.map((row) => (row.measured === 'back' ? textWidth(row.up, letters.small, 'regular') : 0)),
  )
  const left = before + 2
  const corners = rows.filter((row) => /^[A-Z]$/.test(row.mark))
  const marked = rows.filter((row) => !corners.includes(row))
  const drawn = (spare: number) => {
    const scale = Math.min(
      (room.width - left - spare) / (box.x1 - box.x0),
      (room.height - beside.top - beside.bottom) / (box.y1 - box.y0),
    )
    const high = (box.y1 - box.y0) * scale
    const map = affineThen(
      affineScale(scale),
      affineTranslate(room.left + left, room.top - beside.top - high),
    )
    const found = corners.length > 0 ? insetPlace(rows, corners, map, outline, room) : null
    return { scale, high, map, found }
  }
  // a drawing that leaves the notch no room is made less wide
  const wide = drawn(0)
  const { scale, high, map, found } = corners.length > 0 && !wide.found ? drawn(insetBeside) : wide
  const at = (p: Point): Point => affineApply(map, p)
  // an inset over the curve stands where they would run
  const shortLines = found !== null && found.place.x0 < at({ x: box.x1, y: 0 }).x
  return {
    marks: [
      group(map, [stroke('note', outline, outlinePen)]),
      ...stations.flatMap((station) => {
        const p = at(station)
        // measured up from the bottom edge, or back from the front edge
        const from = station.by === 'along' ? at({ x: station.x, y: 0 }) : at({ x: 0, y: station.y })
        return shortLines && station.by === 'up' && from.x < p.x - 14
          ? [stroke('datum', pathOf({ x: p.x - 14, y: p.y }, p), pens.tick)]
          : [stroke('datum', pathOf(from, p), pens.tick)]
      }),
      ...figuresAlong(rows, at),
      ...figuresUp(rows, at, shortLines),
      ...rows.flatMap((row) => [fill('mark', circle(at(row.at), dot), 0)]),
      ...markNames(
        marked,
        everyUp * scale,
        at,
        found ? Math.min(at({ x: 0, y: found.box.y1 }).y, room.top - 4.5) : 0,
      ),
      ...(found ? notchInset(found, rows, corners, outline, map) : []),
    ],
    bottom: room.top - beside.top - high - beside.bottom,
  }
}

/** The round distances under the bottom edge, as many as have room. */
const figuresAlong = (rows: readonly OffsetRow[], at: (p: Point) => Point): Drawing => {
  let free = Number.NEGATIVE_INFINITY
  return rows.flatMap((row): Mark[] => {
    const p = at({ x: row.at.x, y: 0 })
    const half = textWidth(row.back, letters.small, 'regular') / 2
    if (row.measured !== 'up' || p.x - half < free) return []
    free = p.x + half + 1.5
    return [text('datum', { x: p.x, y: p.y - 4 }, letters.small, row.back, { align: 'middle' })]
  })
}

/** The round heights at the left end of their lines, as many as have room. */
const figuresUp = (rows: readonly OffsetRow[], at: (p: Point) => Point, short: boolean): Drawing => {
  let free = Number.NEGATIVE_INFINITY
  return rows.flatMap((row): Mark[] => {
    const [front, p] = [at({ x: 0, y: row.at.y }), at(row.at)]
    if (row.measured !== 'back' || p.y < free) return []
    free = p.y + letters.small + 1
    const x = short ? Math.max(front.x, p.x - 14) : front.x
    return [text('datum', { x: x - 1, y: p.y - 1.2 }, letters.small, row.up, { align: 'right' })]
  })
}

/**
 * Names of the marks on the curve: before it and above it where a line runs up to it, behind it where a level one does. `over`: top of
 * the frame round the notch.
 */
const markNames = (
  rows: readonly OffsetRow[],
  lines: number,
  at: (p: Point) => Point,
  over: number,
): Drawing => {
  let last: Point | null = null
  const ends = rows.filter((row) => row.measured === 'both').map((row) => at(row.at))
  const fine = Math.min(3, Math.max(letters.least, lines - 0.7))
  return rows.flatMap((row): Mark[] => {
    const p = at(row.at)
    if (row.mark === 'TOE')
      return [text('mark', { x: p.x - 1.5, y: p.y + 1.2 }, 3, row.mark, { face: 'bold', align: 'right' })]
    if (row.mark === 'LIP')
      return [
        text('mark', { x: p.x - 1, y: Math.max(p.y + 2, over + 1) }, 3, row.mark, {
          face: 'bold',
          align: 'middle',
        }),
      ]
    // behind the curve is wood, and no level line
    if (row.measured === 'back')
      return lines < leastLines - 0.1 || ends.some((q) => pointDistance(q, p) < 3)
        ? []
        : [text('mark', { x: p.x + 1.8, y: p.y - 0.8 * fine }, fine, row.mark, { face: 'bold' })]
    if ([last, ...ends].some((q) => q && pointDistance(q, p) < 6.5)) return []
    last = p
    return [text('mark', { x: p.x - 1.2, y: p.y + 1.6 }, 3, row.mark, { face: 'bold', align: 'right' })]
  })
}

/** Heights of an inset, and what the drawing leaves beside it for one at most, mm. */
const insetHeights = [46, 40, 34, 28, 24] as const
const insetBeside = 52

interface Inset {
  readonly place: Box
  /** what it shows of the side, mm */
  readonly box: Box
}

/** Over the curve at the top left, else beside the drawing; none where neither has room. */
const insetPlace = (
  rows: readonly OffsetRow[],
  corners: readonly OffsetRow[],
  small: Affine,
  outline: Path,
  room: Room,
): Inset | null => {
  const lip = rows.find((row) => row.mark === 'LIP')!
  const tight = pointsBounds([...corners, lip].map((row) => row.at))
  const spare = Math.max(tight.x1 - tight.x0, tight.y1 - tight.y0) * 0.35
  const box: Box = { x0: tight.x0 - spare, y0: tight.y0 - spare, x1: tight.x1 + spare, y1: tight.y1 + spare }
  const shape = (box.x1 - box.x0) / (box.y1 - box.y0)
  const panel = pathBounds(outline)
  const top = affineApply(small, { x: 0, y: panel.y1 })
  const right = affineApply(small, { x: panel.x1, y: 0 }).x
  const framesAt = (x: number, y: number): readonly Box[] =>
    insetHeights.map((height) => ({ x0: x, x1: x + height * shape, y0: y - height, y1: y }))
  const over = framesAt(top.x + 6, top.y).find((frame) => clearOfMarks(frame, rows, small))
  const aside = framesAt(right + 12, top.y + 4).find(
    ({ x1, y0 }) => x1 <= room.left + room.width - 1 && y0 >= room.top - room.height,
  )
  const place = over ?? aside
  return place ? { place, box } : null
}
/** The notch, larger, with a line to where it is on the side; nothing where that has no room. */
const notchInset = (
  found: Inset,
  rows: readonly OffsetRow[],
  corners: readonly OffsetRow[],
  outline: Path,
  small: Affine,
): Drawing => {
  const { place, box } = found
  const lip = rows.find((row) => row.mark === 'LIP')!
  const scale = (place.y1 - place.y0) / (box.y1 - box.y0)
  const map: Affine = affineThen(
    affineThen(affineTranslate(-box.x0, -box.y0), affineScale(scale)),
    affineTranslate(place.x0, place.y0),
  )
  const at = (p: Point): Point => affineApply(map, p)
  const seat = corners.at(-1)!.words.startsWith('middle')
  const mouth = corners.length - (seat ? 2 : 1)
  /** LIP and the corner on the curve are named before them, the top corner over it, the others below: none meet */
  const nameAt = (p: Point, i: number): { readonly at: Point; readonly align: 'left' | 'right' } =>
    i < 0 || i === mouth
      ? { at: { x: p.x - 1.5, y: p.y + 1.2 }, align: 'right' }
      : { at: { x: p.x + 1.5, y: i === 0 ? p.y + 1.2 : p.y - 4.4 }, align: 'left' }
  return [
    stroke('note', rectangle(place.x0, place.y0, place.x1, place.y1), pens.tick),
    ...calledOut(found, small),
    ...pathClip(outline, boxCorners(box)).map((path) => group(map, [stroke('note', path, outlinePen)])),
    // marks that the frame hides on the drawing, clear of its own names
    ...rows.flatMap((row) => {
      const { x, y } = row.at
      if (!/^\d+$/.test(row.mark) || x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1) return []
      const p = at(row.at)
      if ([lip, ...corners].some((other) => pointDistance(at(other.at), p) < 7)) return []
      return [
        fill('note', circle(p, dot * 0.75), 0),
        text('mark', { x: p.x + 1.5, y: p.y + 1 }, letters.small, row.mark, { face: 'bold' }),
      ]
    }),
    ...[lip, ...corners].flatMap((row, i) => {
      const p = at(row.at)
      const name = nameAt(p, i - 1)
      return [
        fill('mark', circle(p, dot), 0),
        text('mark', name.at, 3, row.mark, { face: 'bold', align: name.align }),
      ]
    }),
  ]
}

/** A frame round the notch on the drawing, and a line from it to the inset. */
const calledOut = ({ place, box }: Inset, small: Affine): Drawing => {
  const [low, high] = [
    affineApply(small, { x: box.x0, y: box.y0 }),
    affineApply(small, { x: box.x1, y: box.y1 }),
  ]
  const over = place.x1 < low.x
  const from = { x: over ? low.x : high.x, y: high.y }
  const to = { x: over ? place.x1 : place.x0, y: place.y1 }
  return [
    stroke('note', rectangle(low.x, low.y, high.x, high.y), pens.tick),
    stroke('note', pathOf(from, to), pens.tick),
  ]
}

/** Whether a frame stays above the curve's marks and their names. */
const clearOfMarks = (frame: Box, rows: readonly OffsetRow[], map: Affine): boolean =>
  rows.every((row) => {
    const p = affineApply(map, row.at)
    const reach = row.measured === 'back' ? 24 : 4
    return p.x - reach > frame.x1 || p.y + 6 < frame.y0
  })
