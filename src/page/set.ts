import type { Design } from '../design/design.ts'
import { lipTrial } from '../pattern/lip-trial.ts'
import { pipeStrip } from '../pattern/pipe-strip.ts'
import { rampStrips } from '../pattern/ramp-strips.ts'
import type { PrinterUncertainty } from '../printer/uncertainty.ts'
import { quartersOf, type SolvedDesign } from '../ramp/ramp.ts'
import { assemble, type Draft, type PageSet, type SetFacts } from './draft.ts'
import { wasteTicks } from './keep-waste.ts'
import { mapPage } from './map-page.ts'
import { coverCounts, designCovers, type PatternCovers } from './pattern-covers.ts'
import { planPlace } from './plan.ts'
import { setCode } from './set-code.ts'
import { type Sheet, sheetWindow } from './sheet.ts'
import { squareDraft } from './square-set.ts'
import { stripPages } from './strip-pages.ts'
import { rowLetters, tileMap } from './tile.ts'
import { tileDrawing } from './tile-drawing.ts'
import { tileGroups } from './tile-groups.ts'
import { stripWidth, trialPage, trialWords } from './trial-page.ts'

export interface SetOptions extends SetFacts {
  /** add the story strips */
  readonly strips?: boolean
  /** how well the printer is known */
  readonly uncertainty: PrinterUncertainty
}

/**
 * Lays out a design without a `stop`: map, test square, lip trial, tiles. Same input, same pages. `covered`: its sides on the
 * same sheet, where they were counted before.
 */
export const layOutSet = (
  design: Design,
  solved: SolvedDesign,
  options: SetOptions,
  covered: readonly PatternCovers[] = designCovers(design, solved, options),
): PageSet => {
  const { sheet, overlap, cover, fingerprint } = options
  const { units } = design
  const window = sheetWindow(sheet)
  const code = setCode(
    {
      design,
      paper: [sheet.paper, sheet.margins, overlap, cover, ...(options.strips ? ['strips'] : [])],
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

  const drafts = groups.flatMap(({ pattern, tiles, datums, survey, expected }, i): Draft[] => {
    const ticks = wasteTicks(pattern.outline)
    const ramp = quartersOf(solved.ramps).find((r) => r.name === pattern.ramp)!
    const strip = ramp.coping ? pipeStrip(ramp.coping.outside, window.y1 - window.y0 - 10, units) : null
    const room = {
      width: window.x1 - window.x0 - (strip ? stripWidth : 0),
      height: window.y1 - window.y0 - trialWords,
    }
    const trial = lipTrial(ramp, room.width, room.height, units)
    const several = groups.length > 1 ? ` ${pattern.ramp}` : ''
    const map: Draft = {
      kind: 'map',
      label: `Map${several}`,
      bookmark: `Map: ${pattern.name}`,
      places: [],
      drawing: mapPage(window, {
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
      }),
    }
    return [
      map,
      ...(i === 0 ? [squareDraft(sheet, code, design.units, options.printer)] : []),
      ...(trial
        ? [
            trialDraft(
              sheet,
              trialPage(window, trial, strip, `${design.title}: ${pattern.ramp}`, code),
              trial.name,
              rowLetters(next.row + i),
              several,
            ),
          ]
        : []),
      ...tiles.map(
        (tile): Draft => ({
          kind: 'tile',
          tile: tile.name,
          label: `${tile.number} ${tile.name}`,
          bookmark: `${tile.number} · ${tile.name} · ${pattern.name}`,
          places: [planPlace(sheet, pattern.name, tileMap(tile))],
          drawing: tileDrawing(tile, {
            pattern,
            units,
            total,
            set: code,
            printer: options.printer,
            datums,
            ticks,
          }),
        }),
      ),
    ]
  })
  const strips = options.strips
    ? stripDrafts(solved, units, sheet, code, rowLetters(next.row + groups.length))
    : []
  return assemble(code, [...drafts, ...strips], options, groups)
}

const stripDrafts = (
  { ramps }: SolvedDesign,
  units: Design['units'],
  sheet: Sheet,
  code: string,
  row: string,
): readonly Draft[] =>
  stripPages(
    sheetWindow(sheet),
    [],
    ramps.flatMap((ramp) => rampStrips(ramp, units)),
    code,
  ).map(
    ({ drawing, places }, i): Draft => ({
      kind: 'strip',
      tile: `${row}${i + 1}`,
      label: `Strips ${i + 1}`,
      bookmark: `Story strips ${i + 1}`,
      drawing,
      places: places.map(({ pattern, map, window }) => planPlace(sheet, pattern, map, window)),
    }),
  )

const trialDraft = (
  sheet: Sheet,
  page: ReturnType<typeof trialPage>,
  name: string,
  row: string,
  several: string,
): Draft => ({
  kind: 'trial',
  tile: `${row}1`,
  label: `Lip trial${several}`,
  bookmark: `Lip trial: ${name}`,
  drawing: page.drawing,
  places: [planPlace(sheet, name, page.map, page.window)],
})
