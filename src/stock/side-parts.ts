import { isCurved } from '../design/kind-traits.ts'
import { sideSheet } from '../design/panel-sizes.ts'
import { affineScale } from '../geometry/affine.ts'
import { pathBounds } from '../geometry/bounds.ts'
import { type Path, rectangle } from '../geometry/path.ts'
import { pathMap } from '../geometry/path-map.ts'
import { same } from '../ramp/check/offer.ts'
import { timberLabel } from '../ramp/frame/timber.ts'
import type { Ramp } from '../ramp/ramp.ts'
import { pieceLetters, sidePieces } from '../ramp/splice/splice.ts'
import type { SheetPart } from './sheet-part.ts'

/**
 * Left and right as seen from the toe, looking up. A pattern shows the outside of the right side: the left one is its mirror.
 * Where a side is spliced its pieces, then the plates over their joints: one inside each side, one on a face of each rib.
 */
export const sideParts = (ramp: Ramp, marks: readonly string[]): readonly SheetPart[] => {
  const { splices } = ramp
  const outline = isCurved(ramp)
    ? (ramp.side?.outline ?? null)
    : rectangle(0, 0, ramp.length, ramp.heights.frame)
  if (!outline) return []
  const sheet = sideSheet(ramp.design)
  const last = marks.length - 1
  const sides = marks.flatMap((mark, i): readonly SheetPart[] => {
    const rib = i > 0 && i < last
    const hand = (own: Path): Path => (i === 0 && isCurved(ramp) ? pathMap(own, affineScale(-1, 1)) : own)
    const whole: SheetPart = {
      mark,
      ramp: ramp.name,
      part: rib ? 'rib' : 'side',
      words: wallWords(i, last),
      sheet,
      outline: hand(outline),
      grain: null,
      piece: null,
      faced: isCurved(ramp) && !rib,
    }
    if (splices.length === 0) return [whole]
    return sidePieces(outline, splices).map((own, k) => ({
      ...whole,
      mark: `${mark}${pieceLetters[k]}`,
      words: `${whole.words}, piece ${pieceLetters[k]}`,
      outline: hand(own),
      piece: {
        of: mark,
        toe: k === 0,
        lip: isCurved(ramp) && k === lipPiece(ramp),
        back: k === splices.length,
      },
      // what is square is the same on both faces
      faced: whole.faced && !isSquare(own),
    }))
  })
  return [...sides, ...splices.flatMap((splice) => platesOf(ramp, splice, last))]
}

const wallWords = (i: number, last: number): string =>
  i === 0 ? 'left side' : i === last ? 'right side' : last > 2 ? `rib ${i}` : 'rib'

/** The piece that the curve ends on: the first joint behind it lies on the top line. */
const lipPiece = ({ splices, studs }: Ramp): number => {
  const behind = splices.findIndex(({ timber }) => timber >= studs.length)
  return behind < 0 ? splices.length : behind
}

const isSquare = (path: Path): boolean => {
  const { x0, y0, x1, y1 } = pathBounds(path)
  return [path.start, ...path.pieces.map(({ to }) => to)].every(({ x, y }) =>
    [Math.min(x - x0, x1 - x), Math.min(y - y0, y1 - y)].every((off) => off < same),
  )
}

const platesOf = (
  ramp: Ramp,
  { timber, plate: { size } }: Ramp['splices'][number],
  last: number,
): readonly SheetPart[] =>
  Array.from({ length: last + 1 }, (_, i) => ({
    mark: '',
    ramp: ramp.name,
    part: 'plate',
    words: `plate over the joint of the ${wallWords(i, last)}, on ${timberLabel(timber, ramp.studs.length)}`,
    sheet: sideSheet(ramp.design),
    outline: rectangle(0, 0, ...size),
    // across the joint, as the side's own
    grain: 'x',
    piece: null,
    faced: false,
  }))
