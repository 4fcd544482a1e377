import { curvedOf } from '../../../design/kind-traits.ts'
import { wordList } from '../../../length/word-list.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { isSteel, steelUses } from '../../../stock/steel-uses.ts'
import { type Block, caution, check, head, step } from '../block.ts'
import { type Book, hasSkin } from '../book.ts'
import type { Section } from '../pages.ts'
import { bareTimbers } from '../store-words.ts'

/** How far edges are rounded; common practice, no source. */
const rounding = {
  mm: { edge: '3 mm', corner: '15 mm' },
  in: { edge: '1/8 in', corner: '1/2 in' },
} as const

/** Before anything is painted, while sawing or at the end. */
export const tinRule =
  "The tin's label comes first: air, gloves, what it must not touch, how long it dries. No flame near it. Rags wet with oil can catch fire by themselves: dry them flat outside, or keep them under water in a tin with a lid."

/** Whether sheets of skin or deck meet on any of these ramps. */
export const meetingSheets = (ramps: readonly SolvedRamp[]): boolean =>
  ramps
    .flatMap(({ skin, deckBoard }) => [...skin, ...(deckBoard ? [deckBoard] : [])])
    .some(({ pieces, widths }) => pieces.length * widths.length > 1)

/** Of what the deck boards and the tops of the skins are. */
const shownSheets = (ramps: readonly SolvedRamp[]) => {
  const boards = curvedOf(ramps).flatMap(({ deckBoard }) => (deckBoard ? [deckBoard.sheet] : []))
  const tops = ramps.flatMap(({ skin }) => skin.findLast(({ length }) => length > 0)?.sheet ?? [])
  return {
    woodBoard: boards.some((board) => !isSteel(board)),
    woodTop: tops.some((top) => !isSteel(top)),
    steelBoard: boards.some(isSteel),
    steelTop: tops.some(isSteel),
  }
}

/** Edges, sanding, end grain, paint: before anybody rides. */
export const finishing = (book: Book): Section => {
  const { width, units, solved, piped } = book
  const { edge, corner } = rounding[units]
  const { woodBoard, woodTop, steelBoard, steelTop } = shownSheets(solved.ramps)
  const steel = steelUses(solved.ramps).length > 0
  const ofWood = steelBoard ? 'wooden deck board' : 'deck board'
  const skinned = solved.ramps.some(hasSkin)
  const left = [
    ...(skinned ? ['where skin lies on the sides'] : []),
    ...(meetingSheets(solved.ramps) ? ['where sheets meet'] : []),
    ...(piped ? ['the seat of the pipe'] : []),
  ]
  const bare = bareTimbers(book)
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'finishing',
    title: 'Finishing',
    blocks: [
      head('Finishing', width),
      caution(
        'Dust of wood, hardboard and old paint harms lungs: sand outside or with the dust drawn off, mask on. Treated timber and old paint are not sanded dry. Keep children away until it is swept.',
        width,
      ),
      next(
        `Round every ${steel ? 'wooden edge' : 'edge'} that a hand or a knee meets by ${edge}, with a sanding block, a plane or a router: the tops and backs of the sides${woodBoard ? `, the free edges of the ${ofWood}` : ''}${woodTop ? `, the side edges of the skin${steelTop ? ' where its top sheet is wood' : ''}` : ''}.${woodBoard ? ` Round the corners of the ${ofWood} by ${corner}.` : ''}${left.length > 0 ? ` Leave alone ${wordList(left)}.` : ''}`,
      ),
      ...(steel
        ? [
            next(
              `Sheet steel gets a file alone, no router, plane or sander, gloves on: no edge of it has a burr left.${steelBoard ? ` File the corners of the steel deck board round by ${corner}.` : ''}`,
            ),
          ]
        : []),
      next(
        `Sink every screw head ${steel ? 'in wood ' : ''}just below the face${steel ? '; in steel it lies level with it' : ''}. Fill holes and gaps that a wheel or a finger would find${bare.length > 0 ? `, but neither fill nor paint over the screws in ${wordList(bare)}: you take them out again` : ''}.`,
      ),
      next(
        `Sand ${steel ? 'the wood ' : ''}with grit 80, then 120, along the grain. A hand run along each ${steel ? 'wooden edge' : 'edge'} finds no splinter. Sweep, then wipe.`,
      ),
      caution(tinRule, width),
      next('Seal the sawn edges that still show first: brush it on until the wood takes no more.'),
      next(
        `Paint or oil all faces, inside too, twice, with the drying time of the tin between. On the ridden face use only what its maker names for floors that are walked on${skinned ? ', or leave the top sheet as it came' : ''}: a slippery face throws riders.`,
      ),
      next(
        `Treated timber is painted only when it is dry; its cut ends get the sealer that its maker names.${solved.ramps.some(({ splices }) => splices.length > 0) ? ' Oil or paint nothing that is to be glued.' : ''}`,
      ),
      check('No splinter, no proud screw, no wet place. The face grips a dry shoe.', width),
    ],
  }
}
