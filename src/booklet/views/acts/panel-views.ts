import { alsoDrawn, firstClear, nothingDrawn } from '../../../drafting/clearance.ts'
import { arrow, arrowHead } from '../../../drawing/arrow.ts'
import { type Drawing, fill, stroke, text } from '../../../drawing/drawing.ts'
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
import { circle, pathOf, polygonOf, rectangle } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../../../geometry/point.ts'
import { pathSample } from '../../../geometry/sample.ts'
import type { Panel, PanelPiece } from '../../../stock/panel/panels.ts'
import type { SideEdge } from '../../cuts/side-edges.ts'
import { scaled, type View, viewOf, viewStyle } from '../view.ts'

const layer = 'note'
const { lines, size } = viewStyle

/** What an act is done to, so thick; a ring round a corner, its radius. mm */
const bold = { width: 0.7 } as const
const ring = 1.3

const word = (at: Point, said: string, bolder = false): Drawing => [
  text(layer, at, size, said, { align: 'middle', ...(bolder ? { face: 'bold' as const } : {}) }),
]

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
  const done = [stroke(layer, pathOf(scaled(from, ratio), scaled(at, ratio)), { width: 0.9 })]
  const ahead = pointToward(at, way, saw.shoe / 2)
  const bars = stops.map((end) =>
    stroke(
      layer,
      pathOf(...([-3, 3].map((mm) => pointToward(scaled(end, ratio), inward, mm)) as [Point, Point])),
      { width: 0.9 },
    ),
  )
  const thing: Drawing = [
    ...panelMarks(panel, piece, ratio),
    stroke(layer, pathMap(piece.outline, affineScale(ratio)), lines.outline),
    stroke(layer, guide, lines.thin),
    stroke(layer, shoe, lines.thin),
    ...bars,
  ]
  const low = Math.min(0, drawingBounds(bars)?.y0 ?? 0)
  const caption = word(
    { x: (panel.size[1] * ratio) / 2, y: low - 1.7 * size },
    'dark: the guide, on what is kept',
  )
  let clearance = alsoDrawn(alsoDrawn(nothingDrawn, thing, 'thing'), caption, 'note')
  const beside = (end: Point, said: string, bolder: boolean, reach: readonly number[]): Drawing => {
    const on = scaled(end, ratio)
    const ways = reach.flatMap((far) =>
      Array.from({ length: 16 }, (_, i) => {
        const p = pointToward(on, way + (i * Math.PI) / 8, far)
        return word({ x: p.x, y: p.y - size / 2 }, said, bolder)
      }),
    )
    const found = firstClear(clearance, ways) ?? []
    clearance = alsoDrawn(clearance, found, 'note')
    return found
  }
  const words = stops.flatMap((end) => beside(end, 'STOP', true, [4, 5, 6, 7.5, 9, 11]))
  return viewOf([
    { name: 'panel', marks: panelMarks(panel, piece, ratio) },
    { name: 'side', marks: [stroke(layer, pathMap(piece.outline, affineScale(ratio)), lines.outline)] },
    {
      name: 'guide',
      marks: [fill(layer, guide, 0.55), stroke(layer, guide, lines.thin)],
    },
    {
      name: 'saw',
      marks: [
        ...done,
        fill(layer, shoe, 0.85),
        stroke(layer, shoe, lines.outline),
        ...arrow(layer, scaled(ahead, ratio), pointToward(scaled(ahead, ratio), way, 5), lines.outline, size),
      ],
    },
    { name: 'stop', marks: [...bars, ...words] },
    { name: 'words', marks: caption },
  ])
}

/** One side beside another that is traced from it, each as it lies on its panel, and what is done in between. */
export const copyView = (first: PanelPiece, copy: PanelPiece, over: boolean, ratio: number): View => {
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
  const turn: Drawing = over
    ? [
        // over an upright axis
        stroke(
          layer,
          pathOf({ x: middle.x, y: Math.max(0, middle.y - 6) }, { x: middle.x, y: middle.y + 6 }),
          lines.axis,
        ),
        stroke(layer, halfCircle(middle, r), lines.outline),
        ...arrowHead(layer, { x: middle.x + r, y: middle.y }, -Math.PI / 2, size),
      ]
    : [
        stroke(layer, halfCircle(middle, r), lines.outline),
        ...arrowHead(layer, { x: middle.x + r, y: middle.y }, -Math.PI / 2, size),
      ]
  const all = placed.flatMap(({ outline }) => pathSample(outline, 2))
  const { x0, x1 } = pointsBounds(all)
  return viewOf([
    {
      name: 'sides',
      marks: placed.flatMap(({ outline }, i) => [
        fill(layer, outline, i === 0 ? 0.8 : 1),
        stroke(layer, outline, lines.outline),
      ]),
    },
    { name: 'corners', marks: placed.map(({ corner }) => stroke(layer, circle(corner, 1.3), lines.outline)) },
    { name: 'turn', marks: turn },
    {
      name: 'words',
      marks: [
        ...placed.flatMap(({ mark }, i) => word({ x: starts[i]! + wide(i) / 2, y: tall + 1.5 }, mark, true)),
        ...word(
          { x: (x0 + x1) / 2, y: -1.7 * size },
          over ? 'turned over; ring: the toe corner' : 'half a turn; ring: the toe corner',
        ),
      ],
    },
  ])
}
/** Between the two, mm on paper. */
const apart = 9

/** From its left end over the top, clockwise. */
const halfCircle = ({ x, y }: Point, r: number) =>
  ({
    start: { x: x - r, y },
    pieces: [{ kind: 'arc', to: { x: x + r, y }, centre: { x, y }, sweep: -Math.PI }],
    closed: false,
  }) as const
