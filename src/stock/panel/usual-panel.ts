import type { Sheet, Stock, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'

/**
 * Short and long side of the panel that a sheet is sawn from where the design does not say: that of the stock; steel is sold
 * in sizes of its own. Common practice, no source. mm
 */
export const usualPanel = ({ material }: Sheet, stock: Stock, units: Units): readonly [number, number] =>
  material === 'steel' ? (units === 'mm' ? [1250, 2500] : [48 * inch, 120 * inch]) : stock.panel
