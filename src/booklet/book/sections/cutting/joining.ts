import { isCurved } from '../../../../design/kind-traits.ts'
import { showThickness } from '../../../../length/thickness.ts'
import { numberList, wordList } from '../../../../length/word-list.ts'
import { timberLabel } from '../../../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../../../ramp/ramp.ts'
import { screwHead } from '../../../../ramp/screws/screw-sort.ts'
import { plateScrews } from '../../../../ramp/splice/plate-screws.ts'
import { piecesOf, splicing } from '../../../../ramp/splice/splice.ts'
import type { Book } from '../../book.ts'
import { plateRows } from './plate-rows.ts'

/** The letters of a side's pieces. */
export const pieceNames = (ramp: SolvedRamp): string => wordList(piecesOf(ramp))

/** How the pieces of each side become one, before the frame is put together. */
export const joinSteps = (
  { show, screw, units, several, sheets }: Book,
  ramp: SolvedRamp,
): readonly string[] => {
  const { splices, design, studs } = ramp
  const { thickness, count } = design.sides
  const walls = count > 2 ? 'side and rib' : 'side'
  const plates = sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.part === 'plate' && part.ramp === ramp.name ? [part.mark] : []))
  return [
    `Saw the plates of the joint${splices.length > 1 ? 's' : ''}${several ? ` of ${ramp.name}` : ''} with a guide: ${wordList(plates)}.`,
    `Lay pieces ${pieceNames(ramp)} of each ${walls}${several ? ` of ${ramp.name}` : ''} together on a flat floor, outside down, their bottom edges along one straightedge. Left and right are mirror images: look that the plates come on the inside of both.${count > 2 ? ` On a rib they come on the right face, as seen from ${isCurved(ramp) ? 'the toe' : 'its first end'}: that face lies up.` : ''}`,
    ...splices.map((splice) => {
      const { count: screws, length } = plateScrews(splice, thickness, units)
      const [across, along] = splice.plate.size
      const timber = [...studs, ...(isCurved(ramp) ? ramp.deckTimbers : [])][splice.timber]!
      const { edge, inner } = plateRows(splice, timber, units)
      return (
        `Glue the joint at the ${isCurved(ramp) ? 'mark' : 'place'} of ${timberLabel(splice.timber, studs.length)}. Glue a plate over it, ${show(across)} across the joint and ${show(along)} along it, its middle on the joint, ${show(splicing[units].edge)} below the upper edge: ` +
        `${screws} screws${length === null ? '' : ` of ${screw('plates', length)}, ${screwHead('plates')},`} in two rows on each side of the joint, ${screws / 4} in each: ` +
        `${inner === null ? `staggered between the place of the timber and ${show(edge)} from the plate's edge` : `${show(inner)} from the joint and ${show(edge)} from the plate's edge`}, the first and the last ${show(edge)} from its ends, all evenly apart. The rows keep off the timber that is set on the plate later.`
      )
    }),
    `Let the glue set as long as its maker says. ${isCurved(ramp) ? `Lay each on the taped pages once more, print up under the left side${count > 2 ? ` and the rib${count > 3 ? 's' : ''}` : ''}, print down under the right: curve and bottom edge run through the joint without a step.` : `Lay a straightedge along both edges: they run through the joint without a step. Measure the whole: ${show(ramp.length)} long, both diagonals ${show(Math.hypot(ramp.length, ramp.heights.frame))}.`}`,
  ]
}

/** Timbers that stand on plates are shorter than the others: said with their length. */
export const shortWords = ({ units }: Book, { splices, design }: SolvedRamp): string =>
  splices.length === 0
    ? ''
    : `${numberList(
        'timber',
        splices.map(({ timber }) => timber + 1),
      )} ${splices.length > 1 ? 'stand' : 'stands'} on plates: ${showThickness(design.sides.thickness, units)} shorter for each plate.`
