import { inch } from '../geometry/inch.ts'
import type { RampDesign, Sheet, Stock, Units } from './design.ts'

/** What the sides of a ramp are sawn from. */
export const sideSheet = ({ sides }: Pick<RampDesign, 'sides'>): Sheet => ({
  thickness: sides.thickness,
  material: 'plywood',
})

/** Sheets of one material whose thickness is the same to a tenth of a millimetre come from one panel. */
export const sameSheet = (a: Sheet, b: Sheet): boolean =>
  a.material === b.material && Math.abs(a.thickness - b.thickness) < 0.1

type Bought = Pick<Stock, 'panel' | 'panels'>

/** Sizes in which a sheet is bought, short side first: what the design says of it, else the usual one. mm */
export const panelSizes = (
  sheet: Sheet,
  stock: Bought,
  units: Units,
): readonly (readonly [number, number])[] => {
  const said = stock.panels.filter((panel) => sameSheet(panel.sheet, sheet))
  return said.length > 0 ? said.map(({ size }) => size) : [usualPanel(sheet, stock, units)]
}

/** The largest of them. */
export const largestPanel = (sheet: Sheet, stock: Bought, units: Units): readonly [number, number] =>
  panelSizes(sheet, stock, units).reduce((most, size) =>
    size[0] * size[1] > most[0] * most[1] ? size : most,
  )

/**
 * Where the design does not say: the panel of the stock; steel is sold in sizes of its own. Common practice, no source.
 */
const usualPanel = ({ material }: Sheet, { panel }: Bought, units: Units): readonly [number, number] =>
  material === 'steel' ? (units === 'mm' ? [1250, 2500] : [48 * inch, 120 * inch]) : panel
