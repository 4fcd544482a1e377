import { curvedOf, straightOf } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { showThickness } from '../../../length/thickness.ts'
import { wordList } from '../../../length/word-list.ts'
import { flatMet, meetWithin } from '../../../ramp/beside/meeting-trial.ts'
import { same } from '../../../ramp/check/offer.ts'
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
    curvedOf(solved.ramps).filter((quarter) => flatMet(quarter, solved.ramps)?.name === ramp.name)
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
        ...meeting(ramp).map((quarter, i) =>
          next(
            `Push the toe of ${quarter.name} against its ${i === 0 ? 'end stud' : 'other end stud'}. ${facesWords(book, ramp, quarter)}`,
          ),
        ),
        ...packed(book, ramp, meeting(ramp)).map(next),
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
        ...boltWords(
          book,
          stock.joints.filter((plate) => plate.flat === ramp.name),
        ).map(next),
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

/** How the ridden faces of a flat and of a quarter lie at their joint, the flat's first. */
const facesWords = ({ fine }: Book, flat: Flat, { name, transition }: SolvedQuarter): string => {
  const [own, other] = [flat.heights.surface, transition.toeStep]
  return Math.abs(other - own) <= meetWithin + same
    ? `The two ridden faces lie level: ${fine(own)} and ${fine(other)}. Shim the lower one.`
    : `The ridden face of ${other > own ? name : flat.name} stands ${fine(Math.abs(other - own))} higher: ${fine(own)} and ${fine(other)}.`
}

/** What goes under those whose ridden faces lie lower than the highest at the joints of a flat, by more than plywood varies. */
const packed = (
  { fine }: Book,
  { name, heights }: Flat,
  quarters: readonly SolvedQuarter[],
): readonly string[] => {
  const faces = [
    { name, up: heights.surface },
    ...quarters.map(({ name: own, transition }) => ({ name: own, up: transition.toeStep })),
  ]
  const highest = Math.max(...faces.map(({ up }) => up))
  const low = faces.filter(({ up }) => highest - up > meetWithin + same)
  if (low.length === 0) return []
  const raised = low.map(({ name: own, up }) => `${own} by ${fine(highest - up)}`)
  return [
    `So that no wheel meets a step, pack strips under the sides from end to end${low.some((one) => one.name === name) ? `, under the middles of the studs of ${name} too,` : ''} and raise ${wordList(raised)}. The strips are as wide as the sides are thick, glued between wood and rubber strip: it comes off for that and is tacked on again.`,
  ]
}

/** Where the plate over a joint lies, and its holes. */
const plateWords = ({ show, units }: Book, plate: JointPlate): string => {
  const { quarter, flat, size, thickness, holes } = plate
  return `Hold ${flat} and ${quarter} together once both are painted${onPage('finishing')} and have their rubber strip${onPage(`rubber ${flat}`)}: on the outside of each side a plate of ${showThickness(thickness, units)} plywood, ${size.map(show).join(' × ')}, its middle over the joint, its lower edge level with that of the wood, ${ownUnits(rubberThick, units)} off the floor: the rubber stays free. Drill plate and side as one, ${ownUnits('9 mm (3/8 in)', units)}, ${show(holes.up)} up from that edge: ${holes.quarter.map(show).join(' and ')} from the joint in ${quarter}, ${holes.flat.map(show).join(' and ')} in ${flat}. Mark where the plate lies and take it off.`
}

/** How the bolts come into the plates over a flat's joints: a flat is tipped once, for both of its ends. */
const boltWords = ({ show, units }: Book, plates: readonly JointPlate[]): readonly string[] => {
  if (plates.length === 0) return []
  const count = ({ holes }: JointPlate): number => 2 * (holes.quarter.length + holes.flat.length)
  const lengths = [...new Set(plates.map(({ bolt }) => bolt))]
  const bolts = lengths
    .map((bolt) => {
      const those = plates.filter((plate) => plate.bolt === bolt)
      const where = lengths.length > 1 ? ` (${wordList(those.map(({ quarter }) => quarter))})` : ''
      return `${those.reduce((sum, plate) => sum + count(plate), 0)} bolts ${ownUnits('M8 (5/16 in)', units)}, ${show(bolt)} long${where}`
    })
    .join(', ')
  const quarters = wordList(plates.map(({ quarter }) => quarter))
  const flat = plates[0]?.flat ?? ''
  return [
    `Nobody reaches inside once they stand. Pull ${quarters} off again and tip each ramp up, ${flat}${plates.length > 1 ? ' once for the holes at both its ends' : ' too'}: put ${bolts}, through from inside, and tape over their heads. Set all down and push ${quarters} on again; then the plates over the bolts, washers and nuts outside.`,
  ]
}
