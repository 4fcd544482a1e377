import { same } from '../../ramp/check/offer.ts'
import { type Board, type Laid, layNext, type Rule } from './place/lay.ts'
import { onTape } from './place/on-steps.ts'
import type { Shape } from './place/shape.ts'

/** Panels of one size, their long side along x: so many of them, or as many as are bought. mm */
export interface PanelKind {
  readonly length: number
  readonly width: number
  /** null: as many as are needed */
  readonly count: number | null
}

/** What the saw takes, mm. */
export interface Saw {
  readonly kerf: number
  /** what is not used along each edge of a panel */
  readonly trim: number
  /** pieces lie on whole steps of the tape where there is room */
  readonly step: number
}

export const areaOf = ({ length, width }: PanelKind): number => length * width

/** Areas this near are the same: the last bits of a sum differ from machine to machine. mm² */
export const sameArea = 0.5

/** The ways in which a piece may lie: with the face up that shows, or any. */
export interface Ways {
  /** mm² */
  readonly area: number
  readonly up: () => readonly Shape[]
  readonly any: () => readonly Shape[]
}

/** A piece, by its number, on a panel. */
export interface Place extends Laid {
  readonly piece: number
}

export interface Filled {
  readonly kind: PanelKind
  readonly places: readonly Place[]
}

export interface Packing {
  readonly filled: readonly Filled[]
  /** pieces that no panel holds */
  readonly lost: readonly number[]
}

/** What must be bought for it, mm² */
export const boughtOf = ({ filled }: Pick<Packing, 'filled'>): number =>
  filled.reduce((sum, { kind }) => sum + (kind.count === null ? areaOf(kind) : 0), 0)

export interface Attempt {
  readonly order: readonly number[]
  readonly rule: Rule
  readonly faces: 'up' | 'any'
  /** in the order in which they are opened */
  readonly kinds: readonly PanelKind[]
  /** pieces that lie together on panels of their own before others come to them */
  readonly openings: readonly (readonly Place[])[]
}

/** What a packing must come to at least to be of use. */
export interface Bound {
  /** area that is bought, mm² */
  readonly bought: number
  /** good faces that lie down, where as much is bought */
  readonly down: number
}

interface Open {
  readonly kind: PanelKind
  readonly board: Board
  readonly places: Place[]
  /** what found no room finds none when more lies there */
  readonly full: Set<readonly Shape[]>
  /** area on which nothing lies, mm² */
  spare: number
}

/** One after another, each on the first panel that has room for it, else on a new one. */
export const pack = (pieces: readonly Ways[], saw: Pick<Saw, 'trim' | 'step'>, attempt: Attempt): Packing =>
  packWithin(pieces, saw, attempt, { bought: Number.POSITIVE_INFINITY, down: Number.POSITIVE_INFINITY })!

/** The same; null as soon as it is worse than the bound. */
export const packWithin = (
  pieces: readonly Ways[],
  { trim, step }: Pick<Saw, 'trim' | 'step'>,
  { order, rule, faces, kinds, openings }: Attempt,
  most: Bound,
): Packing | null => {
  let bought = 0
  let down = 0
  const boards: Open[] = []
  const turned = (piece: number, shape: Shape): void => {
    if (shape.over && !pieces[piece]!.up().includes(shape)) down++
  }
  const open = (kind: PanelKind, places: readonly Place[]): void => {
    const board = { length: kind.length, width: kind.width, trim }
    const spare = places.reduce((rest, { piece }) => rest - pieces[piece]!.area, areaOf(kind))
    boards.push({ kind, board, places: [...places], full: new Set(), spare })
    if (kind.count === null) bought += areaOf(kind)
    for (const { piece, shape } of places) turned(piece, shape)
  }
  const spent = (kind: PanelKind): number => boards.filter((one) => one.kind === kind).length
  // the one that couples were laid for
  const [largest] = kinds.filter(({ count }) => count === null).sort((a, b) => areaOf(b) - areaOf(a))
  if (largest) for (const places of openings) open(largest, places)
  const together = new Set(openings.flat().map(({ piece }) => piece))
  const lost: number[] = []
  const worse = (): boolean =>
    bought > most.bought + sameArea || (bought > most.bought - sameArea && down > most.down)
  for (const piece of order) {
    if (worse()) return null
    if (together.has(piece)) continue
    const { area } = pieces[piece]!
    const shapes = pieces[piece]![faces]()
    const joins = boards.some((open) => {
      const { board, places, full } = open
      if (open.spare < area - same || full.has(shapes)) return false
      const place = layNext(board, places, shapes, rule)
      if (place) {
        places.push({ ...onTape(board, places, place, step), piece })
        turned(piece, place.shape)
        open.spare -= area
      } else full.add(shapes)
      return place !== null
    })
    if (joins) continue
    const opens = kinds.some((kind) => {
      if (kind.count !== null && spent(kind) >= kind.count) return false
      const board = { length: kind.length, width: kind.width, trim }
      const place = layNext(board, [], shapes, rule)
      if (place) open(kind, [{ ...onTape(board, [], place, step), piece }])
      return place !== null
    })
    if (!opens) lost.push(piece)
  }
  return worse() ? null : { filled: boards.map(({ kind, places }) => ({ kind, places })), lost }
}
