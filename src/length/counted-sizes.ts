import { showLength } from './show.ts'
import type { Units } from './units.ts'

/** Sizes of pieces in mm, each once with how many there are of it as it is shown: `590 × 1216`, `2 of 604 × 1800`. */
export const countedSizes = (
  sizes: readonly (readonly [number, number])[],
  units: Units,
): readonly string[] => {
  const shown = sizes.map((size) => size.map((mm) => showLength(mm, units)).join(' × '))
  return [...new Set(shown)].map((size) => {
    const count = shown.filter((one) => one === size).length
    return count > 1 ? `${count} of ${size}` : size
  })
}
