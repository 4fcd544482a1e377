import { stockLines, stockRows } from '../../stock-rows.ts'
import { type Block, caution, check, head, step, words } from '../block.ts'
import type { Book } from '../book.ts'
import type { Section } from '../pages.ts'
import { checksOf } from './framing.ts'

export const moving = (book: Book): Section => {
  const { width, solved, stock, design } = book
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  return {
    name: 'moving',
    title: 'Storing and moving',
    blocks: [
      head('Storing and moving', width),
      ...solved.ramps.flatMap((ramp) =>
        stockRows(ramp.name, stock, design.units).map(([label, said]) =>
          words(`${capital(book.several ? `${ramp.name}, ${label}` : label)}: ${said}.`, width),
        ),
      ),
      ...stockLines(stock, design)
        .slice(1)
        .map((line) => words(`${capital(line)}.`, width)),
      next('Measure the doors, and the corners between them, before the day.'),
      ...solved.ramps.flatMap((ramp) => checksOf(book, ramp, ['stores-inside', 'stores', 'slide', 'stored'])),
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

const capital = (said: string): string => said.slice(0, 1).toUpperCase() + said.slice(1)
