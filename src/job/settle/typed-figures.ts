import { wordList } from '../../length/word-list.ts'
import type { Check, Typing } from '../../ramp/check/check.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import type { Answer } from './settle.ts'

/** What a figure that was left to the program is found by: refused beside one that is typed. */
const foundBy = ({ asks: { lip, limits } }: Answer): readonly string[] => [
  ...(lip === null ? [] : ['lip']),
  ...(Object.values(limits).some((limit) => limit !== null) ? ['limits'] : []),
]

/** A solved design whose checks, where they offer to type a figure that was left to the program, say what goes out with it. */
export const withTypedFigures = <S extends SolvedDesign>(solved: S, answers: readonly Answer[]): S =>
  answers.length === 0
    ? solved
    : {
        ...solved,
        checks: answers.reduce<readonly Check[]>((checks, answer) => {
          const at = `ramps.${solved.ramps.findIndex(({ name }) => name === answer.ramp)}.`
          return checks.map((check) => withTyped(check, at, answer))
        }, solved.checks),
      }

const withTyped = (check: Check, at: string, answer: Answer): Check => {
  const types = (offer: readonly Typing[]): boolean => offer.some(({ path }) => path === at + answer.key)
  if (!check.offers.some(types)) return check
  const out = foundBy(answer)
  return {
    ...check,
    message: `${check.message}; to type \`${answer.key}\` take ${wordList(out.map((key) => `\`${key}\``))} out`,
    offers: check.offers.map((offer) =>
      types(offer) ? [...offer, ...out.map((key) => ({ path: at + key, value: null }))] : offer,
    ),
  }
}
