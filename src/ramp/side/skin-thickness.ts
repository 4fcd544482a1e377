import type { RampDesign } from '../../design/design.ts'

/** Of all layers together, mm. */
export const skinThickness = ({ skin }: Pick<RampDesign, 'skin'>): number =>
  skin.reduce((sum, sheet) => sum + sheet.thickness, 0)
