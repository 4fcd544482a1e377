/** `a`, `a and b`, `a, b and c` */
export const wordList = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** `stud 1`, `studs 1 and 2`, `studs 1, 3 to 7 and 9`: numbers in their order, two in a row no range. */
export const numberList = (noun: string, numbers: readonly number[]): string => {
  const words: string[] = []
  for (let i = 0, next = 0; i < numbers.length; i = next) {
    const from = numbers[i]!
    for (next = i + 1; numbers[next] === from + next - i; ) next++
    const to = numbers[next - 1]!
    if (to - from < 2) for (let n = from; n <= to; n++) words.push(`${n}`)
    else words.push(`${from} to ${to}`)
  }
  return `${noun}${numbers.length === 1 ? '' : 's'} ${wordList(words)}`
}
