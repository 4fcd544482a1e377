import { type Block, caution, check, head, step } from '../block.ts'
import type { Book } from '../book.ts'
import type { Section } from '../pages.ts'

export const care = (book: Book): Section => {
  const { width } = book
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'care',
    title: 'Looking after it',
    blocks: [
      head('Looking after it', width),
      next('Before each session: sweep it, run a hand over pipe and joints, look at the edge on the floor.'),
      next(
        'After the first week: tighten every screw of the top sheet and of the pipe; the wood has settled.',
      ),
      next('Each month: look for soft wood, lifted edges, screws that stand proud. Sink or change them.'),
      next(
        'Each year: paint or oil the edges of all sheets, the bottoms of the sides above all. Wet top sheets swell: let them dry before anybody rides.',
      ),
      check(
        'Helmet and pads are on. A child has an adult close by. The run-up is free of people and things.',
        width,
      ),
      caution(
        'A high deck can be fallen from. Local codes and licensed practice come before anything written here.',
        width,
      ),
    ],
  }
}
