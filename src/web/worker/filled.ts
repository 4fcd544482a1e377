import { type Answer, type Design, editDesign } from '../../index.ts'

/** The text with every figure that it left open, without what these were found by: an angle or limits with nothing open are refused. */
export const filledText = (
  text: string,
  { design, answers }: { readonly design: Design; readonly answers: readonly Answer[] },
): string =>
  answers.reduce((all, { ramp, key, shown }) => {
    const path = `ramps.${design.ramps.findIndex(({ name }) => name === ramp)}`
    return [`${path}.lip`, `${path}.limits`].reduce(
      (typed, by) => editDesign(typed, by, null),
      editDesign(all, `${path}.${key}`, shown),
    )
  }, text)
