import { inch } from '../../geometry/inch.ts'
import type { Point } from '../../geometry/point.ts'
import { type FitAnswer, fitPoints, fitText, fitTwoLengths, type MeasuredLayer } from '../../job/fit.ts'
import { lengthOption } from '../../job/laying-words.ts'
import { units as unitNames } from '../../length/units.ts'
import { readLength, type Units } from '../../length.ts'
import { readPoints } from '../../ramp/match/point-list.ts'
import { fromChord, fromRun } from '../../ramp/match/two-lengths.ts'
import { command, type Given } from '../command.ts'
import { Failure } from '../failure.ts'
import { readText } from '../files.ts'
import { oneOfWords, unitsWords } from '../options.ts'
import type { Shell } from '../shell.ts'
import { quotedOption } from '../words/in-quotes.ts'
import { wrap } from '../words/wrap.ts'

const layers: readonly MeasuredLayer[] = ['surface', 'frame']

const options = [
  { name: 'chord', takes: 'length', help: 'a straight edge across the curve; with `--rise`' },
  { name: 'rise', takes: 'length', help: 'the gap behind the middle of that edge' },
  {
    name: 'run',
    takes: 'length',
    help: 'along the floor from where the curve runs level to a point on it; with `--height`',
  },
  { name: 'height', takes: 'length', help: 'of that point above the floor' },
  { name: 'units', takes: 'units', otherwise: 'mm', help: `what a bare number is read in: ${unitsWords}` },
  { name: 'error', takes: 'length', help: 'what one reading may be off; else 1 mm or 1/16 in' },
  {
    name: 'layer',
    takes: 'layer',
    otherwise: 'surface',
    help: `what was measured, the ridden face or the edge of a side: ${oneOfWords(layers)}`,
  },
  { name: 'json', help: 'print JSON alone, in mm' },
] as const

export const fitCommand = command({
  name: 'fit',
  help: 'find the circle of a ramp that stands, from what was measured on it',
  args: [
    {
      name: 'points',
      optional: true,
      help: 'a text or CSV file of points, a line each: along the floor, up from it; a first line may name x and y',
    },
  ],
  options,
  run: ([file], given, shell) => matchRamp(file, given, shell),
})

const lengthRange = { least: 1, most: 20_000 } as const
const errorRange = { least: 0.05, most: 25 } as const

const matchRamp = (file: string | undefined, given: Given<typeof options>, shell: Shell): number => {
  const faults: string[] = []
  const units = unitNames.find((word) => word === given.units) ?? 'mm'
  if (units !== given.units) faults.push(`--units ${given.units}: say mm or in`)
  const layer = layers.find((word) => word === given.layer) ?? 'surface'
  if (layer !== given.layer) faults.push(`--layer ${given.layer}: say ${layers.join(' or ')}`)
  const length = (name: 'chord' | 'rise' | 'run' | 'height'): number | null =>
    given[name] === undefined ? null : lengthOption(`--${name}`, given[name], units, lengthRange, faults)
  const error =
    given.error === undefined
      ? units === 'in'
        ? inch / 16
        : 1
      : lengthOption('--error', given.error, units, errorRange, faults)
  const [chord, rise, run, height] = [length('chord'), length('rise'), length('run'), length('height')]
  const ways = [file !== undefined, chord !== null || rise !== null, run !== null || height !== null]
  if (ways.filter(Boolean).length !== 1)
    faults.push(
      `say one of: a file of points; --chord and --rise; --run and --height${blankWords(file, given)}`,
    )
  else if ((chord === null) !== (rise === null)) faults.push('--chord and --rise go together')
  else if ((run === null) !== (height === null)) faults.push('--run and --height go together')
  else if (chord !== null && rise !== null && rise > chord / 2)
    faults.push(
      '--rise is more than half of --chord: that is more than half a circle; are the two exchanged?',
    )
  else if (run !== null && height !== null && height > run)
    faults.push('--height is more than --run: that is past a quarter of a circle; are the two exchanged?')
  if (faults.length > 0) throw new Failure(2, faults.join('\n'))

  const points = file === undefined ? [] : pointsOf(file, units)
  const answer =
    file !== undefined
      ? fitPoints(points, error, layer, units)
      : chord !== null
        ? fromChordRise(chord, rise!, error, layer, units)
        : fromRunHeight(run!, height!, error, layer, units)
  if (answer === null)
    throw new Failure(1, `the points of ${file} lie on one straight line: no circle goes through them`)
  shell.out(
    given.json
      ? `${JSON.stringify(answer.fit, null, 2)}\n`
      : fitText(answer, points, error, units)
          .split('\n')
          .map((line) => (line.startsWith('watch ') ? wrap(line) : line))
          .join('\n'),
  )
  return 0
}

/** Where the word that stands for a file is the rest of a length: how that is typed. */
const blankWords = (file: string | undefined, given: Given<typeof options>): string => {
  const split = (['chord', 'rise', 'run', 'height', 'error'] as const).find(
    (name) => given[name] !== undefined && file !== undefined && isLength(`${given[name]} ${file}`),
  )
  return split === undefined ? '' : `\n${quotedOption(`--${split}`, [given[split]!, file!])}`
}

const isLength = (text: string): boolean => 'mm' in readLength(text, 'mm')

const fromChordRise = (
  chord: number,
  rise: number,
  error: number,
  layer: MeasuredLayer,
  units: Units,
): FitAnswer => {
  const found = fromChord(chord, rise, error)
  return fitTwoLengths(found, [chord / 2, found.radius - rise], null, layer, units)
}

const fromRunHeight = (
  run: number,
  height: number,
  error: number,
  layer: MeasuredLayer,
  units: Units,
): FitAnswer => {
  const found = fromRun(run, height, error)
  return fitTwoLengths(found, [0, found.radius], 0, layer, units)
}

/** Fails with every line that cannot be read. */
const pointsOf = (file: string, units: Units): readonly Point[] => {
  const list = readPoints(readText(file, 'points'), units)
  if ('points' in list) return list.points
  throw new Failure(
    1,
    list.faults.map(({ line, column, message }) => `${file}:${line}:${column} ${message}`).join('\n'),
  )
}
