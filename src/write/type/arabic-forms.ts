/** Letters of Arabic, joined as they stand in a word: by the forms that Unicode keeps for that, which the wide font has. */

/** Forms of a letter or of lam and alef together: alone, at the end of a joint, at its start, between; the last two may be missing. */
const forms = ((): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>()
  for (const [from, to] of [
    [0xfb50, 0xfbff],
    [0xfe80, 0xfefc],
  ] as const)
    for (let code = from; code <= to; code++) {
      const form = String.fromCodePoint(code)
      const plain = form.normalize('NFKC')
      // the block is in the order alone, end, start, between
      if (plain !== form && (plain.length === 1 || /^\u0644[\u0622\u0623\u0625\u0627]$/u.test(plain)))
        found.set(plain, [...(found.get(plain) ?? []), form])
    }
  return found
})()

const mark = /^\p{M}$/u

export const joinedArabic = (letters: readonly string[]): readonly string[] => {
  // lam and alef are written as one
  const pairs: string[] = []
  for (const letter of letters)
    if (pairs.length > 0 && forms.has(pairs.at(-1)! + letter)) pairs.push(pairs.pop()! + letter)
    else pairs.push(letter)
  const neighbour = (i: number, step: 1 | -1): string | undefined => {
    let at = i + step
    while (at in pairs && mark.test(pairs[at]!)) at += step
    return pairs[at]
  }
  const count = (letter: string | undefined): number =>
    letter === '\u0640' ? 4 : letter === undefined ? 0 : (forms.get(letter)?.length ?? 0)
  return pairs.map((letter, i) => {
    const own = forms.get(letter)
    if (!own) return letter
    // to the one before if that goes on, to the one after if this goes on and that can be joined
    const before = count(neighbour(i, -1)) === 4 && own.length >= 2
    const after = own.length === 4 && count(neighbour(i, 1)) >= 2
    return own[after ? (before ? 3 : 2) : before ? 1 : 0]!
  })
}
