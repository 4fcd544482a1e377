import { runningDimension } from '../../drafting/dimension/running-dimension.ts'
import { spread } from '../../drafting/dimension/spread.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import { showLength, type Units } from '../../length.ts'
import type { Stretch } from '../../ramp/frame/stretch.ts'
import { type View, viewOf, viewStyle } from './view.ts'

/** A layer or the deck board laid flat, as its sheets meet on the ramp; lengths mm. */
export interface FlatSheet {
  readonly width: number
  readonly pieces: readonly Stretch[]
  readonly widths: readonly Stretch[]
  /** lines of what lies under it, with their numbers */
  readonly marks: readonly { readonly at: number; readonly name: string }[]
  readonly rows: readonly { readonly at: number; readonly across: readonly number[] }[]
  /** which edge lies below on the drawing */
  readonly foot: string
}

const layer = 'note'
const { lines, size } = viewStyle

/** Its pieces with seams, stud lines, screws; from its foot upward, and across from its left edge. */
export const sheetView = (sheet: FlatSheet, units: Units, ratio: number): View => {
  const show = (mm: number): string => showLength(mm, units)
  const { width, pieces, widths, marks, rows } = sheet
  const length = pieces.reduce((most, piece) => Math.max(most, piece.from + piece.length), 0)
  const [right, top] = [width * ratio, length * ratio]
  const outlines = pieces.flatMap((up) =>
    widths.map((across) =>
      rectangle(
        across.from * ratio,
        up.from * ratio,
        (across.from + across.length) * ratio,
        (up.from + up.length) * ratio,
      ),
    ),
  )
  const screws = rows.flatMap(({ at, across }) =>
    across.flatMap((x) => cross(layer, { x: x * ratio, y: at * ratio }, 1.1, lines.outline, Math.PI / 4)),
  )
  const acrossAll = [
    ...new Set(rows.flatMap(({ across }) => across.map((x) => Math.round(x * 100) / 100))),
  ].sort((a, b) => a - b)
  const stops = (all: readonly number[]) =>
    all
      .map((mm) => ({ at: mm * ratio, figure: show(mm) }))
      .filter((stop, i, own) => stop.figure !== own[i - 1]?.figure)
  const up = rows.length > 0 ? rows.map(({ at }) => at) : marks.map(({ at }) => at)
  const lengths = [...up, ...pieces.map((piece) => piece.from + piece.length)].sort((a, b) => a - b)
  return viewOf([
    { name: 'pieces', marks: outlines.map((path) => stroke(layer, path, lines.outline)) },
    {
      name: 'lines',
      marks: linesBeside(
        marks.map(({ at, name }) => ({ at: at * ratio, name })),
        right,
        top,
      ),
    },
    { name: 'screws', marks: screws },
    {
      name: 'up',
      marks: runningDimension(
        { zero: { x: -5, y: 0 }, angle: Math.PI / 2, stops: stops(lengths), side: 1, back: 4.5 },
        viewStyle,
      ),
    },
    {
      name: 'across',
      marks: runningDimension(
        {
          zero: { x: 0, y: top + 5 },
          angle: 0,
          stops: stops([...acrossAll, width]),
          side: 1,
          back: 4.5,
          upright: true,
        },
        viewStyle,
      ),
    },
    {
      name: 'foot',
      marks: [text(layer, { x: right / 2, y: -2.2 * size }, size, sheet.foot, { align: 'middle' })],
    },
  ])
}

/** Chain lines across the sheet, their names to its right, pushed apart where they are close. */
const linesBeside = (
  marks: readonly { readonly at: number; readonly name: string }[],
  right: number,
  top: number,
): Drawing => {
  const places = spread(
    marks.map(({ at }) => at),
    1.5 * size,
    top,
  )
  return marks.flatMap(({ at, name }, i): Drawing => {
    const place = places[i]!
    return [
      stroke(layer, pathOf({ x: -1.5, y: at }, { x: right + 1.5, y: at }), lines.axis),
      ...(Math.abs(place - at) > 0.1
        ? [stroke(layer, pathOf({ x: right + 2, y: at }, { x: right + 5, y: place }), lines.thin)]
        : []),
      text(layer, { x: right + 5.5, y: place - size / 2 }, size, name),
    ]
  })
}
