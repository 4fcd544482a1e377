import type { Box } from '../../geometry/bounds.ts'
import { largestRest } from './largest-rest.ts'

/** A piece as the saw meets it. */
export interface Sawn {
  readonly mark: string
  readonly box: Box
  /** of a curved one: boxes side by side that hold it, with less beside it than its own */
  readonly slices?: readonly Box[]
  /** fills its box: straight cuts free it */
  readonly square: boolean
  /** the mirror image of its pattern as it lies: traced from one that was sawn before */
  readonly mirrored?: boolean
  /** of a curved one: of those with one name one is traced from another */
  readonly outline?: string
}

/** One thing to do, in order. mm from the panel's lower edge or its left end. */
export type SawStep =
  /** a straight cut from edge to edge of what it parts: along the panel's long side, or across it */
  | {
      readonly kind: 'rip' | 'cross'
      readonly at: number
      readonly from: number
      readonly to: number
      /** on which side of the line the blade runs: towards the far edge, or towards the near one */
      readonly blade: 'past' | 'before'
      /** what it parts */
      readonly marks: readonly string[]
    }
  /** one that straight cuts through the whole do not free */
  | { readonly kind: 'out'; readonly mark: string; readonly square: boolean }

/** Less than this is no cut, mm. */
const slack = 0.5

/** Places closer than this are the same, mm. */
const same = 1e-3

interface Saw {
  readonly kerf: number
  /** of the tape that pieces lie on whole ones of, mm: less than one off an edge that is sawn already is no cut */
  readonly step: number
  /** the panel, its own edges */
  readonly whole: Box
}

/** How a panel is sawn, and the largest rectangle that is then left in one part. */
export interface Sawing {
  readonly steps: readonly SawStep[]
  readonly rest: Box | null
}

/**
 * Long rips first, then cuts across, as far as straight cuts meet no piece, a piece alone the way that is less to saw; what hangs
 * together then is sawn out one by one. `step`: of the tape that pieces lie on whole ones of, mm; a rectangle beyond a cut may
 * come out larger by less than one. None comes out smaller.
 * Of two parts the one first that the other is traced from, else the near one.
 */
export const sawPanel = (pieces: readonly Sawn[], panel: Box, kerf: number, step: number): Sawing =>
  sawPart(pieces, panel, { kerf, step, whole: panel })

const sawPart = (pieces: readonly Sawn[], panel: Box, saw: Saw): Sawing => {
  const { kerf } = saw
  if (pieces.length === 0) return { steps: [], rest: areaOf(panel) > 0 ? panel : null }
  const line = bestLine(pieces, panel, saw)
  if (!line) {
    const [only] = pieces
    const free = pieces.length === 1 && only!.square
    return {
      steps: free ? [] : tracedLast(pieces).map(({ mark, square }) => ({ kind: 'out', mark, square })),
      rest: largestRest(
        panel,
        pieces.flatMap(({ box, slices }) => slices ?? [box]),
        kerf,
      ),
    }
  }
  const { kind, at, blade } = line
  const along = kind === 'rip'
  const [nearEnd, farStart] = blade === 'past' ? [at, at + kerf] : [at - kerf, at]
  const near = sawPart(line.near, along ? { ...panel, y1: nearEnd } : { ...panel, x1: nearEnd }, saw)
  const far = sawPart(line.far, along ? { ...panel, y0: farStart } : { ...panel, x0: farStart }, saw)
  const [from, to] = along ? [panel.x0, panel.x1] : [panel.y0, panel.y1]
  return {
    steps: [
      { kind, at, from, to, blade, marks: pieces.map(({ mark }) => mark) },
      ...(tracedFrom(line.near, line.far) > tracedFrom(line.far, line.near)
        ? [...far.steps, ...near.steps]
        : [...near.steps, ...far.steps]),
    ],
    rest: larger(near.rest, far.rest),
  }
}

/** Mirrored pieces that only one of the other part can be traced onto. */
const tracedFrom = (own: readonly Sawn[], other: readonly Sawn[]): number => {
  const printed = (all: readonly Sawn[], name: string): boolean =>
    all.some(({ mirrored, outline }) => mirrored === false && outline === name)
  return own.filter(
    ({ mirrored, outline }) =>
      mirrored && outline !== undefined && !printed(own, outline) && printed(other, outline),
  ).length
}

