import type { Sheet } from '../../design/design.ts'
import { sameSheet } from '../../design/panel-sizes.ts'
import { same } from '../../ramp/check/offer.ts'

/** Panels of one sheet, the largest rectangle that each leaves, mm. */
export interface Rests {
  readonly sheet: Sheet
  readonly rests: readonly (readonly [number, number])[]
}

/** Along and across in a rest, either way round, mm. */
export interface RestPiece {
  readonly sheet: Sheet
  readonly size: readonly [number, number]
}

/** Sawn one after the other, each off the long side of the first rest that holds it: what none holds, and what is left of the rests. */
export const takenFrom = <T extends RestPiece>(
  panels: readonly Rests[],
  pieces: readonly T[],
  kerf: number,
): { readonly lacking: readonly T[]; readonly left: readonly Rests[] } => {
  const left = panels.map(({ sheet, rests }) => ({ sheet, rests: [...rests] }))
  const lacking = pieces.filter(({ sheet, size: [long, high] }) => {
    for (const { rests } of left.filter((own) => sameSheet(own.sheet, sheet)))
      for (const [i, [a, b]] of rests.entries())
        for (const [along, across] of [
          [a, b],
          [b, a],
        ] as const)
          if (along >= long - same && across >= high - same) {
            rests[i] = [along, across - high - kerf]
            return false
          }
    return true
  })
  return { lacking, left }
}
