import type { QuarterDesign, Units } from '../../design/design.ts'
import { bisect } from '../../geometry/bisect.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, note, stop, type Trial, warn } from '../check/check.ts'
import { listed, measured, offer, offerSteps, same } from '../check/offer.ts'
import { depthKey, everyKey, firstOf, firstThat, type Key, orWays, toeKey } from '../check/remedy.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Transition } from '../side/transition.ts'
import { apart, holdsPipe, insidePanel, lipRoom, pipeTimbers } from './pipe-timber.ts'
import { leastRipped, type Stand, type Stud } from './stud.ts'
import { timberCorners, timberDistance } from './timber.ts'

/** What an offered toe may be higher than asked for, and leaves to spare, mm. */
const toeRoom = 2

/** The panel as far as studs meet its edges. */
interface Panel {
  /** where the cut curve ends at its top */
  readonly curveEnd: number
  readonly length: number
}

export const solveStuds = (
  ramp: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  { curveEnd, length }: Panel,
  units: Units,
): { readonly studs: readonly Stud[]; readonly stand: Stand; readonly findings: readonly Draft[] } => {
  const show = (mm: number): string => measured(mm, units)
  const { curve } = transition
  /** How far the stud sticks out of the panel's front, bottom, back or chamfer; 0 or less when it is inside. */
  const outside = (stud: Stud): number => {
    let most = Number.NEGATIVE_INFINITY
    for (const p of timberCorners(stud))
      most = Math.max(most, -p.x, -p.y, p.x - length, (p.x - p.y - (length - ramp.chamfer)) * Math.SQRT1_2)
    return most
  }
  const [thin, wide] = [Math.min(...ramp.studs.section), Math.max(...ramp.studs.section)]
  const place = (
    at: number,
    lies: 'edge' | 'flat',
    role: Stud['role'],
    depth = lies === 'flat' ? thin : wide,
  ): Stud => {
    const here = curve.placeAtLength(at)
    return {
      at,
      ...curve.point(here),
      angle: curve.slope(here),
      lies,
      role,
      width: lies === 'flat' ? wide : thin,
      depth,
    }
  }
  const end = curve.lengthTo(curveEnd)
  /** From where a stud of the full section fits, as words; nothing where it fits nowhere up the curve. */
  const fullFrom = (lies: 'edge' | 'flat', at: number): string => {
    const spill = (where: number): number => outside(place(where, lies, 'curve')) - same / 2
    if (spill(at) <= 0 || spill(end) >= 0) return ''
    const { x } = curve.point(curve.placeAtLength(bisect(spill, at, end)))
    return `; one of the full section fits${lies === 'edge' ? ' on edge' : ''} from ${offer(units).atLeast(x)} behind the toe`
  }
  const findings: Draft[] = []
  const studs: Stud[] = []

  const fits = (stud: Stud): boolean =>
    stud.at + stud.width / 2 <= end + same && outside(stud) <= same && (!coping || clearsPipe(stud, coping))

  // the first lies flat, flush with the toe, moved up by the least amount that fits, else ripped
  const overFront = (at: number): number => {
    const [upper, lower] = timberCorners(place(at, 'flat', 'toe'))
    return -Math.min(upper!.x, lower!.x)
  }
  // a curve that starts nearly upright never comes clear of the front
  const flush = overFront(wide) < 0 ? bisect(overFront, 0, wide) : wide / 2
  const first = place(flush, 'flat', 'toe')
  const last = Math.min(flush + ramp.studs.every / 2, end - wide / 2)
  const moved = (): Stud | null => {
    if (last <= flush || outside(first) <= same || outside(place(last, 'flat', 'toe')) > 0) return null
    return place(
      bisect((at) => outside(place(at, 'flat', 'toe')), flush, last),
      'flat',
      'toe',
    )
  }
  const ripped = (): Stud | null => {
    const spill = (depth: number): number => outside(place(flush, 'flat', 'toe', depth)) - same / 2
    const depth = spill(0) < 0 && spill(thin) > 0 ? bisect(spill, 0, thin) : 0
    return depth >= leastRipped ? place(flush, 'flat', 'toe', depth) : null
  }
  const toeStud = [() => first, moved, ripped].map((way) => way()).find((stud) => stud && fits(stud))
  /** A higher toe under which the first would fit, if the floor is what is in the way and the rest of the curve has room. */
  const higherToe = (): number | null => {
    const toe = ramp.toe + outside(first)
    const start = curve.placeAtHeight(toe + toeRoom)
    if (start === null || -Math.min(...timberCorners(first).map((p) => p.y)) < outside(first)) return null
    const stud = place(curve.lengthTo(start) + wide / 2, 'flat', 'toe')
    const seat = coping ? coping.centre.y - coping.outside / 2 : transition.heights.frame
    const low = timberCorners(stud).every((p) => p.y < seat - toeRoom)
    return low && fits({ ...stud, at: stud.at + toeRoom }) ? toe : null
  }
  if (!toeStud) findings.push(noToeStud(ramp, higherToe(), units))
  else {
    studs.push(toeStud)
    if (toeStud.depth < thin)
      findings.push(
        note(
          'stud-toe',
          `the first stud is ripped to ${show(toeStud.depth)} thick to lie in the toe${fullFrom('flat', flush)}`,
        ),
      )
    else if (toeStud !== first)
      findings.push(
        note(
          'stud-toe',
          `the first stud does not fit flush with the toe; it lies ${show(toeStud.at - flush)} further up`,
        ),
      )
  }

  /** Flat, its upper edge at the end of the curve, lowered by no more than it must, or than gives the pipe its timber. */
  const lipStud = (): Stud | null => {
    const at = (down: number): Stud | null => {
      const stud = place(end - wide / 2 - down, 'flat', 'lip')
      const clear = !studs[0] || stud.at - studs[0].at >= (wide + studs[0].width) / 2
      return stud.at > 0 && fits(stud) && clear ? stud : null
    }
    const all = Array.from({ length: Math.floor(ramp.studs.every / 2) + 1 }, (_, down) => down)
    const from = all.find((down) => at(down) !== null)
    if (from === undefined) return null
    const highest = at(from)!
    if (!coping || holdsPipe(coping, highest, ramp, units)) return highest
    // the one farthest back has room wherever one nearer has
    const ways = pipeTimbers(ramp, coping)
    const own = [...ways.slice(0, 1), ...ways.slice(-1)].filter((timber) =>
      insidePanel(timber, transition, { length, chamfer: ramp.chamfer }),
    )
    const room = (stud: Stud | null): boolean => stud !== null && own.some((timber) => apart(timber, stud))
    const lower = all.find((down) => down >= from && down <= from + lipRoom && room(at(down)))
    return lower === undefined ? highest : at(lower)
  }
  /** Those too deep on edge, what each may be ripped to instead, and from where a full one fits. */
  const flatStuds = (flat: readonly number[]): Draft => {
    const stands = flat.map((at) => {
      const spill = (depth: number): number => outside(place(at, 'edge', 'curve', depth)) - same / 2
      const depth = spill(thin) < 0 && spill(wide) > 0 ? bisect(spill, thin, wide) : 0
      const ripped = depth > thin + 1 ? ` (or on edge, ripped to ${offer(units).atMost(depth)})` : ''
      return `${show(at)} up the curve${ripped}`
    })
    return note(
      'stud-outside',
      `too deep to stand on edge where the panel is thin, so flat: the stud${flat.length === 1 ? '' : 's'} ${wordList(stands)}${fullFrom('edge', flat[0]!)}`,
    )
  }
  const lip = lipStud()
  if (lip) studs.push(lip)
  const clear = (stud: Stud, among: readonly Stud[]): boolean =>
    among.every((other) => Math.abs(stud.at - other.at) >= (stud.width + other.width) / 2 - same) &&
    fits(stud)
  const stand: Stand = (at, among) => {
    if (at <= 0 || at >= end) return null
    const stud = place(at, 'edge', 'seam')
    return clear(stud, among) ? stud : null
  }
  /** On edge, else flat, at its station; else so by whole millimetres up or down the curve, within half a spacing. */
  const stationed = (at: number): Stud | null => {
    for (let by = 0; by <= ramp.studs.every / 2; by++)
      for (const to of by === 0 ? [at] : [at + by, at - by])
        for (const lies of ['edge', 'flat'] as const) {
          const stud = place(to, lies, 'curve')
          if (to > 0 && to < end && clear(stud, studs)) return stud
        }
    return null
  }
  const flat: number[] = []
  const moves: string[] = []
  const lost: number[] = []
  for (const at of stations(ramp, end - thin / 2)) {
    // one that would meet the toe stud or the lip stud is that one
    if (toeStud && at - thin / 2 < toeStud.at + toeStud.width / 2 - same) continue
    if (lip && at + thin / 2 > lip.at - lip.width / 2 + same) continue
    const stud = stationed(at)
    if (!stud) {
      lost.push(at)
      continue
    }
    if (stud.at !== at) moves.push(`${show(at)} to ${show(stud.at)}${stud.lies === 'flat' ? ' (flat)' : ''}`)
    else if (stud.lies === 'flat') flat.push(at)
    studs.push(stud)
  }
  studs.sort((a, b) => a.at - b.at)
  if (flat.length > 0) findings.push(flatStuds(flat))
  if (moves.length > 0)
    findings.push(
      note('stud-outside', `studs moved along the curve to stay in the panel: ${moves.join(', ')}`),
    )
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
      stop(
        'stud-outside',
        (trial: Trial) =>
          `no place within half a spacing takes the stud${missing.length === 1 ? '' : 's'} ${listed(missing, units)} up the curve: ` +
          `there it would leave the panel or meet another; ${lostRemedy(trial, ramp, units)}`,
      ),
    )
  return { studs, stand, findings }
}

