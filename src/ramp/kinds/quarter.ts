import type { QuarterDesign, Sheet, Stock, Units } from '../../design/design.ts'
import { largestPanel } from '../../design/panel-sizes.ts'
import { toeStepFindings } from '../beside/toe-step.ts'
import { type Draft, type Finding, hasStop, stop, type Trial } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { backKey, orWays, quietThat } from '../check/remedy.ts'
import type { Curve } from '../curve/curve.ts'
import { studLength, timberFindings, widthFindings } from '../frame/bays.ts'
import { solveDeckTimbers } from '../frame/deck-timbers.ts'
import { lipFreeFindings } from '../frame/lip-free.ts'
import { nominalFindings } from '../frame/nominal.ts'
import { solvePipe } from '../frame/pipe.ts'
import type { Stud } from '../frame/stud.ts'
import { solveStuds } from '../frame/studs.ts'
import { type SolvedWheels, solveWheels } from '../frame/wheels.ts'
import { featherFindings } from '../hazard/feather.ts'
import { guardFindings } from '../hazard/guard.ts'
import { hazardFindings, hazards } from '../hazard/hazards.ts'
import { ledgeFindings } from '../hazard/ledge.ts'
import { narrowFindings } from '../hazard/narrowest.ts'
import { stiffSheetFindings } from '../hazard/stiff-sheets.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import { chamferFindings } from '../side/chamfer.ts'
import type { SolvedCoping } from '../side/coping.ts'
import { panelFindings } from '../side/panel-size.ts'
import { type Side, solveSide } from '../side/side.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import { solveCoping } from '../side/solve-coping.ts'
import { solveTransition } from '../side/solve-transition.ts'
import type { Transition } from '../side/transition.ts'
import { bendFindings } from '../skin/bend.ts'
import { solveDeckBoard } from '../skin/deck-board.ts'
import { solveScrews } from '../skin/screws.ts'
import { withSeamStuds } from '../skin/seam-studs.ts'
import { acrossFindings } from '../skin/seams.ts'
import { type SkinLayer, skinFindings, solveSkin } from '../skin/skin.ts'
import { planFindings, planSkin } from '../skin/skin-plan.ts'
import { quarterSplices } from '../splice/side-splices.ts'

/** `stored`: names of the ramps that store inside this one. */
export const solveQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  stored: readonly string[] = [],
): {
  readonly ramp: Quarter
  readonly whole: SolvedQuarter | null
  readonly findings: readonly Finding[]
} => {
  const { drafts, ...solved } = draftQuarter(design, units, stock, stored)
  return { ...solved, findings: wordFindings(drafts, units, stock) }
}

/** What no remedy of another finding may lead to, be it only a warning. */
const neverOffered: readonly string[] = ['wood-narrow']

/** The drafts of a ramp with their remedies, each tried on the whole ramp. */
export const wordFindings = (drafts: readonly Draft[], units: Units, stock: Stock): readonly Finding[] => {
  const before = new Set(drafts.map(({ id, level }) => `${level} ${id}`))
  const trialOf =
    (own: Draft): Trial =>
    (changed, without = []) => {
      const isNew = ({ id, level }: Draft): boolean => !before.has(`${level} ${id}`)
      // what a note offers is a betterment: nothing may be lost by it
      const bad = (draft: Draft): boolean =>
        own.level === 'note'
          ? draft.id === 'stud-toe' || (isNew(draft) && draft.level !== 'note')
          : (draft.id === own.id && (draft.level === own.level || draft.level === 'stop')) ||
            ((draft.level === 'stop' || neverOffered.includes(draft.id)) && isNew(draft)) ||
            (draft.level !== 'note' && without.includes(draft.id) && isNew(draft))
      // without a chamfer none of the last checks stops
      const shallow = changed.chamfer === 0 && ![own.id, ...without].some((id) => hazards.includes(id))
      return frameQuarter(changed, units, stock, (found) => found.some(bad), { shallow }) !== null
    }
  return drafts.map(
    (draft): Finding => ({
      ...draft,
      message: typeof draft.message === 'string' ? draft.message : draft.message(trialOf(draft)),
    }),
  )
}

