import type { QuarterDesign, Units } from '../../design/design.ts'
import { thinSide, thinWide } from '../../design/section.ts'
import { inch } from '../../geometry/inch.ts'
import { type Draft, note, stop, type Trial } from '../check/check.ts'
import { listed, measured, offerSteps, rounded, same } from '../check/offer.ts'
import {
  depthKey,
  everyKey,
  firstOf,
  type Key,
  type Offered,
  offered,
  orWays,
  toeKey,
} from '../check/remedy.ts'
import { type Told, tell, told } from '../check/told.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Transition } from '../side/transition.ts'
import { aside } from './aside.ts'
import { solveLipStud } from './lip-stud.ts'
import type { Stand, Stud } from './stud.ts'
import { flatStuds } from './stud-depth.ts'
import { type StudPanel, type StudRoom, studRoom } from './stud-room.ts'
import { solveToeStud } from './toe-stud.ts'

/** The first flat at the toe, the last flat at the end of the curve, the others on edge at their stations between them. */
export const solveStuds = (
  ramp: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  panel: StudPanel,
  units: Units,
): { readonly studs: readonly Stud[]; readonly stand: Stand; readonly findings: readonly Draft[] } => {
  const room = studRoom(ramp, transition, coping, panel)
  const toe = solveToeStud(room, units)
  const lip = solveLipStud(room, toe.stud, units)
  const between = stationStuds(room, toe.stud, lip, units)
  return {
    studs: between.studs,
    stand: standIn(room),
    findings: [...toe.findings, ...between.findings],
  }
}

const standIn =
  ({ end, clear }: StudRoom): Stand =>
  (at, among) =>
    at > 0 && at < end ? clear(at, 'edge', 'seam', among) : null

/** On edge, else flat, at its station; else so by whole millimetres up or down the curve, within half a spacing. */
const stationed = ({ ramp, end, clear }: StudRoom, station: number, among: readonly Stud[]): Stud | null => {
  const here = (at: number): Stud | null =>
    at > 0 && at < end ? (clear(at, 'edge', 'curve', among) ?? clear(at, 'flat', 'curve', among)) : null
  return here(station) ?? aside(station, ramp.studs.every / 2, here)
}

/** All studs in their order, those of the stations among them, and what became of these. */
const stationStuds = (
  room: StudRoom,
  toe: Stud | null,
  lip: Stud | null,
  units: Units,
): { readonly studs: readonly Stud[]; readonly findings: readonly Draft[] } => {
  const { ramp, thin, end } = room
  const show = (mm: number): string => measured(mm, units)
  const studs = [toe, lip].filter((stud) => stud !== null)
  const flat: number[] = []
  const moves: string[] = []
  const lost: number[] = []
  for (const at of stations(ramp, end - thin / 2)) {
    // one that would meet the toe stud or the lip stud is that one
    if (toe && at - thin / 2 < toe.at + toe.width / 2 - same) continue
    if (lip && at + thin / 2 > lip.at - lip.width / 2 + same) continue
    const stud = stationed(room, at, studs)
    if (!stud) {
      lost.push(at)
      continue
    }
    if (stud.at !== at) moves.push(`${show(at)} to ${show(stud.at)}${stud.lies === 'flat' ? ' (flat)' : ''}`)
    else if (stud.lies === 'flat') flat.push(at)
    studs.push(stud)
  }
  studs.sort((a, b) => a.at - b.at)
  const findings: Draft[] = []
  if (flat.length > 0) findings.push(flatStuds(room, flat, units))
  if (moves.length > 0)
    findings.push(
      note('stud-outside', `studs moved along the curve to stay in the panel: ${moves.join(', ')}`),
    )
  return { studs, findings: [...findings, ...lostFindings(ramp, studs, lost, units)] }
}

