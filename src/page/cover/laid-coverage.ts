import { calmJoints } from './calm-joints.ts'
import type { Cover } from './cover.ts'
import type { Coverage } from './coverage.ts'
import type { PatternCovers } from './pattern-covers.ts'
import { showMarks } from './shown-marks.ts'

/** A pattern on its pages as a set lays them: as few as can be, moved to where most timbers are shown, then off screws and sawn lines. */
export const laidCoverage = ({ pattern, covers }: PatternCovers, cover: Cover): Coverage => {
  const found = covers[cover].found()
  return calmJoints(pattern, cover, showMarks(pattern, cover, found), found)
}
