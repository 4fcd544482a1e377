import type { FlatDesign, Units } from '../../design/design.ts'
import type { Draft } from '../check/check.ts'
import { flatEveryKey } from '../check/remedy.ts'
import type { Stud } from '../frame/stud.ts'
import { borneSkin, weakest } from './bearing.ts'
import { betweenStuds } from './break-through.ts'

/** A flat's skin that may break between its studs. Its ends lie on studs. */
export const flatLoadFindings = (
  design: FlatDesign,
  studs: readonly Stud[],
  units: Units,
): readonly Draft<FlatDesign>[] => {
  const { between } = weakest(borneSkin(design, studs, { from: 0, to: design.length }))
  return between ? [betweenStuds(design, between, flatEveryKey, () => null, units)] : []
}
