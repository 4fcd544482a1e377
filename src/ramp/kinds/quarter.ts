import type { RampDesign, Stock, Units } from '../../design/design.ts'
import { showLength } from '../../length.ts'
import { type Finding, hasStop, note, stop, warn } from '../check.ts'
import { solveCoping } from '../coping.ts'
import type { Ramp } from '../ramp.ts'
import { type Side, solveSide } from '../side.ts'
import { solveSkin } from '../skin.ts'
import { solveStuds } from '../studs.ts'
import { skinThickness, solveTransition } from '../transition.ts'

/** Deck over the ground from which guards are commonly asked for: IRC 2018 R312.1 names 30 in. */
const guardHeight = 762

export const solveQuarter = (
  design: RampDesign,
  units: Units,
  stock: Stock,
): { readonly ramp: Ramp; readonly findings: readonly Finding[] } => {
  const show = (mm: number): string => showLength(mm, units)
  const { transition, findings: transitionFindings } = solveTransition(design, units)
  const bays = design.sides.count - 1
  const base = {
    kind: 'quarter' as const,
    name: design.name,
    design,
    skinThickness: skinThickness(design),
    width: design.width,
    studLength: (design.width - design.sides.count * design.sides.thickness) / bays,
  }
  const findings: Finding[] = [...transitionFindings]
  if (base.studLength <= 0)
    findings.push(
      stop(
        'width',
        `${design.sides.count} sides of ${show(design.sides.thickness)} leave no room for studs in a width of ${show(design.width)}; ` +
          `make it wider than ${show(design.sides.count * design.sides.thickness)}`,
      ),
    )
  if (!transition)
    return {
      ramp: { ...base, transition, length: null, deck: null, coping: null, side: null, studs: [], skin: [] },
      findings,
    }

  const length = design.back.from === 'length' ? design.back.value : transition.run + design.back.value
  const deck = length - transition.run
  if (deck <= 0)
    findings.push(
      stop(
        'length-short',
        `a side ${show(length)} long ends before the lip, ${show(transition.run)} behind the toe; make it longer than ${show(transition.run)}`,
      ),
    )
  const leastFlat = Math.min(length, transition.heights.frame)
  if (design.chamfer > 0 && design.chamfer >= leastFlat)
    findings.push(
      stop(
        'chamfer',
        `a chamfer with a leg of ${show(design.chamfer)} cuts the whole back away; it must be less than ${show(leastFlat)}`,
      ),
    )
  const pipe = solveCoping(design, transition, deck, units)
  findings.push(...pipe.findings)
  const unsolved = hasStop(findings) || (design.coping !== null && pipe.coping === null)
  const side = unsolved ? null : solveSide(transition, pipe.coping, length, design.chamfer)
  if (!unsolved && !side)
    findings.push(
      stop(
        'notch-floor',
        'the round seat does not meet the curve; take a square seat, or bring the pipe further out of the face',
      ),
    )
  if (side) findings.push(...panelFindings(side, stock, show))
  if (transition.heights.deck >= guardHeight)
    findings.push(
      note(
        'guard-height',
        `the deck is ${show(transition.heights.deck)} above the floor; from ${show(guardHeight)} a guard is a common requirement: ask your building office`,
      ),
    )
  const framing = solveStuds(design, transition, pipe.coping, side?.curveEnd ?? transition.curve.lip, units)
  findings.push(...framing.findings)
  return {
    ramp: {
      ...base,
      transition,
      length,
      deck,
      coping: pipe.coping,
      side,
      studs: framing.studs,
      skin: solveSkin(design, transition, pipe.coping, framing.studs),
    },
    findings,
  }
}

const panelFindings = (side: Side, stock: Stock, show: (mm: number) => string): readonly Finding[] => {
  const [short, long] = stock.panel
  const [low, far] = [Math.min(side.height, side.length), Math.max(side.height, side.length)]
  if (low <= short && far <= long) return []
  return [
    warn(
      'panel-size',
      `a side needs ${show(side.length)} × ${show(side.height)}, a panel of your stock is ${show(long)} × ${show(short)}; ` +
        'shorten the deck, or buy a larger panel',
    ),
  ]
}
