import type { Design } from '../design/design.ts'
import { type Drawing, group } from '../drawing/drawing.ts'
import { affineTranslate } from '../geometry/affine.ts'
import { lipTrial } from '../pattern/lip-trial.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { sidePatterns } from '../pattern/patterns.ts'
import { pipeStrip } from '../pattern/pipe-strip.ts'
import { skinStrips } from '../pattern/story-strip.ts'
import type { PrinterUncertainty } from '../printer/uncertainty.ts'
import type { SolvedDesign } from '../ramp/ramp.ts'
import { type Expected, expectedError } from './budget.ts'
import { coverCounts } from './choose-cover.ts'
import { edgeCombs } from './comb.ts'
import { type Cover, coverPattern } from './coverage.ts'
import { chooseDatums, type Datum } from './datum.ts'
import { jointShares } from './joint-shares.ts'
import { wasteTicks } from './keep-waste.ts'
import type { Lattice } from './lattice.ts'
import { mapPage } from './map-page.ts'
import {
  type PageKind,
  type Plan,
  type PlanPage,
  type PlanPlace,
  planPage,
  planPlace,
  planSealed,
} from './plan.ts'
import { type Fingerprint, setCode } from './set-code.ts'
import { type Sheet, sheetWindow, sheetWritten } from './sheet.ts'
import { squarePage } from './square-page.ts'
import { stripPages } from './strip-pages.ts'
import { type SurveyLine, surveyLines } from './survey.ts'
import { rowLetters, type Tile, tileMap, tilesOf } from './tile.ts'
import { tileDrawing } from './tile-drawing.ts'
import { stripWidth, trialPage, trialWords } from './trial-page.ts'

export interface SetOptions {
  readonly sheet: Sheet
  readonly overlap: number
  readonly cover: Cover
  /** the design file's own text, kept in the plan */
  readonly text: string
  readonly fingerprint: Fingerprint
  /** add the story strips of the skin */
  readonly strips?: boolean
  /** name of the profile whose correction the sheet has; null for none */
  readonly printer: string | null
  /** how well that printer is known */
  readonly uncertainty: PrinterUncertainty
}

export interface SetPage {
  readonly kind: PageKind
  readonly label: string
  readonly bookmark: string
  /** written page mm */
  readonly drawing: Drawing
}

/** All pages of one plot, and their plan. */
export interface PageSet {
  readonly code: string
  readonly pages: readonly SetPage[]
  readonly plan: Plan
  readonly groups: readonly TileGroup[]
}

/** The tiles of one pattern, in the order of taping, and what proves them. */
export interface TileGroup {
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly lattice: Lattice
  readonly datums: readonly Datum[]
  readonly survey: readonly SurveyLine[]
  readonly expected: Expected
}

interface Draft extends Omit<SetPage, 'drawing'> {
  /** ideal page mm */
  readonly drawing: Drawing
  readonly tile?: string
  readonly places: readonly PlanPlace[]
}

