/** A stretch of a flat sheet, or of a pipe, from where it is measured; mm. */
export interface Stretch {
  readonly from: number
  readonly length: number
}

/** A length cut at the middles of its gaps. */
export const stretches = (length: number, seams: readonly number[], gap: number): readonly Stretch[] =>
  [...seams, length].map((to, i) => {
    const from = i === 0 ? 0 : seams[i - 1]! + gap / 2
    return { from, length: (i === seams.length ? to : to - gap / 2) - from }
  })
