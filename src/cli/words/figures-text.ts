import { figuresRows } from '../../booklet/figures-rows.ts'
import { stockLines, stockRows } from '../../booklet/stock-rows.ts'
import { nameOfOnlyOne } from '../../design/check/names.ts'
import type { Design } from '../../design/design.ts'
import { isCurved } from '../../design/kind-traits.ts'
import { asCutLines, type RampAsCut } from '../../job/as-cut-words.ts'
import type { FiguresJob } from '../../job/figures.ts'
import type { RampChoices } from '../../job/ramp-choices.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength, type Units } from '../../length.ts'
import { offerSteps, same } from '../../ramp/check/offer.ts'
import type { Quarter, Ramp, SolvedDesign } from '../../ramp/ramp.ts'
import { missesOf, missWords } from '../../stock/panel/miss.ts'
import { sheetLine } from '../../stock/panel/sheet-words.ts'
import type { StockTaking } from '../../stock/stock.ts'
import { showChecks } from './show-checks.ts'
import { wrap } from './wrap.ts'

const legend = { mm: 'lengths in mm', in: 'lengths in inches; + is 1/32 more, – is 1/32 less' } as const

/** The figures as a terminal shows them: labels at the left, lengths in the carpenter's units. */
export const figuresText = (
  design: Design,
  {
    solved,
    pages,
    panels,
    stock,
    choices,
  }: Pick<FiguresJob, 'solved' | 'pages' | 'panels' | 'stock' | 'choices'>,
): string => {
  const several = solved.ramps.length > 1
  const checks = showChecks(solved.checks, several)
  return [
    `${design.title} (${legend[design.units]})`,
    ...rampsLines(solved.ramps, choices, stock, design.units),
    ...(pages
      ? [
          '',
          `pages to tape on ${pages.paper}: whole ${pages.whole}, line ${pages.line}, ribbon ${pages.ribbon}; plot takes ${pages.takes}`,
        ]
      : []),
    ...(pages || !panels ? [] : ['']),
    ...panelLines(design, solved, panels),
    ...(stock ? stockLines(stock, design).map((line) => wrap(line, 2)) : []),
    ...(checks.length > 0 ? ['', ...checks] : []),
    '',
  ].join('\n')
}

/** A line a sheet: what comes from which panel, and what would bring both sides out of one. */
const panelLines = (
  design: Design,
  solved: SolvedDesign,
  panels: FiguresJob['panels'],
): readonly string[] => {
  if (!panels || solved.stopped) return []
  const several = design.ramps.length > 1
  const [faults, laid] = 'faults' in panels ? [panels.faults, panels.laid] : [[], panels.sheets]
  return [
    ...faults.map((fault) => wrap(fault, 2)),
    ...laid.map((sheet) => {
      const misses = missesOf(design, solved, sheet).map((miss) => missWords(miss, several, design))
      return wrap([sheetLine(sheet, design.stock.trim, design.units), ...misses].join('; '), 2)
    }),
  ]
}

/** Notches that are cut already, below the figures. */
export const asCutText = (cuts: readonly (RampAsCut | null)[], solved: SolvedDesign, units: Units): string =>
  asCutLines(cuts, solved, units)
    .map((line) => `${wrap(line, 11)}\n`)
    .join('')

/** A ramp alone needs no name that it was not given; one under another tells what is alike by its label alone. */
const rampsLines = (
  ramps: readonly Ramp[],
  choices: FiguresJob['choices'],
  stock: StockTaking | null,
  units: Units,
): readonly string[] => {
  const told: (readonly Row[])[] = []
  return ramps.flatMap((ramp, i) => {
    const rows = rampRows(ramp, choices[i]!, stock, units)
    const [alike, like] = mostAlike(rows, told)
    told.push(rows)
    return [
      '',
      ...(ramp.name === nameOfOnlyOne ? [] : [ramp.name]),
      ...[
        ...rows.filter((row) => !alike.includes(row)),
        ...(alike.length > 0
          ? [[`as ${ramps[like]!.name}`, wordList(alike.map(([label]) => label))] as const]
          : []),
      ].map(([label, words]) => wrap(`  ${label.padEnd(8)} ${words}`, 11)),
    ]
  })
}
type Row = readonly [label: string, words: string]

/** Rows that are word for word those of one ramp above, and which that is. */
const mostAlike = (
  rows: readonly Row[],
  told: readonly (readonly Row[])[],
): readonly [alike: readonly Row[], like: number] => {
  const alike = told.map((other) =>
    rows.filter(([label, words]) => other.some((row) => row[0] === label && row[1] === words)),
  )
  const most = Math.max(0, ...alike.map(({ length }) => length))
  const like = alike.findIndex(({ length }) => length === most)
  return [most > 1 ? alike[like]! : [], like]
}

const rampRows = (
  ramp: Ramp,
  choices: RampChoices | null,
  stock: StockTaking | null,
  units: Units,
): readonly Row[] => [
  ...figuresRows(ramp, units).flatMap((row): readonly Row[] => {
    if (!isCurved(ramp) || !choices) return [row]
    if (row[0] === 'curve') return [row, steepRow(ramp, choices, units)]
    return row[0] === 'toe' ? [[row[0], `${row[1]}${toeWords(choices, units)}`]] : [row]
  }),
  ...(stock ? stockRows(ramp.name, stock, units) : []),
]

/** What else this height, and this radius, could be: where each word begins, rounded to what can be typed on its side. */
const steepRow = ({ design }: Quarter, { words }: RampChoices, units: Units): Row => {
  const step = offerSteps[units]
  const least = words.map(({ radius }) => showLength(Math.ceil(radius / step - same) * step, units))
  const most = words.map(({ height }) => showLength(Math.floor(height / step + same) * step, units))
  const { circle } = design.transition
  return [
    'words',
    `${words.map(({ word }) => word).join(', ')}: at this height radius (${layerWords[circle.layer]}) ${least.join(', ')} or more; ` +
      `at this radius height (${layerWords[design.height.layer]}) ${most.join(', ')} or less`,
  ]
}
const layerWords = { frame: 'frame', deck: 'deck', surface: 'ridden face' } as const

/** The lowest toes, each with how high the ridden face then ends. */
const toeWords = ({ toes }: RampChoices, units: Units): string => {
  const show = (mm: number): string => showLength(mm, units)
  const by = { stud: 'a whole stud', saw: 'the saw' } as const
  return toes.length === 0
    ? ''
    : `; lowest ${toes.map((toe, i) => `for ${by[toe.by]} ${show(toe.toe)} (${i === 0 ? 'then ' : ''}${show(toe.toeStep)})`).join(', ')}`
}
