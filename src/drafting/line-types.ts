import type { Layer, Pen } from '../drawing/drawing.ts'

/** The lines of a drawing: two widths, 2 : 1. Names and lengths of dashes by ISO 128-2, from memory. */
export interface LineTypes {
  /** what is seen */
  readonly outline: Pen
  /** what lies behind */
  readonly hidden: Pen
  /** middles, axes, edges that are not there */
  readonly axis: Pen
  /** dimensions, leaders, hatch */
  readonly thin: Pen
}

/** Usual width of the narrow line, mm: one of the steps 0.13 0.18 0.25 0.35 0.5 0.7. */
const usual = 0.25

/** All follow from the narrow width d, mm: dashes 12 d, long dashes 24 d, gaps 3 d, dots half a d. */
export const lineTypes = (d: number): LineTypes => ({
  outline: { width: 2 * d },
  hidden: { width: d, dash: [12 * d, 3 * d] },
  axis: { width: d, dash: [24 * d, 3 * d, 0.5 * d, 3 * d] },
  thin: { width: d },
})

/** How what is written beside a drawing looks. */
export interface DraftStyle {
  readonly layer: Layer
  /** height of figures, mm */
  readonly size: number
  readonly lines: LineTypes
}

/** Figures 2.5 mm high (ISO 3098), lines of 0.25 and 0.5 mm. */
export const draftStyle: DraftStyle = { layer: 'note', size: 2.5, lines: lineTypes(usual) }
