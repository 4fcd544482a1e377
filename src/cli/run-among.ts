import { CommanderError, Command as Parser } from 'commander'
import { harmless } from '../length/quote.ts'
import { argumentWords, type Command, type OptionRow, optionFlags, plainHelp } from './command.ts'
import { Failure } from './failure.ts'
import type { Shell } from './shell.ts'
import { version } from './version.ts'
import { inQuotes } from './words/in-quotes.ts'
import { terminalColumns } from './words/wrap.ts'

/**
 * Runs one command line (without node and program name) that names one of these. Never exits: the exit code is returned. What it
 * throws is a fault of ours.
 */
export const runAmong = async (
  commands: readonly Command[],
  args: readonly string[],
  shell: Shell,
): Promise<number> => {
  let exit = 0
  const err = (text: string): void => shell.err(withoutTricks(text))
  // what a file says cannot move the cursor or change colours
  const out = (text: string): void => shell.out(text.replace(controls, '?'))
  const output = { writeOut: out, writeErr: err }
  const program = new Parser('traceply')
    .description('Full-size paper templates for a home-built skate ramp, and the numbers that go with them.')
    .version(version)
    .exitOverride()
    .configureOutput(output)
    .configureHelp(helpIn(terminalColumns()))
    .showHelpAfterError('(traceply --help shows all commands)')
    .enablePositionalOptions()
  for (const command of commands)
    parserOf(command, program)
      .exitOverride()
      .configureOutput(output)
      .action(async (...said: readonly unknown[]) => {
        // commander hands over the arguments, then the options, then itself
        const options = said[command.args.length] as Readonly<Record<string, unknown>>
        exit = await command.run(said.slice(0, command.args.length), options, { ...shell, out, err })
      })

  try {
    await program.parseAsync(args, { from: 'user' })
    return exit
  } catch (error) {
    if (error instanceof Failure) {
      err(`${error.message}\n`)
      return error.exit
    }
    if ((error as NodeJS.ErrnoException).syscall === 'uv_cwd') {
      err('the folder that you are in is gone; change to another one\n')
      return 2
    }
    if (error instanceof CommanderError) {
      if (error.code === 'commander.excessArguments') err(oneWord(commands, args))
      return error.exitCode === 0 ? 0 : 2
    }
    throw error
  }
}

/** Commander leaves help as it is where less than 40 columns are left beside the names: on a narrow terminal it is set in what is left. */
const helpIn = (columns: number | null) =>
  columns === null || columns >= 80 ? {} : { helpWidth: Math.max(50, columns), minWidthToWrap: 12 }

/** Where there are too many words: how an option that was given takes its value in one. Nothing where none was. */
const oneWord = (commands: readonly Command[], [name, ...words]: readonly string[]): string => {
  const options = commands.find((command) => command.name === name)?.options ?? []
  const row = options.find((one) => one.takes === 'lengths' && !one.many && words.includes(`--${one.name}`))
  if (row) return `--${row.name} takes one word: lengths with commas and no blanks, or in quotes\n`
  const single = options.filter(({ takes, many }) => takes !== undefined && many !== 'rest')
  const quoted = inQuotes(
    words,
    single.map((one) => `--${one.name}`),
  )
  return quoted === null ? '' : `${quoted}\n`
}

const parserOf = ({ name, help, args, options }: Command, program: Parser): Parser => {
  const parser = program.command(name).description(plainHelp(help))
  for (const arg of args) parser.argument(argumentWords(arg), plainHelp(arg.help))
  for (const option of options) addOption(parser, option)
  return parser
}

const collect = (value: string, before: readonly string[] = []): readonly string[] => [...before, value]

const addOption = (parser: Parser, option: OptionRow): void => {
  const [flags, help] = [optionFlags(option), plainHelp(option.help)]
  if (option.many === 'each') parser.option(flags, help, collect)
  else parser.option(flags, help, option.otherwise)
}

/** Control characters but line feeds and tabs. */
const controls = /[^\n\t -~\u00a0-\uffff]/g

/** What a message quotes of a file name or an option cannot move the cursor, change colours or fill the screen. */
const withoutTricks = (text: string): string =>
  text.split('\n').map(harmless).join('\n').replace(endless, shortened)

const endless = /\S{400,}/g
const shortened = (word: string): string => `${word.slice(0, 100)}…${word.slice(-20)}`
