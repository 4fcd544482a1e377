import { curvedOf } from '../../design/kind-traits.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import type { ListLine } from './line.ts'

/** Whether the screws of a ramp's pipe meet air before wood, which is packed. */
export const isPacked = ({ checks }: Pick<WholeDesign, 'checks'>, name: string): boolean =>
  checks.some(({ id, ramp }) => id === 'pipe-timber' && ramp === name)

/** What fills the air under a pipe that no timber fits under, one for each of its screws. */
export const packingLines = (solved: WholeDesign): readonly ListLine[] => {
  const packed = curvedOf(solved.ramps).filter(({ name }) => isPacked(solved, name))
  const count = packed.reduce((sum, { pipe }) => sum + (pipe?.holes.length ?? 0), 0)
  return count > 0
    ? [
        {
          part: 'pipe',
          what: 'offcuts of timber, packing under the pipe',
          count,
          unit: 'piece',
          note: 'one under each of its screws',
          priced: null,
        },
      ]
    : []
}
