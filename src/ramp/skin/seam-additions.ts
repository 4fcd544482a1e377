import { offerSteps, same } from '../check/offer.ts'
import type { Curve } from '../curve/curve.ts'
import type { Stand, Stud } from '../frame/stud.ts'
import type { Choice } from './seam-choice.ts'
import { fewestPieces, type Reach } from './seam-ways.ts'
import { leastPiece, thickAlone } from './seats.ts'
import type { FlatToCurve, Ground } from './skin-framing.ts'

/** A layer as its sheets are laid: its flat length, how far one reaches, and how they lie. */
export interface Course {
  readonly length: number
  readonly reach: Reach
  readonly lying: FlatToCurve
}

/** What sheets are laid on, layer by layer, and where more studs may stand. */
export interface Bed extends Pick<Ground, 'curve' | 'units'> {
  readonly courses: readonly Course[]
  readonly stand: Stand
  /** how far the rows at a seam stay inside a stud's edges, mm */
  readonly inside: number
}

/** Studs to be set together, and where along the frame's curve the seam on them lies. */
interface Addition {
  readonly up: number
  readonly studs: readonly Stud[]
}

/** One beside each that is too thin alone. */
const twins = ({ units, stand, inside }: Bed, studs: readonly Stud[]): readonly Addition[] =>
  studs
    .slice(1, -1)
    .filter(({ width }) => width < thickAlone(units, inside))
    .flatMap((stud) =>
      [-1, 1].flatMap((side): readonly Addition[] => {
        const twin = stand(stud.at + side * stud.width, studs)
        const up = stud.at + (side * stud.width) / 2
        return twin && Math.abs(twin.width - stud.width) <= same ? [{ up, studs: [twin] }] : []
      }),
    )

/** One of its own, or a pair where one is too thin; none outside the first and the last. */
const ownAt = ({ units, stand, inside }: Bed, studs: readonly Stud[], at: number): Addition | null => {
  if (!isAmong(studs, at)) return null
  const one = stand(at, studs)
  if (!one || one.width >= thickAlone(units, inside)) return one && { up: at, studs: [one] }
  const lower = stand(at - one.width / 2, studs)
  const upper = lower && stand(at + one.width / 2, [...studs, lower])
  return upper && { up: at, studs: [lower, upper] }
}

/** Between the first and the last of the design; a chain's own come after these. */
const isAmong = (studs: readonly Stud[], at: number): boolean => {
  let [low, high] = [false, false]
  for (const stud of studs)
    if (stud.role !== 'seam') {
      if (stud.at < at) low = true
      else if (stud.at > at) high = true
    }
  return low && high
}

/** Studs that are set for seams stand on so fine a grid, in steps of what is offered; at every step in a window so narrow. */
const grid = { mm: 10, in: 8 } as const
const narrow = 4

const ownIn = (
  bed: Bed,
  studs: readonly Stud[],
  windows: readonly (readonly [number, number])[],
): readonly Addition[] => {
  const { units } = bed
  const step = offerSteps[units]
  const places = new Set<number>()
  for (const [from, to] of windows) {
    const [low, high] = [Math.ceil(from / step), Math.floor(to / step)]
    const by = high - low <= narrow * grid[units] ? 1 : grid[units]
    for (let i = Math.ceil(low / by) * by; i <= high; i += by) places.add(i)
    if (low <= high) places.add(low).add(high)
  }
  return [...places]
    .sort((a, b) => b - a)
    .flatMap((i) => {
      const own = ownAt(bed, studs, i * step)
      return own ? [own] : []
    })
}

/** Where along the frame's curve a place of a flat sheet lies. */
const upOf = (curve: Curve, { lying }: Course, at: number): number => curve.lengthTo(lying.placeAt(at))

/** Along the frame's curve, where the seams of a layer may lie in its fewest sheets. */
const windowsOf = ({ curve }: Bed, course: Course): readonly (readonly [number, number])[] => {
  const { length } = course
  const { most, gap } = course.reach
  const pieces = fewestPieces(course)
  return Array.from({ length: pieces - 1 }, (_, j): readonly [number, number] => {
    const low = Math.max(leastPiece, length - (pieces - j - 1) * (most + gap) + gap / 2)
    const high = Math.min(length - leastPiece, (j + 1) * (most + gap) - gap / 2)
    return [upOf(curve, course, low), upOf(curve, course, high)]
  })
}

const inWindows = (bed: Bed, studs: readonly Stud[]): readonly Addition[] =>
  ownIn(
    bed,
    studs,
    bed.courses.flatMap((course) => windowsOf(bed, course)),
  )

/** Where neighbours share a narrow window: one as low as it may be and one as high, with none that was set before. */
const apart = (bed: Bed, all: readonly Stud[]): readonly Addition[] => {
  const studs = all.filter(({ role }) => role !== 'seam')
  const single = [...twins(bed, studs), ...inWindows(bed, studs)].sort((a, b) => a.up - b.up)
  const ends = bed.courses
    .flatMap((course) => windowsOf(bed, course))
    .map(([low, high]) => single.filter(({ up }) => up >= low - same && up <= high + same))
  const lows = new Set(ends.flatMap((within) => within.slice(0, 2)))
  const highs = new Set(ends.flatMap((within) => within.slice(-2)))
  return [...lows].flatMap((low) =>
    [...highs]
      .filter(({ up }) => up - low.up >= leastPiece - same)
      .map((high) => ({ up: low.up, studs: [...low.studs, ...high.studs] })),
  )
}

/** For a layer of many sheets all of its seams at once, each as far up as its sheet reaches. */
const chains = (bed: Bed, studs: readonly Stud[]): readonly Addition[] =>
  bed.courses.flatMap((course): readonly Addition[] => {
    const added = fewestPieces(course) < 3 ? null : chainFor(bed, course, studs)
    return added ? [{ up: added[0]!.at, studs: added }] : []
  })

const chainFor = (bed: Bed, course: Course, studs: readonly Stud[]): readonly Stud[] | null => {
  const { length, reach, lying } = course
  const step = offerSteps[bed.units]
  let all = studs
  for (let from = 0; length - from > reach.most + same; ) {
    const farthest = Math.min(from + reach.most + reach.gap / 2, length - leastPiece)
    const least = upOf(bed.curve, course, from + leastPiece)
    let at = Math.floor(upOf(bed.curve, course, farthest) / step) * step
    let own = ownAt(bed, all, at)
    while (!own && at > least) {
      at -= step
      own = ownAt(bed, all, at)
    }
    if (!own) return null
    all = [...all, ...own.studs]
    from = lying.markOf({ ...own.studs[0]!, at }) + reach.gap / 2
  }
  return all.slice(studs.length)
}

const anywhere = (bed: Bed, studs: readonly Stud[]): readonly Addition[] =>
  ownIn(bed, studs, [[studs[0]!.at, studs.at(-1)!.at]])

/** Studs to be set besides, each list of them together: on those that stand, or `anew` on those of the design alone. */
interface Kind {
  readonly anew: boolean
  readonly additions: () => readonly (readonly Stud[])[]
}

/** What may be set besides, of one kind after the other as they are tried; anywhere only for a seam that has none of its own. */
export const moreStuds = (bed: Bed, studs: readonly Stud[], { lost }: Choice): readonly Kind[] => {
  const kinds = [twins, inWindows, chains, ...(lost > 0 ? [anywhere] : []), apart]
  return kinds.map((kind) => ({
    anew: kind === apart,
    additions: () => kind(bed, studs).map((added) => added.studs),
  }))
}
