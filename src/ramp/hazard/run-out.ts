import type { QuarterDesign, Sheet, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { showThickness } from '../../length/thickness.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { offer, same } from '../check/offer.ts'
import { highStep, stepLimit, stepWords } from '../check/practice.ts'
import { orWays } from '../check/remedy.ts'
import { offering, set, tell } from '../check/told.ts'
import type { ClosingSheet } from '../closing-sheet.ts'
import { bendRow } from '../skin/bend.ts'
import { soldSteel, yieldRadius } from './stiff-sheets.ts'

/** Least radius to which a sheet bends by hand; 0 where nothing is known of it, null where it bends to none. mm */
const leastRadius = ({ material, thickness }: Sheet): number | null => {
  switch (material) {
    case 'steel':
      return yieldRadius(thickness)
    case 'plywood':
      return bendRow(thickness)?.easy ?? null
    default:
      return 0
  }
}

/** Whether a run-out sheet bends by hand down from a ridden face whose least radius is `tightest`. */
const bendsDown = (sheet: Sheet, tightest: number): boolean => {
  const least = leastRadius(sheet)
  return least !== null && tightest - sheet.thickness >= least - same
}

/** How thick the steel of a run-out mostly is, mm. */
const usualSteel = { mm: 1.5, in: inch / 16 } as const

/** A sheet for such a face: of the usual steel, or of the first thinner one that bends to it. */
export const closingSheet = (tightest: number, units: Units): ClosingSheet => {
  const steel = (thickness: number): Sheet => ({ thickness, material: 'steel' })
  const usual = usualSteel[units]
  const bent = soldSteel[units].find(
    (thickness) => thickness <= usual + same && bendsDown(steel(thickness), tightest),
  )
  return { sheet: steel(bent ?? usual), rolled: bent === undefined }
}

/** A run-out sheet whose own ends are steps, or that does not bend down from the ridden face, whose least radius is `tightest`. */
export const runOutFindings = (design: QuarterDesign, tightest: number, units: Units): readonly Draft[] => {
  const { runOut } = design
  if (runOut.kind !== 'sheet') return []
  const { thickness, material } = runOut.sheet
  const least = leastRadius(runOut.sheet)
  const steps = thickness > stepLimit + same
  const stiff = !bendsDown(runOut.sheet, tightest)
  if (!steps && !stiff) return []
  const why = [
    ...(steps
      ? [
          `its two ends stand ${highStep(thickness, units)} over the skin and the floor, a wheel stops at more than ${stepWords[units]}`,
        ]
      : []),
    ...(stiff
      ? [
          `it does not bend down from a ridden face of ${offer(units).atMost(tightest)}${least === null ? '' : `, its least radius is ${offer(units).atLeast(least)}`}`,
        ]
      : []),
  ]
  const name = `${showThickness(thickness, units, { unit: true })} ${material === 'other' ? 'of another sheet' : material}`
  return [
    warn('run-out', (trial: Trial) => {
      const other = soldSteel[units].find((thin) =>
        trial({ ...design, runOut: { kind: 'sheet', sheet: { material: 'steel', thickness: thin } } }),
      )
      return tell(
        `the run-out sheet is too thick (${name}): ${why.join(', and ')}; `,
        orWays(
          [
            other === undefined
              ? null
              : offering(
                  `take steel of ${showThickness(other, units, { unit: true })}`,
                  set('run-out.sheet', `${showThickness(other, units, { unit: true })} steel`),
                ),
            steps && !stiff ? 'plane both of its ends to a long slope' : null,
          ],
          'have it rolled to the radius',
        ),
      )
    }),
  ]
}
