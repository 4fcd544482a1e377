import type { Units } from '../design/design.ts'
import { cross } from '../drawing/cross.ts'
import { type Drawing, group, stroke, text } from '../drawing/drawing.ts'
import { paragraph } from '../drawing/paragraph.ts'
import { type TextMark, textCorners } from '../drawing/text-box.ts'
import { textWidth } from '../drawing/text-width.ts'
import {
  type Affine,
  affineApply,
  affineIdentity,
  affineInvert,
  affineScale,
  affineThen,
  affineTranslate,
} from '../geometry/affine.ts'
import { type Box, boxUnion, pathBounds, pointsBounds } from '../geometry/bounds.ts'
import { pathDistance } from '../geometry/nearest.ts'
import { pathOf, polygonOf } from '../geometry/path.ts'
import { type Point, pointBetween } from '../geometry/point.ts'
import { showLength, showTolerance } from '../length.ts'
import { datumFigures } from '../page/datum.ts'
import type { PageSet } from '../page/draft.ts'
import type { TileGroup } from '../page/tile-groups.ts'
import { pens } from '../pattern/pens.ts'

/** A picture as wide as a phone and as high as it must be, mm. */
export interface PhoneMap {
  readonly drawing: Drawing
  readonly width: number
  readonly height: number
}

const width = 90
const margin = 3
const inner = width - 2 * margin
const sizes = { head: 3.6, body: 2.5, number: 6, name: 2.4 } as const

/** The maps of a set for the phone in the garage: where each page lies, how to lay it, what to check. */
export const phoneMap = (title: string, set: PageSet, units: Units): PhoneMap => {
  let y = -margin
  const marks: Drawing[] = []
  for (const part of set.groups) {
    const map = groupMap({ x: margin, y }, title, set, part, units)
    marks.push(map.marks)
    y = map.bottom - 4
  }
  const height = -y
  return { drawing: [group(affineTranslate(0, height), marks.flat())], width, height }
}

const groupMap = (
  topLeft: Point,
  title: string,
  { code, plan }: PageSet,
  part: TileGroup,
  units: Units,
): { readonly marks: Drawing; readonly bottom: number } => {
  const { pattern, tiles, datums, survey } = part
  const marks: Drawing[] = []
  let y = topLeft.y
  const write = (
    words: string,
    indent = 0,
    size: number = sizes.body,
    face: 'regular' | 'bold' = 'regular',
  ) => {
    const style = { layer: 'note', width: inner - indent, size, face } as const
    const lines = paragraph({ x: topLeft.x + indent, y }, words, style)
    marks.push(lines.marks)
    y = lines.bottom - 0.5
  }
  write(title, 0, sizes.head, 'bold')
  write(
    `${pattern.part} of ${pattern.serves.join('; ')}. Pages ${tiles[0]!.number} to ${tiles.at(-1)!.number} on ${plan.paper.name}, set ${code}.`,
  )
  const drawn = overview({ x: topLeft.x, y: y - 1 }, part)
  marks.push(drawn.marks)
  y = drawn.bottom - 3
  steps(part, plan.cover === 'whole', units).forEach((step, i) => {
    marks.push([
      text('note', { x: topLeft.x + 2.5, y: y - sizes.body }, sizes.body, `${i + 1}`, {
        face: 'bold',
        align: 'right',
      }),
    ])
    write(step, 5)
  })
  y -= 1
  write('Check on the taped paper, and again on the wood:', 0, sizes.body, 'bold')
  for (const { words, value, tolerance } of survey)
    write(
      `${showLength(value, units, { unit: true, decimals: 1 })} ${showTolerance(tolerance, units)}  ${words}`,
      5,
    )
  if (datums.length > 0) {
    y -= 1
    write("Crosses, from the panel's own edges:", 0, sizes.body, 'bold')
    for (const datum of datums)
      write(`${datum.number}: ${datumFigures(datum.at, pattern, units).join(', ')}`, 5)
  }
  return { marks: marks.flat(), bottom: y }
}

const steps = ({ tiles }: TileGroup, whole: boolean, units: Units): readonly string[] => {
  const rows = new Map(tiles.map((tile) => [tile.row, tile.snap]))
  const level = [...rows.values()].every(([a, b]) => Math.abs(a.y - b.y) < 1e-6)
  const lines = [...rows].map(([row, [a]]) => `${row} ${showLength(a.y, units)}`).join(', ')
  return [
    level
      ? `Chalk the snap lines, above the panel's bottom edge: ${lines} ${units}.`
      : 'Snap a straight line for each row.',
    'Trim each page on its left and lower joint lines; lay the pages in the order of their numbers, each row to its snap line.',
    'Zero ticks of the two scales at a joint run through, half circles make whole ones.',
    whole
      ? "Lay the taped sheet to the panel's bottom and front edges."
      : 'Set out the crosses on the panel with tape and square, and lay the paper to them.',
    'Saw on the side of the ticks, marked WASTE.',
  ]
}

