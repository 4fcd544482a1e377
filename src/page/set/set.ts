import type { Design } from '../../design/design.ts'
import { curvedOf } from '../../design/kind-traits.ts'
import { polygonInside } from '../../geometry/contains.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { PrinterUncertainty } from '../../printer/uncertainty.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import { type CoverCounts, coverCounts, designCovers, type PatternCovers } from '../cover/pattern-covers.ts'
import { mapPages } from '../pages/map-page.ts'
import { tileDrawing } from '../pages/tile-drawing.ts'
import type { TileFacts } from '../pages/tile-facts.ts'
import { type RampTrial, rampTrial, trialWarnings } from '../parts/ramp-trial.ts'
import { isOnPaper } from '../proof/missing-screws.ts'
import { sheetWindow } from '../sheet/sheet.ts'
import { tileMap } from '../tile/tile.ts'
import { wasteBands } from '../tile/waste-band.ts'
import { sectionsOf } from '../timber/sections.ts'
import { shownTimbers } from '../timber/timber-edges.ts'
import { assemble, type Draft, type PageSet, type SetFacts } from './draft.ts'
import { type PartDrafts, partDrafts } from './part-drafts.ts'
import { planPlace } from './plan.ts'
import { codedDesign, setCode } from './set-code.ts'
import { squareDraft } from './square-set.ts'
import { type TileGroup, tileGroups } from './tile-groups.ts'

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
 * same sheet, and `parts`, where they were counted before.
 */
export const layOutSet = (
  design: Design,
  solved: WholeDesign,
  options: SetOptions,
  covered: readonly PatternCovers[] = designCovers(design, solved, options),
  { code, trials, pages: parts }: SetParts = setParts(design, solved, options, covered),
): LaidSet => {
  const { sheet } = options
  const { units } = design
  const { groups, next } = tileGroups(covered, sheetWindow(sheet), units, options)
  const of: SetOf = { design, options, code, total: next.number - 1, several: groups.length > 1 }
  const facts = lastAsked((group: TileGroup) => tileFacts(group, of))
  const drafts = groups.flatMap((group, i): readonly Draft[] => [
    ...mapDrafts(group, coverCounts([covered[i]!]), trials[i]!.trial !== null, of),
    ...(i === 0 ? [squareDraft(sheet, code, units, options.printer, design.title)] : []),
    ...parts.besideMap[i]!,
    ...tileDrafts(group, of, () => facts(group)),
  ])
  const set = assemble(code, [...drafts, ...parts.last], options, groups)
  return { ...set, saved: parts.saved, warnings: trials.flatMap(trialWarnings) }
}

/** Its code, lip trials and story strips. */
export interface SetParts {
  readonly code: string
  readonly trials: readonly RampTrial[]
  readonly pages: PartDrafts
}

/** The parts of a set: known before its tiles are laid. */
export const setParts = (
  design: Design,
  { ramps }: WholeDesign,
  options: SetOptions,
  covered: readonly PatternCovers[],
): SetParts => {
  const { title, units } = design
  const { sheet, strips = false, pack = false } = options
  const trials = covered.map(({ pattern }) =>
    rampTrial(curvedOf(ramps).find((r) => r.name === pattern.ramp)!, sheet, units, title),
  )
  const code = codeOf(design, options)
  const facts = { sheet, units, code, title }
  return { code, trials, pages: partDrafts(trials, strips ? ramps : [], facts, pack) }
}

const codeOf = (design: Design, options: SetOptions): string => {
  const { sheet, overlap, cover, printer, uncertainty, fingerprint } = options
  return setCode(
    {
      design: codedDesign(design),
      paper: [
        sheet.paper,
        sheet.margins,
        overlap,
        cover,
        ...(options.strips ? ['strips'] : []),
        ...(options.pack ? ['pack'] : []),
      ],
      // whatever changes a page changes the code: the printer's name and what is known of it are printed too
      printer: printer === null ? sheet.correction : [sheet.correction, printer, uncertainty],
    },
    fingerprint,
  )
}

/** What each page knows of its set. */
interface SetOf {
  readonly design: Design
  readonly options: SetOptions
  readonly code: string
  /** tiles of all patterns */
  readonly total: number
  /** it holds more than one pattern */
  readonly several: boolean
}

const mapDrafts = (
  { pattern, tiles, datums, survey, expected }: TileGroup,
  counts: CoverCounts,
  trial: boolean,
  { design: { title, units, ramps }, options: { sheet, cover, strips = false }, code, several }: SetOf,
): readonly Draft[] =>
  mapPages(sheetWindow(sheet), {
    title,
    units,
    set: code,
    cover,
    counts,
    paper: sheet.paper.name,
    pattern,
    tiles,
    datums,
    survey,
    expected,
    trial,
    strips: strips && ramps.some(({ name, skin }) => name === pattern.ramp && skin.length > 0),
  }).map((draw, i) => ({
    kind: 'map',
    label: `Map${several ? ` ${pattern.ramp}` : ''}${i > 0 ? ` ${i + 1}` : ''}`,
    bookmark: `Map: ${pattern.name}${i > 0 ? `, page ${i + 1}` : ''}`,
    places: [],
    draw,
  }))

/** `facts`: found with the first of its pages that is drawn. */
const tileDrafts = (
  { pattern, tiles }: TileGroup,
  { options: { sheet } }: SetOf,
  facts: () => TileFacts,
): readonly Draft[] =>
  tiles.map((tile) => ({
    kind: 'tile',
    tile: `${tile.number}`,
    label: `${tile.number}`,
    bookmark: `${tile.number} · ${pattern.name}`,
    places: [planPlace(sheet, pattern.name, tileMap(tile))],
    draw: () => tileDrawing(tile, facts()),
  }))

const tileFacts = (
  { pattern, tiles, datums }: TileGroup,
  { design: { title, units }, options: { printer }, code, total }: SetOf,
): TileFacts => ({
  start: tiles[0]!,
  title,
  pattern,
  units,
  total,
  set: code,
  printer,
  datums,
  bands: wasteBands(pattern.cut),
  wood: polygonInside(pathSample(pattern.outline, 2)),
  tiles,
  shown: shownTimbers(pattern, tiles),
  missing: new Set(pattern.screws.flatMap((screws, i) => (isOnPaper(screws, tiles) ? [] : [i]))),
  sections: sectionsOf(pattern),
})

/** Pages are drawn pattern by pattern: what was found for the last one is kept, and no more. */
const lastAsked = <A, T>(find: (of: A) => T): ((of: A) => T) => {
  let last: { readonly of: A; readonly found: T } | undefined
  return (of) => {
    if (last?.of !== of) last = { of, found: find(of) }
    return last.found
  }
}
