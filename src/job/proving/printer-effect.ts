import type { Design } from '../../design/design.ts'
import { curvedOf } from '../../design/kind-traits.ts'
import type { Cover } from '../../page/cover/cover.ts'
import { laidCoverage } from '../../page/cover/laid-coverage.ts'
import { laidOn } from '../../page/cover/lattice.ts'
import { curveEffect, leftAtLip, radiusOf } from '../../printer/effect.ts'
import { type Profile, profileDistortion } from '../../printer/profile.ts'
import { printerUncertainty } from '../../printer/uncertainty.ts'
import { solveDesign } from '../../ramp/solve.ts'
import { coverDesign } from '../covering.ts'
import { readLaying } from '../laying-words.ts'
import { isRefusal, type Refusal } from '../refusal.ts'

/** What a printer does to the curve of one ramp, and what is left of it once it is corrected. Lengths mm. */
export interface PrinterEffect {
  readonly ramp: string
  readonly cover: Cover
  readonly radius: number
  readonly uncorrected: ReturnType<typeof curveEffect>
  readonly corrected: ReturnType<typeof leftAtLip>
}

/** For each ramp with a curve, its pages laid as a plot for that printer lays them on the paper that it was measured on. */
export const printerEffects = (
  design: Design,
  profile: Profile,
): { readonly effects: readonly PrinterEffect[] } | Refusal => {
  const solved = solveDesign(design)
  if (solved.stopped) return { refused: 'stop', checks: solved.checks }
  const laying = readLaying({}, profile, { units: design.units, paper: profile.paper })
  if (isRefusal(laying)) return laying
  const { covered, cover } = coverDesign(design, solved, laying)
  const uncertainty = printerUncertainty(profile.readings)
  const effects = curvedOf(solved.ramps).flatMap((ramp) => {
    const { curve } = ramp.transition
    // twins share a pattern
    const outline = JSON.stringify(ramp.side.outline)
    const found = covered.find(({ pattern }) => JSON.stringify(pattern.outline) === outline)
    if (!found) return []
    const laid = laidOn(laidCoverage(found, cover).lattice)
    return [
      {
        ramp: ramp.name,
        cover,
        radius: radiusOf(curve),
        uncorrected: curveEffect(curve, profileDistortion(profile), laid),
        corrected: leftAtLip(curve, uncertainty, laid),
      },
    ]
  })
  return { effects }
}
