import { radiansOf } from '../geometry/degrees.ts'
import { showAngle } from '../length/show-angle.ts'
import { showLength } from '../length.ts'
import { type Distortion, skewOf } from './distortion.ts'
import { isScaled, readingFault } from './plausible-reading.ts'
import { type Reading, squareSide } from './reading.ts'

/** All that was measured on one or several prints. */
export interface Readings {
  readonly across: readonly Reading[]
  readonly down: readonly Reading[]
  /** rising (lower left to upper right), then falling */
  readonly diagonals: readonly (readonly [Reading, Reading])[]
}

/** How far one reading of a rule may be off, mm, either way. */
export const readingError = 0.25

/** More than any printer in order leans, radians; common practice, no source. */
const mostSkew = radiansOf(0.6)

/** Longer lengths tell more: all measured lengths over all true ones. */
const ratio = (readings: readonly Reading[]): number =>
  readings.reduce((sum, r) => sum + r.measured, 0) / readings.reduce((sum, r) => sum + r.nominal, 0)

/** What to measure as well, where one of both ways is not. */
export const missingReadings = ({
  across,
  down,
}: Readonly<Record<'across' | 'down', readonly unknown[]>>): readonly string[] => [
  ...(across.length > 0
    ? []
    : ['--across is missing: measure the side of the square that runs across the page']),
  ...(down.length > 0 ? [] : ['--down is missing: measure the side of the square that runs down the page']),
]

/** What the printer does, or everything that speaks against the readings. */
export const gaugePrinter = (
  readings: Readings,
): { readonly distortion: Distortion } | { readonly faults: readonly string[] } => {
  const diagonals = readings.diagonals.flat()
  const scaled = isScaled([...readings.across, ...readings.down, ...diagonals])
  const faults = [
    ...readings.across.map((r) => readingFault('--across', r, scaled)),
    ...readings.down.map((r) => readingFault('--down', r, scaled)),
    ...diagonals.map((r) => readingFault('--diagonals', r, scaled)),
  ].filter((fault) => fault !== null)
  faults.push(...missingReadings(readings))
  if (faults.length > 0) return { faults }
  const [across, down] = [ratio(readings.across), ratio(readings.down)]
  const skews = readings.diagonals.map(([rising, falling]) => {
    const scale = rising.nominal / Math.SQRT2
    const [a, d] = [across * scale, down * scale]
    const belongs = Math.hypot(a, d)
    const mean = Math.sqrt((rising.measured ** 2 + falling.measured ** 2) / 2)
    if (Math.abs(mean - belongs) > 4 * readingError)
      faults.push(
        `--diagonals ${rising.text} ${falling.text}: a square with these sides has diagonals of about ${mm(belongs)}; ` +
          `measure them again, from corner to corner`,
      )
    return skewOf(a, d, rising.measured, falling.measured)
  })
  const skew = skews.length === 0 ? 0 : skews.reduce((sum, s) => sum + s, 0) / skews.length
  if (faults.length === 0 && Math.abs(skew) > mostSkew)
    faults.push(
      `--diagonals: they say the print leans ${showAngle(skew, 2)}, more than any printer in order; measure both again`,
    )
  return faults.length > 0 ? { faults } : { distortion: { across, down, skew } }
}

const mm = (value: number): string => showLength(value, 'mm', { decimals: 1, unit: true })

/** How far each part of a distortion may be off: a share of each length, and radians. */
export interface Uncertainty {
  readonly across: number
  readonly down: number
  /** radians */
  readonly skew: number
}

/**
 * How well a distortion is known: one standard deviation (`likely`) and all readings off the same way (`worst`). Each reading is
 * off by up to `error` mm, evenly spread. Without diagonals the skew is not known at all: an office printer
 * leans by up to 0.1° (common practice, no source).
 */
export const gaugeUncertainty = (
  readings: Readings,
  error = readingError,
): { readonly likely: Uncertainty; readonly worst: Uncertainty } => {
  const total = (list: readonly Reading[]): number => list.reduce((sum, r) => sum + r.nominal, 0)
  const likely = (list: readonly Reading[]): number =>
    ((error / Math.sqrt(3)) * Math.sqrt(list.length)) / total(list)
  const worst = (list: readonly Reading[]): number => (error * list.length) / total(list)
  // sin γ = (r² − f²)/(4ad): with a = d = s and r, f ≈ s√2, each mm of one of them turns it by 1/(s√2), one over the diagonal
  const each = (one: number): readonly number[] =>
    readings.diagonals.map(([{ nominal }]) => (one * Math.SQRT2) / nominal)
  const pairs = readings.diagonals.length
  const unknown = radiansOf(0.1)
  return {
    likely: {
      across: likely(readings.across),
      down: likely(readings.down),
      skew: pairs === 0 ? unknown : Math.hypot(...each(error / Math.sqrt(3))) / pairs,
    },
    worst: {
      across: worst(readings.across),
      down: worst(readings.down),
      skew: pairs === 0 ? unknown : each(error * Math.SQRT2).reduce((sum, one) => sum + one, 0) / pairs,
    },
  }
}

/** True length of the square's diagonals, mm. */
export const squareDiagonal = squareSide * Math.SQRT2
