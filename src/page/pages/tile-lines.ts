import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { affineApply, affineInvert } from '../../geometry/affine.ts'
import { boxGrow } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { ringedCross } from '../../pattern/timber-marks.ts'
import { clipMarks } from '../tile/clip-marks.ts'
import type { Tile } from '../tile/tile.ts'
import { bandPen } from '../tile/waste-band.ts'
import { drawsScrew } from '../timber/other-screws.ts'
import { timberEdges } from '../timber/timber-edges.ts'
import type { TileFacts } from './tile-facts.ts'

/** Less of a chain line or a plate's edge in the corner of a page says nothing, mm. */
const leastQuiet = 12

/** The lines of a pattern that a tile carries, in the pattern. */
export interface TileLines {
  readonly cuts: readonly Path[]
  readonly bands: Drawing
  readonly quiet: Drawing
  /** signs whole or not at all, screws among them */
  readonly marks: Drawing
  /** middles of the screws that are drawn */
  readonly screws: readonly Point[]
}

export const tileLines = (tile: Tile, { pattern, bands }: TileFacts): TileLines => {
  // whole within the window, whichever way it runs
  const inner = boxCorners(
    boxGrow({ x0: 0, y0: 0, x1: tile.width, y1: tile.height }, -bandPen.width / 2),
  ).map((p) => affineApply(affineInvert(tile.toWindow), p))
  // a screw on the page that keeps its middle, and no other
  const screws = pattern.screws.map(({ middles, angle }) => ({
    angle,
    middles: middles.filter((at) => drawsScrew(tile, at)),
  }))
  return {
    screws: screws.flatMap(({ middles }) => middles),
    cuts: pathClip(pattern.cut, tile.window),
    bands: bands.flatMap((path) => pathClip(path, inner)).map((path) => stroke('note', path, bandPen)),
    quiet: [
      ...timberEdges(pattern, tile.cell),
      ...clipMarks(pattern.quiet, tile).filter(
        (mark) => mark.kind === 'stroke' && pathLength(mark.path) > leastQuiet,
      ),
    ],
    marks: [
      ...clipMarks(
        pattern.marks.filter(({ kind }) => kind !== 'text'),
        tile,
      ),
      ...screws.flatMap(({ middles, angle }) => middles.flatMap((at) => ringedCross(at, angle))),
    ],
  }
}
