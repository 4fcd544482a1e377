import type { QuarterDesign, Stock, Units } from '../../design/design.ts'
import { studLength, widthFindings } from '../bays.ts'
import { bendFindings } from '../bend.ts'
import { chamferLimit } from '../chamfer.ts'
import { type Finding, hasStop, note, stop, warn } from '../check.ts'
import { type SolvedCoping, solveCoping } from '../coping.ts'
import { solveDeckBoard } from '../deck-board.ts'
import { solveDeckTimbers } from '../deck-timbers.ts'
import { solvePipe } from '../holes.ts'
import { measured, offer, same } from '../offer.ts'
import type { Quarter } from '../ramp.ts'
import { solveScrews } from '../screws.ts'
import { acrossFindings } from '../seams.ts'
import { type Side, solveSide } from '../side.ts'
import { skinFindings, solveSkin } from '../skin.ts'
import { type LayerPlan, planFindings, planSkin } from '../skin-plan.ts'
import { spanFindings } from '../span.ts'
import { solveStuds } from '../studs.ts'
import { skinThickness, solveTransition, type Transition } from '../transition.ts'

/** Deck over the ground above which guards are commonly asked for: IRC 2018 R312.1 names 30 in. */
const guardHeight = 762

export const solveQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
): { readonly ramp: Quarter; readonly findings: readonly Finding[] } => {
  const show = (mm: number): string => measured(mm, units)
  const { above } = offer(units)
  const { transition, findings: transitionFindings } = solveTransition(design, units)
  const base = {
    kind: 'quarter' as const,
    name: design.name,
    design,
    skinThickness: skinThickness(design),
    width: design.width,
    studLength: studLength(design),
  }
  const findings: Finding[] = [...transitionFindings, ...widthFindings(design, units)]
  if (!transition)
    return {
      ramp: {
        ...base,
        transition,
        length: null,
        deck: null,
        coping: null,
        side: null,
        studs: [],
        deckTimbers: [],
        skin: [],
        plans: [],
        screws: [],
        pipe: null,
        deckBoard: null,
      },
      findings,
    }

  const length = design.back.from === 'length' ? design.back.value : transition.run + design.back.value
  const deck = length - transition.run
  if (deck <= same)
    findings.push(
      stop(
        'length-short',
        `a side ${show(length)} long ends before the lip, ${show(transition.run)} behind the toe; make it ${above(transition.run)} or more`,
      ),
    )
  const pipe = solveCoping(design, transition, deck, units)
  findings.push(...pipe.findings)
  if (design.chamfer > 0)
    findings.push(...chamferFindings(design.chamfer, transition, pipe.coping, length, units))
  const unsolved = hasStop(findings) || (design.coping !== null && pipe.coping === null)
  const side = unsolved ? null : solveSide(transition, pipe.coping, length, design.chamfer)
  if (side) findings.push(...panelFindings(side, transition.run, design, stock, units))
  if (transition.heights.deck > guardHeight + same)
    findings.push(
      note(
        'guard-height',
        `the deck is ${show(transition.heights.deck)} above the floor; above ${show(guardHeight)} a guard is a common requirement: ask your building office`,
      ),
    )
  const panel = { curveEnd: side?.curveEnd ?? transition.curve.lip, length }
  const framing = solveStuds(design, transition, pipe.coping, panel, units)
  const skin = solveSkin(design, transition.curve, pipe.coping, framing.studs)
  const behind = side
    ? solveDeckTimbers(design, transition, pipe.coping, side, framing.studs, units)
    : { timbers: [], findings: [] }
  findings.push(...framing.findings, ...behind.findings, ...skinFindings(design, skin, units))
  const around = {
    design,
    curve: transition.curve,
    studs: framing.studs,
    timbers: behind.timbers,
    panel: stock.panel,
    units,
  }
  const plans = planSkin(around, skin)
  const planAt = (every: number): readonly LayerPlan[] => {
    const other = { ...design, studs: { ...design.studs, every } }
    const { studs } = solveStuds(other, transition, pipe.coping, panel, units)
    return planSkin(
      { ...around, design: other, studs },
      solveSkin(other, transition.curve, pipe.coping, studs),
    )
  }
  const fixing = solveScrews(skin, plans, around, units)
  const laid = solvePipe(design, stock, units)
  const board = side
    ? solveDeckBoard(around, side, pipe.coping, transition.run, behind.timbers)
    : { board: null, findings: [] }
  // a frame that cannot be sawn is not worth fitting out
  if (!hasStop(findings))
    findings.push(
      ...bendFindings(design, transition.radius.frame, units),
      ...spanFindings(design, units),
      ...planFindings(plans, around, planAt),
      ...acrossFindings(around, plans, board.board?.acrossSeams ?? []),
      ...fixing.findings,
      ...board.findings,
      ...laid.findings,
    )
  return {
    ramp: {
      ...base,
      transition,
      length,
      deck,
      coping: pipe.coping,
      side,
      studs: framing.studs,
      deckTimbers: behind.timbers,
      skin,
      plans,
      screws: fixing.screws,
      pipe: laid.pipe,
      deckBoard: board.board,
    },
    findings,
  }
}

const chamferFindings = (
  leg: number,
  transition: Transition,
  coping: SolvedCoping | null,
  length: number,
  units: Units,
): readonly Finding[] => {
  const limit = chamferLimit(transition, coping, length)
  if (leg < limit.most - same) return []
  const remedy = limit.most > 12 ? `it may be at most ${offer(units).below(limit.most)}` : 'leave it out'
  return [
    stop('chamfer', `a chamfer with a leg of ${measured(leg, units)} cuts into ${limit.meets}; ${remedy}`),
  ]
}

const panelFindings = (
  side: Side,
  run: number,
  { back }: QuarterDesign,
  stock: Stock,
  units: Units,
): readonly Finding[] => {
  const show = (mm: number): string => measured(mm, units)
  const [short, long] = stock.panel
  const [low, far] = [Math.min(side.height, side.length), Math.max(side.height, side.length)]
  if (low <= short + same && far <= long + same) return []
  // a panel may lie or stand
  const room = side.height <= short + same ? long : side.height <= long + same ? short : 0
  const { atLeast, atMost } = offer(units)
  const shorter =
    room > run + 50
      ? `make ${back.from === 'deck' ? `the deck ${atMost(room - run)}` : `it ${atMost(room)} long`} or less, or `
      : ''
  return [
    warn(
      'panel-size',
      `a side needs ${atLeast(side.length)} × ${atLeast(side.height)}, a panel of your stock is ${show(long)} × ${show(short)}; ` +
        `${shorter}buy panels of ${atLeast(far)} × ${atLeast(low)} or more`,
    ),
  ]
}
