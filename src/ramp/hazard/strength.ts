import type { Material, Sheet } from '../../design/design.ts'

/** Of a sheet that is bent, N/mm². */
interface Strength {
  readonly stiffness: number
  /** stress at which it breaks, or yields and folds */
  readonly most: number
}

/**
 * Stated assumptions, from memory: plywood across its face grain, as it lies when it is bent the easy way; hardboard by the
 * least that EN 622-2 asks for; the mildest structural steel (S235 of EN 10025). Of another sheet nothing is known, so it bears
 * nothing.
 */
export const strengths: Readonly<Record<Material, Strength | null>> = {
  plywood: { stiffness: 3000, most: 20 },
  hardboard: { stiffness: 4000, most: 30 },
  steel: { stiffness: 210_000, most: 235 },
  other: null,
}

/** The load stands on a square so wide (EN 1991-1-1, from memory), mm. */
export const spot = 50

/** Sheets lying loose on each other, for each mm of their width. */
export interface Stack {
  /** N mm² */
  readonly stiffness: number
  /** moment that they bear, N mm */
  readonly bears: number
}

/**
 * Sheets share a moment by their stiffness, E t³ / 12. Those that give before the others are left out where the others bear more
 * without them. Null where nothing is known of any.
 */
export const stackOf = (sheets: readonly Sheet[]): Stack | null => {
  const known = sheets.flatMap(({ material, thickness }) => {
    const strength = strengths[material]
    return strength ? [{ ...strength, thickness }] : []
  })
  if (known.length === 0) return null
  const total = (those: typeof known): number =>
    those.reduce((sum, { stiffness, thickness }) => sum + (stiffness * thickness ** 3) / 12, 0)
  // bent alike, the one gives first whose face is strained most for what it takes
  const strain = ({ stiffness, most, thickness }: (typeof known)[number]): number =>
    (stiffness * thickness) / most
  const order = [...known].sort((a, b) => strain(b) - strain(a))
  return {
    stiffness: total(known),
    // its share of the moment on its section, t² / 6
    bears: Math.max(...order.map((first, i) => (2 * total(order.slice(i))) / strain(first))),
  }
}

/** What sheets do under a load on a spot. */
export interface Bearing {
  /** N */
  readonly bears: number
  /** under the load, mm */
  readonly deflection: number
  /** the same over the span or the arm */
  readonly sag: number
}

const unloaded: Bearing = { bears: Number.POSITIVE_INFINITY, deflection: 0, sag: 0 }

/** How much of a sheet carries a load in the middle of a span, beside the spot (Westergaard 1930, from memory). */
const spread = 0.58

/**
 * In the middle between two supports, on a strip of 0.58 L and the spot, no wider than the sheet: moment F L / 4, sag
 * F L³ / (48 E I) (handbook beam formulas). mm, N
 */
export const between = (stack: Stack, span: number, width: number, load: number): Bearing => {
  if (span <= 0) return unloaded
  const strip = Math.min(width, spread * span + spot)
  const deflection = (load * span ** 3) / (48 * stack.stiffness * strip)
  return { bears: (4 * stack.bears * strip) / span, deflection, sag: deflection / span }
}

/** On the very end of a sheet that hangs free: the load spreads by 45° either way to the support; F a, F a³ / (3 E I). */
export const beyond = (stack: Stack, free: number, width: number, load: number): Bearing => {
  const arm = free - spot / 2
  if (arm <= 0) return unloaded
  const strip = Math.min(width, spot + 2 * arm)
  const deflection = (load * arm ** 3) / (3 * stack.stiffness * strip)
  return { bears: (stack.bears * strip) / arm, deflection, sag: deflection / arm }
}
