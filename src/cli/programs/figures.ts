import { figuresCommand } from '../commands/figures.ts'
import { start } from '../start.ts'

/** Asked most often: no other command is read for it. */
start([figuresCommand])
