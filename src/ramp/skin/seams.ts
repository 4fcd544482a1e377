import type { RampDesign, Sheet, Units } from '../../design/design.ts'
import { wordList } from '../../length/word-list.ts'
import { type Finding, note } from '../check/check.ts'
import { listed, measured, same } from '../check/offer.ts'
import { wallMiddles } from '../frame/bays.ts'
import type { SkinLayer } from './skin.ts'
import { type FlatToCurve, type Framing, type Ground, meets, practice } from './skin-framing.ts'

/** Where two sheets meet up the ramp: the middle of their gap, from the layer's toe end on the flat sheet. */
export interface Seam {
  readonly at: number
  /** index of the stud under it; null where none is in reach */
  readonly stud: number | null
  /** index of the one beside that, where the seam lies on the joint of two that are too thin alone; else null */
  readonly second: number | null
  /** the layer below has a seam on the same stud */
  readonly shared: boolean
}

/** Where two sheets meet across the ramp: from its left outer face. */
export interface AcrossSeam {
  readonly at: number
  /** a rib lies under it; else it takes a block between the studs */
  readonly rib: boolean
}

/** No piece is narrower up the ramp, or across it. mm */
export const leastPiece = 100
const leastWidth = 250

/** Studs no farther apart than this are side by side, mm. */
const touching = 0.5

/** Wood that takes the two rows of screws at a seam. */
interface Seat extends Pick<Seam, 'at' | 'second'> {
  readonly stud: number
}

/** Studs that take both rows, and pairs side by side where each takes one; neither the first stud nor the last. */
const seatsFor = (
  { curve, studs, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: FlatToCurve,
): readonly Seat[] => {
  const { gap, edge } = practice[units]
  const takes = (at: number, side: -1 | 1, i: number): boolean =>
    meets(curve, placeAt(at + side * (gap / 2 + edge)), studs[i]!, units)
  const seats: Seat[] = []
  for (const [i, stud] of studs.slice(0, -1).entries()) {
    const at = markOf(stud)
    const next = studs[i + 1]!
    const joint = (stud.at + stud.width / 2 + next.at - next.width / 2) / 2
    const beside = next.at - stud.at - (stud.width + next.width) / 2 <= touching
    if (i > 0 && takes(at, -1, i) && takes(at, 1, i)) seats.push({ at, stud: i, second: null })
    else if (i > 0 && i + 1 < studs.length - 1 && beside) {
      const between = markOf({ ...stud, at: joint })
      if (takes(between, -1, i) && takes(between, 1, i + 1))
        seats.push({ at: between, stud: i, second: i + 1 })
    }
  }
  return seats.filter(({ at }) => at >= leastPiece && at <= layer.length - leastPiece)
}

/** How far the edge of a sheet may lie from its toe end: the middle of the gap behind one that begins there. */
export const seamReach = (from: number, { panel, units }: Framing): number =>
  from + panel[0] + practice[units].gap / 2

/**
 * The farthest stud that each sheet reaches, none that the layer below has a seam on, and neither the first nor the last:
 * every piece lies on two studs. Two rows of screws must find wood in it, or in two side by side.
 */
export const upSeams = (
  framing: Framing,
  layer: SkinLayer,
  bent: FlatToCurve,
  taken: ReadonlySet<number>,
): readonly Seam[] => {
  const { gap } = practice[framing.units]
  const [most] = framing.panel
  const seats = seatsFor(framing, layer, bent)
  const seams: Seam[] = []
  let from = 0
  while (layer.length - from > most + same) {
    const last = seams.at(-1)?.at ?? 0
    const reach = seamReach(from, framing)
    const inReach = seats.filter(({ at }) => at > last + same && at <= reach + same)
    const free = inReach
      .filter(({ stud, second }) => !taken.has(stud) && !(second !== null && taken.has(second)))
      .at(-1)
    const chosen = free ?? inReach.at(-1)
    const at = chosen?.at ?? Math.min(reach, Math.max(layer.length - leastPiece, from + most / 2))
    const none = { stud: null, second: null }
    seams.push({ ...none, ...chosen, at, shared: chosen !== undefined && free === undefined })
    from = at + gap / 2
  }
  return seams
}

/**
 * Where the sheets of a layer meet across the ramp. Of all ways: first those that keep their distance from the seams of the layer
 * below, then with the fewest pieces, the most seams over ribs, the most whole sheets, and those that reach farthest from
 * the left. `most`: the length of a sheet, mm.
 */
export const acrossSeams = (
  design: RampDesign,
  most: number,
  units: Units,
  below: readonly AcrossSeam[],
): readonly AcrossSeam[] => {
  const { width } = design
  const { gap, stagger } = practice[units]
  const least = Math.min(leastWidth, most / 3)
  const ribs = wallMiddles(design).slice(1, -1)
  const isRib = (at: number): boolean => ribs.some((rib) => Math.abs(rib - at) <= same)
  const fewest = Math.max(0, Math.ceil((width + gap - same) / (most + gap)) - 1)
  /** where a seam may lie, besides at the end of a whole sheet from the left */
  const places = [
    ...ribs,
    ...Array.from({ length: fewest }, (_, i) => width + gap / 2 - (i + 1) * (most + gap)),
    width - least - gap / 2,
    ...below.flatMap(({ at }) => [at - stagger, at + stagger]),
  ]
  const cost = (at: number, length: number): Cost => [
    below.some((other) => Math.abs(other.at - at) < stagger - same) ? 1 : 0,
    isRib(at) ? 0 : 1,
    length >= most - same ? 0 : 1,
  ]
  const known = new Map<string, Way | null>()
  /** the best way on with so many more seams, the last piece having begun `from` there */
  const wayOn = (from: number, more: number): Way | null => {
    const rest = width - from
    if (more === 0) {
      const fits = rest <= most + same && rest >= (from === 0 ? 0 : least - same)
      return fits ? { seams: [], cost: [0, 0, rest >= most - same ? 0 : 1] } : null
    }
    const key = `${more} ${from.toFixed(6)}`
    const found = known.get(key)
    if (found !== undefined) return found
    let best: Way | null = null
    for (const at of [from + most + gap / 2, ...places]) {
      const length = at - gap / 2 - from
      if (length < least - same || length > most + same) continue
      const on = wayOn(at + gap / 2, more - 1)
      if (!on) continue
      const way = { seams: [at, ...on.seams], cost: costSum(cost(at, length), on.cost) }
      if (!best || isBetter(way, best)) best = way
    }
    known.set(key, best)
    return best
  }
  // one piece more may let every seam keep its distance
  const [way, longer] = [wayOn(0, fewest), wayOn(0, fewest + 1)]
  const chosen = !way || (longer && longer.cost[0] < way.cost[0]) ? longer : way
  return (chosen?.seams ?? []).map((at) => ({ at, rib: isRib(at) }))
}

/** Seams too near to those below, seams without a rib, pieces that are no whole sheets. */
type Cost = readonly [number, number, number]

interface Way {
  readonly seams: readonly number[]
  readonly cost: Cost
}

const costSum = (a: Cost, b: Cost): Cost => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]

