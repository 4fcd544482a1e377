import { type Drawing, fill, group, type Mark, stroke, text } from '../../drawing/drawing.ts'
import { textCorners } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import {
  type Affine,
  affineApply,
  affineIdentity,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../geometry/affine.ts'
import { type Box, boxGrow, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { circle, type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import type { Point } from '../../geometry/point.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { Offsets } from '../../ramp/offsets.ts'
import { markNames } from './offsets-names.ts'
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
  { stations }: Offsets,
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
    return { high, map, found, larger: found ? insetScale(found) / scale : 0 }
  }
  // a drawing that leaves the notch no room, or little, is made less wide
  const wide = drawn(0)
  const narrow = corners.length === 0 || wide.found ? wide : drawn(insetBeside.usual)
  const { high, map, found } = narrow.found && narrow.larger < 2 ? drawn(insetBeside.most) : narrow
  const at = (p: Point): Point => affineApply(map, p)
  // an inset over the curve stands where they would run
  const shortLines = found !== null && found.place.x0 < at({ x: box.x1, y: 0 }).x
  const lines = stations.map((station) => {
    const p = at(station)
    // measured up from the bottom edge, or back from the front edge
    const from = station.by === 'along' ? at({ x: station.x, y: 0 }) : at({ x: 0, y: station.y })
    const short = shortLines && station.by === 'up' && from.x < p.x - 14
    return pathOf(short ? { x: p.x - 14, y: p.y } : from, p)
  })
  const figures = [...figuresAlong(rows, at), ...figuresUp(rows, at, shortLines)]
  const figureBoxes = wordBoxes(figures)
  const detail = found ? calledOut(found, map, at({ x: box.x1, y: box.y1 })) : null
  // what a detail shows larger would be a blot here
  const detailed = rows.filter((row) => row.mark !== 'LIP' && found !== null && isIn(found.box, row.at))
  const names = markNames(
    marked.filter((row) => !detailed.includes(row)).map((row) => ({ row, at: at(row.at) })),
    {
      within: {
        x0: room.left - 0.5,
        y0: room.top - beside.top - high - beside.bottom + 1.5,
        x1: room.left + room.width,
        y1: room.top,
      },
      paths: [pathMap(outline, map), ...lines, ...(detail ? [detail.frame] : [])],
      boxes: [
        ...rows.map((row) => dotBox(at(row.at))),
        ...figureBoxes,
        ...(found && detail ? [found.place, ...wordBoxes([detail.name])] : []),
      ],
    },
  )
  return {
    marks: [
      group(map, [stroke('note', outline, outlinePen)]),
      ...lines.map((path) => stroke('datum', path, pens.tick)),
      ...figures,
      ...rows.map((row) => fill('mark', circle(at(row.at), detailed.includes(row) ? dot / 2 : dot), 0)),
      ...names,
      ...(detail ? [stroke('note', detail.frame, pens.tick), detail.name] : []),
      ...(found ? notchInset(found, rows, corners, outline) : []),
    ],
    // an inset beside a low side reaches below it
    bottom: Math.min(room.top - beside.top - high - beside.bottom, found ? found.place.y0 - 1 : room.top),
  }
}

const dotBox = ({ x, y }: Point): Box => boxGrow({ x0: x, y0: y, x1: x, y1: y }, dot)

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

/** Heights of an inset, and what the drawing leaves beside it for one at most, mm. */
const insetHeights = [46, 40, 34, 28, 24] as const
const insetBeside = { usual: 52, most: 84 } as const

interface Inset {
  readonly place: Box
  /** what it shows of the side, mm */
  readonly box: Box
}

const insetScale = ({ place, box }: Inset): number => (place.y1 - place.y0) / (box.y1 - box.y0)

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

const isIn = (box: Box, { x, y }: Point): boolean => x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1

/** The notch, larger: LIP, its corners, and marks that the frame hides on the drawing. */
const notchInset = (
  { place, box }: Inset,
  rows: readonly OffsetRow[],
  corners: readonly OffsetRow[],
  outline: Path,
): Drawing => {
  const scale = insetScale({ place, box })
  const map: Affine = affineThen(
    affineThen(affineTranslate(-box.x0, -box.y0), affineScale(scale)),
    affineTranslate(place.x0, place.y0),
  )
  const at = (p: Point): Point => affineApply(map, p)
  const lip = rows.find((row) => row.mark === 'LIP')!
  const guides = rows.filter(({ mark, at: p }) => /^\d+$/.test(mark) && isIn(box, p))
  const own = [lip, ...corners]
  const frame = rectangle(place.x0, place.y0, place.x1, place.y1)
  const shown = pathClip(outline, boxCorners(box)).map((path) => pathMap(path, map))
  const name = text('note', { x: place.x1 - 1.2, y: place.y0 + 1.4 }, detailSize, `detail ${detailLetter}`, {
    face: 'bold',
    align: 'right',
  })
  return [
    stroke('note', frame, pens.tick),
    name,
    ...shown.map((path) => stroke('note', path, outlinePen)),
    ...guides.map((row) => fill('note', circle(at(row.at), dot * 0.75), 0)),
    ...own.map((row) => fill('mark', circle(at(row.at), dot), 0)),
    ...markNames(
      [...own, ...guides].map((row) => ({ row, at: at(row.at) })),
      {
        paths: shown,
        within: place,
        boxes: [...[...own, ...guides].map((row) => dotBox(at(row.at))), ...wordBoxes([name])],
      },
    ),
  ]
}

/** The letter of the notch's detail: no mark has it. */
const detailLetter = 'X'
const detailSize = 3

/** A frame round the notch on the drawing and the letter of its detail, in the side beside or below it, `corner` being its back top one. ISO 128-3 names details so. */
const calledOut = (
  { box }: Inset,
  small: Affine,
  corner: Point,
): { readonly frame: Path; readonly name: Mark } => {
  const [low, high] = [
    affineApply(small, { x: box.x0, y: box.y0 }),
    affineApply(small, { x: box.x1, y: box.y1 }),
  ]
  // under the panel's top line
  const at =
    corner.x - high.x > 8
      ? { x: high.x + 1.2, y: Math.min(low.y, corner.y - detailSize - 1.2) }
      : { x: high.x - 3, y: low.y - 4.2 }
  return {
    frame: rectangle(low.x, low.y, high.x, high.y),
    name: text('note', at, detailSize, detailLetter, { face: 'bold' }),
  }
}

const wordBoxes = (marks: Drawing): readonly Box[] =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [pointsBounds(textCorners(mark, affineIdentity))] : []))

/** Whether a frame stays above the curve's marks and their names. */
const clearOfMarks = (frame: Box, rows: readonly OffsetRow[], map: Affine): boolean =>
  rows.every((row) => {
    const p = affineApply(map, row.at)
    const reach = row.measured === 'back' ? 24 : 4
    return p.x - reach > frame.x1 || p.y + 6 < frame.y0
  })
