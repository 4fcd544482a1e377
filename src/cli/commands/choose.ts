import { chooseRamps } from '../../job/choose/choose.ts'
import { chosenNotes, rampTable } from '../../job/choose/choose-words.ts'
import type { ChosenRamp } from '../../job/choose/trial.ts'
import { waysOut } from '../../job/choose/ways-out.ts'
import { readWishes, type Wishes, type WishWords, wishKeys } from '../../job/choose/wishes.ts'
import { asked, isRefusal } from '../../job/refusal.ts'
import { showLength } from '../../length.ts'
import { steepnesses } from '../../ramp/steepness.ts'
import { askWishes } from '../ask-wishes.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { checkOut, writeOut } from '../files.ts'
import { forceOption, oneOfWords, paperWords, unitsWords } from '../options.ts'
import type { Shell } from '../shell.ts'
import { typedName } from '../words/typed-name.ts'
import { wrap } from '../words/wrap.ts'

const options = [
  { name: 'units', takes: 'units', help: `${unitsWords}; else \`mm\`` },
  { name: 'height', takes: 'length', help: 'of the deck; else as is custom for who rides' },
  {
    name: 'rider',
    takes: 'who',
    help: `an age in years, or how easy it is to be: ${oneOfWords(steepnesses.map(({ word }) => word))}`,
  },
  {
    name: 'width',
    takes: 'length',
    help: 'else 1200 mm or 47 1/2 in, so that a panel gives two pieces of skin',
  },
  {
    name: 'panels',
    takes: 'count',
    help: 'panels that the sides may take; the skin takes others, and the answer counts all',
  },
  { name: 'timbers', takes: 'count', help: 'lengths of timber to buy, at most' },
  { name: 'garage', takes: 'size', help: 'width x depth of the floor that it is kept on' },
  { name: 'ceiling', takes: 'length', help: 'height there' },
  {
    name: 'door',
    takes: 'size',
    help: 'width x height of the door that it must pass, on its feet or on edge',
  },
  { name: 'paper', takes: 'name', help: `${paperWords}; else \`a4\`, or \`letter\` with inches` },
  {
    name: 'pick',
    takes: 'row',
    help: 'the number of one ramp: its design is printed, or written with `--out`',
  },
  { name: 'out', takes: 'file', help: 'where to write the design of the ramp that `--pick` names' },
  forceOption,
  { name: 'json', help: 'print JSON alone, in mm, degrees and kg, each ramp with the text of its design' },
] as const
type ChooseOptions = Given<typeof options>

export const chooseCommand = command({
  name: 'choose',
  help: 'find ramps that work from what you know: how high, who rides, how much room',
  args: [],
  options,
  run: (_, given, shell) => choose(given, shell),
})

const choose = async (given: ChooseOptions, shell: Shell): Promise<number> => {
  const typed = Object.fromEntries(
    wishKeys.flatMap((key) => (given[key] === undefined ? [] : [[key, given[key]]])),
  ) as WishWords
  const alone = Object.keys(given).length === 0
  const said = alone && shell.ask ? await askWishes(shell.ask, shell) : typed
  const faults =
    given.out !== undefined && given.pick === undefined
      ? ['--out needs --pick: the number of the ramp to write']
      : []
  const read = readWishes(said)
  const wishes = done(
    faults.length > 0
      ? asked([...(isRefusal(read) && read.refused === 'asked' ? read.faults : []), ...faults])
      : read,
  )
  if (given.out !== undefined) checkOut(given.out, given.force ?? false)
  const ramps = chooseRamps(wishes)
  if (ramps.length === 0) throw new Failure(1, noneWords(waysOut(said, wishes), wishes))
  if (given.pick !== undefined) return give(picked(ramps, given.pick), given, shell)
  if (given.json) {
    shell.out(json(ramps))
    return 0
  }
  shell.out(`${tableText(ramps, wishes)}\n`)
  if (alone && shell.ask) return keepOne(ramps, shell.ask, shell)
  shell.out(
    `Next: the same with \`--pick ${Math.ceil(ramps.length / 2)} --out my-ramp.yaml\` writes the design of that ramp\n`,
  )
  return 0
}

const tableText = (ramps: readonly ChosenRamp[], wishes: Wishes): string =>
  [
    `Ramps from mellow to steep (lengths in ${wishes.units === 'mm' ? 'mm' : 'inches; + is 1/32 more, – is 1/32 less'})`,
    '',
    rampTable(ramps, wishes),
    '',
    ...chosenNotes(ramps, wishes).map((line) => wrap(line, 2)),
  ].join('\n')

const noneWords = (ways: readonly string[], wishes: Wishes): string =>
  `no ramp that works keeps all of that; ${
    ways.length > 0
      ? `each of these alone makes one: ${ways.map((way) => `${way}${readAs(way, wishes)}`).join(', or ')}`
      : 'ask for less of it at once'
  }\nnothing written`

/** A room as it was read: a number without a unit may have been meant in another one. */
const readAs = (way: string, wishes: Wishes): string => {
  const room = (['garage', 'door'] as const).find((key) => way === `no --${key}`)
  const sides = room && wishes[room]
  if (!sides) return ''
  const shown = sides.map((mm) => showLength(mm, wishes.units))
  return ` (it is read as ${shown.join(' x ')} ${wishes.units})`
}

const json = (ramps: readonly ChosenRamp[]): string => `${JSON.stringify({ ramps }, null, 2)}\n`

const picked = (ramps: readonly ChosenRamp[], said: string): ChosenRamp => {
  const ramp = /^\d{1,2}$/.test(said.trim()) ? ramps[Number(said) - 1] : undefined
  if (ramp) return ramp
  throw new Failure(2, `--pick ${said}: say a number from 1 to ${ramps.length}`)
}

const give = (ramp: ChosenRamp, { out, force, json: asJson }: ChooseOptions, shell: Shell): number => {
  if (out !== undefined) writeOut(out, ramp.design, force ?? false)
  if (asJson) shell.out(json([ramp]))
  else shell.out(out === undefined ? ramp.design : writtenWords(out))
  return 0
}

const writtenWords = (out: string): string =>
  [
    `Wrote ${out}, to make your own.`,
    'Next:',
    `  traceply figures ${typedName(out)}`,
    `  traceply plot ${typedName(out)}`,
    '',
  ].join('\n')

/** Asks until there is a number and a file, or neither. */
const keepOne = async (
  ramps: readonly ChosenRamp[],
  ask: NonNullable<Shell['ask']>,
  shell: Shell,
): Promise<number> => {
  for (;;) {
    const row = (await ask(`Which one, 1 to ${ramps.length} [none]: `)).trim()
    if (row === '') return 0
    const out = (await ask('Write its design to [my-ramp.yaml]: ')).trim() || 'my-ramp.yaml'
    try {
      return give(picked(ramps, row), { out }, shell)
    } catch (error) {
      // a slip, or a file that is there
      if (!(error instanceof Failure)) throw error
      shell.err(`${error.message}\n`)
    }
  }
}
