import { commands } from './commands.ts'
import { runAmong } from './run-among.ts'
import type { Shell } from './shell.ts'

/** Runs one command line, whatever command it names. */
export const run = (args: readonly string[], shell: Shell): Promise<number> => runAmong(commands, args, shell)
