import { arrow } from '../../drawing/arrow.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { drawingBounds } from '../../drawing/drawing-bounds.ts'
import { wrapWords } from '../../drawing/paragraph.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Box, boxUnion } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import type { LipTrial } from '../../pattern/lip/lip-trial.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { PipeStrip } from '../../pattern/pipe-strip.ts'
import { bandPen, wasteBands } from '../tile/waste-band.ts'

/** A trial with its piece of scrap as it is drawn, in the side's mm. */
export interface DrawnTrial extends LipTrial {
  readonly drawing: Drawing
  /** around all of it: a thick pipe stands out of its piece, words of a small one reach past it */
  readonly around: Box
}

export const drawnTrial = (trial: LipTrial): DrawnTrial => {
  const drawing = trialPiece(trial)
  return { ...trial, drawing, around: boxUnion(trial.piece, drawingBounds(drawing) ?? trial.piece) }
}

const trialPiece = (trial: LipTrial): Drawing => {
  const box = boxCorners(trial.piece)
  return [
    ...wasteBands(trial.outline)
      .flatMap((path) => pathClip(path, box))
      .map((path) => stroke('note', path, bandPen)),
    ...pathClip(trial.outline, box).map((path) => stroke('cut', path, pens.cut)),
    ...trial.marks,
  ]
}

/** What the pipe strip takes across, and along beyond its own length, mm. */
export const pipeStripSize = { width: 16, zero: 6 } as const

/** The strip upright, its lower left corner at `from`. */
export const pipeStripMarks = (from: Point, strip: PipeStrip): Drawing => {
  const { width, zero } = pipeStripSize
  const up = (along: number, beside: number): Point => ({ x: from.x + beside, y: from.y + along })
  return [
    stroke('mark', rectangle(from.x, from.y, from.x + width, from.y + strip.length + zero), pens.stud),
    stroke('mark', pathOf(up(zero, 0), up(zero, width)), { width: 0.35 }),
    // at the line that they speak of; in two lines on the short strip of a thin pipe
    ...arrow('mark', up(zero + 5, 2.2), up(zero + 0.4, 2.2), pens.tick, 1.6),
    ...wrapWords(
      `cut out, wrap round the pipe: this zero line reads the diameter in ${strip.units === 'in' ? 'inches' : 'mm'}`,
      strip.ticks[0]!.at - 8,
      letters.small,
    ).map((line, i) =>
      text('mark', up(zero + 1.5, 6.2 + i * 1.6 * letters.small), letters.small, line, {
        angle: Math.PI / 2,
      }),
    ),
    text('mark', up(1, 1), letters.small, 'zero line'),
    ...strip.ticks.flatMap(({ at, label }) => [
      stroke('mark', pathOf(up(zero + at, width), up(zero + at, label ? 9 : 12)), pens.tick),
      // fractions of an inch are the widest
      ...(label
        ? [
            text('mark', up(zero + at - 0.8, 8), Math.min(1.8, 7.2 / textWidth(label, 1, 'regular')), label, {
              align: 'right',
            }),
          ]
        : []),
    ]),
  ]
}
