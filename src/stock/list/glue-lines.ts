import { curvedOf } from '../../design/kind-traits.ts'
import { wordList } from '../../length/word-list.ts'
import type { Units } from '../../length.ts'
import { stripJoints } from '../../ramp/beside/run-out-strips.ts'
import { pipeOnBlocks } from '../../ramp/frame/pipe-timber.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import type { ListLine } from './line.ts'
import { isPacked } from './packing-lines.ts'

/** One bottle for all that the booklet tells to glue. */
export const glueLines = (solved: WholeDesign, units: Units): readonly ListLine[] => {
  const glued = gluedWords(solved, units)
  return glued.length > 0
    ? [
        {
          part: 'finish',
          what: 'waterproof wood glue',
          count: 1,
          unit: 'bottle',
          note: `for ${wordList(glued)}`,
          priced: { kind: 'word', word: 'glue' },
        },
      ]
    : []
}

const gluedWords = (solved: WholeDesign, units: Units): readonly string[] => {
  const curved = curvedOf(solved.ramps)
  const packed = curved.some((ramp) => isPacked(solved, ramp.name) && !pipeOnBlocks(ramp, units))
  return [
    ...(solved.ramps.some(({ splices }) => splices.length > 0) ? ['plates over joints of sides'] : []),
    ...(packed ? ['packing under the pipe'] : []),
    ...(curved.some((ramp) => stripJoints(ramp, units)?.glued) ? ['low strips under the run-out'] : []),
    ...(curved.some(({ lipGroove }) => lipGroove) ? ['the strip at the lip'] : []),
  ]
}
