import { commands } from '../commands.ts'
import { start } from '../start.ts'

start(commands)
