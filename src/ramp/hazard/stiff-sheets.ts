import type { QuarterDesign, Sheet, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { showThickness } from '../../length/thickness.ts'
import { type Draft, note, type Trial, warn } from '../check/check.ts'
import { offer, rounded, same, sheetsText } from '../check/offer.ts'
import { firstThat, orWays, radiusKey } from '../check/remedy.ts'
import { offering, set, tell, told } from '../check/told.ts'
import { strengths } from './strength.ts'

/** Tighter than any usual ramp: there nothing is known of hardboard either; common practice, no source. mm */
const usualRadius = 900

/** Steel as it is sold, thick to thin. */
export const soldSteel = {
  mm: [3, 2, 1.5, 1],
  in: [inch / 8, (3 * inch) / 32, inch / 16, inch / 32],
} as const

/** Radius at which the faces of a flat steel sheet begin to yield: E t / (2 f). mm */
export const yieldRadius = (thickness: number): number => {
  const { stiffness, most } = strengths.steel!
  return (stiffness * thickness) / (2 * most)
}

/** Sheets of no bending table: steel that kinks, and what nothing is known of. */
export const stiffSheetFindings = (
  design: QuarterDesign,
  frameRadius: number,
  units: Units,
): readonly Draft[] => {
  let above = 0
  const layers = design.skin.map((sheet, i) => {
    above += sheet.thickness
    return { layer: i + 1, sheet, radius: frameRadius - above }
  })
  const words = ({ layer, sheet }: (typeof layers)[number]): string =>
    `layer ${layer} (${showThickness(sheet.thickness, units, { unit: true })} ${sheet.material === 'other' ? 'of another sheet' : sheet.material})`
  const kinks = layers.find(
    ({ sheet, radius }) => sheet.material === 'steel' && radius < yieldRadius(sheet.thickness) - same,
  )
  const unknown = layers.filter(
    ({ sheet, radius }) =>
      sheet.material === 'other' || (sheet.material === 'hardboard' && radius < usualRadius),
  )
  const findings: Draft[] = []
  if (kinks)
    findings.push(
      warn('steel-bend', (trial: Trial) => {
        const { layer, radius } = design.transition.circle
        const larger = firstThat(trial, design, radiusKey(design), radius, 1, units)
        const thinner = soldSteel[units].find((thickness) =>
          trial({ ...design, skin: steelOf(design.skin, thickness) }),
        )
        return tell(
          `${words(kinks)} does not spring to its curve of ${offer(units).atMost(kinks.radius)} but yields: flat sheet of mild steel so thick does below a radius of ${offer(units).atLeast(yieldRadius(kinks.sheet.thickness))}; `,
          orWays(
            [
              thinner === undefined
                ? null
                : offering(
                    `take steel of ${showThickness(thinner, units, { unit: true })}`,
                    set('skin', sheetsText(steelOf(design.skin, thinner), units)),
                  ),
              larger && told`a ${layer} radius of ${larger} or more`,
            ],
            'have it rolled to the radius',
          ),
        )
      }),
    )
  findings.push(
    ...unknown.map((bent) =>
      note(
        'sheet-bend',
        `no table is known of how far ${words(bent)} bends: bend a piece to a radius of ${rounded(bent.radius, units)} first`,
      ),
    ),
  )
  return findings
}

/** The same skin with every steel sheet so thick at most. */
const steelOf = (skin: readonly Sheet[], thickness: number): readonly Sheet[] =>
  skin.map((sheet) =>
    sheet.material === 'steel' && sheet.thickness > thickness ? { ...sheet, thickness } : sheet,
  )
