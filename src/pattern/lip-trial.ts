import type { Units } from '../design/design.ts'
import { cross } from '../drawing/cross.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { bisect } from '../geometry/bisect.ts'
import type { Box } from '../geometry/bounds.ts'
import { circle, type Path, pathOf, rectangle, segmentsPath } from '../geometry/path.ts'
import { showLength } from '../length.ts'
import type { Curve } from '../ramp/curve.ts'
import type { Quarter } from '../ramp/ramp.ts'
import type { SkinLayer } from '../ramp/skin.ts'
import { letters, pens } from './pens.ts'

/** The lip at full size with pipe, skin and deck board, in the mm of the side it belongs to. */
export interface LipTrial {
  readonly name: string
  readonly outline: Path
  /** the piece of scrap to saw, an axis-parallel box */
  readonly piece: Box
  /** the lowest level that the notch reaches, and the upright through the pipe's middle */
  readonly floor: number
  readonly middle: number
  /** pipe, skin ends, deck board */
  readonly marks: Drawing
  readonly steps: readonly string[]
}

/** Wood to hold on to round the notch, mm: down the curve, under the notch, behind its wall. */
const hold = { front: 90, under: 90, behind: 80 }
const leastHold = 0.2

/** Null for a ramp without a pipe (there is nothing to try) and for too narrow a page. `width` and `height` are the room on the page, mm. */
export const lipTrial = (ramp: Quarter, width: number, height: number, units: Units): LipTrial | null => {
  const { side, transition, coping } = ramp
  if (!side || !transition || !coping) return null
  const show = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const { lip, curve, heights } = transition
  const r = coping.outside / 2
  const wall = coping.centre.x + r
  const board = heights.deck - heights.frame
  const skinEnds = ramp.skin.map(
    ({ below, end, sheet }) => curve.offset(below + sheet.thickness).point(end).y,
  )
  const top = Math.max(heights.deck, coping.centre.y + r, ...skinEnds) + 8
  // a narrow page holds less wood on both sides of the notch; one that holds hardly any has no trial
  const share = Math.min(1, (width - coping.along) / (hold.front + hold.behind))
  if (share < leastHold) return null
  const right = Math.min(wall + hold.behind * share, side.length)
  const piece: Box = {
    x0: Math.max(0, lip.x - hold.front * share),
    x1: right,
    y0: Math.max(0, top - height, coping.centre.y - r - hold.under),
    y1: top,
  }
  const { path: scrap, corner } = scrapEdge(piece, curve, heights.frame)
  return {
    name: `${ramp.name}/lip`,
    outline: side.outline,
    piece,
    floor: coping.centre.y - r,
    middle: coping.centre.x,
    marks: [
      ...ramp.skin.flatMap((layer) => skinMarks(layer, curve, { corner, left: piece.x0 }, show)),
      stroke('mark', circle(coping.centre, r), pens.mark),
      ...cross('mark', coping.centre, 4, pens.mark),
      // what the pipe takes up is cut away; behind the wall the deck board lies over the line
      text(
        'note',
        { x: coping.centre.x, y: coping.centre.y - 0.62 * r },
        Math.min(letters.word, r / 7),
        'WASTE',
        {
          face: 'bold',
          align: 'middle',
        },
      ),
      text('note', { x: wall + 4, y: heights.frame - letters.side - 3 }, letters.side, 'KEEP', {
        face: 'bold',
      }),
      text(
        'mark',
        { x: coping.centre.x, y: coping.centre.y + 6 },
        letters.small,
        `pipe ${show(coping.outside)}`,
        {
          align: 'middle',
        },
      ),
      ...(board > 0
        ? [
            stroke('mark', rectangle(wall, heights.frame, piece.x1, heights.deck), pens.mark),
            text(
              'mark',
              { x: piece.x1 - 2, y: heights.deck - 4 },
              letters.small,
              `deck board ${show(board)}`,
              {
                align: 'right',
              },
            ),
          ]
        : []),
      stroke('mark', scrap, pens.stud),
    ],
    steps: [
      `The pipe should stand ${show(coping.up)} ${units} above the deck board and ${show(coping.out)} ${units} out of the ridden face: that is its reveal.`,
      "Saw this in a scrap of the side's plywood (dashed edges anywhere near), screw on offcuts of skin and deck board, lay the real pipe in, and run a hand and a wheel over it.",
      `Too proud or too low: change the pipe's figures in the design file and plot again, before the first side is cut.`,
    ],
  }
}

/** The straight edges of the scrap, dashed, from the curve round to the top line; and the curve's place where they start. */
const scrapEdge = (
  piece: Box,
  curve: Curve,
  top: number,
): { readonly path: Path; readonly corner: number } => {
  const low = curve.placeAtHeight(piece.y0)
  const right = { x: piece.x1, y: piece.y0 }
  const end = { x: piece.x1, y: top }
  if (low !== null && low >= curve.toe && curve.point(low).x >= piece.x0)
    return { path: pathOf(curve.point(low), right, end), corner: low }
  const corner =
    curve.point(curve.toe).x >= piece.x0
      ? curve.toe
      : bisect((place) => curve.point(place).x - piece.x0, curve.toe, curve.lip)
  return { path: pathOf(curve.point(corner), { x: piece.x0, y: piece.y0 }, right, end), corner }
}

/** A layer near the lip: its two faces from where the piece begins up to the square cut, and its thickness. */
const skinMarks = (
  layer: SkinLayer,
  curve: Curve,
  piece: { readonly corner: number; readonly left: number },
  show: (mm: number) => string,
): Drawing => {
  const { below, end, sheet } = layer
  const [lower, middle, upper] = [0, 0.5, 1].map((t) => curve.offset(below + t * sheet.thickness))
  // the upper face lies farthest to the left
  const beyond = (place: number): number => upper!.point(place).x - piece.left
  const from =
    beyond(piece.corner) >= 0
      ? Math.min(piece.corner, end)
      : beyond(end) <= 0
        ? end
        : bisect(beyond, piece.corner, end)
  if (from === end) return []
  const along = Math.max(
    Math.min(middle!.lengthTo(from) + 5, middle!.lengthTo(end)),
    middle!.lengthTo(end) - 20 - 14 * layer.layer,
  )
  const at = middle!.point(middle!.placeAtLength(along))
  return [
    stroke(
      'mark',
      segmentsPath([
        ...lower!.segments(from, end),
        { kind: 'line', from: lower!.point(end), to: upper!.point(end) },
        ...upper!.segments(end, from),
      ]),
      pens.mark,
    ),
    text('mark', { x: at.x, y: at.y - 0.9 }, 1.9, `skin ${show(sheet.thickness)}`, { align: 'middle' }),
  ]
}
