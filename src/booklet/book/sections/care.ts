import { curvedOf } from '../../../design/kind-traits.ts'
import { steelUses } from '../../../stock/steel-uses.ts'
import { type Block, caution, check, head, step, together } from '../block.ts'
import { type Book, hasSkin } from '../book.ts'
import type { Section } from '../pages.ts'

export const care = (book: Book): Section => {
  const { width, solved, piped } = book
  const skinned = solved.ramps.some(hasSkin)
  const quarters = curvedOf(solved.ramps)
  const wheeled = quarters.some(({ wheels }) => wheels)
  const steel = steelUses(solved.ramps).length > 0
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'care',
    title: 'Looking after it',
    blocks: [
      head('Looking after it', width),
      next(
        `Before each session: sweep; feel ${piped ? 'pipe, ' : ''}joints and screws; look at the ${quarters.length > 0 ? 'edge on the floor' : 'edges'}${wheeled ? ', and that the wheels are off it' : ''}. Wet or icy: nobody rides.`,
      ),
      next(
        `After the first week, and after a month: tighten every screw of the ${skinned ? 'top sheet' : 'frame'}${piped ? ' and the pipe' : ''}; the wood settles.`,
      ),
      next(
        'Each month: look for soft wood, lifted edges, cracks, screws that stand proud. With a lamp look under it: studs, the sides at their screws, what holds water. A screw that no longer holds: one of the same length beside it.',
      ),
      next(
        `Each year: paint or oil all edges, the bottoms of the sides above all${steel ? '; file burrs off the steel' : ''}.${skinned ? ' Let a wet top sheet dry before riding.' : ''}`,
      ),
      ...(skinned
        ? [
            next(
              'A worn top sheet: take out its screws, saw a new one by its panel page, drill by the same table.',
            ),
          ]
        : []),
      // no line of them stands alone on a last page
      ...together(
        [
          next(
            'Ride it no more when a side is cracked, a stud is loose and does not hold a new screw, or a blade of a knife goes into the wood by itself. Keep this booklet with it: its set code finds the pages again.',
          ),
          check(
            'Helmet and pads are on. A child has an adult close by. The run-up is free of people and things.',
            width,
          ),
          caution(
            `${quarters.length > 0 ? 'A high deck can be fallen from. ' : ''}Local codes and licensed practice come before anything written here.`,
            width,
          ),
        ],
        book.tall,
      ),
    ],
  }
}
