import { ownUnits } from '../../../../length/own-units.ts'
import type { Units } from '../../../../length.ts'
import { type Block, caution } from '../../block.ts'

/** Of a screw through sheet steel; common practice, no source. */
export const steelHole = (units: Units): string => ownUnits('5 mm (3/16 in)', units)

/** Heads that lie level with a sheet, whatever it is thick. `below`: what it lies on. */
export const sunkWords = (below: string): string =>
  `Sink each with the countersink until a head lies level; where the sheet is thinner than a head, drill through into the ${below} and sink that as well.`

/** Before a step that lifts sheet steel. */
export const steelCaution = (more: string, width: number): Block => ({
  ...caution(`Steel edges cut: gloves on, file them round${more}`, width),
  withNext: true,
})
