/** `a`, `a and b`, `a, b and c` */
export const wordList = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** `stud 1`, `studs 1 and 2`, `studs 1, 3 to 7 and 9`: numbers in their order, two in a row no range. */
export const numberList = (noun: string, numbers: readonly number[]): string => {
  const runs: (readonly [number, number])[] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last && last[1] === number - 1) runs[runs.length - 1] = [last[0], number]
    else runs.push([number, number])
  }
  const words = runs.flatMap(([from, to]) =>
    to - from < 2 ? (from === to ? [`${from}`] : [`${from}`, `${to}`]) : [`${from} to ${to}`],
  )
  return `${noun}${numbers.length === 1 ? '' : 's'} ${wordList(words)}`
}
