/** A tolerance as it may be read off a rule, never larger than it is: tenths of a mm. */
export const showTolerance = (mm: number): string => `±${(Math.floor(mm * 10 + 1e-9) / 10).toFixed(1)}`
