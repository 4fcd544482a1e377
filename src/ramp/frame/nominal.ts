import type { RampDesign, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { type Finding, warn } from '../check/check.ts'
import { rounded, same } from '../check/offer.ts'

/** Thickness of dry boards by the name they are sold under, inches: American Softwood Lumber Standard PS 20; from memory but 1, 2. */
const thicknesses = new Map([
  [1, 0.75],
  [2, 1.5],
  [4, 3.5],
])

/** Width alike; PS 20, from memory but 4, 6 and 8. */
const widths = new Map([
  [2, 1.5],
  [3, 2.5],
  [4, 3.5],
  [6, 5.5],
  [8, 7.25],
  [10, 9.25],
  [12, 11.25],
])

/** Outside of steel pipe by the name it is sold under, inches, as a rule reads it: ASME B36.10M, ASTM A53. */
const pipes = new Map([
  [1.25, '1.66'],
  [1.5, '1.9'],
  [2, '2 3/8'],
  [2.5, '2 7/8'],
])

/** Outside of steel pipe in mm by its nominal diameter (DN): EN 10255, from memory. */
const metricPipes = new Map([
  [25, 33.7],
  [32, 42.4],
  [40, 48.3],
  [50, 60.3],
  [65, 76.1],
])

/** What is typed by the name that it is sold under. In mm the names of timber differ by country. */
export const nominalFindings = (ramp: RampDesign, units: Units): readonly Finding[] =>
  units === 'in' ? [...studFindings(ramp), ...pipeFindings(ramp)] : metricPipeFindings(ramp)

const metricPipeFindings = (ramp: RampDesign): readonly Finding[] => {
  // plastic pipe is sold by its outside
  if (ramp.coping?.material !== 'steel') return []
  const { outside } = ramp.coping
  const real = named(metricPipes, outside)
  if (real === undefined) return []
  return [
    warn(
      'pipe-nominal',
      `the pipe is taken as ${outside} mm thick in real; steel pipe sold as DN ${outside} measures ${real} mm outside: ` +
        `type what you measure (outside: ${real})`,
    ),
  ]
}

const named = <T>(table: ReadonlyMap<number, T>, size: number): T | undefined =>
  [...table].find(([name]) => Math.abs(name - size) < same)?.[1]

const show = (inches: number): string => rounded(inches * inch, 'in').replace(/ in$/, '')

const pipeFindings = (ramp: RampDesign): readonly Finding[] => {
  const typed = ramp.coping ? ramp.coping.outside / inch : 0
  const outside = named(pipes, typed)
  if (outside === undefined) return []
  return [
    warn(
      'pipe-nominal',
      `the pipe is taken as ${show(typed)} in thick in real; pipe sold as ${show(typed)} in measures ${outside} in outside: ` +
        `type what you measure (outside: ${outside})`,
    ),
  ]
}

const studFindings = ({ studs: { section } }: RampDesign): readonly Finding[] => {
  const [thin, wide] = [Math.min(...section) / inch, Math.max(...section) / inch]
  const [thickness, width] = [named(thicknesses, thin), named(widths, wide)]
  if (thickness === undefined || width === undefined) return []
  return [
    warn(
      'stud-nominal',
      `the studs are taken as ${show(thin)} x ${show(wide)} in real; what is sold as ${show(thin)}x${show(wide)} measures ` +
        `${show(thickness)} x ${show(width)} in when it is dry: type what you measure (section: ${show(thickness)} x ${show(width)})`,
    ),
  ]
}
