import type { Units } from '../../design/design.ts'
import { same } from '../../ramp/check/offer.ts'
import { feather } from '../../ramp/check/practice.ts'
import { blunt } from '../../ramp/hazard/feather.ts'

/** Higher than any toe, mm. */
const behind = 1000

/** Less is better: the least toe that is blunt, then the least that is no feather edge, then the least. */
export const toeRank = (mm: number, units: Units): number => {
  if (mm >= blunt[units] - same) return mm
  return mm > feather + same ? behind + mm : 2 * behind + mm
}
