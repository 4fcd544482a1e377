import type { QuarterDesign, Units } from '../../design/design.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { offerSteps, same } from '../check/offer.ts'
import { highStep, stepLimit, stepWords } from '../check/practice.ts'
import { boardKey, firstThat, type Offered, orWays } from '../check/remedy.ts'
import { tell, told } from '../check/told.ts'
import type { Transition } from '../side/transition.ts'
import { lipGrooveFindings } from './lip-groove.ts'
import { shortDeckFindings } from './short-deck.ts'

/** A deck that is a ledge, and one at the lip, or a groove there. */
export const ledgeFindings = (
  design: QuarterDesign,
  transition: Transition,
  units: Units,
): readonly Draft[] => [
  ...shortDeckFindings(design, units),
  ...lipLedgeFindings(design, transition, units),
  ...lipGrooveFindings(design, transition, units),
]

/** Without a pipe the deck board and the ridden face meet at the lip: one that stands over the other stops a wheel. */
const lipLedgeFindings = (design: QuarterDesign, { heights }: Transition, units: Units): readonly Draft[] => {
  const board = design.deckBoard
  if (design.coping || !board) return []
  const over = heights.deck - heights.surface
  if (Math.abs(over) <= stepLimit + same) return []
  return [
    warn('lip-ledge', (trial: Trial) => {
      // as thick as the skin is high at the lip
      const flush = heights.surface - heights.frame
      const carries: Trial = (changed) => trial(changed, ['board-load', 'board-free'])
      const from = (way: 1 | -1): Offered | null =>
        firstThat(carries, design, boardKey, flush - (way * offerSteps[units]) / 2, way, units)
      const other = over > 0 ? (from(-1) ?? from(1)) : from(1)
      return tell(
        `at the lip the deck stands ${highStep(Math.abs(over), units)} ${over > 0 ? 'above' : 'below'} the ridden face and no pipe covers it, a wheel stops at more than ${stepWords[units]}; `,
        orWays(
          [other && told`a deck board ${other} thick meets it`],
          `${over > 0 ? 'take a thicker skin, ' : ''}seat a pipe there (coping), or plane what stands over to a slope`,
        ),
      )
    }),
  ]
}
