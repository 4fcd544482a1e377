import { figuresCommand } from '../commands/figures.ts'
import { start } from '../process/start.ts'

/** Asked most often: no other command is read for it. */
start([figuresCommand])
