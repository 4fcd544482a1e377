import { type Drawing, group } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { type Affine, affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { letters } from '../../pattern/pens.ts'
import type { PipeStrip } from '../../pattern/pipe-strip.ts'
import { type DrawnTrial, pipeStripMarks } from './trial-piece.ts'

/** Width that the pipe strip takes at the left of the page, mm. */
export const stripWidth = 22

/** Room for words over and under the piece, mm. */
export const trialWords = 74

export interface TrialPage {
  /** called for the page that is printed: most of what is tried is not */
  readonly draw: () => Drawing
  /** the side's mm to ideal page mm */
  readonly map: Affine
  /** what is drawn of the side, ideal page mm */
  readonly window: Box
  /** how far its words reach under the page, and its marks to the side, mm; 0 where all of it lies on the page */
  readonly over: () => { readonly under: number; readonly beside: number }
}

/** One page: the lip at full size to saw in scrap, and the strip that measures the pipe; ideal page mm. */
export const trialPage = (
  window: Box,
  trial: DrawnTrial,
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
  const { piece, drawing, around: box } = trial
  const middle = left + (window.x1 - left - (piece.x1 - piece.x0)) / 2
  const [least, most] = [left + piece.x0 - box.x0, window.x1 - (box.x1 - piece.x0)]
  const at = {
    x: Math.max(least, Math.min(most, middle)),
    y: sub.bottom - 4 - (piece.y1 - piece.y0) - Math.max(0, box.y1 - piece.y1 - 3),
  }
  const map = affineTranslate(at.x - piece.x0, at.y - piece.y0)
  const laidSteps = (): { readonly marks: readonly Drawing[]; readonly lowest: number } => {
    let top = at.y - 5
    let lowest = top
    const marks = trial.steps.map((step) => {
      const lines = paragraph({ x: left, y: top }, step, style)
      // letters reach below their line
      lowest = lines.bottom
      top = lowest - 1
      return lines.marks
    })
    return { marks, lowest }
  }
  return {
    over: () => ({
      under: Math.max(0, window.y0 - laidSteps().lowest),
      beside: Math.max(0, least - most),
    }),
    map,
    window: { x0: at.x, y0: at.y, x1: at.x + piece.x1 - piece.x0, y1: at.y + piece.y1 - piece.y0 },
    draw: () => [
      ...head.marks,
      ...sub.marks,
      group(map, drawing),
      ...laidSteps().marks.flat(),
      ...(strip ? pipeStripMarks({ x: window.x0 + 1, y: window.y0 + 2 }, strip) : []),
    ],
  }
}
