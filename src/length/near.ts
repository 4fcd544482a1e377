/**
 * Least number of letters to insert, drop, change or swap with the next one (Damerau–Levenshtein, optimal string
 * alignment: no letter is touched twice).
 */
export const wordDistance = (a: string, b: string): number => {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = rows[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      const swap = swapped ? rows[i - 2]![j - 2]! + 1 : Number.POSITIVE_INFINITY
      row.push(Math.min(change, swap, rows[i - 1]![j]! + 1, row[j - 1]! + 1))
    }
    rows.push(row)
  }
  return rows[a.length]![b.length]!
}

/** The word that was probably meant: off by one letter, or by one in three of a longer word. The first of equals. */
export const nearWord = (typed: string, words: readonly string[]): string | undefined => {
  // one letter changed into another is no slip of the pen
  if (typed.length < 2 || typed.length > 40) return undefined
  const most = Math.max(1, Math.floor(typed.length / 3))
  let best: string | undefined
  let least = most + 1
  for (const word of words) {
    const distance = wordDistance(typed.toLowerCase(), word)
    if (distance >= least) continue
    best = word
    least = distance
  }
  return best
}
