import { ownUnits } from '../../../../length/own-units.ts'
import type { Units } from '../../../../length.ts'
import { pilotDrill } from '../../../../ramp/frame/screw-lengths.ts'

/** In a thin sheet, wide enough that a screw turns freely in it; common practice, no source. */
export const freeHole = (units: Units): string => ownUnits('5 mm (3/16 in)', units)

/** On the bench, before it lies anywhere. */
export const punchWords = (units: Units): string =>
  `Punch the steel at each cross of the drawing and drill it ${freeHole(units)} wide.`

/** Once it lies there: heads that lie level with a sheet, whatever it is thick. `below`: what it lies on. */
export const sinkWords = (below: string, units: Units): string =>
  `at each hole drill ${ownUnits(pilotDrill, units)}, sink the hole with the countersink until a head lies level, on into the ${below} where the sheet is thinner than a head, then drive the screw`
