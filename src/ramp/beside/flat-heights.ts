import type { Range } from '../../design/plausible.ts'
import { rangeAt } from '../../design/schema.ts'
import { leastRipped } from '../frame/stud.ts'

/** Heights that a design takes for a layer of a flat, mm. */
export const flatRange = (layer: 'surface' | 'frame'): Range => rangeAt(`ramps[flat].height.${layer}`)

/** Heights that the surface of a flat may have under such a skin: the file takes them, and the frame has its wood. */
export const flatSurfaces = (skin: number): Range => {
  const { least, most } = flatRange('surface')
  return { least: Math.max(least, leastRipped + skin), most }
}
