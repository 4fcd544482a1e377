import type { Pen } from '../drawing/drawing.ts'

/** Lines as they lie on paper, mm: the cut line shouts, everything else is at least two steps quieter. */
export const pens = {
  cut: { width: 0.5 },
  stud: { width: 0.25, dash: [3, 1.5] },
  mark: { width: 0.25 },
  datum: { width: 0.25, dash: [8, 1.5, 1.5, 1.5] },
  joint: { width: 0.2, dash: [1.5, 1] },
  snap: { width: 0.2 },
  cross: { width: 0.18 },
  ruler: { width: 0.15, grey: 0.4 },
  tick: { width: 0.18 },
} as const satisfies Record<string, Pen>

/** Heights of a capital letter, mm. Nothing but figures of scales is smaller than the least: that is 8 pt. */
export const letters = { big: 14, word: 4, small: 2.4, side: 5, mark: 2.1, least: 1.98 } as const
