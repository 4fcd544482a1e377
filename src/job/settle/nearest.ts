import type { QuarterDesign } from '../../design/design.ts'
import { firstIn } from './first-in.ts'
import type { Measures } from './judge.ts'

/** A value that may be typed. */
export interface Candidate {
  readonly ramp: QuarterDesign
  readonly mm: number
  readonly quick: Measures
  /** how far the limits that are read off the curve are passed, all together */
  readonly over: number
  /** the same with the least that is to be counted */
  readonly least: number
  /** its side is as long or as high as a panel, to a step */
  readonly fills: boolean
  /** less is better, among those that keep the limits */
  readonly rank: number
}

/** A value tried on the whole ramp. */
export interface Tried {
  readonly candidate: Candidate
  readonly measures: Measures
  readonly over: number
}

/** Null also where the limits are passed by as much as `most`. */
export type Try = (candidate: Candidate, most: number) => Tried | null

/** So many are tried on the whole ramp at most; they are sorted, so the first good one is the best. */
const mostTries = 1500

/** The first that keeps all limits, else the one that passes them least. `widest`: what is too wide to be built is so the wider it is. */
export const nearestOf = (candidates: readonly Candidate[], tried: Try, widest: boolean): Tried | null => {
  const isSound = (at: number): boolean => tried(candidates[at]!, Number.POSITIVE_INFINITY) !== null
  const start = widest ? firstIn(candidates.length, isSound) : 0
  let nearest: Tried | null = null
  for (const candidate of candidates.slice(start, start + mostTries)) {
    // sorted: what follows is no nearer
    if (nearest !== null && candidate.over >= nearest.over) break
    const one = tried(candidate, nearest?.over ?? Number.POSITIVE_INFINITY)
    if (one !== null && (nearest === null || one.over < nearest.over)) nearest = one
    if (nearest?.over === 0) break
  }
  return nearest
}

/** Sums of the same shares differ by less. */
const hair = 1e-12

/**
 * The first that passes its limits by no more than `most`. Pages are counted one by one. Where panels are `laid` they are looked for
 * in strides that grow, and halved back: a better figure takes no fewer of them, but for a side that fills a panel from edge to edge,
 * which is tried too.
 */
const firstWithin = (
  candidates: readonly Candidate[],
  tried: Try,
  laid: boolean,
  most: number,
): Tried | null => {
  const within = (candidate: Candidate): Tried | null => tried(candidate, most + hair)
  const start = laid ? firstIn(candidates.length, (at) => within(candidates[at]!) !== null) : 0
  for (const [at, candidate] of candidates.entries()) {
    const one = at < start && !candidate.fills ? null : within(candidate)
    if (one !== null) return one
  }
  return null
}

/** So many strides are taken at most where no value keeps the limits. */
const mostStrides = 60

/** The same where a trial takes long. What cannot keep the limits by what it takes at least is not tried. */
export const nearestCounted = (candidates: readonly Candidate[], tried: Try, laid: boolean): Tried | null => {
  const kept = firstWithin(
    candidates.filter(({ least }) => least === 0),
    tried,
    laid,
    0,
  )
  if (kept !== null) return kept
  const sorted = [...candidates].sort((a, b) => a.least - b.least || a.rank - b.rank)
  const leap = Math.max(1, Math.ceil(sorted.length / mostStrides))
  let nearest: Tried | null = null
  let place = 0
  for (let at = 0; at < sorted.length; at += leap) {
    const candidate = sorted[at]!
    if (nearest !== null && candidate.least >= nearest.over) break
    const one = tried(candidate, nearest?.over ?? Number.POSITIVE_INFINITY)
    if (one === null) continue
    nearest = one
    place = at
  }
  if (nearest === null) return null
  const between = sorted.slice(Math.max(0, place - leap + 1), place)
  return furthestOf(candidates, tried, firstWithin(between, tried, true, nearest.over) ?? nearest)
}

/** The best figure of those that pass the limits no more than this one. */
const furthestOf = (candidates: readonly Candidate[], tried: Try, nearest: Tried): Tried => {
  const { candidate, over } = nearest
  const better = candidates
    .filter(({ least, rank }) => least <= over + hair && rank < candidate.rank)
    .sort((a, b) => a.rank - b.rank)
  return firstWithin(better, tried, true, over) ?? nearest
}
