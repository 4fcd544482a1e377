import type { Asks, Limits } from '../../design/asks.ts'
import type { AskedFigure } from '../../design/check/open-figures.ts'
import { withWidths } from '../../design/check/stores-inside.ts'
import type { Design, QuarterDesign, Units } from '../../design/design.ts'
import { isCurved } from '../../design/kind-traits.ts'
import type { Problem } from '../../design/problem.ts'
import { type OpenReading, readOpenDesign } from '../../design/read.ts'
import { offerSteps, shownOffer } from '../../ramp/check/offer.ts'
import {
  backKey,
  heightKey,
  type Key,
  radiusKey,
  tangentKey,
  toeKey,
  widthKey,
} from '../../ramp/check/remedy.ts'
import { steepest } from '../../ramp/side/circle-stops.ts'
import { type Bind, barsOf, betterOf, bindsOf } from './bars.ts'
import { fillsPanel, leastMeasures, leastPaper } from './bounds.ts'
import { type LimitName, type Measures, passed, quickMeasures, slowMeasures, soundRamp } from './judge.ts'
import { type Candidate, nearestCounted, nearestOf, type Tried, type Try } from './nearest.ts'
import { toeRank } from './toe-rank.ts'
import { clashOf, unmovedBy } from './together.ts'

/** A figure that was left to the program, found. */
export interface Answer {
  readonly ramp: string
  /** its key from the ramp: `height.deck` */
  readonly key: string
  readonly mm: number
  /** as it may be typed in its place */
  readonly shown: string
  readonly asks: Asks
  readonly measures: Measures
  /** limits that are passed all the same, as no value keeps them */
  readonly passed: readonly LimitName[]
  /** limits that no value keeps together, though each can be kept; empty where none is passed so */
  readonly together: readonly LimitName[]
  /** limits that are passed whatever the figure is */
  readonly unmoved: readonly LimitName[]
  /** limits that are kept whatever the figure is */
  readonly idle: readonly LimitName[]
  /** what keeps the figure from going further, or nearer to the angle that was asked for; empty where nothing does */
  readonly binds: readonly Bind[]
  /** the next value nearer to an angle that is missed, as typed; null where it is met as near as steps go */
  readonly missed: string | null
}

export interface SettledDesign {
  readonly design: Design
  readonly answers: readonly Answer[]
}

/** The whole way from text to a design of figures alone: what it leaves open is found, the same each time. */
export const readSettled = (text: string): SettledDesign | { readonly problems: readonly Problem[] } =>
  settled(readOpenDesign(text))

/** What was read, and what it leaves open found. */
export const settled = (reading: OpenReading): SettledDesign | { readonly problems: readonly Problem[] } => {
  if ('problems' in reading) return reading
  const answers: Answer[] = []
  let { design } = reading
  for (const [i, asks] of reading.asks.entries()) {
    if (asks === null) continue
    const found = settle(design, i, asks)
    if ('refused' in found)
      return {
        problems: [
          {
            code: 'solve',
            path: `ramps[${i}].${asks.key}`,
            place: reading.places[i]!,
            message: found.refused,
          },
        ],
      }
    answers.push(found)
    design = withFigure(design, i, keyOf(asks.figure, quarterAt(design, i)), found.mm)
  }
  return { design, answers }
}

const quarterAt = ({ ramps }: Design, i: number): QuarterDesign => {
  const ramp = ramps[i]!
  if (!isCurved(ramp)) throw new TypeError(`${ramp.name} has no curve`)
  return ramp
}

const keyOf = (figure: AskedFigure, ramp: QuarterDesign): Key => {
  switch (figure) {
    case 'height':
      return heightKey(ramp)
    case 'radius':
      return radiusKey(ramp)
    case 'tangent':
      return tangentKey(ramp)
    case 'toe':
      return toeKey
    case 'back':
      return backKey(ramp)
    case 'width':
      return widthKey
    default:
      return figure satisfies never
  }
}

/** A figure typed in; ramps that are kept in one of another width follow. */
const withFigure = (design: Design, i: number, { typed }: Key, mm: number): Design => {
  const changed = typed(quarterAt(design, i), mm)
  return {
    ...design,
    ramps: withWidths(design.ramps.map((ramp, k) => (k === i ? changed : ramp))),
  }
}