/** Stations without a stud: those that need none, and those that do. */
const lostFindings = (
  ramp: QuarterDesign,
  studs: readonly Stud[],
  lost: readonly number[],
  units: Units,
): readonly Draft[] => {
  const findings: Draft[] = []
  const carried = lost.filter((at) => spanned(ramp, studs, at))
  const missing = lost.filter((at) => !carried.includes(at))
  if (carried.length > 0)
    findings.push(
      note(
        'stud-outside',
        `no room for the stud${carried.length === 1 ? '' : 's'} ${listed(carried, units)} up the curve, and none needed: ` +
          'those beside it leave the skin no wider gap than elsewhere',
      ),
    )
  if (missing.length > 0)
    findings.push(
      stop('stud-outside', (trial: Trial) =>
        tell(
          `no place within half a spacing takes the stud${missing.length === 1 ? '' : 's'} ${listed(missing, units)} up the curve: `,
          told`there it would leave the panel or meet another; ${lostRemedy(trial, ramp, units)}`,
        ),
      ),
    )
  return findings
}

/** Whether the skin's gap at a stud that is left out is no wider than between two studs on edge at their spacing. */
const spanned = ({ studs: { section, every, foot } }: QuarterDesign, studs: readonly Stud[], at: number) => {
  const spacing = foot && at <= foot.to + same ? foot.every : every
  const below = studs.filter((stud) => stud.at <= at).map((stud) => stud.at + stud.width / 2)
  const above = studs.filter((stud) => stud.at > at).map((stud) => stud.at - stud.width / 2)
  return Math.min(...above) - Math.max(...below) <= spacing - thinSide(section) + same
}

/**
 * Where studs stand besides the first and the last: multiples from the toe corner, closer ones at the foot. The wide
 * spacing takes over at the last of the close ones, not at the foot's end, so that no gap is wider than it.
 */
const stations = ({ studs }: QuarterDesign, last: number): readonly number[] => {
  const multiples = (every: number, from: number, to: number): readonly number[] =>
    Array.from({ length: Math.max(0, Math.floor(to / every + 1e-9)) }, (_, i) => (i + 1) * every).filter(
      (at) => at > from,
    )
  if (!studs.foot) return multiples(studs.every, 0, last)
  const close = multiples(studs.foot.every, 0, Math.min(studs.foot.to, last))
  const clearOfIt = (close.at(-1) ?? 0) + thinSide(studs.section) - same
  return [...close, ...multiples(studs.every, clearOfIt, last)]
}

/** Spacings that are often typed, mm and in: one may find places for all where those beside it do not. */
const usual = {
  mm: [150, 200, 250, 300, 350, 400, 450, 500, 600],
  in: [6, 8, 10, 12, 14, 16, 18, 20, 24].map((n) => n * inch),
} as const

const usualSpacing = (trial: Trial, ramp: QuarterDesign, units: Units): Offered | null => {
  const mm = usual[units].find((every) => trial(everyKey.typed(ramp, every)))
  return mm === undefined ? null : offered(ramp, everyKey, mm, rounded(mm, units), units)
}

/** The nearest spacing, the least toe and the deepest studs with which every stud finds a place. */
const lostRemedy = (trial: Trial, ramp: QuarterDesign, units: Units): Told => {
  const { every, section } = ramp.studs
  const [thin, wide] = thinWide(section)
  const step = offerSteps[units]
  const first = firstOf(ramp, units, trial)
  const within = (key: Key, least: number, most: number): Key => ({
    ...key,
    range: { least: Math.max(key.range.least, least), most: Math.min(key.range.most, most) },
  })
  const [wider, closer] = [first(everyKey, every + step / 2, 1), first(everyKey, every - step / 2, -1)]
  const nearest =
    wider && closer && every - closer.mm < wider.mm - every
      ? closer
      : (wider ?? closer ?? usualSpacing(trial, ramp, units))
  const toe = first(toeKey, ramp.toe + step / 2, 1)
  const depth = first(within(depthKey, thin, wide), wide - step / 2, -1)
  return orWays(
    [
      nearest && told`studs every ${nearest} find one each`,
      toe && told`a toe of ${toe} makes room`,
      depth && told`rip the studs to ${depth} deep`,
    ],
    'no other spacing, toe or depth of stud was found that alone makes room: make the ramp higher, or the deck longer',
  )
}
