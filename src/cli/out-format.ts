import { extname } from 'node:path'
import type { Design } from '../design/design.ts'
import type { Laying } from '../job/laying.ts'
import { readLaying } from '../job/laying-words.ts'
import type { Check } from '../ramp/check/check.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import { done } from './done.ts'
import { checkOut, writeOut } from './files.ts'
import { pdfOf } from './pdf/write-pdf.ts'
import type { Shell } from './shell.ts'
import { tellBriefly } from './words/show-checks.ts'
import { printedColumns } from './words/wrap.ts'

/** A command that prints its text, or writes it to a file in the format that the ending names. */
interface OutOptions {
  readonly paper?: string
  readonly out?: string
  readonly force?: boolean
  readonly json?: boolean
}

/** Endings that a command writes, and what each is, in words or in none: the one list that asking, help and README come from. */
type Formats<Ending extends string> = Readonly<Record<Ending, string>>

/** `.pdf or .svg (drawings), .csv (a spreadsheet), .json or .txt` */
const formatWords = (formats: Formats<string>, shown: (ending: string) => string): string => {
  const groups: { readonly endings: string[]; readonly words: string }[] = []
  for (const [ending, words] of Object.entries(formats)) {
    const last = groups.at(-1)
    if (last && words !== '' && last.words === words) last.endings.push(shown(ending))
    else groups.push({ endings: [shown(ending)], words })
  }
  const all = groups.map(
    ({ endings, words }) => `${endings.join(' or ')}${words === '' ? '' : ` (${words})`}`,
  )
  return `${all.slice(0, -1).join(', ')} or ${all.at(-1)}`
}

export const outOption = (formats: Formats<string>) =>
  ({
    name: 'out',
    takes: 'file',
    help: `write it to a file instead of printing it: ${formatWords(formats, (ending) => `\`${ending}\``)}`,
  }) as const

/** Format and paper that are asked for; fails with `faults` and all that is wrong with these at once. */
export const askedFormat = <Ending extends string>(
  { paper, out, force }: OutOptions,
  design: Design,
  file: string,
  formats: Formats<Ending>,
  faults: string[] = [],
): { readonly format: Ending; readonly sheet: Laying['sheet'] } => {
  const ending = out === undefined ? '.txt' : extname(out).toLowerCase()
  const format = (Object.keys(formats) as Ending[]).find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in ${formatWords(formats, (known) => known)}`,
    )
  const { sheet } = done(readLaying(paper === undefined ? {} : { paper }, null, design, faults))
  if (out !== undefined) checkOut(out, force ?? false, file)
  return { format: format!, sheet }
}

/** What a command has to give. */
interface Made<Ending extends string> {
  readonly as: Readonly<Record<Exclude<Ending, '.txt'>, () => string | PdfInput>> & {
    /** `columns`: of the terminal that it is printed on */
    readonly '.txt': (columns?: number) => string
  }
  /** as scripts read it */
  readonly record: () => unknown
  /** after the name of a file that was written: how much is in it */
  readonly holds: string
  readonly checks: readonly Check[]
  readonly several: boolean
  /** the design, as it was named */
  readonly file: string
  readonly notes?: readonly string[]
}

export const jsonText = (record: unknown): string => `${JSON.stringify(record, null, 2)}\n`

/** Prints it or writes it, then says what the checks found. */
export const giveOut = async <Ending extends string>(
  { out, force, json }: OutOptions,
  format: Ending,
  { as, record, holds, checks, several, file, notes = [] }: Made<Ending>,
  shell: Shell,
): Promise<number> => {
  let lost: readonly string[] = []
  if (out !== undefined) {
    const made = (as as Readonly<Record<Ending, () => string | PdfInput>>)[format]()
    const { bytes, warnings } = typeof made === 'string' ? { bytes: made, warnings: [] } : await pdfOf(made)
    lost = warnings
    writeOut(out, bytes, force ?? false)
  }
  if (json) shell.out(jsonText(record()))
  else if (out === undefined) shell.out(as['.txt'](printedColumns()))
  else shell.out(`${out}: ${holds}.\n`)
  tellBriefly(shell, { checks, several, file, lost, notes })
  return 0
}
