import { blockedRise, type Profile } from './profile.ts'

/** From where to where the second of two profiles may not be raised beside the first, as `blockedRise` tells it. */
export type Rise = ReturnType<typeof blockedRise>

/** The same beside one profile, which is made when it is first asked of: `own` moved `dx` along, between `least` and `most` alone. */
export type RiseBeside = (own: Profile, dx: number, least?: number, most?: number) => Rise

/** What is found whole is kept: one try of a layout asks what another has asked. */
export const keptRises = (beside: () => Profile): RiseBeside => {
  const kept = new Map<Profile, Map<number, Rise>>()
  return (own, dx, least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY) => {
    let known = kept.get(own)
    if (known === undefined) {
      known = new Map()
      kept.set(own, known)
    }
    const before = known.get(dx)
    if (before !== undefined) return before
    const rise = blockedRise(beside(), own, dx, least, most)
    // else it was not looked how much more is blocked than was asked
    if (rise === null || rise[0] >= least || rise[1] <= most) known.set(dx, rise)
    return rise
  }
}
