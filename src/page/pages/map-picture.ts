import type { Units } from '../../design/design.ts'
import { dimension } from '../../drafting/dimension/dimension.ts'
import { draftStyle, lineTypes } from '../../drafting/line-types.ts'
import { type Drawing, group, stroke } from '../../drawing/drawing.ts'
import { target } from '../../drawing/target.ts'
import { textCorners } from '../../drawing/text-box.ts'
import {
  type Affine,
  affineApply,
  affineIdentity,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, boxUnion, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { segmentClip } from '../../geometry/clip.ts'
import { polygonInside } from '../../geometry/contains.ts'
import { type Path, pathOf, pathSegments, polygonOf } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import type { Datum } from '../proof/datum.ts'
import { bounded } from '../room/line-stretches.ts'
import { occupancyOf, occupyBox } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { brokenStrokes, wordZones, zonesBack } from '../tile/clear-zones.ts'
import type { Tile } from '../tile/tile.ts'
import { besidePoint, figureGap, namedPieces, ringedPoint, rowName } from './map-names.ts'
import { costOf, crossOrWord, never, numberMarks, rather } from './map-numbers.ts'

export interface MapPictureFacts {
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
}

export interface MapPictureStyle {
  /** of the picture at most; what stands beside it may reach a little farther, mm */
  readonly width: number
  readonly height: number
  /** height of a tile's number at most, and of names and the letters of crosses, mm */
  readonly number: number
  readonly name: number
  /** length and height of the panel are drawn below and beside it */
  readonly dimensions?: boolean
}

/** A picture with its lower left corner at 0,0; names may stand a little above its height, mm. */
export interface MapPicture {
  readonly marks: Drawing
  readonly height: number
}

/** How the side's outline is followed to know what lies beside it, mm. */
const sideStep = 10

/** What names keep off the lines of dimensions where there is room, mm. */
const dimensionOff = 2.4

/** Half the length of a cross, and the radius of the disc in it, mm. */
const arm = 2
const disc = 0.8

/**
 * Outline, tiles with their numbers and snap lines, crosses, toe and lip: in the middle of `wide` mm. Words
 * keep off the outline and off each other.
 */
export const mapPicture = (
  wide: number,
  { pattern, tiles, datums }: MapPictureFacts,
  style: MapPictureStyle,
  units: Units,
): MapPicture => {
  const box = tiles.map((tile) => pointsBounds(tile.window)).reduce(boxUnion, pathBounds(pattern.outline))
  const scale = Math.min(style.width / (box.x1 - box.x0), style.height / (box.y1 - box.y0))
  const [width, height] = [(box.x1 - box.x0) * scale, (box.y1 - box.y0) * scale]
  // the picture's own frame: lower left corner of all that may carry words at 0,0
  const below = style.dimensions ? 3 * style.name : 0
  const room = { left: (wide - width) / 2, bottom: style.name + 2 + below, top: style.name + 4 }
  const map: Affine = affineThen(
    affineThen(affineTranslate(-box.x0, -box.y0), affineScale(scale)),
    affineTranslate(room.left, room.bottom),
  )
  const at = (p: Point): Point => affineApply(map, p)
  const taken = occupancyOf(wide, room.bottom + height + room.top, 0.4)

  const crosses = datums.map((datum) => at(datum.at))
  for (const { x, y } of crosses)
    for (const line of [
      pathOf({ x: x - arm, y }, { x: x + arm, y }),
      pathOf({ x, y: y - arm }, { x, y: y + arm }),
    ])
      occupyPath(taken, line, affineIdentity, 0.2, never | crossOrWord)
  occupyPath(taken, pattern.outline, map, 0.3, never)
  if (style.dimensions)
    for (const line of extensions(pattern, at, wide)) {
      occupyPath(taken, line, affineIdentity, 0.2, never)
      occupyPath(taken, line, affineIdentity, dimensionOff, rather)
    }
  const dimensions = style.dimensions ? panelDimensions(pattern, box, at, style.name, units) : []
  for (const mark of dimensions)
    if (mark.kind === 'text')
      occupyBox(
        taken,
        boxGrow(pointsBounds(textCorners(mark, affineIdentity)), figureGap),
        never | crossOrWord,
      )
  const joints = pattern.joints.map((joint) => pathOf(...joint))
  for (const path of joints) occupyPath(taken, path, map, 0.3, never)
  const cells = tiles.map((tile) => polygonOf(tile.cell[0]!, ...tile.cell.slice(1)))
  for (const path of [...cells, ...tiles.map((tile) => pathOf(...tile.snap))])
    occupyPath(taken, path, map, 0.3, rather)
  const onSide = polygonInside(pathSample(pattern.outline, sideStep).map(at))
  const onPaper = tiles.map(({ cell }) => cell.map(at))
  // a name is no use far from its point: these take their places first
  const names = [
    ...rowsOf(tiles).flatMap(({ row, snap: [from, to] }) =>
      rowName(taken, at(from), at(to), row, style.name),
    ),
    ...pattern.points.flatMap((named) =>
      ringedPoint(taken, at(named.at), named.name, style.name, onSide, onPaper),
    ),
    ...datums.flatMap((datum, i) =>
      besidePoint(taken, crosses[i]!, datum.letter, style.name, 'datum', onSide),
    ),
    ...namedPieces(taken, pattern, at, style.name, onSide),
  ]
  // cells lie side by side: no number can stand on another's
  const cost = costOf(taken)
  const numbers = numberMarks(tiles, at, cost, { tallest: style.number, least: 1.05 * style.name })
  const quiet = [
    ...cells.map((cell) => stroke('note', cell, pens.tick)),
    ...tiles.map((tile) => stroke('note', pathOf(...tile.snap), { ...pens.tick, dash: [1, 0.8] })),
  ]
  return {
    marks: [
      group(map, [
        ...brokenStrokes(quiet, zonesBack(wordZones(struckBy([...names, ...numbers], quiet, map)), map)),
        ...[pattern.outline, ...joints].map((path) => stroke('note', path, { width: 0.6 })),
      ]),
      ...numbers,
      ...crosses.flatMap((p) => target('datum', p, arm, disc, pens.mark)),
      ...names,
      ...dimensions,
    ],
    height: room.bottom + height,
  }
}

/** The words that a line runs through: round these it breaks off. */
const struckBy = (words: Drawing, lines: Drawing, map: Affine): Drawing => {
  const segments = lines.flatMap((mark) =>
    mark.kind === 'stroke' ? pathSegments(pathMap(mark.path, map)).map(bounded) : [],
  )
  return words.filter((mark) => {
    if (mark.kind !== 'text') return false
    const corners = textCorners(mark, affineIdentity)
    const around = boxGrow(pointsBounds(corners), 1e-6)
    return segments.some(
      ({ segment, bounds }) => boxOverlaps(bounds, around) && segmentClip(segment, corners).length > 0,
    )
  })
}

/** Where dimensions run out from the panel: names keep off them. */
const extensions = ({ length, height }: Pattern, at: (p: Point) => Point, wide: number): readonly Path[] => {
  const [low, high, corner] = [at({ x: 0, y: 0 }), at({ x: length, y: height }), at({ x: length, y: 0 })]
  return [
    pathOf(low, { x: low.x, y: 0 }),
    pathOf(corner, { x: corner.x, y: 0 }),
    pathOf(corner, { x: wide, y: corner.y }),
    pathOf(high, { x: wide, y: high.y }),
  ]
}

/** Length and height of the panel, clear of the pages. */
const panelDimensions = (
  { length, height }: Pattern,
  box: Box,
  at: (p: Point) => Point,
  size: number,
  units: Units,
): Drawing => {
  const style = { ...draftStyle, size, lines: lineTypes(pens.tick.width) }
  const [low, high, corner] = [at({ x: 0, y: 0 }), at({ x: length, y: height }), at({ x: length, y: 0 })]
  const pages = { x: at({ x: box.x1, y: 0 }).x, y: at({ x: 0, y: box.y0 }).y }
  const across = dimension(
    {
      from: low,
      to: corner,
      angle: 0,
      through: { x: 0, y: Math.min(low.y, pages.y) - 2.6 * size },
      figure: showLength(length, units),
    },
    style,
  )
  const up = dimension(
    {
      from: corner,
      to: high,
      angle: Math.PI / 2,
      through: { x: Math.max(high.x, pages.x) + 2.2 * size, y: 0 },
      figure: showLength(height, units),
    },
    style,
  )
  return [...across, ...up]
}

/** The first tile of each row. */
const rowsOf = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter((tile, i) => tiles.findIndex(({ row }) => row === tile.row) === i)
