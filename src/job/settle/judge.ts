import type { Limits } from '../../design/asks.ts'
import type { Design, QuarterDesign } from '../../design/design.ts'
import { curvedOf } from '../../design/kind-traits.ts'
import { degreesOf } from '../../geometry/degrees.ts'
import { distinctLines } from '../../pattern/side-lines.ts'
import { draftQuarter } from '../../ramp/kinds/quarter.ts'
import { aloneAs, type SolvedQuarter, type WholeDesign } from '../../ramp/ramp.ts'
import { solveTransition } from '../../ramp/side/solve-transition.ts'
import { layPanels } from '../../stock/panel/panels.ts'
import { partsOf } from '../../stock/parts.ts'
import { isSide } from '../../stock/sheet-part.ts'
import { coverSides } from '../covering.ts'
import { usualLaying } from '../laying.ts'

export const limitNames = ['length', 'lip', 'panels', 'paper'] as const
export type LimitName = (typeof limitNames)[number]

/** What is measured of one value that may be taken: lengths mm, angles degrees. */
export type Measures = { readonly [Name in LimitName]?: number }

/** Read off the curve alone, for every value there is; null where the curve does not solve. */
export const quickMeasures = (ramp: QuarterDesign, { units }: Design): Measures | null => {
  const { transition } = solveTransition(ramp, units)
  if (transition === null) return null
  const { from, value } = ramp.back
  return {
    lip: degreesOf(transition.lipAngle),
    length: from === 'length' ? value : transition.lip.x + value,
  }
}

/** A ramp so changed, if it can be drawn and sawn; else null. */
export const soundRamp = (ramp: QuarterDesign, { units, stock }: Design): SolvedQuarter | null =>
  draftQuarter(ramp, units, stock).whole

/** Whether no timber of those that are sold is as long as it needs one. */
export const isTimberShort = (ramp: QuarterDesign, { units, stock }: Design): boolean =>
  draftQuarter(ramp, units, stock).drafts.some(({ id, level }) => id === 'timber-short' && level === 'stop')

/** What takes longer: asked only of values that are good otherwise. */
export const slowMeasures = (ramp: SolvedQuarter, design: Design, limits: Limits): Measures => {
  const solved = aloneAs(ramp)
  return {
    ...(limits.panels === null ? {} : { panels: sidePanels(solved, design) }),
    ...(limits.paper === null ? {} : { paper: pagesOf(solved, design) }),
  }
}

/** Panels that the sides and ribs are sawn from; `onNoPanel` where one is too small. */
export const sidePanels = (solved: WholeDesign, design: Design): number => {
  const { sheets } = partsOf(design, solved)
  const sides = sheets.filter((own) => isSide(own) || own.part === 'plate')
  const laid = layPanels(design, sides)
  return laid.some(({ lost }) => lost.length > 0)
    ? onNoPanel
    : laid.reduce((sum, { panels }) => sum + panels.reduce((all, { clamped }) => all + clamped, 0), 0)
}
/** Stands for a count where a side is larger than any panel, above every limit that may be typed. */
export const onNoPanel = 1000

/** Pages to tape on the design's own paper with its usual margins, the way a careful builder would take. */
const pagesOf = (solved: WholeDesign, design: Design): number => {
  const { counts, cover } = coverSides(distinctLines(curvedOf(solved.ramps)), usualLaying(design.paper))
  return counts[cover]
}

/** Lengths and angles this near to a limit keep it: what is typed at a limit is not refused for the last bits of a sum. */
const near = 1e-6

/** By how much each limit is passed, as a share of it; empty where all are kept. */
export const passed = (measures: Measures, limits: Limits): readonly (readonly [LimitName, number])[] => {
  const over = (name: LimitName, most: number | null): readonly (readonly [LimitName, number])[] => {
    const value = measures[name]
    return value === undefined || most === null || value <= most + near ? [] : [[name, (value - most) / most]]
  }
  const lip = measures.lip
  const under: readonly (readonly [LimitName, number])[] =
    lip !== undefined && limits.lip !== null && lip < limits.lip[0] - near
      ? [['lip', (limits.lip[0] - lip) / limits.lip[0]]]
      : []
  return [
    ...over('length', limits.length),
    ...over('lip', limits.lip?.[1] ?? null),
    ...under,
    ...over('panels', limits.panels),
    ...over('paper', limits.paper),
  ]
}