/** What can be sawn, and what is said of it before any remedy is tried. */
interface QuarterFrame {
  readonly drafts: readonly Draft[]
  /** the rest hangs on a curve */
  readonly frame: {
    readonly transition: Transition
    readonly length: number
    readonly coping: SolvedCoping | null
    readonly side: Side | null
    readonly panel: { readonly curveEnd: number; readonly length: number }
    readonly studs: readonly Stud[]
    readonly behind: ReturnType<typeof solveDeckTimbers>
    readonly skin: readonly SkinLayer[]
    readonly wheels: SolvedWheels | null
  } | null
}

/**
 * All parts in which a stop may lie; null as soon as `enough` says that no more need be known. `shallow`: nor anything of what is
 * dangerous though it can be sawn.
 */
const frameQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  enough: (found: readonly Draft[]) => boolean,
  { stored = [], shallow = false }: { readonly stored?: readonly string[]; readonly shallow?: boolean },
): QuarterFrame | null => {
  const show = (mm: number): string => measured(mm, units)
  const { transition, findings: transitionFindings } = solveTransition(design, units)
  const drafts: Draft[] = [
    ...transitionFindings,
    ...(transition ? toeStepFindings(design, transition, units) : []),
    ...(transition ? ledgeFindings(design, transition, units) : []),
    ...featherFindings(design, units),
    ...widthFindings(design, units),
  ]
  if (enough(drafts)) return null
  if (!transition) return { drafts, frame: null }
  const length = design.back.from === 'length' ? design.back.value : transition.run + design.back.value
  const deck = length - transition.run
  // a side that ends before its lip has no back to measure from
  const endless = deck <= same
  if (endless)
    drafts.push(
      stop(
        'length-short',
        (trial: Trial) =>
          `a side ${show(length)} long ends before the lip, ${show(transition.run)} behind the toe; ` +
          longerWay(trial, design, transition.run, units),
      ),
    )
  const { coping, findings } = solveCoping(design, transition, deck, units)
  drafts.push(...findings.filter(({ id }) => !endless || id !== 'notch-long'))
  if (design.chamfer > 0 && !endless)
    drafts.push(...chamferFindings(design, transition, coping, length, units))
  if (enough(drafts)) return null
  const unsolved = hasStop(drafts) || (design.coping !== null && coping === null)
  const side = unsolved ? null : solveSide(transition, coping, length, design.chamfer)
  // what ails the outline is seen whatever the width, so that a wider ramp brings nothing new
  const outlined =
    drafts.every(({ id, level }) => level !== 'stop' || id === 'width') && !(design.coping && !coping)
  if (outlined)
    drafts.push(
      ...narrowFindings(design, side ?? solveSide(transition, coping, length, design.chamfer), units),
    )
  if (side) drafts.push(...panelFindings(side, transition.run, design, stock, units))
  drafts.push(...guardFindings(transition.heights.deck, units))
  const panel = { curveEnd: side?.curveEnd ?? transition.curve.lip, length }
  const framing = solveStuds(design, transition, coping, panel, units)
  const { studs, skin } = skinned(design, transition.curve, coping, framing, stock, units)
  if (!endless)
    drafts.push(
      ...framing.findings,
      ...lipFreeFindings(design, framing.studs, transition.curve.lengthTo(panel.curveEnd), units),
      ...skinFindings(design, skin, units),
    )
  const rolling = side
    ? solveWheels(design, transition, coping, length, studs, units)
    : { wheels: null, findings: [] }
  drafts.push(...rolling.findings)
  // a frame that cannot be sawn is not worth bending a skin on
  if (!hasStop(drafts))
    drafts.push(
      ...bendFindings(design, transition.tightest, units),
      ...stiffSheetFindings(design, transition.tightest, units),
    )
  if (enough(drafts)) return null
  const behind =
    side && !shallow
      ? solveDeckTimbers(design, transition, coping, side, studs, rolling.wheels, units)
      : { timbers: [], findings: [] }
  // a side that is all but sawn in two can still fall over
  if (!shallow && side && drafts.every(({ id, level }) => level !== 'stop' || id === 'wood-narrow')) {
    const standing = { transition, side, coping, studs, deckTimbers: behind.timbers, skin, stored }
    drafts.push(...hazardFindings(design, standing, drafts, units))
    if (enough(drafts)) return null
  }
  return {
    drafts,
    frame: { transition, length, coping, side, panel, studs, behind, skin, wheels: rolling.wheels },
  }
}

