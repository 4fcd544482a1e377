import type { QuarterDesign, Sheet, Stock, Units } from '../../design/design.ts'
import { largestPanel, panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import { toeStepFindings } from '../beside/toe-step.ts'
import { type Draft, hasStop, stop, type Trial } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { backKey, orWays, quietThat, widthKey } from '../check/remedy.ts'
import { type Told, tell, told } from '../check/told.ts'
import type { Curve } from '../curve/curve.ts'
import { widthFindings } from '../frame/bays.ts'
import { solveDeckTimbers } from '../frame/deck-timbers.ts'
import { lipFreeFindings } from '../frame/lip-free.ts'
import type { Stud } from '../frame/stud.ts'
import { solveStuds } from '../frame/studs.ts'
import { type SolvedWheels, solveWheels } from '../frame/wheels.ts'
import { featherFindings } from '../hazard/feather.ts'
import { guardFindings } from '../hazard/guard.ts'
import { hazardFindings } from '../hazard/hazards.ts'
import { ledgeFindings } from '../hazard/ledge.ts'
import { narrowFindings } from '../hazard/narrowest.ts'
import { closingSheet, runOutFindings } from '../hazard/run-out.ts'
import { stiffSheetFindings } from '../hazard/stiff-sheets.ts'
import { chamferFindings } from '../side/chamfer.ts'
import type { SolvedCoping } from '../side/coping.ts'
import { panelFindings, panelRoom } from '../side/panel-size.ts'
import { type Side, sideLength, solveSide } from '../side/side.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import { solveCoping } from '../side/solve-coping.ts'
import { solveTransition } from '../side/solve-transition.ts'
import type { Transition } from '../side/transition.ts'
import { bendFindings } from '../skin/bend.ts'
import { planSeams, type SeamPlan } from '../skin/seam-studs.ts'
import { type SkinLayer, skinFindings, solveSkin } from '../skin/skin.ts'

/** What can be sawn, and what is said of it before any remedy is tried. */
export interface QuarterFrame {
  readonly drafts: readonly Draft[]
  /** what is dangerous was looked for: not so where a stop hides it */
  readonly hazardsKnown: boolean
  /** the rest hangs on a curve */
  readonly frame: {
    readonly transition: Transition
    readonly length: number
    readonly coping: SolvedCoping | null
    readonly side: Side | null
    readonly studs: readonly Stud[]
    readonly behind: ReturnType<typeof solveDeckTimbers>
    readonly skin: readonly SkinLayer[]
    readonly seams: SeamPlan['seams']
    readonly wheels: SolvedWheels | null
  } | null
}

/**
 * All parts in which a stop may lie; null as soon as `enough` says that no more need be known. `shallow`: nor anything of what is
 * dangerous though it can be sawn.
 */
export const frameQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  enough: (found: readonly Draft[]) => boolean,
  { stored = [], shallow = false }: { readonly stored?: readonly string[]; readonly shallow?: boolean },
): QuarterFrame | null => {
  const { transition, findings } = solveTransition(design, units)
  const drafts = [...findings, ...curveFindings(design, transition, units)]
  if (enough(drafts)) return null
  if (!transition) return { drafts, hazardsKnown: false, frame: null }
  const outline = outlineOf(design, transition, units)
  const { length, coping, endless } = outline
  drafts.push(...outline.findings)
  if (enough(drafts)) return null
  const { side, findings: sawn } = sideOf(design, transition, outline, drafts, stock, units)
  drafts.push(...sawn)
  const framing = framingOf(design, transition, outline, side, units)
  // the search for seams takes most of the time
  if (!endless && enough([...drafts, ...framing.onStuds])) return null
  const framed = framedOf(design, transition, outline, side, framing, stock, units)
  const { studs, skin, seams, wheels } = framed
  if (!endless) drafts.push(...framed.onStuds)
  drafts.push(...framed.rolling)
  // a frame that cannot be sawn is not worth bending a skin on
  if (!hasStop(drafts))
    drafts.push(
      ...bendFindings(design, transition.tightest, units),
      ...stiffSheetFindings(design, transition.tightest, units),
      ...runOutFindings(design, transition.tightest - skinThickness(design), units),
    )
  if (enough(drafts)) return null
  const behind =
    side && !shallow
      ? solveDeckTimbers(design, transition, coping, side, studs, wheels, units)
      : { timbers: [], findings: [] }
  // a side that is all but sawn in two can still fall over
  const hazardsKnown =
    !shallow && side !== null && drafts.every(({ id, level }) => level !== 'stop' || id === 'wood-narrow')
  if (hazardsKnown) {
    const standing = { transition, side, coping, studs, deckTimbers: behind.timbers, skin, stored }
    drafts.push(...hazardFindings(design, standing, drafts, units))
    if (enough(drafts)) return null
  }
  const frame = { transition, length, coping, side, studs, behind, skin, seams, wheels }
  return { drafts, hazardsKnown, frame }
}

