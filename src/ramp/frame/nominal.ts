import type { QuarterDesign, RampDesign, Sheet, Units } from '../../design/design.ts'
import { dressedThicknesses, dressedWidths } from '../../design/dressed.ts'
import { isCurved } from '../../design/kind-traits.ts'
import { sideSheet } from '../../design/panel-sizes.ts'
import { thinWide } from '../../design/section.ts'
import { inch } from '../../geometry/inch.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, type Finding, note, type Trial, warn } from '../check/check.ts'
import { rounded, same } from '../check/offer.ts'
import { offering, set, type Told, tell } from '../check/told.ts'

/** Outside of steel pipe by the name it is sold under, inches, as a rule reads it: ASME B36.10M, ASTM A53. */
const pipes = new Map([
  [1.25, { inches: 1.66, shown: '1.66' }],
  [1.5, { inches: 1.9, shown: '1.9' }],
  [2, { inches: 2.375, shown: '2 3/8' }],
  [2.5, { inches: 2.875, shown: '2 7/8' }],
])

/** Outside of steel pipe in mm by its nominal diameter (DN): EN 10255, from memory. */
const metricPipes = new Map([
  [25, 33.7],
  [32, 42.4],
  [40, 48.3],
  [50, 60.3],
  [65, 76.1],
])

/** Sawn sizes of timber in mm and what is left of them planed: sizes of EN 1313-1, planing by EN 1315 and custom, from memory. */
const planed = new Map([
  [50, 45],
  [75, 70],
  [100, 95],
  [125, 120],
  [150, 145],
  [175, 170],
  [200, 195],
])

/** Plywood by its performance category of PS 1, inches, as it measures; from memory. */
const plywoods = new Map([[0.75, '23/32']])

/** Studs and sheets that are typed by the name that they are sold under. */
export const nominalFindings = (ramp: RampDesign, units: Units): readonly Finding[] =>
  units === 'in' ? [...studFindings(ramp), ...plywoodFindings(ramp)] : planedFindings(ramp)

/** A pipe that is. */
export const pipeNominalFindings = (design: QuarterDesign, units: Units): readonly Draft[] =>
  units === 'in' ? inchPipeFindings(design) : metricPipeFindings(design)

/** A note: sawn timber is sold in its full size too. */
const planedFindings = ({ studs: { section } }: RampDesign): readonly Finding[] => {
  const [thin, wide] = thinWide(section)
  const [thickness, width] = [named(planed, thin), named(planed, wide)]
  if (thickness === undefined || width === undefined) return []
  return [
    note(
      'stud-nominal',
      `the studs are taken as ${thin} x ${wide} mm in real; what is sawn to ${thin} x ${wide} is mostly sold planed, about ${thickness} x ${width}: ` +
        `measure one, and type that (section: ${thickness} x ${width})`,
    ),
  ]
}

const plywoodFindings = (ramp: RampDesign): readonly Finding[] => {
  const sheets: readonly (readonly [where: string, sheet: Sheet, key: string])[] = [
    ['the sides', sideSheet(ramp), 'thickness: %'],
    ...ramp.skin.map((sheet, i) => [`skin ${i + 1}`, sheet, '% plywood'] as const),
    ...(isCurved(ramp) && ramp.deckBoard
      ? [['the deck board', ramp.deckBoard, 'deck-board: % plywood'] as const]
      : []),
  ]
  const told = sheets.flatMap(([where, { thickness, material }, key]) => {
    const real = material === 'plywood' ? named(plywoods, thickness / inch) : undefined
    return real === undefined ? [] : [{ where, thickness, real, key: key.replace('%', real) }]
  })
  const [first] = told
  if (first === undefined) return []
  return [
    note(
      'sheet-nominal',
      `${wordList(told.map(({ where }) => where))} ${told.length > 1 || first.where === 'the sides' ? 'are' : 'is'} taken as ${show(first.thickness / inch)} in thick in real; ` +
        `plywood sold as ${show(first.thickness / inch)} measures about ${first.real} in: measure it, and type that (${wordList(told.map(({ key }) => key))})`,
    ),
  ]
}

const metricPipeFindings = (design: QuarterDesign): readonly Draft[] => {
  // plastic pipe is sold by its outside
  if (design.coping?.material !== 'steel') return []
  const { outside } = design.coping
  const real = named(metricPipes, outside)
  if (real === undefined) return []
  return [
    warn('pipe-nominal', (trial: Trial) =>
      tell(
        `the pipe is taken as ${outside} mm thick in real; steel pipe sold as DN ${outside} measures ${real} mm outside: `,
        measuredPipe(trial, design, real, `${real}`),
      ),
    ),
  ]
}

/** What a pipe measures, typed where the ramp can be built with it. */
const measuredPipe = (trial: Trial, design: QuarterDesign, mm: number, shown: string): Told =>
  trial({ ...design, coping: { ...design.coping!, outside: mm } })
    ? offering(`type what you measure (outside: ${shown})`, set('coping.outside', shown))
    : tell('measure it and type that; another part fails then and must change too')

const named = <T>(table: ReadonlyMap<number, T>, size: number): T | undefined =>
  [...table].find(([name]) => Math.abs(name - size) < same)?.[1]

const show = (inches: number): string => rounded(inches * inch, 'in').replace(/ in$/, '')

const inchPipeFindings = (design: QuarterDesign): readonly Draft[] => {
  const typed = design.coping ? design.coping.outside / inch : 0
  const outside = named(pipes, typed)
  if (outside === undefined) return []
  return [
    warn('pipe-nominal', (trial: Trial) =>
      tell(
        `the pipe is taken as ${show(typed)} in thick in real; pipe sold as ${show(typed)} in measures ${outside.shown} in outside: `,
        measuredPipe(trial, design, outside.inches * inch, outside.shown),
      ),
    ),
  ]
}

const studFindings = ({ studs: { section } }: RampDesign): readonly Finding[] => {
  const [thin, wide] = thinWide([section[0] / inch, section[1] / inch])
  const [thickness, width] = [named(dressedThicknesses, thin), named(dressedWidths, wide)]
  if (thickness === undefined || width === undefined) return []
  return [
    warn(
      'stud-nominal',
      tell(
        `the studs are taken as ${show(thin)} x ${show(wide)} in real; what is sold as ${show(thin)}x${show(wide)} measures `,
        `${show(thickness)} x ${show(width)} in when it is dry: `,
        offering(
          `type what you measure (section: ${show(thickness)} x ${show(width)})`,
          set('studs.section', `${show(thickness)} x ${show(width)}`),
        ),
      ),
    ),
  ]
}
