import { figuresRows } from '../../booklet/figures-rows.ts'
import { stockLines, stockRows } from '../../booklet/stock-rows.ts'
import type { Design } from '../../design/design.ts'
import { isCurved } from '../../design/kind-traits.ts'
import { asCutLines, type RampAsCut } from '../../job/as-cut-words.ts'
import type { FiguresJob } from '../../job/figures.ts'
import { showLength, type Units } from '../../length.ts'
import { offerSteps, same } from '../../ramp/check/offer.ts'
import type { Quarter, Ramp, SolvedDesign } from '../../ramp/ramp.ts'
import { steepChoices } from '../../ramp/steep-choices.ts'
import { missesOf, missWords } from '../../stock/panel/miss.ts'
import { sheetLine } from '../../stock/panel/sheet-words.ts'
import type { StockTaking } from '../../stock/stock.ts'
import { showChecks } from '../show-checks.ts'
import { wrap } from '../wrap.ts'

const legend = { mm: 'lengths in mm', in: 'lengths in inches; + is 1/32 more, – is 1/32 less' } as const

/** The figures as a terminal shows them: labels at the left, lengths in the carpenter's units. */
export const figuresText = (
  design: Design,
  { solved, pages, panels, stock }: Pick<FiguresJob, 'solved' | 'pages' | 'panels' | 'stock'>,
): string => {
  const several = solved.ramps.length > 1
  const checks = showChecks(solved.checks, several)
  return [
    `${design.title} (${legend[design.units]})`,
    ...solved.ramps.flatMap((ramp) => ['', ...rampLines(ramp, stock, design.units)]),
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

const rampLines = (ramp: Ramp, stock: StockTaking | null, units: Units): readonly string[] => [
  ramp.name,
  ...[
    ...figuresRows(ramp, units).flatMap((row) =>
      row[0] === 'curve' && isCurved(ramp) ? [row, steepRow(ramp, units)] : [row],
    ),
    ...(stock ? stockRows(ramp.name, stock, units) : []),
  ].map(([label, words]) => wrap(`  ${label.padEnd(8)} ${words}`, 11)),
]

/** What else this height, and this radius, could be: where each word begins, rounded to what can be typed on its side. */
const steepRow = ({ design }: Quarter, units: Units): readonly [label: string, words: string] => {
  const step = offerSteps[units]
  const all = steepChoices(design)
  const least = all.map(({ radius }) => showLength(Math.ceil(radius / step - same) * step, units))
  const most = all.map(({ height }) => showLength(Math.floor(height / step + same) * step, units))
  const { circle } = design.transition
  return [
    'words',
    `${all.map(({ word }) => word).join(', ')}: at this height radius (${layerWords[circle.layer]}) ${least.join(', ')} or more; ` +
      `at this radius height (${layerWords[design.height.layer]}) ${most.join(', ')} or less`,
  ]
}
const layerWords = { frame: 'frame', deck: 'deck', surface: 'ridden face' } as const
