import type { Design } from '../design/design.ts'
import { meetingFindings } from './beside/meeting.ts'
import { type Anew, meetingTrial } from './beside/meeting-trial.ts'
import { stockFindings } from './beside/stock-asked.ts'
import { type Redraw, storesFindings } from './beside/stores.ts'
import { twinsOf } from './beside/twins.ts'
import { type Check, checkOf, type Finding, hasStop } from './check/check.ts'
import { draftFlat, stopsOfFlat } from './kinds/flat.ts'
import { solveFlat } from './kinds/flat-findings.ts'
import { draftQuarter, stopsOfQuarter } from './kinds/quarter.ts'
import { solveQuarter } from './kinds/quarter-findings.ts'
import type { Quarter, Ramp, SolvedDesign, SolvedRamp } from './ramp.ts'
import type { Storing } from './stored.ts'
import { spaceFindings } from './storing/space.ts'
import { outerOf, solveStorings } from './storing/storing.ts'

/** What a design means. Stops come first, then warnings, then notes; within a level in the order of the ramps. */
export const solveDesign = (design: Design): SolvedDesign => {
  const solved = design.ramps.map((ramp) => {
    switch (ramp.kind) {
      case 'quarter':
        return solveQuarter(ramp, design.units, design.stock, {
          stored: storedIn(ramp.name, design),
          twins: twinsOf(ramp, design.ramps),
        })
      case 'flat':
        return solveFlat(ramp, design.units, design.stock, twinsOf(ramp, design.ramps))
      default:
        return ramp satisfies never
    }
  })
  const ramps = solved.map(({ ramp }): Ramp => ramp)
  const names = ramps.map(({ name }) => name)
  const storings = solveStorings(ramps)
  const whole = solved.flatMap(({ whole }): readonly SolvedRamp[] => (whole ? [whole] : []))
  const checks = inOrder(
    solved.flatMap(({ ramp, findings }, i) =>
      [
        ...findings,
        ...besideFindings(ramp, { ramps, storings }, design),
        // the whole design's, told once
        ...(i === 0 ? stockFindings(design) : []),
      ].map((finding) => checkOf(finding, ramp.name, names)),
    ),
  )
  return whole.length === ramps.length && !hasStop(checks)
    ? { stopped: false, ramps: whole, storings, checks }
    : { stopped: true, ramps, checks }
}

/** A design as it was drawn. */
export interface Drawn {
  readonly design: Design
  readonly drawn: SolvedDesign
}

/** Plain data that says the same. */
const alike = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)

/**
 * The ramps of a design as `solveDesign` has them, before anything is said of them: no remedy is tried, which takes most of the
 * time. For what must follow each key that is pressed: a ramp that is as it was `before` is not solved again.
 */
export const drawDesign = (design: Design, before: Drawn | null = null): SolvedDesign => {
  const last =
    before !== null && alike([design.units, design.stock], [before.design.units, before.design.stock])
      ? before
      : null
  const drawn = design.ramps.map((ramp, i) => {
    const was = last?.design.ramps[i]
    const asWas =
      was !== undefined &&
      alike([ramp, storedIn(ramp.name, design)], [was, storedIn(was.name, last!.design)]) &&
      !last!.drawn.stopped
        ? last!.drawn.ramps[i]
        : undefined
    if (asWas !== undefined) return { ramp: asWas, whole: asWas }
    switch (ramp.kind) {
      case 'quarter':
        return draftQuarter(ramp, design.units, design.stock, storedIn(ramp.name, design))
      case 'flat':
        return draftFlat(ramp, design.units, design.stock)
      default:
        return ramp satisfies never
    }
  })
  const whole = drawn.flatMap(({ whole }): readonly SolvedRamp[] => (whole ? [whole] : []))
  return whole.length === drawn.length
    ? { stopped: false, ramps: whole, storings: solveStorings(whole), checks: [] }
    : { stopped: true, ramps: drawn.map(({ ramp }): Ramp => ramp), checks: [] }
}

const rank = { stop: 0, warn: 1, note: 2 } as const

const inOrder = (checks: readonly Check[]): readonly Check[] =>
  checks
    .map((check, i) => ({ check, i }))
    .sort((a, b) => rank[a.check.level] - rank[b.check.level] || a.i - b.i)
    .map(({ check }) => check)

const storedIn = (name: string, { ramps }: Design): readonly string[] =>
  ramps.flatMap((ramp) => (ramp.storesInside?.ramp === name ? [ramp.name] : []))

interface Beside {
  readonly ramps: readonly Ramp[]
  readonly storings: readonly Storing[]
}

/** What a ramp makes of the others of its design. */
const besideFindings = (ramp: Ramp, beside: Beside, design: Design): readonly Finding[] => {
  const room = design.space ? spaceFindings(ramp, design.space, design.units) : []
  switch (ramp.kind) {
    case 'quarter':
      return [...besideQuarter(ramp, beside, design), ...room]
    case 'flat':
      // what it makes of a quarter is for the quarter to say
      return room
    default:
      return ramp satisfies never
  }
}

const besideQuarter = (
  ramp: Quarter,
  { ramps, storings }: Beside,
  { units, stock }: Design,
): readonly Finding[] => {
  const anew: Anew = {
    quarter: (changed) => stopsOfQuarter(changed, units, stock),
    flat: (changed) => stopsOfFlat(changed, units, stock),
  }
  const redraw: Redraw = (changed) => draftQuarter(changed, units, stock).whole
  const outer = outerOf(ramp, ramps)
  const storing = storings.find((one) => one.ramp === ramp.name) ?? null
  return [
    ...(outer ? storesFindings(ramp, outer, storing, units, redraw) : []),
    ...meetingFindings(ramp, ramps, meetingTrial(ramp, ramps, anew), units),
  ]
}
