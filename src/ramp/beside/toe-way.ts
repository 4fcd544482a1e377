import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Range } from '../../design/plausible.ts'
import { rangeAt } from '../../design/schema.ts'
import { measured, same } from '../check/offer.ts'
import { feather, stepLimit } from '../check/practice.ts'
import { firstThat, manyFaults, type Offered, toeKey } from '../check/remedy.ts'
import { type Offer, set } from '../check/told.ts'
import type { Transition } from '../side/transition.ts'

/** Toes with which a face that runs level at a height ends no farther above a surface than a wheel takes, mm. */
export const toesFor = (transition: Transition, level: number, surface: number): Range => {
  const toe = rangeAt('ramps[quarter].toe')
  const up = level - transition.level.surface
  return {
    least: Math.max(toe.least, transition.level.frame + up),
    most: Math.min(toe.most, toeUnder(transition, surface + stepLimit - up) + up),
  }
}

/** The toe over which the ridden face lies so high; the lowest there is where it never comes so low. */
export const toeUnder = ({ curve, face, level }: Transition, height: number): number =>
  curve.point(face.placeAtHeight(height) ?? level.place).y

/** What else the toe is to be, as words, and as what is typed. */
export interface Way {
  readonly toe: string
  readonly settings: Offer
}

/** The lowest toe of these that works, no feather edge where another does: over it the face ends nearest to what it runs out on. */
export const lowestToe = (
  design: QuarterDesign,
  works: (changed: QuarterDesign) => boolean,
  range: Range,
  units: Units,
): Offered | null => {
  const from = (least: number): Offered | null =>
    firstThat(works, design, { ...toeKey, range }, least, 1, units)
  return from(Math.max(range.least, feather + 2 * same)) ?? from(range.least)
}

/** The toe is left where it works, else the lowest of those that a flat so high asks for. */
export const withToe = (
  design: QuarterDesign,
  works: (changed: QuarterDesign) => boolean,
  range: Range,
  units: Units,
): Way | null => {
  const { toe } = design
  if (toe >= range.least - same && toe <= range.most + same && works(design)) return { toe: '', settings: [] }
  const found = lowestToe(design, works, range, units)
  return found && { toe: ` with a toe of ${found.words}`, settings: [set('toe', found.words)] }
}

/** How high over the floor; nothing is no height. */
export const overFloor = (level: number, units: Units): string =>
  Math.abs(level) <= same
    ? 'on the floor'
    : `${measured(Math.abs(level), units)} ${level > 0 ? 'above' : 'below'} the floor`

/** Said where no toe and tangent alone puts it right. */
export const noWay = `say what else closes the step (run-out), or first see to what stops; ${manyFaults}`
