import { type Design, isCurved } from '../../index.ts'

/** What some of what is saved is made of. */
export type Needs = 'curve' | 'pipe'

/** Why a design has none of what needs that; null where it has. */
export const noneOf = (needs: Needs | undefined, { ramps }: Pick<Design, 'ramps'>): string | null => {
  if (needs === undefined) return null
  const curved = ramps.filter(isCurved)
  if (curved.length === 0) return 'a flat has none'
  return needs === 'curve' || curved.some(({ coping }) => coping !== null) ? null : 'no pipe: it has none'
}
