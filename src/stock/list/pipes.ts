import type { Coping, Design } from '../../design/design.ts'
import { showLength } from '../../length.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import { cutBoards } from '../timber/cutting.ts'

/** Pipe of one sort as it is bought, and what is left of it; mm. */
export interface CutPipe {
  readonly name: string
  readonly bought: readonly { readonly length: number; readonly count: number }[]
  /** of each length that is bought */
  readonly lefts: readonly number[]
}

/** Pipes of one sort are cut from common lengths. */
export const cutPipes = (
  { stock, units }: Pick<Design, 'stock' | 'units'>,
  { ramps }: WholeDesign,
): readonly CutPipe[] => {
  const pipes = ramps.filter(({ pipe, design }) => pipe && design.coping)
  const sort = ({ outside, material }: Coping): string => `${outside} ${material}`
  return [...new Set(pipes.map(({ design }) => sort(design.coping!)))].map((key) => {
    const own = pipes.filter(({ design }) => sort(design.coping!) === key)
    const lengths = own.flatMap(({ pipe }) =>
      pipe!.pieces.map(({ length }) => Math.round(length * 1e4) / 1e4),
    )
    const boards = [...new Set(stock.pipe)].map((length) => ({ length, cost: length }))
    const wanted = [...new Set(lengths)].map((length) => ({
      length,
      count: lengths.filter((one) => one === length).length,
    }))
    const { patterns } = cutBoards({ wanted, boards, kerf: stock.kerf, ends: 0 })
    const { outside, material } = own[0]!.design.coping!
    return {
      name: `${showLength(outside, units, { decimals: 1 })} ${material} pipe`,
      bought: boards.flatMap(({ length }, board) => {
        const count = patterns.filter((pattern) => pattern.board === board).length
        return count === 0 ? [] : [{ length, count }]
      }),
      lefts: patterns.map(({ board, counts }) =>
        Math.max(
          0,
          counts.reduce(
            (left, count, i) => left - count * (wanted[i]!.length + stock.kerf),
            boards[board]!.length,
          ),
        ),
      ),
    }
  })
}
