/** What a file may not be: none that we wrote comes near it. */
const most = { objects: 100_000, digits: 10_000 } as const

/** Whether the text of a file has so few objects that its parsing may begin; what each of them holds the parser itself looks at. */
export const isBounded = (text: string): boolean =>
  countOf(text, 'obj') - countOf(text, 'endobj') <= most.objects && !endlessNumber.test(text)

const countOf = (text: string, word: string): number => {
  let count = 0
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + word.length)) count++
  return count
}

/** It is read digit by digit. */
const endlessNumber = new RegExp(`[\\d.]{${most.digits}}`)
