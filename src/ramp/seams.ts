import type { RampDesign, Units } from '../design/design.ts'
import { type Finding, note } from './check.ts'
import { listed, measured, same, wordList } from './offer.ts'
import type { SkinLayer } from './skin.ts'
import { type Framing, type Lying, meets, practice, wallMiddles } from './skin-framing.ts'

/** Where two sheets meet up the ramp: the middle of their gap, from the layer's toe end on the flat sheet. */
export interface Seam {
  readonly at: number
  /** index of the stud under it; null where none is in reach */
  readonly stud: number | null
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
const leastPiece = 100
const leastWidth = 250

/**
 * The farthest stud that each sheet reaches, none that the layer below has a seam on, and neither the first nor the last:
 * every piece lies on two studs. Two rows of screws must find wood in it.
 */
export const upSeams = (
  { curve, studs, panel, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: Lying,
  taken: ReadonlySet<number>,
): readonly Seam[] => {
  const { gap, edge } = practice[units]
  const [most] = panel
  const fit = studs
    .map((stud, i) => ({ stud, i, at: markOf(stud) }))
    .filter(
      ({ stud, i, at }) =>
        i > 0 &&
        i < studs.length - 1 &&
        at >= leastPiece &&
        at <= layer.length - leastPiece &&
        [-1, 1].every((side) => meets(curve, placeAt(at + side * (gap / 2 + edge)), stud, units)),
    )
  const seams: Seam[] = []
  let from = 0
  while (layer.length - from > most + same) {
    const last = seams.at(-1)?.at ?? 0
    const reach = from + most + gap / 2
    const inReach = fit.filter(({ at }) => at > last + same && at <= reach + same)
    const free = inReach.filter(({ i }) => !taken.has(i)).at(-1)
    const chosen = free ?? inReach.at(-1)
    const at = chosen?.at ?? Math.min(reach, Math.max(layer.length - leastPiece, from + most / 2))
    seams.push({ at, stud: chosen?.i ?? null, shared: chosen !== undefined && free === undefined })
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

/** One note for all layers, and the deck board, whose sheets do not reach across; those that meet alike together. */
export const acrossFindings = (
  { design, panel, units }: Framing,
  plans: readonly { readonly layer: number; readonly acrossSeams: readonly AcrossSeam[] }[],
  board: readonly AcrossSeam[],
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
  for (const { layer, acrossSeams: seams } of plans) if (seams.length > 0) group(seams).layers.push(layer)
  if (board.length > 0) group(board).board = true
  if (alike.size === 0) return []
  const words = [...alike].map(([where, { layers, board: deck, ribs }]) => {
    const names = [
      ...(layers.length > 0 ? [`layer${layers.length > 1 ? 's' : ''} ${wordList(layers.map(String))}`] : []),
      ...(deck ? ['the deck board'] : []),
    ]
    return `${names.join(' and ')} ${where}${ribs ? ', over a rib' : ''}`
  })
  const blocks = [...alike.values()].some(({ ribs }) => !ribs)
  return [
    note(
      'seam-across',
      `sheets reach ${measured(panel[1], units)} across, the ramp is ${measured(design.width, units)} wide; they meet: ${words.join('; ')}` +
        (blocks ? '. Where no rib lies, set blocks between the timbers under the seam' : ''),
    ),
  ]
}
