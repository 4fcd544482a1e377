import { inch } from '../../geometry/inch.ts'
import { showLength, type Units } from '../../length.ts'
import type { Offsets } from '../../ramp/offsets.ts'
import { type OffsetRow, showOffset } from './offsets-rows.ts'

/** How lengths are said. */
export const unitWord = (units: Units): string => (units === 'in' ? 'inches' : 'mm')

/** What a sign behind a fraction says, only where one stands. */
export const signWords = (rows: readonly OffsetRow[]): string =>
  rows.some((row) => /[+–]$/.test(row.back) || /[+–]$/.test(row.up)) ? '+ is 1/32 over, – is 1/32 under.' : ''

/** What a length is shown in, mm. */
const shownSteps = { mm: 0.1, in: inch / 32 } as const

/** A bound is never shown smaller than it is. */
const upTo = (mm: number, units: Units): number => {
  const step = shownSteps[units]
  return Math.ceil(mm / step - 1e-9) * step
}

/** What to check, sentence by sentence, in the builder's units. */
export const checkWords = (offsets: Offsets, units: Units): readonly string[] => {
  const show = (mm: number): string => showOffset(mm, units)
  const { panel, chord, rise, miss } = offsets
  const [diagonal] = panel.diagonals
  return [
    `The panel, ${show(panel.length)} × ${show(panel.height)}, before any cut: both diagonals ${show(diagonal)}.`,
    ...(panel.chamfer > 0 ? [`Back bottom corner: 45° cut, ${show(panel.chamfer)} along both edges.`] : []),
    `TOE to LIP, straight: ${show(chord)}; from the middle of that line square to the curve: ${show(rise)}.`,
    `A straight line from mark to mark misses the curve by ${show(upTo(miss, units))} at most: bend a batten.`,
  ]
}

/** How to draw it with a board on a screw; empty for a curve that no arm draws. */
export const swingWords = ({ swing, panel }: Offsets, units: Units): readonly string[] => {
  if (!swing) return []
  const show = (mm: number): string => showOffset(mm, units)
  const whole = (mm: number): string => showLength(mm, units)
  const { pivot, arm, sheet, floor, floorAbovePanel } = swing
  return [
    `Screw ${show(pivot.inFront)} in front of the front edge and ${show(pivot.above)} above the bottom edge, on a block as thick as the panel; screw to pencil ${show(arm)}.`,
    ...(panel.length > sheet.length || panel.height > sheet.height
      ? [
          `No sheet holds the side whole. Floor beyond a panel of its own size: ${whole(floor.inFront)} in front, ${whole(floorAbovePanel)} above.`,
        ]
      : [
          `Floor beyond a sheet of ${whole(sheet.length)} × ${whole(sheet.height)} with the side in its lower front corner: ${whole(floor.inFront)} in front, ${whole(floor.above)} above; ` +
            `beyond a panel cut to ${whole(panel.height)} first: ${whole(floorAbovePanel)} above.`,
        ]),
  ]
}
