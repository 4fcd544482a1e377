import { commands } from '../commands.ts'
import { start } from '../process/start.ts'

start(commands)
