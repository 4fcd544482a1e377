import type { TimberBox } from './timber-box.ts'

const degree = Math.PI / 180

/** How far from the upright names may lean back in turn, and how far off that no name is turned round, radians. */
const leans = [0, 15 * degree, -15 * degree, 30 * degree]
const wanted = 7.5 * degree

/**
 * By how much names of a page may lean back before they are turned to run down it: where none of its timbers lies near that, so that of
 * two that lie nearly alike not one runs up and one down.
 */
export const nameLean = (timbers: readonly TimberBox[]): number => {
  let best = 0
  let most = -1
  for (const lean of leans) {
    // of a direction or its opposite
    const off = Math.min(...timbers.map(({ along }) => Math.abs(Math.asin(Math.cos(along - lean)))))
    if (off > most + 1e-9) {
      most = off
      best = lean
    }
    if (off >= wanted) return lean
  }
  return best
}
