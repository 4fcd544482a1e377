import type { Units } from '../design/design.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import type { Box } from '../geometry/bounds.ts'
import { circle, type Path, pathOf, polygonOf, rectangle, segmentsPath } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { showLength } from '../length.ts'
import type { Curve } from '../ramp/curve.ts'
import type { Ramp } from '../ramp/ramp.ts'
import type { SkinLayer } from '../ramp/skin.ts'
import { letters, pens } from './pens.ts'

/** The lip at full size with pipe, skin and deck board, in the mm of the side it belongs to. */
export interface LipTrial {
  readonly name: string
  readonly outline: Path
  /** the piece of scrap to saw, an axis-parallel box */
  readonly piece: Box
  /** pipe, skin ends, deck board */
  readonly marks: Drawing
  readonly steps: readonly string[]
  readonly outside: number
}

/** Null for a ramp without a pipe: there is nothing to try. `width` and `height` are the room on the page, mm. */
export const lipTrial = (ramp: Ramp, width: number, height: number, units: Units): LipTrial | null => {
  const { side, transition, coping } = ramp
  if (!side || !transition || !coping) return null
  const show = (mm: number): string => showLength(mm, units)
  const { lip, curve, heights } = transition
  const r = coping.outside / 2
  // wood to hold on to: below the notch, in front of it along the curve, and behind its wall
  const wall = coping.centre.x + r
  const board = heights.deck - heights.frame
  const top = Math.max(heights.deck, coping.centre.y + r) + 8
  const right = Math.min(wall + 70, side.length)
  const piece = {
    x0: Math.max(0, right - width, lip.x - 90),
    x1: right,
    y0: Math.max(0, top - height, coping.centre.y - r - 90),
    y1: top,
  }
  const skin = ramp.skin.flatMap((layer) => [
    stroke('mark', skinEnd(layer, curve, piece), pens.mark),
    text('mark', skinLabel(layer, curve), 1.9, show(layer.sheet.thickness), { align: 'middle' }),
  ])
  return {
    name: `${ramp.name}/lip`,
    outline: side.outline,
    piece,
    marks: [
      ...skin,
      stroke('mark', circle(coping.centre, r), pens.mark),
      stroke(
        'mark',
        pathOf(
          { x: coping.centre.x - 4, y: coping.centre.y },
          { x: coping.centre.x + 4, y: coping.centre.y },
        ),
        pens.mark,
      ),
      stroke(
        'mark',
        pathOf(
          { x: coping.centre.x, y: coping.centre.y - 4 },
          { x: coping.centre.x, y: coping.centre.y + 4 },
        ),
        pens.mark,
      ),
      text(
        'mark',
        { x: coping.centre.x, y: coping.centre.y + 6 },
        letters.small,
        `pipe ${show(coping.outside)}`,
        { align: 'middle' },
      ),
      ...(board > 0
        ? [
            stroke('mark', rectangle(wall, heights.frame, piece.x1, heights.deck), pens.mark),
            text(
              'mark',
              { x: (wall + piece.x1) / 2, y: heights.frame + board / 2 - 1.2 },
              letters.small,
              `deck board ${show(board)}`,
              { align: 'middle' },
            ),
          ]
        : []),
      stroke(
        'mark',
        polygonOf(
          { x: piece.x0, y: piece.y0 },
          { x: piece.x1, y: piece.y0 },
          { x: piece.x1, y: heights.frame },
        ),
        pens.stud,
      ),
    ],
    steps: [
      `The pipe should stand ${show(coping.up)} ${units} above the deck board and ${show(coping.out)} ${units} out of the ridden face.`,
      "Saw this in a scrap of the side's plywood, screw on offcuts of skin and deck board, lay the real pipe in, and run a hand and a wheel over it.",
      `Too proud or too low: change \`up\`, \`out\` or the pipe's outside in the design file and plot again, before the first side is cut.`,
    ],
    outside: coping.outside,
  }
}

/** A layer's end near the lip: its two faces and the square cut, as far down as the piece shows it. */
const skinEnd = (layer: SkinLayer, curve: Curve, piece: Box): Path => {
  const [lower, upper] = [curve.offset(layer.below), curve.offset(layer.below + layer.sheet.thickness)]
  const start = curve.placeAtHeight(Math.max(piece.y0, curve.point(curve.toe).y)) ?? curve.toe
  const from = Math.min(Math.max(start, curve.toe), layer.end)
  return segmentsPath([
    ...lower.segments(from, layer.end),
    { kind: 'line', from: lower.point(layer.end), to: upper.point(layer.end) },
    ...upper.segments(layer.end, from),
  ])
}

const skinLabel = (layer: SkinLayer, curve: Curve): Point => {
  const middle = curve.offset(layer.below + layer.sheet.thickness / 2)
  const at = middle.point(
    middle.placeAtLength(Math.max(0, middle.lengthTo(layer.end) - 30 - 14 * (layer.layer - 1))),
  )
  return { x: at.x, y: at.y - 0.9 }
}

/** Paper of common weight lies this thick round the pipe, mm (80 g/m²; from memory). */
const paperThickness = 0.1

/** A strip that is wrapped round the pipe; where its zero meets the scale stands the pipe's true diameter. */
export interface PipeStrip {
  readonly length: number
  /** ticks along the strip from its zero line, mm */
  readonly ticks: readonly { readonly at: number; readonly label: string | null }[]
}

/** Null where the strip would be longer than `room` mm. The paper's own thickness is taken off: it wraps at its middle. */
export const pipeStrip = (outside: number, room: number, units: Units): PipeStrip | null => {
  const step = units === 'in' ? 25.4 / 32 : 0.5
  const middle = Math.round(outside / step)
  const span = units === 'in' ? 4 : 6
  const ticks = Array.from({ length: 2 * span + 1 }, (_, i) => {
    const n = middle - span + i
    return {
      at: Math.PI * (n * step + paperThickness),
      label: n % 2 === 0 ? showLength(n * step, units, { decimals: 1 }) : null,
    }
  })
  const length = ticks.at(-1)!.at + 12
  return length <= room ? { length, ticks } : null
}
