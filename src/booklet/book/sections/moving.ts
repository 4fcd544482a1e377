import { type Block, caution, check, head, step } from '../block.ts'
import type { Book } from '../book.ts'
import type { Section } from '../pages.ts'
import { checksOf } from './framing.ts'

export const moving = (book: Book): Section => {
  const { width, show, solved } = book
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'moving',
    title: 'Storing and moving',
    blocks: [
      head('Storing and moving', width),
      ...solved.ramps.map((ramp) =>
        next(
          `${book.several ? `${ramp.name}: ` : ''}it is ${show(ramp.length)} long, ${show(ramp.width)} wide and ${show(ramp.kind === 'quarter' ? ramp.transition.heights.deck : ramp.heights.surface)} high. Measure doors and the corner of the stair before the day.`,
        ),
      ),
      ...solved.ramps.flatMap((ramp) => checksOf(book, ramp, ['stores-inside', 'stores', 'slide'])),
      next(
        'Take the run-out off first. Lift at the sides, never at the skin or the pipe. Walk it on its back edge only over boards.',
      ),
      next('Store it dry and off the ground, on two battens, under a cover that lets air through.'),
      check('Where it stands nobody can climb on it unseen; its place is level and it does not rock.', width),
      caution(
        'Ramps are heavy and tip. At least two people lift; nobody stands under it or between it and a wall.',
        width,
      ),
    ],
  }
}
