import type { Limits } from '../../design/asks.ts'
import type { Design, QuarterDesign } from '../../design/design.ts'
import { panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import type { Point } from '../../geometry/point.ts'
import { isWorthTurning } from '../../page/cover/choose-cover.ts'
import { covers } from '../../page/cover/cover.ts'
import { patternCover } from '../../page/cover/coverage.ts'
import { leastPages, looseLattices } from '../../page/cover/loose-lattice.ts'
import { sheetWindow } from '../../page/sheet/sheet.ts'
import { sideLines } from '../../pattern/side-lines.ts'
import { same } from '../../ramp/check/offer.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { sideLength } from '../../ramp/side/side.ts'
import { solveTransition } from '../../ramp/side/solve-transition.ts'
import { usualLaying } from '../laying.ts'
import type { Measures } from './judge.ts'

/** Where the curve is looked at for what it spans. */
const looks = 8

/** What this ramp takes at least of what takes long to count, read off its curve alone; nothing where there is none. */
export const leastMeasures = (ramp: QuarterDesign, design: Design, limits: Limits): Measures => {
  const { transition } = solveTransition(ramp, design.units)
  if (transition === null) return {}
  const { curve, centre, radius, lip, toe, toeAngle, lipAngle, run } = transition
  const notch = ramp.coping === null ? 0 : notchDepth(ramp.coping)
  const below = curve.placeAtHeight(Math.max(toe.y, lip.y - notch)) ?? curve.toe
  const through = Array.from(
    { length: looks + 1 },
    (_, i): Point => curve.point(curve.toe + ((below - curve.toe) * i) / looks),
  )
  const { sheet, overlap } = usualLaying(design.paper)
  // under the arc, less what may be cut out of it
  const sector = (angle: number): number => angle + Math.sin(angle) * Math.cos(angle)
  const under = centre.y * run - (radius.frame ** 2 / 2) * (sector(lipAngle) - sector(toeAngle))
  const back = ramp.back.from === 'deck' ? ramp.back.value : ramp.back.value - run
  const sizes = sourceSizes(ramp, design)
  const side = under + back * lip.y - ramp.chamfer ** 2 / 2 - notch ** 2 - wheelRoom(ramp)
  return {
    ...(limits.paper !== null && { paper: leastPages(through, sheetWindow(sheet), overlap) }),
    ...(limits.panels !== null && {
      panels: Math.ceil((ramp.sides.count * side) / Math.max(...sizes.map(([a, b]) => a * b)) - 1e-9),
    }),
  }
}

/** The notch reaches no farther down from the top line, and no farther behind the lip. mm */
const notchDepth = ({ by, outside }: NonNullable<QuarterDesign['coping']>): number =>
  by.kind === 'notch' ? Math.max(by.along, by.down) : 2 * outside + Math.abs(by.up) + Math.abs(by.out)

/** Wheels may take a corner of the side. mm² */
const wheelRoom = ({ wheels }: QuarterDesign): number => (wheels === null ? 0 : (3 * wheels.diameter) ** 2)

/** Of all that its sides may be sawn from, mm. */
const sourceSizes = (
  ramp: QuarterDesign,
  { stock, units }: Design,
): readonly (readonly [number, number])[] => [
  ...panelSizes(sideSheet(ramp), stock, units),
  ...stock.offcuts.map(({ size }) => size),
]

/** Whether a panel with or without its trim is longer or wider than the side by less than a step: then it fits as none beside it does. */
export const fillsPanel = (ramp: QuarterDesign, design: Design, step: number): boolean => {
  const { transition } = solveTransition(ramp, design.units)
  if (transition === null) return false
  const { run, heights } = transition
  const own = [sideLength(ramp, run), heights.frame]
  const { trim } = design.stock
  return sourceSizes(ramp, design)
    .flat()
    .flatMap((side) => [side, side - 2 * trim])
    .some((room) => own.some((mm) => room - mm > -same && room - mm < step - same))
}

/** What its sides take at least of the paper, read off the grids that they may lie on; counted only where that leaves it open. */
export const leastPaper = (ramp: SolvedQuarter, design: Design, most: number): number => {
  const { sheet, overlap } = usualLaying(design.paper)
  const window = sheetWindow(sheet)
  const side = sideLines(ramp)
  const [whole, line, ribbon] = covers.map(
    (cover) => looseLattices(side, cover, window, overlap).lattices[0]!.least,
  ) as [number, number, number]
  if (Math.min(whole, line) <= most || ribbon > most) return Math.min(whole, line, ribbon)
  // a ribbon is taken only where it saves pages of the line
  const lines = patternCover(side, 'line', window, overlap).pages
  return isWorthTurning(lines, ribbon) ? ribbon : Math.min(whole, line)
}
