import { bookletCommand } from '../commands/booklet.ts'
import { start } from '../process/start.ts'

/** Dear, so no other command is read for it. */
start([bookletCommand])
