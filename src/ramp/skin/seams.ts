import type { RampDesign, Sheet, Units } from '../../design/design.ts'
import { wordList } from '../../length/word-list.ts'
import { type Finding, note } from '../check/check.ts'
import { listed, measured, same } from '../check/offer.ts'
import { wallMiddles } from '../frame/bays.ts'
import { type Ground, practice } from './skin-framing.ts'

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

/** No piece is narrower across it, mm. */
const leastWidth = 250

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
      seams.map(({ at }) => (units === 'mm' ? Math.round(at) : at)),
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
