import type { Curve } from '../curve/curve.ts'
import { type Timber, timberOffset } from './timber.ts'

/**
 * Where a screw square to the curve at a place runs in a timber: from and to, mm from the curve; null where it misses.
 * `inset` keeps it off the timber's long edges.
 */
export const timberRun = (
  curve: Curve,
  place: number,
  timber: Timber,
  inset = 0,
): { readonly from: number; readonly to: number } | null => {
  const { along, into } = timberOffset(timber, curve.point(place))
  const turn = curve.slope(place) - timber.angle
  const half = timber.width / 2 - inset
  // along the face, and square to it into the timber
  const slabs = [
    { at: along, by: Math.sin(turn), low: -half, high: half },
    { at: into, by: Math.cos(turn), low: 0, high: timber.depth },
  ]
  let from = 0
  let to = Number.POSITIVE_INFINITY
  for (const { at, by, low, high } of slabs) {
    if (Math.abs(by) < 1e-12) {
      if (at < low || at > high) return null
      continue
    }
    const [a, b] = [(low - at) / by, (high - at) / by]
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  return to > from ? { from, to } : null
}
