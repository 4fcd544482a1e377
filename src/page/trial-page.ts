import { type Drawing, group, stroke, text } from '../drawing/drawing.ts'
import { paragraph } from '../drawing/paragraph.ts'
import { type Affine, affineTranslate } from '../geometry/affine.ts'
import type { Box } from '../geometry/bounds.ts'
import { type Convex, convexContains, pathClip } from '../geometry/clip.ts'
import { pathOf, rectangle } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { LipTrial } from '../pattern/lip-trial.ts'
import { letters, pens } from '../pattern/pens.ts'
import type { PipeStrip } from '../pattern/pipe-strip.ts'
import { wasteTicks } from './keep-waste.ts'

/** Width that the pipe strip takes at the left of the page, mm. */
export const stripWidth = 22

/** Room for words over and under the piece, mm. */
export const trialWords = 62

export interface TrialPage {
  readonly drawing: Drawing
  /** the side's mm to ideal page mm */
  readonly map: Affine
  /** what is drawn of the side, ideal page mm */
  readonly window: Box
}

/** One page: the lip at full size to saw in scrap, and the strip that measures the pipe; ideal page mm. */
export const trialPage = (
  window: Box,
  trial: LipTrial,
  strip: PipeStrip | null,
  title: string,
  set: string,
): TrialPage => {
  const left = window.x0 + (strip ? stripWidth : 0)
  const style = { layer: 'note', width: window.x1 - left - 2, size: 3.2 } as const
  const head = paragraph({ x: left, y: window.y1 }, 'Lip trial: saw this in scrap first', {
    ...style,
    size: letters.word,
    face: 'bold',
  })
  const sub = paragraph({ x: left, y: head.bottom }, `${title} · set ${set}`, {
    ...style,
    size: letters.small,
  })
  const { piece } = trial
  const at = {
    x: left + (window.x1 - left - (piece.x1 - piece.x0)) / 2,
    y: sub.bottom - 4 - (piece.y1 - piece.y0),
  }
  const map = affineTranslate(at.x - piece.x0, at.y - piece.y0)
  const box: Convex = [
    { x: piece.x0, y: piece.y0 },
    { x: piece.x1, y: piece.y0 },
    { x: piece.x1, y: piece.y1 },
    { x: piece.x0, y: piece.y1 },
  ]
  let top = at.y - 5
  const steps: Drawing[] = []
  for (const step of trial.steps) {
    const lines = paragraph({ x: left, y: top }, step, style)
    steps.push(lines.marks)
    top = lines.bottom - 1
  }
  return {
    map,
    window: { x0: at.x, y0: at.y, x1: at.x + piece.x1 - piece.x0, y1: at.y + piece.y1 - piece.y0 },
    drawing: [
      ...head.marks,
      ...sub.marks,
      group(map, [
        ...pathClip(trial.outline, box).map((path) => stroke('cut', path, pens.cut)),
        ...wasteTicks(trial.outline)
          .filter((tick) => [tick.start, tick.pieces[0]!.to].every((p) => convexContains(box, p)))
          .map((path) => stroke('note', path, pens.tick)),
        ...trial.marks,
      ]),
      ...steps.flat(),
      ...(strip ? stripMarks({ x: window.x0 + 1, y: window.y0 + 2 }, strip) : []),
    ],
  }
}

const stripMarks = (from: Point, strip: PipeStrip): Drawing => {
  const up = (along: number, beside: number): Point => ({ x: from.x + beside, y: from.y + along })
  const zero = 6
  return [
    stroke('mark', rectangle(from.x, from.y, from.x + 16, from.y + strip.length + zero), pens.stud),
    stroke('mark', pathOf(up(zero, 0), up(zero, 16)), { width: 0.35 }),
    text(
      'mark',
      up(zero + 4, 5),
      letters.small,
      'cut out this strip, wrap it round the pipe; this line reads the diameter',
      {
        angle: Math.PI / 2,
      },
    ),
    text('mark', up(1, 1), letters.small, 'zero line', {}),
    ...strip.ticks.flatMap(({ at, label }) => [
      stroke('mark', pathOf(up(zero + at, 16), up(zero + at, label ? 9 : 12)), pens.tick),
      ...(label ? [text('mark', up(zero + at - 0.8, 8), 1.8, label, { align: 'right' })] : []),
    ]),
  ]
}