/** Cheaper, or as cheap and farther from the left. */
const isBetter = (a: Way, b: Way): boolean => {
  const worth = (way: Way): readonly number[] => [...way.cost, ...way.seams.map((at) => -at)]
  const [mine, other] = [worth(a), worth(b)]
  const i = mine.findIndex((value, k) => Math.abs(value - other[k]!) > same)
  return i >= 0 && mine[i]! < other[i]!
}

/** What is laid in sheets side by side. */
interface Across {
  readonly sheet: Sheet
  readonly acrossSeams: readonly AcrossSeam[]
}

/** One note for all layers, and the deck board, whose sheets do not reach across; those that meet alike together. */
export const acrossFindings = (
  { design, panelOf, units }: Ground,
  skin: readonly (Across & { readonly layer: number })[],
  board: Across | null,
): readonly Finding[] => {
  const alike = new Map<string, { readonly layers: number[]; board: boolean; readonly ribs: boolean }>()
  const group = (seams: readonly AcrossSeam[]) => {
    const where = `${listed(
      seams.map(({ at }) => Math.round(at)),
      units,
    )} from the left`
    const found = alike.get(where) ?? { layers: [], board: false, ribs: seams.every(({ rib }) => rib) }
    alike.set(where, found)
    return found
  }
  for (const { layer, acrossSeams: seams } of skin) if (seams.length > 0) group(seams).layers.push(layer)
  if (board && board.acrossSeams.length > 0) group(board.acrossSeams).board = true
  if (alike.size === 0) return []
  const words = [...alike].map(([where, { layers, board: deck, ribs }]) => {
    const names = [
      ...(layers.length > 0 ? [`layer${layers.length > 1 ? 's' : ''} ${wordList(layers.map(String))}`] : []),
      ...(deck ? ['the deck board'] : []),
    ]
    return `${names.join(' and ')} ${where}${ribs ? ', over a rib' : ''}`
  })
  const meeting = [...skin, ...(board ? [board] : [])].filter(({ acrossSeams: seams }) => seams.length > 0)
  const reaches = new Set(meeting.map(({ sheet }) => measured(panelOf(sheet)[1], units)))
  const blocks = [...alike.values()].some(({ ribs }) => !ribs)
  return [
    note(
      'seam-across',
      `sheets reach ${wordList([...reaches])} across, the ramp is ${measured(design.width, units)} wide; they meet: ${words.join('; ')}` +
        (blocks ? '. Where no rib lies, set blocks between the timbers under the seam' : ''),
    ),
  ]
}
