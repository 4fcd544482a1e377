import type { FlatDesign, QuarterDesign, RampDesign, Stock, Units } from '../../design/design.ts'
import { panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import { pathSegments, rectangle } from '../../geometry/path.ts'
import type { Finding } from '../check/check.ts'
import type { Timber } from '../frame/timber.ts'
import type { Side } from '../side/side.ts'
import type { Transition } from '../side/transition.ts'
import { type Splice, type Spliced, solveSplices } from './splice.ts'
import { spliceFindings } from './splice-words.ts'

interface SideSplices {
  readonly splices: readonly Splice[]
  readonly findings: readonly Finding[]
}

/** `stored`: ramps that stand between its sides when they are put away. */
export const quarterSplices = (
  design: QuarterDesign,
  { side, transition }: { readonly side: Side; readonly transition: Transition },
  studs: readonly Timber[],
  behind: readonly Timber[],
  stored: readonly string[],
  stock: Stock,
  units: Units,
): SideSplices => {
  const notch = side.edges.find(({ name }) => name === 'notch')
  const { lip } = transition
  const spliced: Spliced = {
    outline: side.outline,
    timbers: [...studs, ...behind],
    avoid: notch ? pathSegments(notch.path) : [{ kind: 'line', from: lip, to: lip }],
    bottom: side.length - design.chamfer,
  }
  return sideSplices(spliced, studs.length, design, stored, stock, units)
}

export const flatSplices = (
  design: FlatDesign,
  frame: number,
  studs: readonly Timber[],
  stock: Stock,
  units: Units,
): SideSplices => {
  const { length } = design
  const spliced = { outline: rectangle(0, 0, length, frame), timbers: studs, avoid: [], bottom: length }
  return sideSplices(spliced, studs.length, design, [], stock, units)
}

const sideSplices = (
  spliced: Spliced,
  studs: number,
  design: RampDesign,
  stored: readonly string[],
  stock: Stock,
  units: Units,
): SideSplices => {
  const found = solveSplices(spliced, panelSizes(sideSheet(design), stock, units), units)
  // a plate has no room where another ramp stands
  const splices = found && found.length > 0 && stored.length > 0 ? null : found
  return {
    splices: splices ?? [],
    findings: spliceFindings(splices, studs, design.sides.thickness, stored, units),
  }
}
