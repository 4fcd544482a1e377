/** Plain words for how steep a lip is, and the least radius over height of each: common practice, no source. */
export const steepnesses = [
  { word: 'very mellow', least: 3 },
  { word: 'mellow', least: 2.5 },
  { word: 'middle', least: 2 },
  { word: 'lively', least: 1.75 },
  { word: 'quick', least: 1.5 },
  { word: 'steep', least: 1.33 },
] as const
export type Steepness = (typeof steepnesses)[number]['word']

/** `lipAngle` in radians; radius over height follows from cos(lip) = 1 − height/radius. */
export const steepnessWord = (lipAngle: number): Steepness | 'very steep' => {
  const ratio = 1 / (1 - Math.cos(lipAngle))
  return steepnesses.find(({ least }) => ratio >= least - 1e-9)?.word ?? 'very steep'
}

/** The lip of a curve whose radius is so many times its height, radians. */
export const lipOfRatio = (ratio: number): number => Math.acos(1 - 1 / ratio)
