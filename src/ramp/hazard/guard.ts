import type { Units } from '../../design/design.ts'
import { type Finding, note } from '../check/check.ts'
import { measured, pastLimit, same } from '../check/offer.ts'

/** Deck over the ground above which guards are commonly asked for: IRC 2018 R312.1 names 30 in. mm */
const guardHeight = 762

/** Whether a deck is so high, mm. */
export const asksGuard = (deck: number): boolean => deck > guardHeight + same

/** `above 762 mm a guard is a common requirement: ask your building office` */
export const guardWords = (units: Units): string =>
  `above ${measured(guardHeight, units)} a guard is a common requirement: ask your building office`

/** A deck so high that a building office may ask for a guard. */
export const guardFindings = (deck: number, units: Units): readonly Finding[] =>
  asksGuard(deck)
    ? [
        note(
          'guard-height',
          `the deck is ${pastLimit(deck, measured(guardHeight, units), units)} above the floor; ${guardWords(units)}`,
        ),
      ]
    : []
