import type { QuarterDesign, Sheet, Stock, Units } from '../../design/design.ts'
import { largestPanel } from '../../design/panel-sizes.ts'
import { type Draft, hasStop } from '../check/check.ts'
import { widthKey } from '../check/remedy.ts'
import { studLength, timberFindings } from '../frame/bays.ts'
import { nominalFindings, pipeNominalFindings } from '../frame/nominal.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import { meetFindings } from '../screws/meet-findings.ts'
import { type Side, sideLength, solveSide } from '../side/side.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import { solveCoping } from '../side/solve-coping.ts'
import { solveTransition } from '../side/solve-transition.ts'
import { lipGroove } from '../skin/lip-groove.ts'
import { acrossFindings } from '../skin/seams.ts'
import { planFindings } from '../skin/skin-plan.ts'
import { quarterSplices } from '../splice/side-splices.ts'
import { fixQuarter } from './quarter-fixing.ts'
import { frameQuarter, type QuarterFrame } from './quarter-frame.ts'

/** Its curve and the ids of what stops it, and no more. */
export const stopsOfQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
): { readonly transition: Quarter['transition']; readonly stops: readonly string[] } => {
  const shallow = design.chamfer === 0
  const { drafts, frame } = frameQuarter(design, units, stock, () => false, { shallow })!
  const stops = drafts.filter(({ level }) => level === 'stop').map(({ id }) => id)
  return { transition: frame?.transition ?? null, stops }
}

/** Its frame, where nothing stops it and nothing is told of it by one of these ids. Its screws are not asked: none of theirs stops. */
export const frameWithout = (
  ids: readonly string[],
  design: QuarterDesign,
  units: Units,
  stock: Stock,
): QuarterFrame['frame'] => {
  const bad = ({ level, id }: Draft): boolean => level === 'stop' || ids.includes(id)
  if (timberFindings(design, stock, [], units).some(bad)) return null
  const framed = frameQuarter(design, units, stock, (found) => found.some(bad), {})
  return framed?.frame?.side ? framed.frame : null
}

/** A side on its timbers: a quarter as its pages show it, its screws aside. */
export type FramedSide = Pick<
  SolvedQuarter,
  'side' | 'transition' | 'studs' | 'deckTimbers' | 'splices' | 'skinThickness'
>

/** Its side and timbers, where nothing stops it. */
export const framedSide = (design: QuarterDesign, units: Units, stock: Stock): FramedSide | null => {
  const frame = frameWithout([], design, units, stock)
  if (!frame?.side) return null
  const { transition, side, studs, behind } = frame
  const { splices } = quarterSplices(design, { side, transition }, studs, behind.timbers, [], stock, units)
  return {
    side,
    transition,
    studs,
    deckTimbers: behind.timbers,
    splices,
    skinThickness: skinThickness(design),
  }
}

/** Its side as it is where nothing stops it; null where its curve or its seat is stopped. */
export const sideOfQuarter = (design: QuarterDesign, units: Units): Side | null => {
  const { transition, findings } = solveTransition(design, units)
  if (!transition || hasStop(findings)) return null
  const length = sideLength(design, transition.run)
  const { coping, findings: seated } = solveCoping(design, transition, length - transition.run, units)
  return hasStop(seated) ? null : solveSide(transition, coping, length, design.chamfer)
}

/** The ramp, and what is said of it before any remedy is tried. */
export const draftQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  stored: readonly string[] = [],
): { readonly ramp: Quarter; readonly whole: SolvedQuarter | null; readonly drafts: readonly Draft[] } => {
  const { drafts: framed, frame } = frameQuarter(design, units, stock, () => false, { stored })!
  const bought = timberFindings(design, stock, stored, units)
  if (!frame) return { ramp: curveless(design), whole: null, drafts: [...framed, ...bought] }
  const { transition, length, coping, side, studs, behind } = frame
  const around = {
    design,
    curve: transition.curve,
    studs,
    timbers: behind.timbers,
    panelOf: (sheet: Sheet) => largestPanel(sheet, stock, units),
    units,
  }
  const { splices, findings: spliced } = side
    ? quarterSplices(design, { side, transition }, studs, behind.timbers, stored, stock, units)
    : { splices: [], findings: [] }
  const fixed = fixQuarter(around, stock, frame, splices)
  const { laid, fixing, board, piped } = fixed
  const endsOf = (changed: QuarterDesign) => draftQuarter(changed, units, stock, stored).ramp.endScrews
  const drafts: Draft[] = [
    ...framed,
    ...bought,
    ...nominalFindings(design, units),
    ...pipeNominalFindings(design, units),
    ...behind.findings,
  ]
  // nor worth fitting out
  if (!hasStop(drafts))
    drafts.push(
      ...spliced,
      ...planFindings(laid, around),
      ...acrossFindings(around, laid, board.board),
      ...fixing.findings,
      ...board.findings,
      ...piped.findings,
      ...meetFindings(design, fixed.ends, studs.length, widthKey, endsOf, units),
    )
  const ramp = {
    ...namedOf(design),
    transition,
    length,
    deck: length - transition.run,
    coping,
    side,
    lipGroove: lipGroove(design, transition, units),
    studs,
    deckTimbers: behind.timbers,
    endScrews: fixed.ends,
    splices,
    skin: fixing.skin,
    pipe: piped.pipe,
    deckBoard: board.board,
    wheels: frame.wheels,
  }
  return { ramp, whole: side && !hasStop(drafts) ? { ...ramp, side } : null, drafts }
}

const namedOf = (design: QuarterDesign) => ({
  kind: 'quarter' as const,
  name: design.name,
  design,
  skinThickness: skinThickness(design),
  width: design.width,
  studLength: studLength(design),
})

/** A stop left it without a curve. */
const curveless = (design: QuarterDesign): Quarter => ({
  ...namedOf(design),
  transition: null,
  length: null,
  deck: null,
  coping: null,
  side: null,
  lipGroove: null,
  studs: [],
  deckTimbers: [],
  endScrews: [],
  skin: [],
  splices: [],
  pipe: null,
  deckBoard: null,
  wheels: null,
})
