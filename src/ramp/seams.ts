import type { RampDesign } from '../design/design.ts'
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
const leastWidth = 300

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

/** The farthest rib that each sheet reaches; every other layer begins at the other side. */
export const acrossSeams = (
  design: RampDesign,
  most: number,
  gap: number,
  mirrored: boolean,
): readonly AcrossSeam[] => {
  const { width } = design
  const ribs = wallMiddles(design).slice(1, -1)
  const seams: AcrossSeam[] = []
  let from = 0
  while (width - from > most + same) {
    const last = seams.at(-1)?.at ?? 0
    const reach = from + most + gap / 2
    const rib = ribs.findLast((at) => at <= reach + same && at > last + leastWidth)
    const at = rib ?? Math.min(reach, Math.max(width - leastWidth, last + leastWidth))
    seams.push({ at, rib: rib !== undefined })
    from = at + gap / 2
  }
  return mirrored ? seams.map(({ at, rib }) => ({ at: width - at, rib })).reverse() : seams
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
