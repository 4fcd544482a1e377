import type { Units } from '../../design/design.ts'
import { segmentAt } from '../../geometry/at.ts'
import { type Box, boxGrow, pathBounds } from '../../geometry/bounds.ts'
import { segmentLength } from '../../geometry/length.ts'
import { pathDistance } from '../../geometry/nearest.ts'
import { pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointBetween, pointToward } from '../../geometry/point.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { isMirrored, type Panel, type PanelPiece } from '../../stock/panel/panels.ts'
import { markWords } from './piece-words.ts'

/** What is sawn of a curved piece in one go. */
export interface SideEdge {
  /** `a`, `b`: in the order of sawing */
  readonly letter: string
  /** `bottom edge, blade below` */
  readonly words: string
  /** where its letter stands on the panel, and the way into the piece, radians; mm */
  readonly at: Point
  readonly inward: number
  /** of one that a circular saw saws: its line, and the ends at which it must stop; else null */
  readonly cut: { readonly segment: Segment; readonly stops: readonly Point[] } | null
}

/** Common practice, no source; mm. A shorter edge is sawn with the jigsaw; a circular saw that comes through at a corner runs so far past it on the upper face; lines nearer to each other are told. */
export const sawingPractice = { shortest: 150, past: 60, near: 10 } as const

const slack = 0.5

/** A straight edge of a piece on its panel. */
interface Straight {
  readonly name: string
  readonly segment: Segment
  /** so far along, so its place among the edges of a side */
  readonly rank: number
}

/** The straight edges of a curved piece that a circular saw saws, the bottom one first, then what a jigsaw does. */
export const sideEdges = (piece: PanelPiece, panel: Panel, units: Units): readonly SideEdge[] => {
  const others = hangingOn(piece, panel)
  const on = pathSegments(piece.outline)
  const all = straightOf(piece, on)
  const long = all.filter(({ segment }) => segmentLength(segment) >= sawingPractice.shortest)
  const done = long.flatMap((edge) => {
    const cut = cutBefore(edge.segment, piece, panel)
    return cut === null ? [] : [{ edge, cut }]
  })
  const own = long.filter(
    (edge) => !onEdge(edge.segment, panel) && done.every(({ edge: before }) => before !== edge),
  )
  const free = [
    ...long.filter(({ segment }) => onEdge(segment, panel)).map(({ name }) => `${name}: the panel's own`),
    ...done.map(({ edge, cut }) => `${edge.name}: sawn by cut ${cut}`),
  ]
  const last = curveEdge(piece, on, all, others, units)
  const edges = [
    ...own.map(({ name, segment }) => {
      const { side, inward } = bladeOf(segment, piece)
      const stops = stopsOf(segment, others, units)
      return {
        words: `${name}, ${placeWords(segment, units)}blade ${side}${stopWords(stops)}`,
        at: pointBetween(segment.from, segment.to, 0.5),
        inward,
        cut: { segment, stops: stops.map(({ at }) => at) },
      }
    }),
    ...(last ? [last] : []),
  ]
  return edges.map((edge, i) => ({
    ...edge,
    letter: letters[i]!,
    words: i === 0 && free.length > 0 ? `${edge.words} (${free.join('; ')})` : edge.words,
  }))
}

const letters = 'abcdefgh'

/** What is still in one part with a piece when it is sawn out: no straight cut went between them, and it was not sawn out before. */
const hangingOn = (piece: PanelPiece, { pieces, steps }: Panel): readonly PanelPiece[] => {
  const turn = ({ part }: PanelPiece): number =>
    steps.findIndex((step) => step.kind === 'out' && step.mark === part.mark)
  const now = turn(piece)
  const parted = (a: PanelPiece, b: PanelPiece): boolean =>
    steps.some((step, i) => {
      if (step.kind === 'out' || i > now || ![a, b].every(({ part }) => step.marks.includes(part.mark)))
        return false
      const far = ({ box }: PanelPiece): boolean => (step.kind === 'rip' ? box.y0 : box.x0) > step.at - slack
      return far(a) !== far(b)
    })
  return pieces.filter((one) => one !== piece && !parted(one, piece) && (turn(one) < 0 || turn(one) > now))
}

