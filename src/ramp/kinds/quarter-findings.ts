import type { QuarterDesign, Stock, Units } from '../../design/design.ts'
import { carried } from '../beside/twins.ts'
import { anyWarning, type Draft, type Finding, hasStop, type Trial, worded } from '../check/check.ts'
import { hazards } from '../hazard/hazards.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import { draftQuarter, stopsOfQuarter } from './quarter.ts'
import { frameQuarter } from './quarter-frame.ts'

/** Other ramps of the file that a quarter has to do with. */
export interface Others {
  /** names of those that store inside it */
  readonly stored: readonly string[]
  /** those like it, which take over what is typed into it */
  readonly twins: readonly QuarterDesign[]
}

export const solveQuarter = (
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  { stored, twins }: Others,
): {
  readonly ramp: Quarter
  readonly whole: SolvedQuarter | null
  readonly findings: readonly Finding[]
} => {
  const { drafts, ...solved } = draftQuarter(design, units, stock, stored)
  return { ...solved, findings: wordFindings(drafts, design, units, stock, twins) }
}

/** What no remedy of another finding may lead to, be it only a warning. */
const neverOffered: readonly string[] = ['wood-narrow']

/** Warnings of what hurts a rider: what brings one is offered only where nothing else is found. */
const dangers: readonly string[] = [...hazards, 'stud-toe', 'stud-lip']

const bringsDanger = ' (with this another danger comes: type it, and see to what is said then)'

const keyOf = ({ id, level }: Draft): string => `${level} ${id}`

/** The drafts of a ramp with their remedies, each tried on the whole ramp and on those that are like it. */
export const wordFindings = (
  drafts: readonly Draft[],
  design: QuarterDesign,
  units: Units,
  stock: Stock,
  twins: readonly QuarterDesign[] = [],
): readonly Finding[] => {
  const before = new Set(drafts.map(keyOf))
  const twinStops = new Map<QuarterDesign, readonly string[]>()
  /** Whether what is typed stops a twin where nothing did. */
  const failsTwin = (changed: QuarterDesign, twin: QuarterDesign): boolean => {
    const now = carried(design, changed, twin)
    if (now === twin) return false
    const known = twinStops.get(twin) ?? stopsOfQuarter(twin, units, stock).stops
    twinStops.set(twin, known)
    return stopsOfQuarter(now, units, stock).stops.some((id) => !known.includes(id))
  }
  const stopped = hasStop(drafts)
  const trialOf =
    (own: Draft, barred: (() => void) | null): Trial =>
    (changed, without = []) => {
      const every = without.includes(anyWarning)
      const isNew = (draft: Draft): boolean => !before.has(keyOf(draft))
      // what a note offers is a betterment: nothing may be lost by it
      const bad = (draft: Draft): boolean =>
        own.level === 'note'
          ? draft.id === 'stud-toe' || (isNew(draft) && draft.level !== 'note')
          : (draft.id === own.id && (draft.level === own.level || draft.level === 'stop')) ||
            ((draft.level === 'stop' || neverOffered.includes(draft.id)) && isNew(draft)) ||
            (draft.level !== 'note' && (every || without.includes(draft.id)) && isNew(draft))
      const hurts = (found: readonly Draft[]): boolean =>
        barred !== null && found.some((one) => one.level !== 'note' && dangers.includes(one.id) && isNew(one))
      const fails = (found: readonly Draft[]): boolean => {
        if (found.some(bad)) return true
        if (!hurts(found)) return false
        barred!()
        return true
      }
      // without a chamfer none of the last checks stops
      const shallow =
        barred === null &&
        changed.chamfer === 0 &&
        !every &&
        ![own.id, ...without].some((id) => hazards.includes(id))
      const framed = frameQuarter(changed, units, stock, fails, { shallow })
      // a stop hides what is dangerous: nothing says then that none of it is new
      const hidden = framed?.hazardsKnown === false && without.some((id) => hazards.includes(id))
      return framed !== null && !hidden && !twins.some((twin) => failsTwin(changed, twin))
    }
  return drafts.map((draft) => {
    // a stop hides what was dangerous before: nothing tells then what is new
    if (stopped || draft.level === 'note' || typeof draft.message === 'string')
      return worded(draft, trialOf(draft, null))
    let barred = false
    const safe = worded(
      draft,
      trialOf(draft, () => {
        barred = true
      }),
    )
    if (!barred || (safe.offers ?? []).length > 0) return safe
    const any = worded(draft, trialOf(draft, null))
    return (any.offers ?? []).length > 0 ? { ...any, message: `${any.message}${bringsDanger}` } : any
  })
}