/** The skin on its studs, with those that its seams need besides. */
const skinned = (
  design: QuarterDesign,
  curve: Curve,
  coping: SolvedCoping | null,
  { studs, stand }: Pick<ReturnType<typeof solveStuds>, 'studs' | 'stand'>,
  stock: Stock,
  units: Units,
): { readonly studs: readonly Stud[]; readonly skin: readonly SkinLayer[] } => {
  const skin = solveSkin(design, curve, coping, studs)
  const panelOf = (sheet: Sheet) => largestPanel(sheet, stock, units)
  const all = withSeamStuds({ design, curve, studs, timbers: [], panelOf, units }, skin, stand)
  return { studs: all, skin: all === studs ? skin : solveSkin(design, curve, coping, all) }
}

/** The ramp, and what is said of it before any remedy is tried. */
export const draftQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  stored: readonly string[] = [],
): { readonly ramp: Quarter; readonly whole: SolvedQuarter | null; readonly drafts: readonly Draft[] } => {
  const { drafts: framed, frame } = frameQuarter(design, units, stock, () => false, { stored })!
  const base = {
    kind: 'quarter' as const,
    name: design.name,
    design,
    skinThickness: skinThickness(design),
    width: design.width,
    studLength: studLength(design),
  }
  if (!frame)
    return {
      ramp: {
        ...base,
        transition: null,
        length: null,
        deck: null,
        coping: null,
        side: null,
        studs: [],
        deckTimbers: [],
        skin: [],
        splices: [],
        pipe: null,
        deckBoard: null,
        wheels: null,
      },
      whole: null,
      drafts: framed,
    }

  const { transition, length, coping, side, studs, behind } = frame
  const around = {
    design,
    curve: transition.curve,
    studs,
    timbers: behind.timbers,
    panelOf: (sheet: Sheet) => largestPanel(sheet, stock, units),
    units,
  }
  const laid = planSkin(around, frame.skin)
  const fixing = solveScrews(laid, around, units)
  const piped = solvePipe(design, stock, units)
  const board = side
    ? solveDeckBoard(around, side, coping, transition.run, behind.timbers)
    : { board: null, findings: [] }
  const { splices, findings: spliced } = side
    ? quarterSplices(design, { side, transition }, [...studs, ...behind.timbers], stored, stock, units)
    : { splices: [], findings: [] }
  const drafts: Draft[] = [
    ...framed,
    ...timberFindings(design, stock, stored, units),
    ...nominalFindings(design, units),
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
    )
  const ramp = {
    ...base,
    transition,
    length,
    deck: length - transition.run,
    coping,
    side,
    studs,
    deckTimbers: behind.timbers,
    splices,
    skin: fixing.skin,
    pipe: piped.pipe,
    deckBoard: board.board,
    wheels: frame.wheels,
  }
  return { ramp, whole: side && !hasStop(drafts) ? { ...ramp, side } : null, drafts }
}

/** A side that reaches past the lip. */
const longerWay = (trial: Trial, design: QuarterDesign, run: number, units: Units): string => {
  const long = quietThat(trial, design, backKey(design), run, 1, units)
  return orWays(
    [long && `make it ${long.shown} or more`],
    'no length alone puts it right: see to the notch, the chamfer and the studs as well, or say `deck` in place of `length`',
  )
}