/** What is said of the curve at its ends, and of what needs none. */
const curveFindings = (
  design: QuarterDesign,
  transition: Transition | null,
  units: Units,
): readonly Draft[] => [
  ...(transition
    ? toeStepFindings(
        design,
        transition,
        closingSheet(transition.tightest - skinThickness(design), units),
        units,
      )
    : []),
  ...(transition ? ledgeFindings(design, transition, units) : []),
  ...featherFindings(design, units),
  ...widthFindings(design, widthKey, units),
]

/** How long the side is, and what is cut away of it. */
interface Outline {
  readonly length: number
  /** it ends before its lip: there is no back to measure from */
  readonly endless: boolean
  readonly coping: SolvedCoping | null
}

const outlineOf = (
  design: QuarterDesign,
  transition: Transition,
  units: Units,
): Outline & { readonly findings: readonly Draft[] } => {
  const { run } = transition
  const length = sideLength(design, run)
  const endless = length - run <= same
  const { coping, findings } = solveCoping(design, transition, length - run, units)
  return {
    length,
    endless,
    coping,
    findings: [
      ...(endless ? [shortStop(design, length, run, units)] : []),
      ...findings.filter(({ id }) => !endless || id !== 'notch-long'),
      ...(design.chamfer > 0 && !endless ? chamferFindings(design, transition, coping, length, units) : []),
    ],
  }
}

/** The panel, and how it is sawn; null where a stop of `before` leaves it open. */
const sideOf = (
  design: QuarterDesign,
  transition: Transition,
  { length, coping }: Outline,
  before: readonly Draft[],
  stock: Stock,
  units: Units,
): { readonly side: Side | null; readonly findings: readonly Draft[] } => {
  const seatless = design.coping !== null && coping === null
  const solved = (): Side => solveSide(transition, coping, length, design.chamfer)
  const side = hasStop(before) || seatless ? null : solved()
  // what ails the outline is seen whatever the width, so that a wider ramp brings nothing new
  const outlined = before.every(({ id, level }) => level !== 'stop' || id === 'width') && !seatless
  return {
    side,
    findings: [
      ...(outlined ? narrowFindings(design, side ?? solved(), units) : []),
      ...(side ? panelFindings(side, transition.run, design, stock, units) : []),
      ...guardFindings(transition.heights.deck, units),
    ],
  }
}

/** Studs as they carry a skin in one piece. */
const framingOf = (
  design: QuarterDesign,
  transition: Transition,
  { length, coping }: Outline,
  side: Side | null,
  units: Units,
) => {
  const panel = { curveEnd: side?.curveEnd ?? transition.curve.lip, length }
  const framing = solveStuds(design, transition, coping, panel, units)
  const end = transition.curve.lengthTo(panel.curveEnd)
  return {
    framing,
    onStuds: [...framing.findings, ...lipFreeFindings(design, framing.studs, end, units)],
  }
}

/** Studs with those that seams need besides, the skin on them, wheels. */
const framedOf = (
  design: QuarterDesign,
  transition: Transition,
  { length, coping }: Outline,
  side: Side | null,
  { framing, onStuds }: ReturnType<typeof framingOf>,
  stock: Stock,
  units: Units,
) => {
  const { studs, skin, seams } = skinned(design, transition.curve, coping, side, framing, stock, units)
  const { wheels, findings: rolling } = side
    ? solveWheels(design, transition, coping, length, studs, units)
    : { wheels: null, findings: [] }
  return { studs, skin, seams, wheels, rolling, onStuds: [...onStuds, ...skinFindings(design, skin, units)] }
}

/** The skin on its studs, with those that its seams need besides. */
const skinned = (
  design: QuarterDesign,
  curve: Curve,
  coping: SolvedCoping | null,
  side: Side | null,
  { studs, stand }: Pick<ReturnType<typeof solveStuds>, 'studs' | 'stand'>,
  stock: Stock,
  units: Units,
): SeamPlan & { readonly skin: readonly SkinLayer[] } => {
  const skin = solveSkin(design, curve, coping, studs)
  const panelOf = (sheet: Sheet) => largestPanel(sheet, stock, units)
  const plan = planSeams(
    { design, curve, studs, timbers: [], panelOf, units },
    skin,
    stand,
    side !== null && side.length <= panelRoom(side.height, panelSizes(sideSheet(design), stock, units)),
  )
  return { ...plan, skin: plan.studs === studs ? skin : solveSkin(design, curve, coping, plan.studs) }
}

/** A side that ends before its lip. */
const shortStop = (design: QuarterDesign, length: number, run: number, units: Units): Draft => {
  const show = (mm: number): string => measured(mm, units)
  return stop('length-short', (trial: Trial) =>
    tell(
      `a side ${show(length)} long ends before the lip, ${show(run)} behind the toe; `,
      longerWay(trial, design, run, units),
    ),
  )
}

/** A side that reaches past the lip. */
const longerWay = (trial: Trial, design: QuarterDesign, run: number, units: Units): Told => {
  const long = quietThat(trial, design, backKey(design), run, 1, units)
  return orWays(
    [long && told`make it ${long} or more`],
    'no length alone puts it right: see to the notch, the chamfer and the studs as well, or say `deck` in place of `length`',
  )
}
