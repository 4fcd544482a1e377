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
  const scale = Math.min(
    (room.width - left) / (box.x1 - box.x0),
    (room.height - beside.top - beside.bottom) / (box.y1 - box.y0),
  )
  const high = (box.y1 - box.y0) * scale
  const map = affineThen(affineScale(scale), affineTranslate(room.left + left, room.top - beside.top - high))
  const at = (p: Point): Point => affineApply(map, p)
  const corners = rows.filter((row) => /^[A-Z]$/.test(row.mark))
  const marked = rows.filter((row) => !corners.includes(row))
  const free = at({ x: 0, y: box.y1 })
  const inset = corners.length > 0 ? notchInset(free, rows, corners, outline, map) : []
  return {
    marks: [
      group(map, [stroke('note', outline, outlinePen)]),
      ...stations.flatMap((station) => {
        const p = at(station)
        // measured up from the bottom edge, or back from the front edge
        const from = station.by === 'along' ? at({ x: station.x, y: 0 }) : at({ x: 0, y: station.y })
        return inset.length > 0 && station.by === 'up' && from.x < p.x - 14
          ? [stroke('datum', pathOf({ x: p.x - 14, y: p.y }, p), pens.tick)]
          : [stroke('datum', pathOf(from, p), pens.tick)]
      }),
      ...figuresAlong(rows, at),
      ...figuresUp(rows, at, inset.length > 0),
      ...rows.flatMap((row) => [fill('mark', circle(at(row.at), dot), 0)]),
      ...markNames(marked, everyUp * scale, at),
      ...inset,
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

/** Names of the marks on the curve, before it and above it, as many as have room; `lines`: how far level lines lie apart. */
const markNames = (rows: readonly OffsetRow[], lines: number, at: (p: Point) => Point): Drawing => {
  let last: Point | null = null
  const ends = rows.filter((row) => row.measured === 'both').map((row) => at(row.at))
  return rows.flatMap((row): Mark[] => {
    const p = at(row.at)
    if (row.mark === 'TOE')
      return [text('mark', { x: p.x - 1.5, y: p.y + 1.2 }, 3, row.mark, { face: 'bold', align: 'right' })]
    if (row.mark === 'LIP')
      return [text('mark', { x: p.x - 1, y: p.y + 2 }, 3, row.mark, { face: 'bold', align: 'middle' })]
    // a level line would run through it
    if (row.measured === 'back' && lines < 5.5) return []
    if ([last, ...ends].some((q) => q && pointDistance(q, p) < 6.5)) return []
    last = p
    return [text('mark', { x: p.x - 1.2, y: p.y + 1.6 }, 3, row.mark, { face: 'bold', align: 'right' })]
  })
}

/** The notch, larger, at the top left over the curve; nothing where that has no room. */
const notchInset = (
  topLeft: Point,
  rows: readonly OffsetRow[],
  corners: readonly OffsetRow[],
  outline: Path,
  small: Affine,
): Drawing => {
  const lip = rows.find((row) => row.mark === 'LIP')!
  const tight = pointsBounds([...corners, lip].map((row) => row.at))
  const spare = Math.max(tight.x1 - tight.x0, tight.y1 - tight.y0) * 0.35
  const box: Box = { x0: tight.x0 - spare, y0: tight.y0 - spare, x1: tight.x1 + spare, y1: tight.y1 + spare }
  const wide = (box.x1 - box.x0) / (box.y1 - box.y0)
  const place = [46, 40, 34, 28, 24]
    .map((height) => ({
      x0: topLeft.x + 6,
      x1: topLeft.x + 6 + height * wide,
      y0: topLeft.y - height,
      y1: topLeft.y,
    }))
    .find((frame) => clearOfMarks(frame, rows, small))
  if (!place) return []
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
    ...pathClip(outline, boxCorners(box)).map((path) => group(map, [stroke('note', path, outlinePen)])),
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

/** Whether a frame stays above the curve's marks and their names. */
const clearOfMarks = (frame: Box, rows: readonly OffsetRow[], map: Affine): boolean =>
  rows.every((row) => {
    const p = affineApply(map, row.at)
    const reach = row.measured === 'back' ? 24 : 4
    return p.x - reach > frame.x1 || p.y + 6 < frame.y0
  })