/** `on`: the piece's segments on its panel. By what they are on the part itself, which runs along its bottom edge first, level from its start at the front, and back to it last. */
const straightOf = ({ part }: PanelPiece, on: readonly Segment[]): readonly Straight[] => {
  const { x0, x1, y1 } = pathBounds(part.outline)
  const { start } = part.outline
  // a joint may lean either way from there
  const front = Math.abs(start.x - x0) < Math.abs(start.x - x1) ? x0 : x1
  const segments = pathSegments(part.outline)
  return segments
    .map((segment, i): Straight | null => {
      if (segment.kind !== 'line') return null
      const { from, to } = segment
      const { toe, back } = part.piece ?? { toe: true, back: true }
      if (!toe && i === segments.length - 1) return { name: 'joint', segment: on[i]!, rank: order[2] }
      if (!back && i === 1) return { name: 'joint', segment: on[i]!, rank: order[3] }
      const [level, upright] = [Math.abs(from.y - to.y) < slack, Math.abs(from.x - to.x) < slack]
      const low = Math.abs(from.y) < slack || Math.abs(to.y) < slack
      const known: readonly [string, boolean][] = [
        ['bottom edge', level && low],
        ['top line', level && Math.abs(from.y - y1) < slack],
        ['front edge', upright && low && Math.abs(from.x - front) < slack],
        ['back edge', upright && Math.abs(from.x - (front === x0 ? x1 : x0)) < slack],
        ['slanting edge at the back', !level && !upright && low],
      ]
      const rank = known.findIndex(([, fits]) => fits)
      return rank < 0 ? null : { name: known[rank]![0], segment: on[i]!, rank: order[rank]! }
    })
    .filter((edge) => edge !== null)
    .sort((a, b) => a.rank - b.rank)
}
/** Of the names above: bottom, cut corner, back, top, front. */
const order = [0, 3, 4, 2, 1] as const

/** The number of the straight cut that ran along an edge before its piece is sawn out; else null. */
const cutBefore = ({ from, to }: Segment, { part }: PanelPiece, { steps }: Panel): number | null => {
  const now = steps.findIndex((step) => step.kind === 'out' && step.mark === part.mark)
  const at = steps.findIndex((step, i) => {
    if (step.kind === 'out' || i > now || !step.marks.includes(part.mark)) return false
    return [from, to].every((p) => Math.abs((step.kind === 'rip' ? p.y : p.x) - step.at) < slack)
  })
  return at < 0 ? null : at + 1
}

/** How far from the lower edge or the left end an edge runs, and from where to where; of one that leans, how far it goes either way. */
const placeWords = ({ from, to }: Segment, units: Units): string => {
  const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)]
  const show = (mm: number): string => showLength(mm, units)
  const span = (a: number, b: number): string => `${show(Math.min(a, b))} to ${show(Math.max(a, b))}`
  if (dy < slack) return `along at ${show(from.y)}, ${span(from.x, to.x)}, `
  if (dx < slack) return `across at ${show(from.x)}, ${span(from.y, to.y)}, `
  return `${show(dx)} along and ${show(dy)} up, `
}

/** Whether an edge lies on the panel's own. */
const onEdge = ({ from, to }: Segment, { size: [width, length] }: Panel): boolean =>
  [from, to].every(({ x }) => x < slack) ||
  [from, to].every(({ x }) => x > length - slack) ||
  [from, to].every(({ y }) => y < slack) ||
  [from, to].every(({ y }) => y > width - slack)

/** On which side of an edge the waste lies, as the panel is seen, and the way into the piece. */
const bladeOf = ({ from, to }: Segment, piece: PanelPiece): { side: string; inward: number } => {
  const along = Math.atan2(to.y - from.y, to.x - from.x)
  const inward = along + (isMirrored(piece) ? -Math.PI / 2 : Math.PI / 2)
  const [x, y] = [Math.cos(inward), Math.sin(inward)]
  const side =
    Math.abs(y) > 0.95 ? (y > 0 ? 'below' : 'above') : Math.abs(x) > 0.95 ? (x > 0 ? 'left' : 'right') : null
  return { side: side ?? 'outside its line', inward }
}

