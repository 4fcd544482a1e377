import type { Units } from '../design/design.ts'
import { pipeDrills } from '../ramp/frame/pipe.ts'
import type { SolvedRamp } from '../ramp/ramp.ts'
import { leftOf } from './across-strips.ts'
import { endMark, markFigure, rowMarks, type StoryStrip, tickAt } from './story-strip.ts'

/** The pipe's holes and the joints of its pieces, laid along it from its left end; none for a ramp without a pipe. */
export const holeStrip = (ramp: SolvedRamp, units: Units): readonly StoryStrip[] => {
  if (!ramp.pipe) return []
  const { name, pipe } = ramp
  return [
    {
      name: `${name}/strip-pipe`,
      kind: 'pipe',
      ramps: name,
      what: 'pipe',
      aside: 'all holes along one line',
      straight: true,
      length: pipe.length,
      zero: `pipe's left end; ${leftOf(ramp)}`,
      rows: [
        {
          edge: 'PIPE',
          words: `drill the near wall ${pipeDrills.near}, the far wall ${pipeDrills.far}`,
          marks: [
            ...rowMarks([
              ...pipe.holes.map((at) => ({
                at,
                sign: 'ring' as const,
                label: markFigure(at, units),
                figure: null,
              })),
              ...pipe.joints.map(({ at }) => tickAt(at, 'joint', units)),
            ]),
            endMark(pipe.length, units),
          ],
        },
      ],
      rings: 'a hole',
      onTicks: null,
      notes: [
        "near = the wall that faces the drill, where the screw's head passes; far = against the timber",
      ],
    },
  ]
}
