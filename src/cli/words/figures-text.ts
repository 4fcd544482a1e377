import { figuresRows } from '../../booklet/figures-rows.ts'
import { stockLines, stockRows } from '../../booklet/stock-rows.ts'
import type { Design } from '../../design/design.ts'
import { asCutLines, type RampAsCut } from '../../job/as-cut-words.ts'
import type { FiguresJob } from '../../job/figures.ts'
import type { Units } from '../../length.ts'
import type { Ramp, SolvedDesign } from '../../ramp/ramp.ts'
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
    '',
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
  ...[...figuresRows(ramp, units), ...(stock ? stockRows(ramp.name, stock, units) : [])].map(
    ([label, words]) => wrap(`  ${label.padEnd(8)} ${words}`, 11),
  ),
]
