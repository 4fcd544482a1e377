import type { RampDesign } from '../../design/design.ts'

/**
 * What sides and ribs are called on layout, pattern and list: for each ramp its marks from left to right, as seen from the
 * toe looking up; numbered through the design.
 */
export const sideMarks = (designs: readonly RampDesign[]): readonly (readonly string[])[] => {
  let last = 0
  return designs.map(({ sides }) => Array.from({ length: sides.count }, () => `S${++last}`))
}