/** Lays out a design without a `stop`: map, test square, lip trial, tiles. Same input, same pages. */
export const layOutSet = (design: Design, solved: SolvedDesign, options: SetOptions): PageSet => {
  const { sheet, overlap, cover, fingerprint } = options
  const { units } = design
  const window = sheetWindow(sheet)
  const code = setCode(
    {
      design,
      paper: [sheet.paper, sheet.margins, overlap, cover],
      // whatever changes a page changes the code: the printer's name and what is known of it are printed too
      printer:
        options.printer === null
          ? sheet.correction
          : [sheet.correction, options.printer, options.uncertainty],
    },
    fingerprint,
  )
  const patterns = sidePatterns(solved.ramps, units)
  let next = { row: 0, number: 1, joint: 1 }
  const groups = patterns.map((pattern): TileGroup => {
    const coverage = coverPattern(pattern, cover, window, overlap)
    const tiles = tilesOf(coverage, window, next, jointShares(pattern), snapHeight(coverage.lattice, units))
    const rows = new Set(coverage.cells.map((cell) => cell.row))
    next = {
      row: next.row + Math.max(...rows) - Math.min(...rows) + 1,
      number: next.number + tiles.length,
      joint: next.joint + jointCount(tiles),
    }
    const datums = chooseDatums(tiles, pattern, units, 4)
    const survey = surveyLines(tiles, pattern, datums)
    const expected = expectedError(pattern, tiles, survey, options.uncertainty)
    return { pattern, tiles, lattice: coverage.lattice, datums, survey, expected }
  })
  const total = next.number - 1

  const drafts = groups.flatMap(({ pattern, tiles, datums, survey, expected }, i): Draft[] => {
    const ticks = wasteTicks(pattern.outline)
    const ramp = solved.ramps.find((r) => r.name === pattern.ramp)!
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
        counts: coverCounts([pattern], window, overlap),
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

/** Drafts in ideal page mm become written pages, and their plan. */
const assemble = (
  code: string,
  drafts: readonly Draft[],
  {
    sheet,
    overlap,
    cover,
    text,
    printer,
    fingerprint,
  }: Pick<SetOptions, 'sheet' | 'overlap' | 'cover' | 'text' | 'printer' | 'fingerprint'>,
  groups: PageSet['groups'],
): PageSet => {
  const written = sheetWritten(sheet)
  return {
    code,
    groups,
    pages: drafts.map(({ kind, label, bookmark, drawing }) => ({
      kind,
      label,
      bookmark,
      drawing: [group(written, drawing)],
    })),
    plan: planSealed<Omit<Plan, 'seal'>>(
      {
        version: 1,
        set: code,
        paper: sheet.paper,
        margins: sheet.margins,
        overlap,
        cover,
        printer,
        correction: sheet.correction,
        expected: groups.map(({ pattern, expected }) => ({ pattern: pattern.name, ...expected })),
        design: text,
        pages: drafts.map(({ kind, tile, places }, i): PlanPage => planPage(i + 1, kind, tile, places)),
      },
      fingerprint,
    ),
  }
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
    ramps.flatMap((ramp) => skinStrips(ramp, units)),
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

const jointCount = (tiles: readonly Tile[]): number =>
  tiles.reduce((sum, tile) => sum + tile.joints.filter((joint) => joint.over).length, 0)

/** The test square as a page of a set. `combs`: also what tells the least margins, drawn over the paper's edges. */
const squareDraft = (
  sheet: Sheet,
  set: string,
  units: Design['units'],
  printer: string | null,
  combs = false,
): Draft => {
  const facts = { units, set, printer, command: gaugeCommand(sheet, combs) }
  const { drawing, corner } = squarePage(sheetWindow(sheet), facts)
  return {
    kind: 'square',
    label: 'Square',
    bookmark: 'Test square',
    drawing: combs ? [...drawing, ...edgeCombs(sheet.paper)] : drawing,
    places: [planPlace(sheet, 'square', affineTranslate(corner.x, corner.y))],
  }
}

const gaugeCommand = ({ paper }: Sheet, combs: boolean): string =>
  `traceply gauge NAME --paper ${paper.name} --across ____mm --down ____mm --diagonals A____mm B____mm${combs ? ' --margins "top__mm, right__mm, bottom__mm, left__mm"' : ''}`

/** The test square alone, with combs at the paper's edges unless it is printed with a correction. */
export const layOutSquare = (
  units: Design['units'],
  sheet: Sheet,
  printer: string | null,
  fingerprint: Fingerprint,
): PageSet => {
  const code = setCode(
    { design: 'square', paper: [sheet.paper, sheet.margins, units], printer: sheet.correction },
    fingerprint,
  )
  const draft = squareDraft(sheet, code, units, printer, printer === null)
  return assemble(code, [draft], { sheet, overlap: 0, cover: 'whole', printer, text: '', fingerprint }, [])
}

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

/** Middle of a row, moved so that it lies a round distance above the panel's bottom edge where rows are level. */
const snapHeight =
  (lattice: Lattice, units: Design['units']) =>
  (row: number): number => {
    const middle = lattice.height / 2
    if (lattice.toFrame[1] !== 0) return middle
    const step = units === 'in' ? 12.7 : 10
    // height over the bottom edge of the row's windows
    const base = row * (lattice.height - lattice.overlap) - lattice.toFrame[5]
    return Math.round((base + middle) / step) * step - base
  }
