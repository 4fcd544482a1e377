import { Command, CommanderError } from 'commander'
import { harmless } from '../length/quote.ts'
import { figures } from './commands/figures.ts'
import { gauge } from './commands/gauge.ts'
import { newDesign } from './commands/new.ts'
import { offsets } from './commands/offsets.ts'
import { plot } from './commands/plot.ts'
import { reprint } from './commands/reprint.ts'
import { square } from './commands/square.ts'
import { Failure } from './failure.ts'
import type { Shell } from './shell.ts'
import { version } from './version.ts'

/**
 * Runs one command line (without node and program name). Never exits: the exit code is returned. What it throws is a fault
 * of ours.
 */
export const run = async (args: readonly string[], shell: Shell): Promise<number> => {
  let exit = 0
  const err = (text: string): void => shell.err(withoutTricks(text))
  const output = { writeOut: shell.out, writeErr: err }
  const collect = (value: string, before: readonly string[] = []): readonly string[] => [...before, value]
  const profilesHelp = "folder of the printers' profiles; else your own configuration folder"
  const program = new Command('traceply')
    .description('Full-size paper templates for a home-built skate ramp, and the numbers that go with them.')
    .version(version)
    .exitOverride()
    .configureOutput(output)
    .showHelpAfterError('(traceply --help shows all commands)')
    .enablePositionalOptions()

  program
    .command('new')
    .argument('<kind>', 'kind of ramp: quarter or flat')
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
    .option(
      '--as-cut <notch>',
      'along=…,down=… of a notch that is cut already (RAMP:along=… where there are several): what the pipe does in it, and the shim that cures it',
      collect,
    )
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
    .option(
      '--cover <how>',
      'whole: every page the outline touches; line: only what is traced; ribbon: the same in rows that follow the curve; else the way a careful builder would take',
    )
    .option(
      '--strips',
      'add story strips at full size: studs, seams and screws of each layer of skin, screws across, holes of the pipe',
    )
    .option('--pack', 'let small parts share pages: lip trials, strips that measure the pipe, story strips')
    .option('--margin <lengths>', 'one length, or four: top, right, bottom, left of the upright page')
    .option('--overlap <length>', 'how far pages lie over each other')
    .option('--printer <name>', 'correct for this printer, measured with gauge')
    .option('--profiles <folder>', profilesHelp)
    .option('--out <file>', 'where to write the PDF; else beside you, named after the design')
    .option('--map <file>', 'also write the map as a PNG, to have on the phone')
    .option('--force', 'replace a file that exists')
    .option('--json', 'print the plan as JSON alone')
    .action(async (file, options) => {
      exit = await plot(file, options, shell)
    })

  program
    .command('square')
    .description('write one page that proves a printer: a true square, rulers, combs for the margins')
    .option('--paper <name>', 'letter, legal, tabloid, a4, a3, a2, a1 or a0')
    .option('--units <units>', 'mm or in, for the figures beside the rulers')
    .option('--margin <lengths>', 'one length, or four: top, right, bottom, left of the upright page')
    .option('--printer <name>', 'print it with the correction of this printer, to prove that')
    .option('--profiles <folder>', profilesHelp)
    .option('--out <file>', 'where to write the PDF', 'square.pdf')
    .option('--force', 'replace a file that exists')
    .option('--json', 'print the plan as JSON alone')
    .action(async (options) => {
      exit = await square(options, shell)
    })

  program
    .command('gauge')
    .argument('[name]', 'your name for this printer, paper and tray')
    .description('turn measurements of the printed square into a correction')
    .option(
      '--across <length>',
      'side of the square across the page; 238.1mm/240mm for a ruler; repeat for more',
      collect,
    )
    .option('--down <length>', 'side of the square down the page; repeat for more', collect)
    .option('--diagonals <lengths...>', 'diagonals A and B; repeat for more')
    .option('--margins <lengths>', 'first printed tick of each comb: top, right, bottom, left')
    .option('--paper <name>', 'paper that was measured; else that of the design behind --for, else a4')
    .option('--for <design>', 'tell what the printer would do to this ramp')
    .option('--profiles <folder>', profilesHelp)
    .option('--list', 'list the printers that are known')
    .option('--show <name>', 'show one of them')
    .option('--forget <name>', 'remove one of them')
    .option('--force', 'replace a profile that exists')
    .option('--json', 'print JSON alone')
    .action((name, options) => {
      exit = gauge(name, options, shell)
    })

  program
    .command('reprint')
    .argument('<set>', "the set's PDF; or, with --set, the design that it was plotted from")
    .argument('[pages...]', 'tiles by name or taping number (B3, 7); map, square, trial, strips')
    .description('write some pages of a set once more, exactly as they were')
    .option('--out <file>', 'where to write the PDF')
    .option('--printer <name>', 'correct the pages for this printer; with --set: the one it was plotted for')
    .option('--profiles <folder>', profilesHelp)
    .option('--set <code>', 'lay the set out again from its design: its code, as on every page')
    .option('--paper <name>', 'with --set, as for plot')
    .option('--cover <how>', 'with --set, as for plot')
    .option('--strips', 'with --set, as for plot')
    .option('--pack', 'with --set, as for plot')
    .option('--margin <lengths>', 'with --set, as for plot')
    .option('--overlap <length>', 'with --set, as for plot')
    .option('--force', 'replace a file that exists')
    .option('--json', 'print the plan as JSON alone')
    .action(async (file, pages, options) => {
      exit = await reprint(file, pages, options, shell)
    })

  program
    .command('offsets')
    .argument('<design>', 'design file')
    .description(
      'the curve as distances to set out by hand, without a printer; and the figures of a swing arm',
    )
    .option('--every <length>', 'distance of the marks along the bottom edge; else 150 mm or 6 in')
    .option(
      '--paper <name>',
      'of the PDF: letter, legal, tabloid, a4, a3, a2, a1 or a0; else as the design says',
    )
    .option('--out <file>', 'write it to a .pdf, .csv or .txt file instead of printing it')
    .option('--force', 'replace a file that exists')
    .option('--json', 'print JSON alone, in mm')
    .action(async (file, options) => {
      exit = await offsets(file, options, shell)
    })

  for (const command of program.commands) command.exitOverride().configureOutput(output)

  try {
    await program.parseAsync(args, { from: 'user' })
    return exit
  } catch (error) {
    if (error instanceof Failure) {
      err(`${error.message}\n`)
      return error.exit
    }
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2
    throw error
  }
}

/** What a message quotes of a file name or an option cannot move the cursor or change colours. */
const withoutTricks = (text: string): string => text.split('\n').map(harmless).join('\n')