const tracedLast = (pieces: readonly Sawn[]): readonly Sawn[] =>
  pieces.toSorted((a, b) => Number(a.mirrored ?? false) - Number(b.mirrored ?? false))

const areaOf = ({ x0, y0, x1, y1 }: Box): number => Math.max(0, x1 - x0) * Math.max(0, y1 - y0)

const larger = (a: Box | null, b: Box | null): Box | null =>
  a === null ? b : b === null || areaOf(a) >= areaOf(b) ? a : b

interface Line {
  readonly kind: 'rip' | 'cross'
  readonly at: number
  readonly blade: 'past' | 'before'
  readonly near: readonly Sawn[]
  readonly far: readonly Sawn[]
}

/** First what frees an edge of all pieces at once, then what parts them, then what trims; the longer cut first, the one that parts most evenly. */
const bestLine = (pieces: readonly Sawn[], panel: Box, saw: Saw): Line | null => {
  const lines = [...linesOf('rip', pieces, panel, saw), ...linesOf('cross', pieces, panel, saw)]
  const shared = lines.find((line) => pieces.length > 1 && freesAll(line, pieces))
  if (shared) return shared
  const parting = lines.filter(({ near, far }) => near.length > 0 && far.length > 0)
  const even = ({ near, far }: Line): number => Math.abs(near.length - far.length)
  const worth = (a: Line, b: Line): number =>
    Number(a.kind === 'cross') - Number(b.kind === 'cross') || even(a) - even(b) || a.at - b.at
  if (parting.length > 0) return parting.sort(worth)[0]!
  // a curved piece alone is sawn out along its line
  if (pieces.some(({ square }) => !square)) return null
  const [first, ...others] = lines.sort(worth)
  const across = others.find(({ kind }) => kind === 'cross')
  return pieces.length === 1 && across && isLessAcross(pieces[0]!, lines, panel) ? across : (first ?? null)
}

/** One cut for a row of rectangles that end together, where each would take its own. */
const freesAll = ({ kind, at, near, far }: Line, pieces: readonly Sawn[]): boolean => {
  const [low, high] = kind === 'rip' ? (['y0', 'y1'] as const) : (['x0', 'x1'] as const)
  const ends = ({ square, box }: Sawn): boolean =>
    square && Math.abs((far.length === 0 ? box[high] : box[low]) - at) < same
  return (near.length === 0 || far.length === 0) && pieces.every(ends)
}

/** Whether a piece alone is freed with less to saw where the panel is cut across before it is cut along. */
const isLessAcross = ({ box }: Sawn, lines: readonly Line[], panel: Box): boolean => {
  const rips = lines.filter(({ kind }) => kind === 'rip').length
  const crosses = lines.length - rips
  const acrossFirst = crosses * (panel.y1 - panel.y0) + rips * (box.x1 - box.x0)
  const alongFirst = rips * (panel.x1 - panel.x0) + crosses * (box.y1 - box.y0)
  return acrossFirst < alongFirst - slack
}

const linesOf = (
  kind: Line['kind'],
  pieces: readonly Sawn[],
  panel: Box,
  { kerf, step, whole }: Saw,
): readonly Line[] => {
  const along = kind === 'rip'
  const low = ({ box }: Sawn): number => (along ? box.y0 : box.x0)
  const high = ({ box }: Sawn): number => (along ? box.y1 : box.x1)
  const [start, end] = along ? [panel.y0, panel.y1] : [panel.x0, panel.x1]
  const [first, last] = along ? [whole.y0, whole.y1] : [whole.x0, whole.x1]
  const least = (edge: number, own: number): number => (edge === own ? slack : step - same)
  return pieces.flatMap((piece): readonly Line[] => {
    const split = (at: number, blade: Line['blade']): readonly Line[] => {
      const [lower, upper] = blade === 'past' ? [at, at + kerf] : [at - kerf, at]
      if (at <= start + least(start, first) || at >= end - least(end, last)) return []
      const near = pieces.filter((one) => high(one) <= lower + same)
      const far = pieces.filter((one) => low(one) >= upper - same)
      return near.length + far.length === pieces.length ? [{ kind, at, blade, near, far }] : []
    }
    return [...split(high(piece), 'past'), ...split(low(piece), 'before')]
  })
}
