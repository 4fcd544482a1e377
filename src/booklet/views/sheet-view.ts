import { figuresApart, runningDimension } from '../../drafting/dimension/running-dimension.ts'
import { spread } from '../../drafting/dimension/spread.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { drawingBounds } from '../../drawing/drawing-bounds.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import { showLength, type Units } from '../../length.ts'
import type { Stretch } from '../../ramp/frame/stretch.ts'
import { type OwnSheet, ownSheets } from '../../ramp/skin/own-sheets.ts'
import { type View, viewOf, viewStyle } from './view.ts'

interface Row {
  readonly at: number
  readonly across: readonly number[]
}

/** A layer or the deck board laid flat, as its sheets meet on the ramp; lengths mm. */
export interface FlatSheet {
  readonly width: number
  readonly pieces: readonly Stretch[]
  readonly widths: readonly Stretch[]
  /** lines of what lies under it, with their numbers */
  readonly marks: readonly { readonly at: number; readonly name: string }[]
  readonly rows: readonly Row[]
  /** which edge lies below on the drawing */
  readonly foot: string
  /** marks of its sheets, up the ramp and from the left; none where there is one sheet alone */
  readonly names: readonly string[]
}

const layer = 'note'
const { lines, size } = viewStyle
/** From an edge to the line of its dimensions, mm. */
const off = 5

/** Its sheets with seams, stud lines, screws, each measured from its own lower and left edges, up at the left, the next one to the right on the far side. */
export const sheetView = (sheet: FlatSheet, units: Units, ratio: number): View => {
  const { width, pieces, widths, marks, rows } = sheet
  const length = pieces.reduce((most, piece) => Math.max(most, piece.from + piece.length), 0)
  const [right, top] = [width * ratio, length * ratio]
  const own = ownSheets({ ...sheet, marks: marks.map(({ at }) => at) })
  const columns = pieces.map((_, i) => own.slice(i * widths.length, (i + 1) * widths.length))
  const show = (mm: number): string => showLength(mm, units)
  const stops = (all: readonly number[], whole: number) =>
    [...new Map([...all, whole].map((mm) => [Math.round(mm * 100), mm])).values()]
      .sort((a, b) => a - b)
      .map((mm) => ({ at: mm * ratio, figure: show(mm) }))
      .filter((stop, i, all) => stop.figure !== all[i - 1]?.figure)
  const up = columns.map(([first]) => {
    const on = first!.rows.length > 0 ? first!.rows : first!.marks
    return {
      from: first!.up.from * ratio,
      to: (first!.up.from + first!.up.length) * ratio,
      stops: stops(
        on.map(({ at }) => at),
        first!.up.length,
      ),
    }
  })
  const places = upPlaces(up)
  const upMarks = up.map(({ from, stops: all }, i) =>
    runningDimension(
      {
        zero: { x: -off, y: from },
        side: 1,
        angle: Math.PI / 2,
        stops: all,
        back: off - 0.5,
        places: places[i]!.map((place) => place - from),
      },
      viewStyle,
    ),
  )
  const acrossMarks = widths.map(({ from, length: wide }, j) =>
    runningDimension(
      {
        zero: { x: from * ratio, y: j % 2 === 0 ? top + off : -off },
        angle: 0,
        stops: stops(
          columns.flatMap((all) => all[j]!.rows.flatMap(({ across }) => across)),
          wide,
        ),
        side: j % 2 === 0 ? 1 : -1,
        back: off - 0.5,
        upright: true,
      },
      viewStyle,
    ),
  )
  const below = Math.min(0, drawingBounds(acrossMarks.slice(1).flat())?.y0 ?? 0)
  const inside = own.map((one, i) => nameMarks(one, sheet.names[i] ?? '', ratio))
  const beside = linesBeside(
    marks.map(({ at, name }) => {
      const covered = pieces.some(({ from, length: high }) => at >= from && at <= from + high)
      return { at: at * ratio, name: covered ? name : `${name}, seam`, covered }
    }),
    right,
    top,
  )
  return viewOf([
    {
      name: 'pieces',
      marks: own.map(({ up: { from, length: high }, across }) =>
        stroke(
          layer,
          rectangle(
            across.from * ratio,
            from * ratio,
            (across.from + across.length) * ratio,
            (from + high) * ratio,
          ),
          lines.outline,
        ),
      ),
    },
    { name: 'names', marks: inside.flatMap((one) => one ?? []) },
    {
      name: 'lines',
      marks: beside,
    },
    {
      name: 'names beside',
      marks: inside.includes(null)
        ? namesBeside(columns, sheet.names, ratio, Math.max(right, drawingBounds(beside)?.x1 ?? 0))
        : [],
    },
    {
      name: 'screws',
      marks: rows.flatMap(({ at, across }) =>
        across.flatMap((x) => cross(layer, { x: x * ratio, y: at * ratio }, 1.1, lines.outline, Math.PI / 4)),
      ),
    },
    { name: 'up', marks: upMarks.flat() },
    { name: 'across', marks: acrossMarks.flat() },
    {
      name: 'foot',
      marks: [text(layer, { x: right / 2, y: below - 2.2 * size }, size, sheet.foot, { align: 'middle' })],
    },
  ])
}

