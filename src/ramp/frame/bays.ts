import type { RampDesign, Stock, Units } from '../../design/design.ts'
import { rangeAt } from '../../design/schema.ts'
import { showThickness } from '../../length/thickness.ts'
import { type Draft, type Finding, stop, type Trial } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { firstThat, type Key, manyFaults, orWays } from '../check/remedy.ts'
import { offering, set, setOfFile, type Told, tell, told } from '../check/told.ts'

/** Length of a stud: the width less all sides, shared by the bays between them. mm */
export const studLength = ({ width, sides }: Pick<RampDesign, 'width' | 'sides'>): number =>
  (width - sides.count * sides.thickness) / (sides.count - 1)

/** Middle planes of sides and ribs, from the ramp's left outer face. */
export const wallMiddles = ({ width, sides }: RampDesign): readonly number[] =>
  Array.from(
    { length: sides.count },
    (_, i) => sides.thickness / 2 + (i * (width - sides.thickness)) / (sides.count - 1),
  )

/** A shorter stud is split by its screws, and no hand reaches in; common practice, no source. mm */
const leastBay = 40

/**
 * The ways to longer studs: a ramp wider than so much, or `fewer` sides, in words; those with which the trial holds. `key`: the width of such a
 * ramp.
 */
export const longerStuds = <D extends RampDesign>(
  trial: (changed: D) => boolean,
  design: D,
  key: Key<D>,
  from: number,
  fewer: string,
  units: Units,
): readonly (Told | null)[] => {
  const { sides } = design
  const wider = firstThat(trial, design, key, from, 1, units)
  const less = Array.from({ length: sides.count - 2 }, (_, i) => sides.count - 1 - i).find((count) =>
    trial({ ...design, sides: { ...sides, count } }),
  )
  return [
    wider && told`make it ${wider} or more`,
    less === undefined
      ? null
      : offering(`take ${fewer} (sides: { count: ${less} })`, set('sides.count', `${less}`)),
  ]
}

/** Sides that leave no room for a stud between them; `key`: the width of such a ramp. */
export const widthFindings = <D extends RampDesign>(
  design: D,
  key: Key<D>,
  units: Units,
): readonly Draft<D>[] => {
  const bay = studLength(design)
  if (bay >= leastBay - same) return []
  const { width, sides } = design
  const show = (mm: number): string => measured(mm, units)
  const left = bay > same ? `only ${show(bay)} from one to the next` : 'no room for studs'
  return [
    stop('width', (trial: Trial<D>): Told => {
      const least = sides.count * sides.thickness + (sides.count - 1) * leastBay
      return tell(
        `${sides.count} sides of ${showThickness(sides.thickness, units, { unit: true })} leave ${left} in a width of ${show(width)}, a stud wants ${show(leastBay)}; `,
        orWays(
          longerStuds(trial, design, key, least, 'fewer', units),
          `make it ${offer(units).atLeast(least)} or more; ${manyFaults}`,
        ),
      )
    }),
  ]
}

/** Studs longer than any timber that can be bought. A middle side shortens them, where no other ramp is kept inside. */
export const timberFindings = (
  design: RampDesign,
  { timber }: Stock,
  stored: readonly string[],
  units: Units,
): readonly Finding[] => {
  const length = studLength(design)
  const longest = Math.max(...timber)
  if (length <= longest + same) return []
  const { count } = design.sides
  const { most } = rangeAt('ramps[quarter].sides.count')
  const more = Array.from({ length: most - count }, (_, i) => count + i + 1).find((sides) => {
    const bay = studLength({ ...design, sides: { ...design.sides, count: sides } })
    return bay <= longest + same && bay >= leastBay
  })
  const longer = offer(units).atLeast(length)
  return [
    stop(
      'timber-short',
      tell(
        `a stud is ${measured(length, units)} long, and the longest timber of your stock ${measured(longest, units)}: `,
        offering(
          `buy timber of ${longer} or more (stock: { timber })`,
          setOfFile('stock.timber', `[ ${longer} ]`),
        ),
        more === undefined || stored.length > 0
          ? ''
          : offering(
              `, or take ${more - 2 === 1 ? 'a middle rib' : `${more - 2} ribs`} (sides: { count: ${more} })`,
              set('sides.count', `${more}`),
            ),
      ),
    ),
  ]
}
