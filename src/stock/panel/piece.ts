import { doubleArea } from '../../geometry/polygon/outer-polygon.ts'
import { once } from '../once.ts'
import type { Known } from './known.ts'
import type { Ways } from './pack.ts'
import { type Blank, regrown, type Shape, shapeOf } from './place/shape.ts'

/** A piece to lay, before it is known how it lies. */
export interface Piece {
  readonly blank: Blank
  /** pieces of one name are cut alike */
  readonly alike: string
  /** the way of its own frame that must lie along the panel; null: any */
  readonly grain: 'x' | 'y' | null
  /** one face shows: turned over it lies with that face down */
  readonly faced: boolean
  /** and that is not allowed */
  readonly mustFace: boolean
}

/** Ways of each; pieces that are cut alike share theirs. */
export const waysOf = (pieces: readonly Piece[], kerf: number, known: Known['ways']): readonly Ways[] =>
  pieces.map((piece) => {
    const name = `${piece.alike} ${piece.grain} ${piece.faced} ${piece.mustFace}`
    const ways = known.get(name) ?? keptWays(piece)
    known.set(name, ways)
    return ways(kerf)
  })

/** Its ways by the kerf: for another one shapes are not turned again. */
const keptWays = (piece: Piece): ((kerf: number) => Ways) => {
  const kept = new Map<number, Ways>()
  return (kerf) => {
    const [first] = kept.values()
    const own = kept.get(kerf) ?? (first ? waysApart(first, kerf) : waysOfOne(piece, kerf))
    kept.set(kerf, own)
    return own
  }
}

const waysOfOne = ({ blank, grain, faced, mustFace }: Piece, kerf: number): Ways => {
  const shapes = (turns: readonly number[], over: boolean): readonly Shape[] =>
    turns.map((turn) => shapeOf(blank, turn, over, kerf))
  const area = doubleArea(blank.fine) / 2
  if (blank.square) {
    const up = once(() => shapes(grain === 'x' ? [0] : grain === 'y' ? [90] : [0, 90], false))
    return { area, up, any: up }
  }
  const turns = [0, 180, 90, 270].filter((turn) => grain === null || (turn % 180 === 0) === (grain === 'x'))
  const up = once(() => shapes(turns, false))
  const any = once(() => [...up(), ...shapes(turns, true)])
  return { area, up: faced ? up : any, any: faced && mustFace ? up : any }
}

const waysApart = ({ area, up, any }: Ways, kerf: number): Ways => {
  const grown = new Map<Shape, Shape>()
  const shapesOf = (shapes: Ways['up']): Ways['up'] =>
    once(() =>
      shapes().map((shape) => {
        const own = grown.get(shape) ?? regrown(shape, kerf)
        grown.set(shape, own)
        return own
      }),
    )
  const apart = shapesOf(up)
  return { area, up: apart, any: any === up ? apart : shapesOf(any) }
}

/** Along and across as its outline is drawn, mm. */
export const drawnSize = ({
  blank,
}: Pick<Piece, 'blank'>): { readonly width: number; readonly height: number } => {
  const [low, high] = blank.corners
  return { width: high.x - low.x, height: high.y - low.y }
}

/** The longest that it lies along the panel, mm. */
export const reachOf = (piece: Piece): number => {
  const { width, height } = drawnSize(piece)
  return Math.max(width, height)
}
