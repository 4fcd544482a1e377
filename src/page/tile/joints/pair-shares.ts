import { crossArm } from '../tile-joints.ts'
import { vernierReach } from '../vernier.ts'
import { enough } from './joint-room.ts'
import { bestOf, isOff, type MarkedLine } from './shares.ts'

/** Between a pair mark and a cross, a vernier or the snap line, mm; where there is room so much more off that line, and its middle so far. */
const air = 1
const snapAir = 2
const snapApart = 8

/** Where a pair mark is tried: near the middle, but beside the snap line that crosses there as a rule; then farther off to both sides. */
const tried = [
  ...[0.43, 0.57, 0.45, 0.55, 0.48, 0.52, 0.41, 0.59],
  ...Array.from({ length: 94 }, (_, i) => 0.5 + (i % 2 === 0 ? 1 : -1) * ((i + 1) / 200)),
]

/** Where a pair mark may stand whatever verniers there are; whether all of that is grey. */
export interface PairPlaces {
  readonly shares: readonly number[]
  readonly allGrey: boolean
}

/** Beyond the crosses lie marks of other joints, and the page's edges. */
export const isBetween = (t: number, [low, high]: readonly number[]): boolean => t > low! && t < high!

export const pairPlaces = (
  { length, snaps, pairHalf, room }: MarkedLine,
  crosses: readonly number[],
): PairPlaces => {
  const shares = tried.filter(
    (t) =>
      isBetween(t, crosses) &&
      isOff(length, t, crosses, crossArm + pairHalf + air) &&
      isOff(length, t, snaps, Math.max(snapApart, pairHalf + air + snapAir)),
  )
  return { shares, allGrey: shares.every(room.onBand) }
}

/** The most room for a pair mark beside two verniers; no more than `wanted` is looked for. */
export const pairRoom = (
  { length, pairHalf, room }: MarkedLine,
  { shares, allGrey }: PairPlaces,
  low: number,
  high: number,
  wanted: number,
): number => {
  const apart = vernierReach + pairHalf + air
  let most = Number.NEGATIVE_INFINITY
  for (const t of shares) {
    if (Math.abs(t - low) * length < apart || Math.abs(t - high) * length < apart) continue
    // on the grey it would hide which side is waste
    const own = room.onBand(t) && !allGrey ? -enough : room.all(t, pairHalf, most)
    if (own > most) most = own
    if (most >= wanted) break
  }
  return most
}

/** Where the pair mark stands beside these verniers. */
const besideVerniers = (
  { length, pairHalf, room: { all, strikesSign, onBand } }: MarkedLine,
  { shares }: PairPlaces,
  crosses: readonly number[],
  verniers: readonly number[],
): number => {
  const isBeside = (t: number): boolean => isOff(length, t, verniers, vernierReach + pairHalf + air)
  const isOffCrosses = (t: number): boolean => isOff(length, t, crosses, crossArm + pairHalf + air)
  for (const isFree of [
    (t: number): boolean => !strikesSign(t) && !onBand(t),
    (t: number): boolean => !strikesSign(t),
  ]) {
    // on the snap line rather than on a screw
    const free =
      bestOf(shares, pairHalf, all, (t) => isBeside(t) && isFree(t)) ??
      bestOf(tried, pairHalf, all, (t) => isOffCrosses(t) && isBeside(t) && isFree(t))
    if (free !== undefined) return free
  }
  return bestOf(shares, pairHalf, all, isBeside) ?? bestOf(tried, pairHalf, all)!
}

/** The pair mark, and the verniers that it leaves. */
export const pairShare = (
  line: MarkedLine,
  places: PairPlaces,
  crosses: readonly number[],
  verniers: readonly number[],
): { readonly verniers: readonly number[]; readonly pair: number } => {
  const { length, snaps, pairHalf, room } = line
  const pair = besideVerniers(line, places, crosses, verniers)
  // a sign on a screw, on the line or on a snap line is worse than a scale less
  const isMarred = (t: number): boolean => room.strikesSign(t) || !isOff(length, t, snaps, pairHalf + air)
  if (isMarred(pair) && verniers.length > 1)
    for (const vernier of verniers) {
      const other = besideVerniers(line, places, crosses, [vernier])
      if (!isMarred(other)) return { verniers: [vernier], pair: other }
    }
  return { verniers, pair }
}