const settle = (design: Design, i: number, said: Asks): Answer | { readonly refused: string } => {
  const ramp = quarterAt(design, i)
  const key = keyOf(said.figure, ramp)
  const step = offerSteps[design.units]
  const values = valuesOf(design, ramp, key, step)
  const still = unmovedBy(
    said,
    values.map(({ quick }) => quick),
  )
  const asks = { ...said, limits: limitsWithout(said.limits, still) }
  const candidates = candidatesOf(design, values, asks, step)
  const tried: Try = (candidate, most) => {
    const sound = soundRamp(candidate.ramp, design)
    if (sound === null) return null
    const { paper } = asks.limits
    if (paper !== null) {
      const least = { ...candidate.quick, paper: leastPaper(sound, design, paper) }
      if (passedBy(least, asks) >= most) return null
    }
    const measures = { ...candidate.quick, ...slowMeasures(sound, design, asks.limits) }
    const over = passedBy(measures, asks)
    return over < most ? { candidate, measures, over } : null
  }
  const { panels, paper } = asks.limits
  const nearest =
    panels === null && paper === null
      ? nearestOf(candidates, tried, asks.figure === 'width')
      : nearestCounted(candidates, tried, panels !== null)
  if (nearest === null)
    return {
      refused: `no \`${asks.key}\` makes a ramp that can be built with the other figures; give it a length, read what stops, and change that first`,
    }
  const { candidate, measures: moved, over } = withFewer(nearest, candidates, tried, asks, step)
  const bars = over > 0 || asks.lip === null ? null : barsOf(design, asks, key, candidate, step)
  const sound = still.length > 0 && soundRamp(candidate.ramp, design)
  const measures = sound ? { ...moved, ...slowMeasures(sound, design, said.limits) } : moved
  const passing = passedNames(measures, said)
  return {
    ramp: ramp.name,
    key: asks.key,
    mm: candidate.mm,
    shown: shownOffer(Math.round(candidate.mm / step), design.units),
    asks: said,
    measures,
    passed: passing,
    unmoved: still.filter((name) => passing.includes(name)),
    idle: still.filter((name) => !passing.includes(name)),
    together: clashOf(
      asks,
      over > 0 ? candidates.map(({ quick }) => quick) : [],
      passedNames(measures, asks),
    ),
    binds:
      over > 0
        ? []
        : asks.lip === null
          ? bindsOf(design, asks, key, candidate.ramp, betterOf(asks, candidate.mm, step), candidate.mm)
          : (bars?.binds ?? (candidate === candidates[0] ? [] : ['ramp'])),
    missed: bars?.missed ?? null,
  }
}

const passedBy = (measures: Measures, { limits }: Asks): number =>
  passed(measures, limits).reduce((sum, [, by]) => sum + by, 0)

const passedNames = (measures: Measures, { limits }: Asks): readonly LimitName[] =>
  passed(measures, limits).map(([name]) => name)

/** The value beside it where that keeps one limit more, and passes none that is kept: the least sum may pass one by a hair. */
const withFewer = (
  nearest: Tried,
  candidates: readonly Candidate[],
  tried: Try,
  asks: Asks,
  step: number,
): Tried => {
  const own = passedNames(nearest.measures, asks)
  if (own.length < 2) return nearest
  const beside = candidates
    .filter(({ mm }) => Math.abs(Math.abs(mm - nearest.candidate.mm) - step) < step / 2)
    .flatMap((candidate) => tried(candidate, Number.POSITIVE_INFINITY) ?? [])
    .filter(({ measures }) => {
      const names = passedNames(measures, asks)
      return names.length < own.length && names.every((name) => own.includes(name))
    })
  return beside[0] ?? nearest
}

type Value = Pick<Candidate, 'ramp' | 'mm' | 'quick'>

/** Every value that may be typed and whose curve solves. */
const valuesOf = (
  design: Design,
  ramp: QuarterDesign,
  { range, typed }: Key,
  step: number,
): readonly Value[] => {
  // no toe is −0 mm
  const [first, last] = [Math.ceil(range.least / step - 1e-9) || 0, Math.floor(range.most / step + 1e-9)]
  const values: Value[] = []
  for (let count = first; count <= last; count++) {
    const changed = typed(ramp, count * step)
    const quick = quickMeasures(changed, design)
    if (quick !== null) values.push({ ramp: changed, mm: count * step, quick })
  }
  return values
}

/** The best first. */
const candidatesOf = (
  design: Design,
  values: readonly Value[],
  asks: Asks,
  step: number,
): readonly Candidate[] => {
  const counted = asks.limits.paper !== null || asks.limits.panels !== null
  return values
    .map((value): Candidate => {
      const { ramp, mm, quick } = value
      const over = passedBy(quick, asks)
      return {
        ...value,
        over,
        least: counted ? passedBy({ ...quick, ...leastMeasures(ramp, design, asks.limits) }, asks) : over,
        fills: counted && fillsPanel(ramp, design, step),
        rank: rankOf(asks, mm, quick, design.units),
      }
    })
    .sort((a, b) => a.over - b.over || a.rank - b.rank)
}

const limitsWithout = (limits: Limits, names: readonly LimitName[]): Limits => ({
  ...limits,
  ...Object.fromEntries(names.map((name) => [name, null])),
})

/** An angle is met as near as may be; else the most that the limits allow, for a toe the least blunt one, for a tangent the nearest to 0. */
const rankOf = ({ figure, lip }: Asks, mm: number, quick: Measures, units: Units): number => {
  if (lip !== null) return Math.abs(quick.lip! - lip) + (lip <= steepest && quick.lip! > steepest ? 1 : 0)
  if (figure === 'toe') return toeRank(mm, units)
  if (figure === 'tangent') return Math.abs(mm)
  return -mm
}
