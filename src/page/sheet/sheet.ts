import { type Affine, affineThen, affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { type Correction, correctionMap } from '../../printer/correction.ts'
import type { Margins, Paper } from './paper.ts'

export type Layout = 'portrait' | 'landscape'

/** What every page of a set shares: paper, margins and the printer's correction. The page is always upright. */
export interface Sheet {
  readonly paper: Paper
  readonly margins: Margins
  readonly correction: Correction
}

/**
 * The part of the page that may be drawn on, in ideal page mm: the largest rectangle that the correction
 * keeps inside the margins.
 */
export const sheetWindow = ({ paper, margins, correction }: Sheet): Box => {
  const [a, b, c, d] = correction
  const [cx, cy] = [paper.width / 2, paper.height / 2]
  const free = {
    x0: margins.left - cx,
    y0: margins.bottom - cy,
    x1: cx - margins.right,
    y1: cy - margins.top,
  }
  // what skew may cost at the far end of the other axis, with room for the scale of that axis
  const spareX = (Math.abs(c) * Math.max(-free.y0, free.y1)) / d
  const spareY = (Math.abs(b) * Math.max(-free.x0, free.x1)) / a
  return {
    x0: (free.x0 + spareX) / a + cx,
    y0: (free.y0 + spareY) / d + cy,
    x1: (free.x1 - spareX) / a + cx,
    y1: (free.y1 - spareY) / d + cy,
  }
}

/** Ideal page mm to written page mm. */
export const sheetWritten = ({ paper, correction }: Sheet): Affine =>
  correctionMap(correction, paper.width, paper.height)

/** Size of the window as the drawing sees it: a landscape layout turns the drawing, never the page. */
export const layoutSize = (
  window: Box,
  layout: Layout,
): { readonly width: number; readonly height: number } => {
  const [width, height] = [window.x1 - window.x0, window.y1 - window.y0]
  return layout === 'portrait' ? { width, height } : { width: height, height: width }
}

/** From the drawing's frame (0,0 at the window's lower left as the drawing is read) to ideal page mm. */
export const layoutMap = (window: Box, layout: Layout): Affine =>
  layout === 'portrait'
    ? affineTranslate(window.x0, window.y0)
    : affineThen([0, 1, -1, 0, 0, 0], affineTranslate(window.x1, window.y0))
