import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'

/** Of a timber or a plate, in the pattern. */
export interface Section {
  readonly corners: readonly Point[]
  readonly bounds: Box
}

export const sectionsOf = ({ markPaths }: Pattern): readonly Section[] =>
  markPaths
    .filter(({ closed }) => closed)
    .map((path) => {
      const corners = pathSegments(path).map(({ from }) => from)
      return { corners, bounds: pointsBounds(corners) }
    })
