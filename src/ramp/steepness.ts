/** Plain words for how steep a lip is. Radius over height for each word: common practice, no source. */
const words: readonly (readonly [number, string])[] = [
  [3, 'very mellow'],
  [2.5, 'mellow'],
  [2, 'middle'],
  [1.75, 'lively'],
  [1.5, 'quick'],
  [1.33, 'steep'],
]

/** `lipAngle` in radians; radius over height follows from cos(lip) = 1 − height/radius. */
export const steepnessWord = (lipAngle: number): string => {
  const ratio = 1 / (1 - Math.cos(lipAngle))
  return words.find(([least]) => ratio >= least - 1e-9)?.[1] ?? 'very steep'
}
