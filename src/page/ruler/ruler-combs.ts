import type { Units } from '../../design/design.ts'
import { type Drawing, type Mark, type Shape, shared, stroke } from '../../drawing/drawing.ts'
import { pathOf } from '../../geometry/path.ts'
import { pens } from '../../pattern/pens.ts'
import { plainTick, type RulerTick, rulerStep } from './rulers.ts'

/** Plain ticks as they stand between two figures, along x from 0,0. */
const combOf = (units: Units): readonly Shape[] => {
  const { tick, figure } = rulerStep(units)
  return Array.from({ length: Math.round(figure / tick) - 1 }, (_, i) =>
    stroke('note', pathOf({ x: i * tick, y: 0 }, { x: i * tick, y: plainTick }), pens.ruler),
  )
}

const combs = { mm: combOf('mm'), in: combOf('in') }

/** The marks of ticks, of which so many plain ones in a row are one thing that pages share. */
export const rulerCombs = (ticks: readonly RulerTick[], units: Units): Drawing => {
  const comb = combs[units]
  const marks: Mark[] = []
  for (let i = 0; i < ticks.length; ) {
    const { frame, marks: own } = ticks[i]!
    if (frame && isComb(ticks, i, comb.length)) {
      marks.push(shared(frame, 'note', comb))
      i += comb.length
    } else {
      marks.push(...own)
      i++
    }
  }
  return marks
}

/** Whether so many ticks from one on are plain and of one ruler. */
const isComb = (ticks: readonly RulerTick[], from: number, count: number): boolean => {
  const way = ticks[from]!.frame![0]
  for (let i = from + 1; i < from + count; i++) if (ticks[i]?.frame?.[0] !== way) return false
  return true
}
