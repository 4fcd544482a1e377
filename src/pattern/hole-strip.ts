import type { Units } from '../design/design.ts'
import { showLength } from '../length.ts'
import { pipeDrills } from '../ramp/holes.ts'
import type { Ramp } from '../ramp/ramp.ts'
import { endMark, rowMarks, type StoryStrip } from './story-strip.ts'

/** The pipe's holes and the joints of its pieces, laid along it from its left end; none for a ramp without a pipe. */
export const holeStrip = (ramp: Ramp, units: Units): readonly StoryStrip[] => {
  if (ramp.kind !== 'quarter' || !ramp.pipe) return []
  const { name, pipe } = ramp
  const show = (at: number): string => showLength(at, units, { decimals: 1 })
  return [
    {
      name: `${name}/strip-pipe`,
      title: `${name}, pipe: drill all holes along one line`,
      length: pipe.length,
      zero: "pipe's left end",
      rows: [
        {
          words: `near wall ${pipeDrills.near}, far wall ${pipeDrills.far}`,
          marks: [
            ...rowMarks([
              ...pipe.holes.map((at) => ({ at, sign: 'ring' as const, label: show(at) })),
              ...pipe.joints.map(({ at }) => ({ at, sign: 'tick' as const, label: `joint ${show(at)}` })),
            ]),
            endMark(pipe.length, units),
          ],
        },
      ],
      rings: 'hole',
    },
  ]
}
