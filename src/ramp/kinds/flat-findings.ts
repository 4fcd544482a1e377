import type { FlatDesign, Stock, Units } from '../../design/design.ts'
import { carried } from '../beside/twins.ts'
import { type Draft, type Finding, worded } from '../check/check.ts'
import type { Flat } from '../ramp.ts'
import { bearingFindings, draftFlat, frameFlat, stopsOfFlat } from './flat.ts'

/** `twins`: those like it, which take over what is typed into it. */
export const solveFlat = (
  design: FlatDesign,
  units: Units,
  stock: Stock,
  twins: readonly FlatDesign[] = [],
): { readonly ramp: Flat; readonly whole: Flat | null; readonly findings: readonly Finding[] } => {
  const { drafts, ...flat } = draftFlat(design, units, stock)
  return { ...flat, findings: wordFlatFindings(drafts, design, units, stock, twins) }
}

/** The drafts of a flat with their remedies, each tried on the whole flat and on those that are like it. */
export const wordFlatFindings = (
  drafts: readonly Draft<FlatDesign>[],
  design: FlatDesign,
  units: Units,
  stock: Stock,
  twins: readonly FlatDesign[] = [],
): readonly Finding[] => {
  const before = new Set(drafts.map(({ id, level }) => `${level} ${id}`))
  const stopsTwin = (changed: FlatDesign, twin: FlatDesign): boolean => {
    const known = stopsOfFlat(twin, units, stock).stops
    return stopsOfFlat(carried(design, changed, twin), units, stock).stops.some((id) => !known.includes(id))
  }
  return drafts.map((own): Finding => {
    // where sheets meet is not asked: studs that they need besides only help
    const trial = (changed: FlatDesign): boolean => {
      if (twins.some((twin) => stopsTwin(changed, twin))) return false
      const framed = frameFlat(changed, stock, units)
      return ![
        ...framed.findings,
        ...bearingFindings(changed, framed.framing.studs, framed.frame, units),
      ].some(
        ({ id, level }) =>
          (id === own.id && level === own.level) || (level === 'stop' && !before.has(`stop ${id}`)),
      )
    }
    return worded(own, trial)
  })
}
