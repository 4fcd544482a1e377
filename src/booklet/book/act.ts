import type { View } from '../views/view.ts'
import { type Block, step } from './block.ts'
import { stage } from './stage.ts'

/** Steps that stand together, numbered from where those before end. */
export interface Act {
  readonly count: number
  readonly blocks: (first: number) => readonly Block[]
}

/** Steps in words alone. */
export const told = (said: readonly string[], width: number): readonly Act[] =>
  said.map((one) => ({ count: 1, blocks: (first) => [step(first, one, width)] }))

/** Steps beside the picture of what they do. */
export const shown = (
  said: readonly string[],
  at: (ratio: number) => View,
  thing: { readonly width: number; readonly height: number },
  width: number,
): Act => ({
  count: said.length,
  blocks: (first) => [stage(at, thing, (room) => said.map((one, i) => step(first + i, one, room)), width)],
})

/** All of them, one after the other. */
export const actBlocks = (acts: readonly Act[]): readonly Block[] => {
  let first = 1
  return acts.flatMap(({ count, blocks }) => {
    const own = blocks(first)
    first += count
    return own
  })
}
