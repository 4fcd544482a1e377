import { kinds } from '../../design/design.ts'
import { kindTraits } from '../../design/kind-traits.ts'
import { writeStarter } from '../../design/starter.ts'
import { starterFor } from '../../design/starters.ts'
import { nearWord } from '../../length/near.ts'
import { command, type Given } from '../command.ts'
import { Failure } from '../failure.ts'
import { writeOut } from '../files.ts'
import { forceOption, oneOfWords, unitsWords } from '../options.ts'
import type { Shell } from '../shell.ts'
import { typedName } from '../words/typed-name.ts'

const options = [
  { name: 'units', takes: 'units', otherwise: 'mm', help: unitsWords },
  { name: 'out', takes: 'file', help: 'where to write it; else it is printed' },
  forceOption,
] as const

export const newCommand = command({
  name: 'new',
  help: 'write a commented design file to start from',
  args: [{ name: 'kind', help: `kind of ramp: ${oneOfWords(kinds)}` }],
  options,
  run: ([kind], given, shell) => newDesign(kind, given, shell),
})

/** A commented starter to edit, on standard output or in a file. */
const newDesign = (kind: string, given: Given<typeof options>, shell: Shell): number => {
  const known = kinds.find((word) => word === kind)
  const near = nearWord(kind.toLowerCase(), kinds)
  if (known === undefined)
    throw new Failure(
      2,
      `there is no kind of ramp called \`${kind}\`; ${near === undefined ? `say one of: ${kinds.join(', ')}` : `did you mean \`${near}\`?`}`,
    )
  if (given.units !== 'mm' && given.units !== 'in')
    throw new Failure(2, `--units ${given.units}: say mm or in`)
  const text = writeStarter(starterFor(known, given.units))
  if (given.out === undefined) {
    shell.out(text)
    return 0
  }
  writeOut(given.out, text, given.force ?? false)
  shell.out(
    [
      `Wrote ${given.out}: ${kindTraits[known].starter}, in ${given.units === 'in' ? 'inches' : 'mm'}, to make your own.`,
      'Next: change its figures in any text editor, then',
      `  traceply figures ${typedName(given.out)}`,
      `  traceply plot ${typedName(given.out)}`,
      '',
    ].join('\n'),
  )
  return 0
}
