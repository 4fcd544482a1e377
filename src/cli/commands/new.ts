import { kinds } from '../../design/design.ts'
import { writeStarter } from '../../design/starter.ts'
import { starterFor } from '../../design/starters.ts'
import { nearWord } from '../../length/near.ts'
import { Failure } from '../failure.ts'
import { writeOut } from '../files.ts'
import type { Shell } from '../shell.ts'

export interface NewOptions {
  readonly units: string
  readonly out?: string
  readonly force?: boolean
}

/** A commented starter to edit, on standard output or in a file. */
export const newDesign = (kind: string, options: NewOptions, shell: Shell): number => {
  const known = kinds.find((word) => word === kind)
  const near = nearWord(kind.toLowerCase(), kinds)
  if (known === undefined)
    throw new Failure(
      2,
      `there is no kind of ramp called \`${kind}\`; ${near === undefined ? `say one of: ${kinds.join(', ')}` : `did you mean \`${near}\`?`}`,
    )
  if (options.units !== 'mm' && options.units !== 'in')
    throw new Failure(2, `--units ${options.units}: say mm or in`)
  const text = writeStarter(starterFor(known, options.units))
  if (options.out === undefined) {
    shell.out(text)
    return 0
  }
  writeOut(options.out, text, options.force ?? false)
  shell.out(
    [
      `Wrote ${options.out}: a ${kind}${kind === 'flat' ? ' and a quarter that runs out on it' : ''}, in ${options.units === 'in' ? 'inches' : 'mm'}, to make your own.`,
      'Next: change its figures in any text editor, then',
      `  traceply figures ${options.out}`,
      `  traceply plot ${options.out}`,
      '',
    ].join('\n'),
  )
  return 0
}
