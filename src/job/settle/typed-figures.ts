import { wordList } from '../../length/word-list.ts'
import type { Check, Typing } from '../../ramp/check/check.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import type { Answer } from './settle.ts'

/** This one, and those whose `solve` is taken over from it. */
const withFollowers = (answer: Answer, answers: readonly Answer[]): readonly Answer[] => [
  answer,
  ...answers
    .filter(({ asks }) => asks.from === answer.ramp)
    .flatMap((follower) => withFollowers(follower, answers)),
]

/** A solved design whose checks, where they offer to type a figure that was left to the program, say what goes out with it: what it is found by is refused beside one that is typed. */
export const withTypedFigures = <S extends SolvedDesign>(solved: S, answers: readonly Answer[]): S => {
  const pathOf = (ramp: string): string => `ramps.${solved.ramps.findIndex(({ name }) => name === ramp)}.`
  const typed = (checks: readonly Check[], answer: Answer): readonly Check[] => {
    const out = withFollowers(answer, answers).flatMap(({ ramp, asks }) =>
      asks.own.map((key) => ({
        path: pathOf(ramp) + key,
        words: ramp === answer.ramp ? `\`${key}\`` : `\`${key}\` of ${ramp}`,
      })),
    )
    const path = pathOf(answer.ramp) + answer.key
    return out.length === 0 ? checks : checks.map((check) => withTyped(check, path, answer.key, out))
  }
  return answers.length === 0 ? solved : { ...solved, checks: answers.reduce(typed, solved.checks) }
}

const withTyped = (
  check: Check,
  at: string,
  key: string,
  out: readonly { readonly path: string; readonly words: string }[],
): Check => {
  const types = (offer: readonly Typing[]): boolean => offer.some(({ path }) => path === at)
  if (!check.offers.some(types)) return check
  return {
    ...check,
    message: `${check.message}; to type \`${key}\` take ${wordList(out.map(({ words }) => words))} out`,
    offers: check.offers.map((offer) =>
      types(offer) ? [...offer, ...out.map(({ path }) => ({ path, value: null }))] : offer,
    ),
  }
}