/** Where the figures up each sheet stand, its zero's first: they keep off those of the others. */
const upPlaces = (
  up: readonly { readonly from: number; readonly stops: readonly { readonly at: number }[] }[],
): readonly (readonly number[])[] => {
  const points = up.map(({ from, stops }) => [from, ...stops.map(({ at }) => from + at)])
  const all = spread(points.flat(), figuresApart * size)
  return points.map((own, i) => {
    const before = points.slice(0, i).flat().length
    return all.slice(before, before + own.length)
  })
}

/** The mark of a sheet in its widest band that no line and no screw crosses; null where that is too narrow. */
const nameMarks = (
  { up, across, marks, rows }: OwnSheet<Row>,
  name: string,
  ratio: number,
): Drawing | null => {
  if (name === '') return []
  const ys = [0, ...[...marks, ...rows].map(({ at }) => at), up.length].sort((a, b) => a - b)
  const [low, high] = ys
    .slice(1)
    .map((y, i) => [ys[i]!, y] as const)
    .reduce((most, band) => (band[1] - band[0] > most[1] - most[0] + 1 ? band : most))
  // half the mark with what hangs below its line, and half a cross
  if ((high - low) * ratio < 2 * (0.8 * markSize + 1)) return null
  const x = (across.from + across.length / 2) * ratio
  const y = (up.from + (low + high) / 2) * ratio - markSize / 2
  return [text(layer, { x, y }, markSize, name, { face: 'bold', align: 'middle' })]
}
const markSize = 3.5

/** Marks of all sheets at the right of the names of their lines, a bracket along each: where one of them is too low for its own. */
const namesBeside = (
  columns: readonly (readonly OwnSheet<Row>[])[],
  names: readonly string[],
  ratio: number,
  right: number,
): Drawing => {
  const middles = spread(
    columns.map(([one]) => (one!.up.from + one!.up.length / 2) * ratio),
    1.35 * markSize,
  )
  return columns.flatMap((course, i): Drawing => {
    const [{ up }] = course as readonly [OwnSheet<Row>]
    const own = names.slice(i * course.length, (i + 1) * course.length).join(', ')
    const [low, high] = [up.from * ratio + 0.6, (up.from + up.length) * ratio - 0.6]
    const x = right + 3
    return [
      stroke(
        layer,
        pathOf({ x: x - 1, y: low }, { x, y: low }, { x, y: high }, { x: x - 1, y: high }),
        lines.thin,
      ),
      text(layer, { x: x + 1.5, y: middles[i]! - markSize / 2 }, markSize, own, { face: 'bold' }),
    ]
  })
}

/** Chain lines across the sheets, their names to the right, pushed apart where they are close, then with a line to their own. */
const linesBeside = (
  marks: readonly { readonly at: number; readonly name: string; readonly covered: boolean }[],
  right: number,
  top: number,
): Drawing => {
  const places = spread(
    marks.map(({ at }) => at),
    1.5 * size,
    top,
  )
  return marks.flatMap(({ at, name, covered }, i): Drawing => {
    const place = places[i]!
    return [
      ...(covered ? [stroke(layer, pathOf({ x: -1.5, y: at }, { x: right + 1.5, y: at }), lines.axis)] : []),
      ...(Math.abs(place - at) > 0.1 || !covered
        ? [stroke(layer, pathOf({ x: right + 2, y: at }, { x: right + 5, y: place }), lines.thin)]
        : []),
      text(layer, { x: right + 5.5, y: place - size / 2 }, size, name),
    ]
  })
}
