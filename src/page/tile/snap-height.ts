import type { Units } from '../../design/design.ts'
import { affineApply } from '../../geometry/affine.ts'
import { inch } from '../../geometry/inch.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { type Lattice, latticePitch } from '../cover/lattice.ts'

/** How far a snap line may lie from the middle of its row, a share of its height: farther off it would run into the scales. */
const snapOff = 0.08

/** Chalk this close to the panel's edge is hard to snap, mm. */
const chalkRoom = 5

/** A line to be sawn that runs along the snap line, no steeper than this to it, keeps so far off, mm. */
const cutRoom = 10
const steep = Math.tan((20 * Math.PI) / 180)
const spacing = 4

/**
 * Height of a row's snap line in its windows: near the middle, off the lines to be sawn that run along it, and where rows are level
 * a round distance above the panel's bottom edge, on the panel if it can.
 */
export const snapHeight = (
  lattice: Lattice,
  { cut, height: panel }: Pattern,
  units: Units,
): ((row: number) => number) => {
  const points = pathSample(cut, spacing).map((p) => affineApply(lattice.toFrame, p))
  const middle = lattice.height / 2
  const most = snapOff * lattice.height
  const level = lattice.toFrame[1] === 0
  const step = level ? (units === 'in' ? inch / 2 : 10) : 4
  return (row) => {
    const low = row * latticePitch(lattice).y
    /** mm of cut line beside a snap line at a height of the frame */
    const beside = (y: number): number =>
      points.slice(1).reduce((sum, q, i) => {
        const p = points[i]!
        const [along, up] = [Math.abs(q.x - p.x), Math.abs(q.y - p.y)]
        return Math.abs((p.y + q.y) / 2 - y) < cutRoom && up < steep * along ? sum + along : sum
      }, 0)
    // of the panel's bottom edge in the frame, where rows are level
    const base = level ? lattice.toFrame[5] : low + middle
    const near = Math.round((low + middle - base) / step)
    const heights = [0, -1, 1, -2, 2, -3, 3].map((k) => (near + k) * step)
    const fits = heights.filter(
      (height) =>
        Math.abs(base + height - low - middle) <= most &&
        (!level || (height >= chalkRoom && height <= panel - chalkRoom)),
    )
    if (fits.length === 0) return base + near * step - low
    const found = fits.reduce((best, height) =>
      beside(base + height) < beside(base + best) - spacing ? height : best,
    )
    return base + found - low
  }
}
