import type { Shell } from './shell.ts'

/** What an option takes, and how its help reads. Code stands in `backticks`, which the terminal drops. */
export interface OptionRow {
  readonly name: string
  /** word for its value; without one it is on or off */
  readonly takes?: string
  /** `each`: may be given again; `rest`: takes all words up to the next option */
  readonly many?: 'each' | 'rest'
  /** the value where it is not given */
  readonly otherwise?: string
  readonly help: string
  /** goes on in the README alone: a link, most often */
  readonly more?: string
}

export interface ArgumentRow {
  readonly name: string
  readonly many?: true
  readonly optional?: true
  readonly help: string
}

type Camel<Name extends string> = Name extends `${infer Head}-${infer Tail}`
  ? `${Head}${Capitalize<Camel<Tail>>}`
  : Name

/** What a command gets of its options: keys and types follow from the rows. */
export type Given<Rows extends readonly OptionRow[]> = {
  readonly [Row in Rows[number] as Camel<Row['name']>]?: Row extends { readonly many: string }
    ? readonly string[]
    : Row extends { readonly takes: string }
      ? string
      : boolean
}

type Words<Rows extends readonly ArgumentRow[]> = {
  readonly [At in keyof Rows]: Rows[At] extends { readonly many: true }
    ? readonly string[]
    : Rows[At] extends { readonly optional: true }
      ? string | undefined
      : string
}

/** One command: help, parsing and the README's table come from here. */
export interface Command {
  readonly name: string
  readonly help: string
  readonly args: readonly ArgumentRow[]
  readonly options: readonly OptionRow[]
  /** The exit code. */
  readonly run: (
    words: readonly unknown[],
    options: Readonly<Record<string, unknown>>,
    shell: Shell,
  ) => number | Promise<number>
}

/** A row of the table; what `run` gets is typed by the arguments and options beside it. */
export const command = <
  const Args extends readonly ArgumentRow[],
  const Options extends readonly OptionRow[],
>(row: {
  readonly name: string
  readonly help: string
  readonly args: Args
  readonly options: Options
  readonly run: (words: Words<Args>, options: Given<Options>, shell: Shell) => number | Promise<number>
}): Command => row as unknown as Command

/** `--paper <name>` */
export const optionFlags = ({ name, takes, many }: OptionRow): string =>
  takes === undefined ? `--${name}` : `--${name} <${takes}${many === 'rest' ? '...' : ''}>`

/** `<design>`, `[pages...]` */
export const argumentWords = ({ name, many, optional }: ArgumentRow): string => {
  const word = many ? `${name}...` : name
  return optional ? `[${word}]` : `<${word}>`
}

/** Help without the marks that a terminal does not read. */
export const plainHelp = (help: string): string => help.replaceAll('`', '')

/** The options as the README has them. */
export const optionTable = ({ options }: Command): string =>
  [
    '| option | does |',
    '|---|---|',
    ...options.map((row) => {
      const value = row.takes === undefined ? '' : ` ${row.takes.toUpperCase()}`
      const otherwise = row.otherwise === undefined ? '' : `; else \`${row.otherwise}\``
      return `| \`--${row.name}${value}\` | ${row.help}${otherwise}${row.more === undefined ? '' : `. ${row.more}`} |`
    }),
  ].join('\n')
