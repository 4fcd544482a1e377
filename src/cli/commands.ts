import type { Command } from './command.ts'
import { bookletCommand } from './commands/booklet.ts'
import { buyCommand } from './commands/buy.ts'
import { chooseCommand } from './commands/choose.ts'
import { cutsCommand } from './commands/cuts.ts'
import { figuresCommand } from './commands/figures.ts'
import { fitCommand } from './commands/fit.ts'
import { gaugeCommand } from './commands/gauge.ts'
import { newCommand } from './commands/new.ts'
import { offsetsCommand } from './commands/offsets.ts'
import { pageCommand } from './commands/page.ts'
import { plotCommand } from './commands/plot.ts'
import { reprintCommand } from './commands/reprint.ts'
import { squareCommand } from './commands/square.ts'

/** All commands, in the order of `--help` and of the README. */
export const commands: readonly Command[] = [
  newCommand,
  chooseCommand,
  figuresCommand,
  plotCommand,
  squareCommand,
  gaugeCommand,
  reprintCommand,
  offsetsCommand,
  cutsCommand,
  buyCommand,
  bookletCommand,
  fitCommand,
  pageCommand,
]
