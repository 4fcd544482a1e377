import { Command, CommanderError } from 'commander'
import { figures } from './commands/figures.ts'
import { newDesign } from './commands/new.ts'
import { plot } from './commands/plot.ts'
import { Failure } from './failure.ts'
import type { Shell } from './shell.ts'
import { version } from './version.ts'

/** Runs one command line (without node and program name). Never throws, never exits: the exit code is returned. */
export const run = async (args: readonly string[], shell: Shell): Promise<number> => {
  let exit = 0
  const program = new Command('traceply')
    .description('Full-size paper templates for a home-built skate ramp, and the numbers that go with them.')
    .version(version)
    .exitOverride()
    .configureOutput({ writeOut: shell.out, writeErr: shell.err })
    .showHelpAfterError('(traceply --help shows all commands)')
    .enablePositionalOptions()

  program
    .command('new')
    .argument('<kind>', 'kind of ramp: quarter')
    .description('write a commented design file to start from')
    .option('--units <units>', 'mm or in', 'mm')
    .option('--out <file>', 'where to write it; else it is printed')
    .option('--force', 'replace a file that exists')
    .action((kind, options) => {
      exit = newDesign(kind, options, shell)
    })

  program
    .command('figures')
    .argument('<design>', 'design file')
    .description('show what the ramp comes out as, and what will not work')
    .option('--json', 'print JSON alone, in mm and degrees')
    .option('--out <file>', 'write it to a file instead')
    .option('--force', 'replace a file that exists')
    .action((file, options) => {
      exit = figures(file, options, shell)
    })

  program
    .command('plot')
    .argument('<design>', 'design file')
    .description('write the full-size pages as a PDF')
    .option('--paper <name>', 'letter, legal, tabloid, a4, a3, a2, a1 or a0; else as the design says')
    .option('--cover <how>', 'whole: every page the outline touches; line: only what is traced', 'whole')
    .option('--margin <lengths>', 'one length, or four: top, right, bottom, left of the upright page')
    .option('--overlap <length>', 'how far pages lie over each other')
    .option('--out <file>', 'where to write the PDF; else beside you, named after the design')
    .option('--force', 'replace a file that exists')
    .option('--json', 'print the plan as JSON alone')
    .action(async (file, options) => {
      exit = await plot(file, options, shell)
    })

  for (const command of program.commands)
    command.exitOverride().configureOutput({ writeOut: shell.out, writeErr: shell.err })

  try {
    await program.parseAsync(args, { from: 'user' })
    return exit
  } catch (error) {
    if (error instanceof Failure) {
      shell.err(`${error.message}\n`)
      return error.exit
    }
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2
    throw error
  }
}