/** An end at which a saw must not run on, in words, and what lies beyond. */
interface Stop {
  readonly at: Point
  readonly place: string
  readonly marks: readonly string[]
}

const stopsOf = ({ from, to }: Segment, others: readonly PanelPiece[], units: Units): readonly Stop[] => {
  const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)]
  const level = dx >= dy
  const leans = dx > slack && dy > slack
  return [
    { at: to, before: from },
    { at: from, before: to },
  ].flatMap(({ at, before }): readonly Stop[] => {
    const angle = Math.atan2(at.y - before.y, at.x - before.x)
    const beyond = past.map((far) => pointToward(at, angle, far))
    const met = others.filter((other) => beyond.some((p) => isNear(other, p, sawingPractice.near / 2)))
    const name = level ? (at.x > before.x ? 'right' : 'left') : at.y > before.y ? 'upper' : 'lower'
    const place = leans ? `its ${name} end` : showLength(level ? at.x : at.y, units)
    return met.length === 0 ? [] : [{ at, place, marks: met.map(markWords) }]
  })
}

const stopWords = (stops: readonly Stop[]): string => {
  if (stops.length === 0) return ''
  const said = stops.map(
    ({ place, marks }) => `at ${place}, ${wordList(marks)} ${marks.length > 1 ? 'lie' : 'lies'} beyond`,
  )
  return `; STOP ${said.join(', and ')}`
}
/** Whether a point lies nearer to a piece than so much, mm. */
const isNear = ({ box, outline }: PanelPiece, p: Point, near: number): boolean =>
  holds(boxGrow(box, near), p) && pathDistance(outline, p) < near
const holds = ({ x0, y0, x1, y1 }: Box, { x, y }: Point): boolean => x >= x0 && x <= x1 && y >= y0 && y <= y1
/** Looked at beyond an end, mm. */
const past = Array.from({ length: 13 }, (_, i) => (i * sawingPractice.past) / 12)

/** What is left to the jigsaw: the curve, and what is short; null where nothing is. */
const curveEdge = (
  piece: PanelPiece,
  segments: readonly Segment[],
  straight: readonly Straight[],
  others: readonly PanelPiece[],
  units: Units,
): Omit<SideEdge, 'letter'> | null => {
  const curves = segments.filter(({ kind }) => kind !== 'line')
  const curve = (curves.length > 0 ? curves : segments).reduce((most, one) =>
    segmentLength(one) > segmentLength(most) ? one : most,
  )
  const short = straight
    .filter(({ segment }) => segmentLength(segment) < sawingPractice.shortest)
    .map(({ name }) => name)
  const named = new Set(straight.map(({ segment }) => segment))
  const notched = segments.some((one) => one !== curve && !named.has(one) && segmentLength(one) > slack)
  const what = [
    ...short,
    ...(notched && piece.part.piece?.lip !== false ? ['notch'] : []),
    ...(curves.length > 0 ? ['curve'] : []),
  ]
  if (what.length === 0) return null
  const along = others.length > 0 ? Array.from({ length: 65 }, (_, i) => segmentAt(curve, i / 64)) : []
  const close = others
    .map((other) => {
      const around = boxGrow(other.box, sawingPractice.near)
      const off = along.map((p) => (holds(around, p) ? pathDistance(other.outline, p) : sawingPractice.near))
      return { mark: markWords(other), off: Math.min(...off) }
    })
    .filter(({ off }) => off < sawingPractice.near)
    .map(({ mark, off }) => `${mark} is only ${showLength(off, units)} off`)
  const at = segmentAt(curve, 0.5)
  const { inward } = bladeOf(
    { kind: 'line', from: segmentAt(curve, 0.49), to: segmentAt(curve, 0.51) },
    piece,
  )
  return {
    words: `${wordList(what)}: jigsaw${close.length > 0 ? `; ${wordList(close)}` : ''}`,
    at,
    inward,
    cut: null,
  }
}