/** Whether the skin's gap at a stud that is left out is no wider than between two studs on edge at their spacing. */
const spanned = ({ studs: { section, every, foot } }: QuarterDesign, studs: readonly Stud[], at: number) => {
  const spacing = foot && at <= foot.to + same ? foot.every : every
  const below = studs.filter((stud) => stud.at <= at).map((stud) => stud.at + stud.width / 2)
  const above = studs.filter((stud) => stud.at > at).map((stud) => stud.at - stud.width / 2)
  return Math.min(...above) - Math.max(...below) <= spacing - Math.min(...section) + same
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
  const clearOfIt = (close.at(-1) ?? 0) + Math.min(...studs.section) - same
  return [...close, ...multiples(studs.every, clearOfIt, last)]
}

/** The nearest spacing, the least toe and the deepest studs with which every stud finds a place. */
const lostRemedy = (trial: Trial, ramp: QuarterDesign, units: Units): string => {
  const { every, section } = ramp.studs
  const [thin, wide] = [Math.min(...section), Math.max(...section)]
  const step = offerSteps[units]
  const first = firstOf(ramp, units, trial)
  const within = (key: Key, least: number, most: number): Key => ({
    ...key,
    range: { least: Math.max(key.range.least, least), most: Math.min(key.range.most, most) },
  })
  const spacing = within(everyKey, every / 2, 2 * every)
  const [wider, closer] = [first(spacing, every + step / 2, 1), first(spacing, every - step / 2, -1)]
  const nearest = wider && closer && every - closer.mm < wider.mm - every ? closer : (wider ?? closer)
  const toe = first(toeKey, ramp.toe + step / 2, 1)
  const depth = first(within(depthKey, thin, wide), wide - step / 2, -1)
  return orWays(
    [
      nearest && `studs every ${nearest.shown} find one each`,
      toe && `a toe of ${toe.shown} makes room`,
      depth && `rip the studs to ${depth.shown} deep`,
    ],
    'no other spacing, toe or depth of stud alone makes room: make the ramp higher, or the deck longer',
  )
}

const noToeStud = (ramp: QuarterDesign, toe: number | null, units: Units): Draft =>
  warn('stud-toe', (trial: Trial) => {
    const higher = toe === null ? null : firstThat(trial, ramp, toeKey, toe, 1, units)
    return higher === null
      ? 'no stud fits in the toe: it would leave the panel or meet the notch; the curve is too short, or starts too steep, for this section'
      : `no stud fits in the toe; a toe of ${higher.shown} takes one laid flat`
  })

/** Below the notch's floor, or nowhere nearer to the pipe's middle than its radius. */
const clearsPipe = (stud: Stud, { centre, outside }: SolvedCoping): boolean => {
  const r = outside / 2
  if (timberCorners(stud).every((p) => p.y <= centre.y - r + same)) return true
  return timberDistance(stud, centre) >= r - same
}
