import type { Design } from '../../design/design.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { PrinterUncertainty } from '../../printer/uncertainty.ts'
import { quartersOf, type WholeDesign } from '../../ramp/ramp.ts'
import { coverCounts, designCovers, type PatternCovers } from '../cover/pattern-covers.ts'
import { mapPage } from '../pages/map-page.ts'
import { tileDrawing } from '../pages/tile-drawing.ts'
import { rampTrial, trialWarnings } from '../parts/ramp-trial.ts'
import { sheetWindow } from '../sheet/sheet.ts'
import { wasteTicks } from '../tile/keep-waste.ts'
import { tileMap } from '../tile/tile.ts'
import { assemble, type Draft, type PageSet, type SetFacts } from './draft.ts'
import { partDrafts } from './part-drafts.ts'
import { planPlace } from './plan.ts'
import { setCode } from './set-code.ts'
import { squareDraft } from './square-set.ts'
import { tileGroups } from './tile-groups.ts'

export interface SetOptions extends SetFacts {
  /** add the story strips */
  readonly strips?: boolean
  /** lay small parts together on pages that they share */
  readonly pack?: boolean
  /** how well the printer is known */
  readonly uncertainty: PrinterUncertainty
}

export interface LaidSet extends PageSet {
  /** pages that packing saved */
  readonly saved: number
  /** what small pages leave out */
  readonly warnings: readonly string[]
}

/**
 * Lays out a design: map, test square, lip trial, tiles. Same input, same pages. `covered`: its sides on the
 * same sheet, where they were counted before.
 */
export const layOutSet = (
  design: Design,
  solved: WholeDesign,
  options: SetOptions,
  covered: readonly PatternCovers[] = designCovers(design, solved, options),
): LaidSet => {
  const { sheet, overlap, cover, fingerprint } = options
  const { units } = design
  const window = sheetWindow(sheet)
  const code = setCode(
    {
      design,
      paper: [
        sheet.paper,
        sheet.margins,
        overlap,
        cover,
        ...(options.strips ? ['strips'] : []),
        ...(options.pack ? ['pack'] : []),
      ],
      // whatever changes a page changes the code: the printer's name and what is known of it are printed too
      printer:
        options.printer === null
          ? sheet.correction
          : [sheet.correction, options.printer, options.uncertainty],
    },
    fingerprint,
  )
  const { groups, next } = tileGroups(covered, window, units, options)
  const total = next.number - 1

  const facts = { sheet, units, code, title: design.title, row: next.row }
  const trials = groups.map(({ pattern }) =>
    rampTrial(quartersOf(solved.ramps).find((r) => r.name === pattern.ramp)!, sheet, units),
  )
  const parts = partDrafts(trials, options.strips ? solved.ramps : [], facts, options.pack ?? false)
  const drafts = groups.flatMap(({ pattern, tiles, datums, survey, expected }, i): Draft[] => {
    const ticks = wasteTicks(pattern.outline)
    const polygon = pathSample(pattern.outline, 2)
    const { trial } = trials[i]!
    const several = groups.length > 1 ? ` ${pattern.ramp}` : ''
    const map: Draft = {
      kind: 'map',
      label: `Map${several}`,
      bookmark: `Map: ${pattern.name}`,
      places: [],
      draw: () =>
        mapPage(window, {
          title: design.title,
          units,
          set: code,
          cover,
          counts: coverCounts([covered[i]!]),
          paper: sheet.paper.name,
          pattern,
          tiles,
          datums,
          survey,
          expected,
          trial: trial !== null,
          strips: options.strips ?? false,
        }),
    }
    return [
      map,
      ...(i === 0 ? [squareDraft(sheet, code, design.units, options.printer)] : []),
      ...parts.besideMap[i]!,
      ...tiles.map(
        (tile): Draft => ({
          kind: 'tile',
          tile: tile.name,
          label: `${tile.number} ${tile.name}`,
          bookmark: `${tile.number} · ${tile.name} · ${pattern.name}`,
          places: [planPlace(sheet, pattern.name, tileMap(tile))],
          draw: () =>
            tileDrawing(tile, {
              pattern,
              units,
              total,
              set: code,
              printer: options.printer,
              datums,
              ticks,
              polygon,
            }),
        }),
      ),
    ]
  })
  const set = assemble(code, [...drafts, ...parts.last], options, groups)
  return { ...set, saved: parts.saved, warnings: trials.flatMap(trialWarnings) }
}
