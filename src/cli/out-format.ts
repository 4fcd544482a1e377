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
import { tellBriefly } from './show-checks.ts'

/** A command that prints its text, or writes it to a file in the format that the ending names. */
interface OutOptions {
  readonly paper?: string
  readonly out?: string
  readonly force?: boolean
  readonly json?: boolean
}

/** Format and paper that are asked for; fails with `faults` and all that is wrong with these at once. */
export const askedFormat = <Ending extends string>(
  { paper, out, force }: OutOptions,
  design: Design,
  file: string,
  /** `means`: the endings in words */
  { formats, means }: { readonly formats: readonly Ending[]; readonly means: string },
  faults: string[] = [],
): { readonly format: Ending; readonly sheet: Laying['sheet'] } => {
  const ending = out === undefined ? '.txt' : extname(out).toLowerCase()
  const format = formats.find((known) => known === ending)
  if (format === undefined)
    faults.push(
      `--out ${out}: ${ending === '' ? 'a name without an ending' : `\`${ending}\``} tells no format; end it in ${means}`,
    )
  const { sheet } = done(readLaying(paper === undefined ? {} : { paper }, null, design, faults))
  if (out !== undefined) checkOut(out, force ?? false, file)
  return { format: format!, sheet }
}

/** What a command has to give. */
interface Made<Ending extends string> {
  readonly as: Readonly<Record<Exclude<Ending, '.txt'>, () => string | PdfInput>> & {
    readonly '.txt': () => string
  }
  /** as scripts read it */
  readonly record: () => unknown
  /** after the name of a file that was written: how much is in it */
  readonly holds: string
  readonly checks: readonly Check[]
  readonly several: boolean
  readonly notes?: readonly string[]
}

export const jsonText = (record: unknown): string => `${JSON.stringify(record, null, 2)}\n`

/** Prints it or writes it, then says what the checks found. */
export const giveOut = async <Ending extends string>(
  { out, force, json }: OutOptions,
  format: Ending,
  { as, record, holds, checks, several, notes = [] }: Made<Ending>,
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
  else if (out === undefined) shell.out(as['.txt']())
  else shell.out(`${out}: ${holds}.\n`)
  tellBriefly(shell, { checks, several, lost, notes })
  return 0
}
