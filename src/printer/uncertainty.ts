import { radiansOf } from '../geometry/degrees.ts'
import { gaugeUncertainty, type Readings } from './gauge.ts'

export type PrinterUncertainty = ReturnType<typeof gaugeUncertainty>

/**
 * A printer that nobody measured: office printers err by 0.1 to 0.5 % in each direction and lean by up to 0.1° (common
 * practice, no source; old laser engines were allowed 2 %, Beeton 1988).
 */
export const unmeasured: PrinterUncertainty = {
  likely: { across: 0.002, down: 0.002, skew: radiansOf(0.05) },
  worst: { across: 0.005, down: 0.005, skew: radiansOf(0.1) },
}

export const printerUncertainty = (readings: Readings | null): PrinterUncertainty =>
  readings ? gaugeUncertainty(readings) : unmeasured
