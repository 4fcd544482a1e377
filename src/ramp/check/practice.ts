/** A wheel stops at a higher step; common practice, no source. mm */
export const stepLimit = 6

/** Of wood that stays between two edges, or behind the notch; common practice, no source. mm */
export const leastWood = 40
