import { curvedOf, straightOf } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { showThickness } from '../../../length/thickness.ts'
import { flatMet } from '../../../ramp/beside/meeting-trial.ts'
import type { Flat, SolvedQuarter } from '../../../ramp/ramp.ts'
import type { JointPlate } from '../../../stock/joint-plate.ts'
import { rubberThick } from '../../../stock/list/list.ts'
import { plateView, plateWindow } from '../../views/acts/plate-view.ts'
import { type Block, check, head, step, words } from '../block.ts'
import type { Book } from '../book.ts'
import { figure } from '../figure.ts'
import { onPage } from '../page-words.ts'
import type { Section } from '../pages.ts'
import { checksOf, namedChecks } from './framing.ts'
import { heavy } from './moving.ts'

/** Setting a flat against the quarters that run out on it. */
export const flat = (book: Book): Section | null => {
  const { width, show, fine, solved, units, stock } = book
  const flats: readonly Flat[] = straightOf(solved.ramps)
  if (flats.length === 0) return null
  const meeting = (ramp: Flat): readonly SolvedQuarter[] =>
    curvedOf(solved.ramps).filter((quarter) => flatMet(quarter, flats)?.name === ramp.name)
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'flat',
    title: 'Flat',
    blocks: [
      head('Flat', width),
      heavy(book),
      ...flats.flatMap((ramp) => [
        next(
          `Set ${ramp.name} on level ground: ${show(ramp.length)} long, ${show(ramp.width)} wide, its ridden face ${fine(ramp.heights.surface)} up.`,
        ),
        ...meeting(ramp).map((quarter) =>
          next(
            `Push its end stud against the toe of ${quarter.name}. The two ridden faces lie level: ${fine(ramp.heights.surface)} and ${fine(quarter.transition.toeStep)}. Shim the lower one.`,
          ),
        ),
        ...stock.joints
          .filter((plate) => plate.flat === ramp.name)
          .flatMap((plate) => [
            next(plateWords(book, plate)),
            ...meeting(ramp)
              .filter(({ name }) => name === plate.quarter)
              .map((quarter) => {
                const { x0, x1, y0, y1 } = plateWindow(plate)
                return figure(
                  `The plate over the joint of ${ramp.name} and ${quarter.name}, from outside; timbers behind it dashed`,
                  (ratio) => plateView(quarter, ramp, plate, units, ratio),
                  book,
                  // at no smaller a scale: its figures need room
                  { width, height: 100 },
                  { width: x1 - x0, height: y1 - y0 },
                )
              }),
          ]),
        ...meeting(ramp).flatMap((quarter) => unplated(book, quarter, ramp)),
        ...checksOf(book, ramp, ['flat-studs']),
      ]),
      check(
        `${flats.some((ramp) => meeting(ramp).length > 0) ? 'A hand run over the joint feels no step. ' : ''}Nothing rocks.`,
        width,
      ),
    ],
  }
}

/** Where no plate goes over a joint: why, and what is looked at in its place. */
const unplated = (book: Book, quarter: SolvedQuarter, { name }: Flat): readonly Block[] => {
  const joint = `the joint of ${name} and ${quarter.name}`
  if (book.stock.joints.some((plate) => plate.flat === name && plate.quarter === quarter.name)) return []
  const why = namedChecks(book, ['flat-width'], (ramp) => ramp === quarter.name)
  return [
    ...why,
    words(
      `No plate goes over ${joint}${why.length > 0 ? '' : ': its bolts have no room between timbers'}. Look before anybody rides that the two have not drifted apart.`,
      book.width,
    ),
  ]
}

/** What is bolted over a joint, and where its holes lie. */
const plateWords = ({ show, units }: Book, plate: JointPlate): string => {
  const { quarter, flat, size, thickness, holes, bolt } = plate
  const count = 2 * (holes.quarter.length + holes.flat.length)
  return (
    `Hold the two together once both are painted${onPage('finishing')} and have their rubber strip${onPage('rubber')}: on the outside of each side a plate of ${showThickness(thickness, units)} offcut, ${size.map(show).join(' × ')}, its middle over the joint, its lower edge level with that of the wood, ${ownUnits(rubberThick, units)} off the floor: the rubber stays free. Drill plate and side as one, ${ownUnits('9 mm (3/8 in)', units)}, ${show(holes.up)} up from that edge: ${holes.quarter.map(show).join(' and ')} from the joint in ${quarter}, ${holes.flat.map(show).join(' and ')} in ${flat}. ` +
    `Nobody reaches inside once they stand: tip each up, put ${count} bolts ${ownUnits('M8 (5/16 in)', units)}, ${show(bolt)} long, through from inside, and tape over their heads. Set both down, the plates over the bolts, washers and nuts outside.`
  )
}
