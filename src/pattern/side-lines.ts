import { pathSegments, segmentsPath } from '../geometry/path.ts'
import { pathSample } from '../geometry/sample.ts'
import type { FramedSide } from '../ramp/kinds/quarter.ts'
import type { SolvedQuarter } from '../ramp/ramp.ts'
import type { Pattern } from './pattern.ts'
import { splicePaths } from './splice-marks.ts'
import { timberOutline } from './timber-marks.ts'
import { tracedLine } from './traced-line.ts'

/** All of a side's pattern that the number of its pages hangs on. */
export type SideLines = Pick<Pattern, 'cut' | 'line' | 'markPaths' | 'notch' | 'points'>

/** A side's lines and corners, full size. */
export const sideLines = ({ side, transition, studs, deckTimbers, splices }: FramedSide): SideLines => ({
  // from one end of the bottom edge round to the other
  cut: segmentsPath(
    side.edges.filter(({ name }) => name !== 'bottom').flatMap(({ path }) => pathSegments(path)),
  ),
  line: tracedLine(side),
  markPaths: [...[...studs, ...deckTimbers].map(timberOutline), ...splices.flatMap(splicePaths)],
  notch: side.edges.flatMap(({ name, path }) => (name === 'notch' ? pathSample(path, 5) : [])),
  points: [
    { name: 'TOE', at: transition.toe },
    { name: 'LIP', at: transition.lip },
  ],
})

/** A side with all that its pattern shows; what is counted alone may lack pipe and screws. */
type ShownSide = FramedSide & Partial<Pick<SolvedQuarter, 'coping' | 'endScrews'>>

/** Ramps whose sides have one pattern, in the order of the first of each. */
export const sidesAlike = <S extends ShownSide>(sides: readonly S[]): readonly (readonly S[])[] => {
  const groups = new Map<string, S[]>()
  for (const ramp of sides) {
    const key = JSON.stringify([
      ramp.side.outline,
      ramp.studs,
      ramp.deckTimbers,
      ramp.endScrews?.map(({ pair }) => pair),
      ramp.coping,
      ramp.transition.heights,
      ramp.skinThickness,
      ramp.splices,
    ])
    groups.set(key, [...(groups.get(key) ?? []), ramp])
  }
  return [...groups.values()]
}

/** Lines of each distinct side, in the order of the ramps. */
export const distinctLines = (sides: readonly ShownSide[]): readonly SideLines[] =>
  sidesAlike(sides).map(([side]) => sideLines(side!))
