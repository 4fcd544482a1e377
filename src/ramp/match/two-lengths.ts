/** A circle from two lengths; mm. Source: the segment of a circle, Machinery's Handbook. */
export interface TwoLengths {
  readonly radius: number
  readonly interval: readonly [least: number, most: number]
}

const between = (
  radius: (a: number, b: number) => number,
  a: number,
  b: number,
  error: number,
): TwoLengths => {
  const corners = [-error, error].flatMap((da) =>
    [-error, error].map((db) =>
      b + db > 0 && a + da > 0 ? radius(a + da, b + db) : Number.POSITIVE_INFINITY,
    ),
  )
  return { radius: radius(a, b), interval: [Math.min(...corners), Math.max(...corners)] }
}

/** A straight edge across the curve, and the gap behind its middle. */
export const fromChord = (chord: number, rise: number, readingError: number): TwoLengths =>
  between((c, h) => (c * c) / (8 * h) + h / 2, chord, rise, readingError)

/** From where the curve runs level to a point on it: along the floor, and up. */
export const fromRun = (run: number, height: number, readingError: number): TwoLengths =>
  between((c, h) => (c * c + h * h) / (2 * h), run, height, readingError)
