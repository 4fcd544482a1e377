import { alsoDrawn, firstClear, nothingDrawn } from '../../../drafting/clearance.ts'
import { waysAt } from '../../../drafting/ways.ts'
import { arrow, arrowHead } from '../../../drawing/arrow.ts'
import { type Drawing, fill, stroke } from '../../../drawing/drawing.ts'
import { drawingBounds } from '../../../drawing/drawing-bounds.ts'
import {
  type Affine,
  affineApply,
  affineRotate,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../../geometry/affine.ts'
import { pointsBounds } from '../../../geometry/bounds.ts'
import { circle, type Path, pathOf, polygonOf, rectangle } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../../../geometry/point.ts'
import { pathSample } from '../../../geometry/sample.ts'
import type { Panel, PanelPiece } from '../../../stock/panel/panels.ts'
import type { SideEdge } from '../../cuts/side-edges.ts'
import { scaled, type View, viewOf, viewStyle } from '../view.ts'
import { word } from './word.ts'

const layer = 'note'
const { lines, size } = viewStyle

/** What an act is done to, so thick; what a saw has cut, and where it stops; a ring round a corner, its radius. mm */
const bold = { width: 0.7 } as const
const sawn = { width: 0.9 } as const
const ring = 1.3

/** The panel with its pieces pale, one of them as it is worked on. */
const panelMarks = ({ size: [wide, long], pieces }: Panel, own: PanelPiece, ratio: number): Drawing => {
  const map = affineScale(ratio)
  return [
    stroke(layer, rectangle(0, 0, long * ratio, wide * ratio), lines.axis),
    ...pieces
      .filter((piece) => piece !== own)
      .map(({ outline }) => stroke(layer, pathMap(outline, map), { ...lines.thin, grey: 0.5 })),
  ]
}

/** Of a piece's own frame, to the panel: its corner at zero, its bottom edge to the right, its wood above. */
const frameOf = (piece: PanelPiece): Affine => {
  const { x, y, second, box } = piece
  const angle = second ? pointAngle(piece, second) : 0
  const middle = { x: (box.x0 + box.x1) / 2 - x, y: (box.y0 + box.y1) / 2 - y }
  const above = Math.cos(angle) * middle.y - Math.sin(angle) * middle.x >= 0
  return affineThen(affineThen(affineScale(1, above ? 1 : -1), affineRotate(angle)), affineTranslate(x, y))
}

/** Where pages of a pattern come to lie on the place of its side, mm of the panel. */
export const pagesOn = (
  piece: PanelPiece,
  cells: readonly (readonly Point[])[],
): readonly (readonly Point[])[] => {
  const frame = frameOf(piece)
  return cells.map((cell) => cell.map((p) => affineApply(frame, p)))
}

/** Taped pages laid on the place of a side: toe corner on toe corner, bottom edge on bottom edge. */
export const tapedView = (
  panel: Panel,
  piece: PanelPiece,
  /** its pages, mm of the pattern */
  cells: readonly (readonly Point[])[],
  ratio: number,
): View => {
  const corner = scaled(piece, ratio)
  const pages = pagesOn(piece, cells).map((corners) => corners.map((p) => scaled(p, ratio)))
  // they may reach over the panel's edge, and so does the ring
  const low = Math.min(0, corner.y - ring, ...pages.flat().map(({ y }) => y))
  return viewOf([
    { name: 'panel', marks: panelMarks(panel, piece, ratio) },
    {
      name: 'pages',
      marks: pages.flatMap((corners): Drawing => {
        const [a, ...rest] = corners
        return [fill(layer, polygonOf(a!, ...rest), 0.9), stroke(layer, polygonOf(a!, ...rest), lines.thin)]
      }),
    },
    {
      name: 'side',
      marks: [
        stroke(layer, pathMap(piece.outline, affineScale(ratio)), lines.outline),
        ...(piece.second ? [stroke(layer, pathOf(corner, scaled(piece.second, ratio)), bold)] : []),
        stroke(layer, circle(corner, ring), lines.outline),
      ],
    },
    {
      name: 'words',
      marks: word({ x: (panel.size[1] * ratio) / 2, y: low - 1.7 * size }, 'ring: the toe corner'),
    },
  ])
}

/** Of a circular saw on its guide, mm: from its line to the guide, the guide's own width, the shoe beyond the line and along it; common practice, no source. */
const saw = { guide: 110, board: 70, beyond: 40, shoe: 280 } as const

/** The guide on the side that is kept, the saw on its line, and where it stops. */
export const guideView = (
  panel: Panel,
  piece: PanelPiece,
  { cut, inward }: Pick<SideEdge, 'cut' | 'inward'>,
  ratio: number,
): View => {
  const { segment, stops } = cut!
  const [stop] = stops
  const [from, to] =
    stop && pointDistance(stop, segment.from) < 1 ? [segment.to, segment.from] : [segment.from, segment.to]
  const way = pointAngle(from, to)
  const off = (p: Point, mm: number): Point => pointToward(p, inward, mm)
  const strip = (a: Point, b: Point, low: number, high: number) => {
    const [p, ...rest] = [off(a, low), off(b, low), off(b, high), off(a, high)].map((q) => scaled(q, ratio))
    return polygonOf(p!, ...rest)
  }
  const guide = strip(from, to, saw.guide, saw.guide + saw.board)
  const at = pointBetween(from, to, 0.35)
  const shoe = strip(
    pointToward(at, way, -saw.shoe / 2),
    pointToward(at, way, saw.shoe / 2),
    -saw.beyond,
    saw.guide,
  )
  const done = stroke(layer, pathOf(scaled(from, ratio), scaled(at, ratio)), sawn)
  const ahead = scaled(pointToward(at, way, saw.shoe / 2), ratio)
  const bars = stops.map((end) => {
    const on = scaled(end, ratio)
    return stroke(layer, pathOf(pointToward(on, inward, -3), pointToward(on, inward, 3)), sawn)
  })
  const whole = panelMarks(panel, piece, ratio)
  const side = stroke(layer, pathMap(piece.outline, affineScale(ratio)), lines.outline)
  const guideEdge = stroke(layer, guide, lines.thin)
  const heading = arrow(layer, ahead, pointToward(ahead, way, 5), lines.outline, size)
  const thing = [...whole, side, guideEdge, stroke(layer, shoe, lines.thin), done, ...heading, ...bars]
  const low = Math.min(0, drawingBounds(bars)?.y0 ?? 0)
  const caption = word(
    { x: (panel.size[1] * ratio) / 2, y: low - 1.7 * size },
    'dark: the guide, on what is kept',
  )
  let clearance = alsoDrawn(alsoDrawn(nothingDrawn, thing, 'thing'), caption, 'note')
  const stopWords = stops.flatMap((end) => {
    const places = [4, 5, 6, 7.5, 9, 11].flatMap((far) =>
      Array.from({ length: 16 }, (_, i) => [far, i] as const),
    )
    const ways = waysAt(places, ([far, i]) => {
      const p = pointToward(scaled(end, ratio), way + (i * Math.PI) / 8, far)
      return word({ x: p.x, y: p.y - size / 2 }, 'STOP', { face: 'bold' })
    })
    const found = firstClear(clearance, ways) ?? []
    clearance = alsoDrawn(clearance, found, 'note')
    return found
  })
  return viewOf([
    { name: 'panel', marks: whole },
    { name: 'side', marks: [side] },
    { name: 'guide', marks: [fill(layer, guide, 0.55), guideEdge] },
    {
      name: 'saw',
      marks: [done, fill(layer, shoe, 0.85), stroke(layer, shoe, lines.outline), ...heading],
    },
    { name: 'stop', marks: [...bars, ...stopWords] },
    { name: 'words', marks: caption },
  ])
}

/** How a side is laid on the place of one that is traced from it. */
export type CopyWay = 'turned over' | 'half a turn' | 'same face up'

/** One side beside another that is traced from it, each as it lies on its panel, and what is done in between. */
export const copyView = (first: PanelPiece, copy: PanelPiece, done: CopyWay, ratio: number): View => {
  const boxes = [first, copy].map(({ box }) => box)
  const wide = (i: number): number => (boxes[i]!.x1 - boxes[i]!.x0) * ratio
  const high = (i: number): number => (boxes[i]!.y1 - boxes[i]!.y0) * ratio
  const tall = Math.max(high(0), high(1))
  const starts = [0, wide(0) + apart]
  const placed = [first, copy].map((piece, i) => {
    const map = affineThen(
      affineTranslate(-boxes[i]!.x0, -boxes[i]!.y0),
      affineThen(affineScale(ratio), affineTranslate(starts[i]!, (tall - high(i)) / 2)),
    )
    return {
      map,
      outline: pathMap(piece.outline, map),
      corner: affineApply(map, piece),
      mark: piece.part.mark,
    }
  })
  const middle = { x: wide(0) + apart / 2, y: tall / 2 }
  const r = apart / 2 - 1.2
  // turned over an axis midway between the two bottom edges
  const lean = done === 'turned over' ? axisAngle(first, copy) - Math.PI / 2 : 0
  const at = (angle: number, far: number): Point => pointToward(middle, angle + lean, far)
  const [from, to] = [at(Math.PI, r), at(0, r)]
  const axis = pathOf(at(-Math.PI / 2, axisReach), at(Math.PI / 2, axisReach))
  const moved: Drawing =
    done === 'same face up'
      ? arrow(layer, from, to, lines.outline, size)
      : [
          ...(done === 'turned over' ? [stroke(layer, axis, lines.axis)] : []),
          stroke(layer, halfCircle(from, to, middle), lines.outline),
          ...arrowHead(layer, to, lean - Math.PI / 2, size),
        ]
  const all = placed.flatMap(({ outline }) => pathSample(outline, 2))
  const { x0, x1 } = pointsBounds(all)
  // past low sides the axis reaches down
  const below = Math.min(0, (drawingBounds(moved)?.y0 ?? 0) + 0.5)
  return viewOf([
    {
      name: 'sides',
      marks: placed.flatMap(({ outline }, i) => [
        fill(layer, outline, i === 0 ? 0.8 : 1),
        stroke(layer, outline, lines.outline),
      ]),
    },
    {
      name: 'corners',
      marks: placed.map(({ corner }) => stroke(layer, circle(corner, ring), lines.outline)),
    },
    { name: 'turn', marks: moved },
    {
      name: 'words',
      marks: [
        ...placed.flatMap(({ mark }, i) =>
          word({ x: starts[i]! + wide(i) / 2, y: tall + 1.5 }, mark, { face: 'bold' }),
        ),
        ...word({ x: (x0 + x1) / 2, y: below - 1.7 * size }, `${done}; ring: the toe corner`),
      ],
    },
  ])
}
/** Between the two, mm on paper. */
const apart = 9

/** Of an axis between them to either side, mm on paper. */
const axisReach = 4.2

/** Of the line over which one side is turned to lie as the other does, radians from 0 to π. */
const axisAngle = (first: PanelPiece, copy: PanelPiece): number => {
  const [a, b] = [first, copy].map((piece) => pointAngle(piece, piece.second!)) as [number, number]
  const angle = ((a + b) / 2) % Math.PI
  return angle < 0 ? angle + Math.PI : angle
}

/** Clockwise. */
const halfCircle = (from: Point, to: Point, centre: Point): Path => ({
  start: from,
  pieces: [{ kind: 'arc', to, centre, sweep: -Math.PI }],
  closed: false,
})
