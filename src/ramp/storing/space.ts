import type { Space, Units } from '../../design/design.ts'
import { type Finding, warn } from '../check/check.ts'
import { offer, rounded, same } from '../check/offer.ts'
import type { Ramp } from '../ramp.ts'
import { rampSize } from './size.ts'

/** A ramp larger than the garage, too wide for its door either way, or too wide to be set on edge under its ceiling. */
export const spaceFindings = (
  ramp: Ramp,
  { garage, door, ceiling }: Space,
  units: Units,
): readonly Finding[] => {
  const size = rampSize(ramp)
  if (!size) return []
  const show = (mm: number): string => rounded(mm, units)
  const { atLeast } = offer(units)
  const [long, wide, high] = size.standing
  const findings: Finding[] = []
  const fits = (a: number, b: number): boolean =>
    Math.min(a, b) <= Math.min(...garage) + same && Math.max(a, b) <= Math.max(...garage) + same
  const edged = ceiling === null || wide <= ceiling + same
  if (!fits(long, wide) && !(edged && fits(long, high))) {
    const way = edged && high < wide ? ([long, high] as const) : ([long, wide] as const)
    findings.push(
      warn(
        'garage',
        `it stands on ${show(long)} × ${show(wide)}${edged ? `, on edge on ${show(long)} × ${show(high)}` : ''}, and a garage of ${show(garage[0])} × ${show(garage[1])} has no room for that: ` +
          `one of ${atLeast(Math.max(...way))} × ${atLeast(Math.min(...way))} or more has; or did you mean another unit?`,
      ),
    )
  } else if (!fits(long, wide))
    findings.push(
      warn(
        'garage',
        `it stands on ${show(long)} × ${show(wide)}, and a garage of ${show(garage[0])} × ${show(garage[1])} has room for it on edge only`,
      ),
    )
  if (door) {
    const passes = ([w, h]: readonly [number, number]): boolean => w <= door[0] + same && h <= door[1] + same
    const { flat, edge } = size.doors
    if (!passes(flat) && !passes(edge))
      findings.push(
        warn(
          'door',
          `a door of ${show(door[0])} × ${show(door[1])} does not let it through: on its feet it needs ${atLeast(flat[0])} × ${atLeast(flat[1])}, ` +
            `on edge ${atLeast(edge[0])} × ${atLeast(edge[1])}; make it narrower, or in two halves`,
        ),
      )
  }
  if (ceiling !== null && high > ceiling + same)
    findings.push(
      warn(
        'ceiling',
        `it is ${show(high)} high, and the ceiling ${show(ceiling)}: did you mean another unit?`,
      ),
    )
  return findings
}