/** Outline, tiles with their numbers, snap lines, crosses, toe and lip. */
const overview = (
  topLeft: Point,
  { pattern, tiles, datums }: TileGroup,
): { readonly marks: Drawing; readonly bottom: number } => {
  const box = tiles.map((tile) => pointsBounds(tile.window)).reduce(boxUnion, pathBounds(pattern.outline))
  const scale = Math.min(inner / (box.x1 - box.x0), inner / (box.y1 - box.y0))
  const map: Affine = affineThen(
    affineThen(affineTranslate(-box.x0, -box.y1), affineScale(scale)),
    affineTranslate(topLeft.x + (inner - (box.x1 - box.x0) * scale) / 2, topLeft.y - sizes.name - 1),
  )
  const at = (p: Point): Point => affineApply(map, p)
  const back = affineInvert(map)
  const names = pattern.points.map((named) => nameMark(named.name, at(named.at)))
  const crosses = datums.map((datum) => ({ datum, p: at(datum.at) }))
  /** words and crosses that a number must not cover */
  const taken: readonly Box[] = [
    ...names.map((name) => pointsBounds(textCorners(name, affineIdentity))),
    ...crosses.map(({ p }) => ({ x0: p.x - 1.6, y0: p.y - 1.6, x1: p.x + 2.4, y1: p.y + 2.8 })),
  ]
  /** how far the middle of a number lies from the line and from all that is taken; `half` its size */
  const room = (p: Point, half: Point): number =>
    Math.min(
      pathDistance(pattern.outline, affineApply(back, p)) * scale - Math.hypot(half.x, half.y),
      ...taken.map((b) =>
        Math.max(b.x0 - p.x - half.x, p.x - half.x - b.x1, b.y0 - p.y - half.y, p.y - half.y - b.y1),
      ),
    )
  const cells = tiles.flatMap((tile) => {
    const cell = pointsBounds(tile.cell.map(at))
    const label = `${tile.number}`
    const largest = Math.min(
      sizes.number,
      (cell.y1 - cell.y0) * 0.4,
      ((cell.x1 - cell.x0) * 0.5) / textWidth(label, 1, 'bold'),
    )
    // smaller where a large one would lie on the line or on a word
    const tries = [1, 0.85, 0.7, 0.55].map((share) => {
      const size = largest * share
      const half = { x: textWidth(label, size, 'bold') / 2, y: size / 2 }
      return {
        size,
        half,
        ...clearest(tile.cell.map(at), (p) => Math.min(room(p, half), inside(cell, p, half))),
      }
    })
    const { size, half, middle } = tries.find((one) => one.room >= enough) ?? tries.at(-1)!
    return [
      group(map, [
        stroke('joint', polygonOf(tile.cell[0]!, ...tile.cell.slice(1)), { width: 0.15, grey: 0.35 }),
        stroke('joint', pathOf(...tile.snap), { width: 0.12, grey: 0.35, dash: [1, 0.7] }),
      ]),
      text('note', { x: middle.x, y: middle.y - half.y }, size, label, { face: 'bold', align: 'middle' }),
    ]
  })
  return {
    marks: [
      ...cells,
      group(map, [stroke('note', pattern.outline, { width: 0.5 })]),
      ...crosses.flatMap(({ datum, p }) => [
        ...cross('datum', p, 1.6, pens.mark),
        text('datum', { x: p.x + 0.8, y: p.y + 0.7 }, 2, `${datum.number}`),
      ]),
      ...names,
    ],
    bottom: topLeft.y - sizes.name - 1 - (box.y1 - box.y0) * scale,
  }
}

/** A name before its point, but over it where that would leave the picture. */
const nameMark = (name: string, p: Point): TextMark => {
  const over = p.x - 1 - textWidth(name, sizes.name, 'bold') < margin
  const at = over ? { x: margin, y: p.y + 1.5 } : { x: p.x - 1, y: p.y + 0.8 }
  return text('note', at, sizes.name, name, { face: 'bold', align: over ? 'left' : 'right' }) as TextMark
}

/** How far what is `half` each way of a point keeps from the edges of a box. */
const inside = (box: Box, p: Point, half: Point): number =>
  Math.min(p.x - half.x - box.x0, box.x1 - p.x - half.x, p.y - half.y - box.y0, box.y1 - p.y - half.y)

/** A number's clearance that is enough, mm. */
const enough = 0.6

/** Where a tile's number stands: the middle of its cell where that is clear, else the place about it with the most room. */
const clearest = (
  cell: readonly Point[],
  roomOf: (p: Point) => number,
): { readonly middle: Point; readonly room: number } => {
  const [a, b, c, d] = cell as readonly [Point, Point, Point, Point]
  const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82]
  const places = shares
    .flatMap((u) => shares.map((v) => pointBetween(pointBetween(a, b, u), pointBetween(d, c, u), v)))
    .map((middle) => ({ middle, room: roomOf(middle) }))
  return (
    places.find(({ room }) => room >= enough) ??
    places.reduce((kept, place) => (place.room > kept.room + 1e-6 ? place : kept))
  )
}
