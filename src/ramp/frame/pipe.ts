import type { QuarterDesign, Stock, Units } from '../../design/design.ts'
import { wordList } from '../../length/word-list.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { listed, measured, offer, rounded, same } from '../check/offer.ts'
import { offering, setOfFile, tell } from '../check/told.ts'
import { wallMiddles } from './bays.ts'
import type { Stretch } from './stretch.ts'

/** A joint of the pipe, from the ramp's left outer face. */
export interface PipeJoint {
  readonly at: number
  /** a rib lies under it; else it takes a block */
  readonly rib: boolean
}

/** The pipe along the ramp, mm from its left outer face. */
export interface Pipe {
  readonly length: number
  readonly pieces: readonly Stretch[]
  readonly joints: readonly PipeJoint[]
  readonly holes: readonly number[]
}

/** Drills: a large hole in the near wall only, to pass the screw's head, a small one in the far wall. Common practice, no source. */
export const pipeDrills = { near: '13 mm (1/2 in)', far: '5 mm (3/16 in)' } as const

/** How far a hole keeps off the middle plane of a side. mm */
const offWall = 30

/** No piece of pipe is cut shorter where the stock allows it: it must be held while it is screwed. Common practice, no source. mm */
const leastPipe = 400

/** Two screws nearer to each other hold a piece no better than one; common practice, no source. mm */
const leastApart = 80

/** Nearer to the end of a pipe no hole is drilled, be the pipe ever so short; common practice, no source. mm */
const offEnd = 25

/** Growth of plastic pipe: 3/8 in in 100 ft for 10 °F (published by pipe makers); so much a °F. */
const plasticGrowth = 3 / 8 / (100 * 12) / 10

/** Summer to winter, °F; 20 °C. */
const swing = 36

export const solvePipe = (
  design: QuarterDesign,
  stock: Stock,
  units: Units,
  /** the same where it must keep off the points of the studs' screws too */
  off: number = offWall,
): { readonly pipe: Pipe | null; readonly findings: readonly Finding[] } => {
  if (!design.coping) return { pipe: null, findings: [] }
  const { coping, width } = design
  const longest = Math.max(...stock.pipe)
  const joints = pipeJoints(design, longest)
  const ends = [0, ...joints.map(({ at }) => at), width]
  const pieces = ends.slice(1).map((to, i) => ({ from: ends[i]!, length: to - ends[i]! }))
  const walls = wallMiddles(design)
  const wanted = pieces.flatMap(({ from, length }) => stations(length, coping.holes).map((at) => from + at))
  const near: number[] = []
  const moved = wanted.map((at) => {
    const clear = asideOf(at, walls, width, off)
    if (clear === null) near.push(at)
    return clear ?? at
  })
  const holes = [...new Set(moved)].sort((a, b) => a - b)
  return {
    pipe: { length: width, pieces, joints, holes },
    findings: [
      ...pieceFindings(pieces, holes, () => longerPipe(design, stock, units), units),
      ...jointFindings(joints, longest, width, units),
      ...(near.length > 0 ? [wallFinding(near, off, units)] : []),
      coping.material === 'plastic'
        ? movesFinding(Math.max(...pieces.map((piece) => piece.length)), units)
        : zincFinding,
    ],
  }
}

/** The farthest rib that a length of stock reaches, else the farthest place; no end piece is a mere stub. */
const pipeJoints = (design: QuarterDesign, longest: number): readonly PipeJoint[] => {
  const ribs = wallMiddles(design).slice(1, -1)
  const joints: PipeJoint[] = []
  let from = 0
  while (design.width - from > longest + same) {
    const start = from
    const reach = Math.min(start + longest, design.width - Math.min(leastPipe, longest / 2))
    const rib = ribs.findLast((at) => at > start + leastPipe && at <= reach + same)
    from = rib ?? reach
    joints.push({ at: from, rib: rib !== undefined })
  }
  return joints
}

/** Left between the two holes of a short piece, so that one may still be moved off a side. mm */
const roomApart = 2 * leastApart

/**
 * `ends` from one end, then every `every`, the last `ends` from the other; what comes too near to the last is left out. On a
 * short piece the two come nearer to its ends.
 */
