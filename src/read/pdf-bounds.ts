/** What a file may not be: none that we wrote comes near it. */
const most = { objects: 100_000, digits: 10_000 } as const

/** Whether a file has so few objects that its parsing may begin; what each of them holds the parser itself looks at. */
export const isBounded = (bytes: Uint8Array): boolean => {
  const text = latin1(bytes)
  return countOf(text, 'obj') - countOf(text, 'endobj') <= most.objects && !endlessNumber.test(text)
}

const latin1 = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes)

const countOf = (text: string, word: string): number => {
  let count = 0
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + word.length)) count++
  return count
}

/** It is read digit by digit. */
const endlessNumber = new RegExp(`[\\d.]{${most.digits}}`)
