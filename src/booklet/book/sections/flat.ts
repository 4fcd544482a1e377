import { curvedOf, straightOf } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import type { Flat } from '../../../ramp/ramp.ts'
import { type Block, check, head, step } from '../block.ts'
import type { Book } from '../book.ts'
import type { Section } from '../pages.ts'
import { checksOf } from './framing.ts'

/** Setting a flat against the quarters that run out on it. */
export const flat = (book: Book): Section | null => {
  const { width, show, fine, solved, units } = book
  const flats: readonly Flat[] = straightOf(solved.ramps)
  if (flats.length === 0) return null
  const met = curvedOf(solved.ramps).filter(({ design }) => design.runOut.kind === 'flat')
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'flat',
    title: 'Flat',
    blocks: [
      head('Flat', width),
      ...flats.flatMap((ramp) => [
        next(
          `Set ${ramp.name} on level ground: ${show(ramp.length)} long, ${show(ramp.width)} wide, its ridden face ${fine(ramp.heights.surface)} up.`,
        ),
        ...met.map((quarter) =>
          next(
            `Push its end stud against the toe of ${quarter.name}. The two ridden faces lie level: ${fine(ramp.heights.surface)} and ${fine(quarter.transition.toeStep)}. Shim the lower one.`,
          ),
        ),
        ...(met.length > 0
          ? [
              next(
                `Hold the two together: on the outside of each side a plate of offcut over the joint, no higher than the sides there, two bolts ${ownUnits('M8 (5/16 in)', units)} through plate and side of either ramp, eight in all, heads outside, washers and nuts inside. In each ramp they sit halfway up the plate, behind its end timber and before the next, ${ownUnits('25 mm (1 in)', units)} or more from either; drill through plate and side as one.`,
              ),
            ]
          : []),
        ...checksOf(book, ramp, ['flat-studs', 'meeting', 'flat-height']),
      ]),
      check('A hand run over the joint feels no step. Nothing rocks.', width),
    ],
  }
}