const stations = (
  length: number,
  { ends, every }: { readonly ends: number; readonly every: number },
): readonly number[] => {
  const first = Math.min(ends, Math.max(offEnd, (length - roomApart) / 2))
  const last = length - first
  if (last <= first + same) return [length / 2]
  const steps = Array.from({ length: Math.ceil((last - first) / every) }, (_, i) => first + i * every)
  // the first stands, however near the last is
  return [...steps.filter((at, i) => i === 0 || last - at >= every / 3 - same), last]
}

/** The nearest place on the pipe that is clear of all walls; null where there is none. */
const asideOf = (at: number, walls: readonly number[], width: number, off: number): number | null =>
  [at, ...walls.flatMap((m) => [m - off, m + off])]
    .filter((p) => p >= 10 && p <= width - 10 && walls.every((m) => Math.abs(p - m) >= off - same))
    .sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0] ?? null

/** Stretches of the pipe that no two screws hold, and by what they are held. */
const loosePieces = (
  pieces: readonly Stretch[],
  holes: readonly number[],
): readonly (Stretch & { readonly apart: number | null })[] =>
  pieces.flatMap(({ from, length }) => {
    const own = holes.filter((at) => at > from && at < from + length)
    const apart = own.length > 1 ? own.at(-1)! - own[0]! : null
    return apart !== null && apart >= leastApart - same ? [] : [{ from, length, apart }]
  })

/** Pipe of one length that is held well, as it may be bought; null where none is. */
const longerPipe = (design: QuarterDesign, stock: Stock, units: Units): string | null => {
  const { atLeast, atLeastMm } = offer(units)
  const { pipe } = solvePipe(design, { ...stock, pipe: [...stock.pipe, atLeastMm(design.width)] }, units)
  const well = pipe?.pieces.length === 1 && loosePieces(pipe.pieces, pipe.holes).length === 0
  return well ? atLeast(design.width) : null
}

/** Pieces that no two screws hold. */
const pieceFindings = (
  pieces: readonly Stretch[],
  holes: readonly number[],
  longer: () => string | null,
  units: Units,
): readonly Finding[] => {
  const loose = loosePieces(pieces, holes)
  if (loose.length === 0) return []
  const words = loose.map(({ from, length, apart }) => {
    const held = apart === null ? 'a single screw' : `two screws only ${measured(apart, units)} apart`
    const where = from === 0 ? 'at its left end' : `from ${rounded(from, units)} on`
    return `the ${measured(length, units)} ${where} have ${held}`
  })
  // one piece is not made longer
  const whole = pieces.length > 1 ? longer() : null
  return [
    warn(
      'pipe-piece',
      tell(
        `pipe could turn or come off: ${wordList(words)}; `,
        whole
          ? offering(`buy pipe of ${whole} or more`, setOfFile('stock.pipe', `[ ${whole} ]`))
          : 'strap it down to the sides as well',
      ),
    ),
  ]
}

const jointFindings = (
  joints: readonly PipeJoint[],
  longest: number,
  width: number,
  units: Units,
): readonly Finding[] => {
  if (joints.length === 0) return []
  const show = (mm: number): string => measured(mm, units)
  return [
    note(
      'pipe-joint',
      `a pipe ${show(width)} long is cut from more than one of your stock (${show(longest)}): it is joined ${joints
        .map(
          ({ at, rib }) =>
            `${rounded(at, units)} from the left, ${rib ? 'over a rib' : 'where no rib is, so set a block under it'}`,
        )
        .join('; ')}`,
    ),
  ]
}

const wallFinding = (at: readonly number[], off: number, units: Units): Finding =>
  note(
    'pipe-hole',
    `the pipe's holes ${listed(at, units)} from the left find no place ${measured(off, units)} off the sides; mind the studs' screws there`,
  )

/** `length` of the longest piece. */
const movesFinding = (length: number, units: Units): Finding => {
  const move = length * plasticGrowth * swing
  return note(
    'pipe-moves',
    `a plastic pipe ${rounded(length, units)} long grows and shrinks by about ${measured(move, units)} over a swing of 20 °C (36 °F); ` +
      'make its small holes slots along the pipe, round only the middle one',
  )
}

const zincFinding = note(
  'zinc-fume',
  'zinc-coated pipe gives off toxic fume when welded or heated: take bare pipe for that, or ask who welds',
)
