import type { PaperName } from '../../design/design.ts'
import type { PlanPage, PlanPlace, SetPlan } from '../../drawing/set-plan.ts'
import { type Affine, affineApply, affineInvert, affineScale, affineThen } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { pointsPerMm } from '../../geometry/inch.ts'
import type { Point } from '../../geometry/point.ts'
import { type Correction, correctionMap } from '../../printer/correction.ts'
import type { PrinterUncertainty } from '../../printer/uncertainty.ts'
import type { Cover } from '../cover/cover.ts'
import { type Budget, type Expected, expectedError } from '../proof/budget.ts'
import type { Margins } from '../sheet/paper.ts'
import { type Sheet, sheetWindow, sheetWritten } from '../sheet/sheet.ts'
import { codePart, codeParts, type Fingerprint, showCode } from './set-code.ts'

/** The plan of a set as scripts read it, with what only its own pages and people need. */
export interface Plan extends SetPlan {
  readonly paper: { readonly name: PaperName; readonly width: number; readonly height: number }
  readonly cover: Cover
  /** how far the line may lie from its place on the wood, mm */
  readonly expected: readonly ({ readonly pattern: string; readonly budget: Budget } & Expected)[]
  readonly design: string
}

/**
 * Sines and cosines differ in their last bit from one version of a JavaScript engine to the next: numbers end at ten
 * decimals, finer than a page is proved to be at full size, so that a plan and its seal are the same wherever they are made.
 */
const rounded = <T>(whole: T): T => {
  // a page says its first place twice, and most numbers of one page are those of the others
  const known = new Map<unknown, unknown>()
  const once = (value: unknown, find: () => unknown): unknown => {
    let found = known.get(value)
    if (found === undefined) {
      found = find()
      known.set(value, found)
    }
    return found
  }
  const round = (value: unknown): unknown => {
    if (typeof value === 'number')
      return Number.isInteger(value) ? value : once(value, () => Number(value.toFixed(10)))
    if (value === null || typeof value !== 'object') return value
    return once(value, () =>
      Array.isArray(value)
        ? value.map(round)
        : Object.fromEntries(Object.entries(value).map(([key, one]) => [key, round(one)])),
    )
  }
  return round(whole) as T
}

/** A plan with its seal, over whatever it had. */
export const planSealed = <P extends object>(
  plan: P,
  fingerprint: Fingerprint,
): Omit<P, 'seal'> & Pick<Plan, 'seal'> => {
  const { seal: _, ...said } = plan as P & { readonly seal?: string }
  const rest = rounded(said)
  return { ...rest, seal: fingerprint(JSON.stringify(rest)) }
}

/** `map` takes the pattern to ideal page mm; `window` is in ideal page mm. */
export const planPlace = (
  sheet: Sheet,
  pattern: string,
  map: Affine,
  window = sheetWindow(sheet),
): PlanPlace => {
  const toPoints = affineThen(sheetWritten(sheet), affineScale(pointsPerMm))
  const box = writtenBox(window, toPoints)
  return {
    pattern,
    toPattern: affineInvert(affineThen(map, toPoints)),
    window: [box.x0, box.y0, box.x1, box.y1],
  }
}

/** The box inside a written window: what leans is left out, so that all of it is drawn. */
const writtenBox = (box: Box, map: Affine): Box => {
  const at = (x: number, y: number): Point => affineApply(map, { x, y })
  const [bottomLeft, bottomRight] = [at(box.x0, box.y0), at(box.x1, box.y0)]
  const [topLeft, topRight] = [at(box.x0, box.y1), at(box.x1, box.y1)]
  return {
    x0: Math.max(bottomLeft.x, topLeft.x),
    y0: Math.max(bottomLeft.y, bottomRight.y),
    x1: Math.min(bottomRight.x, topRight.x),
    y1: Math.min(topLeft.y, topRight.y),
  }
}

/** One page of the plan; the first place is repeated at top level. */
export const planPage = (page: number, { kind, tile, holds, places }: Omit<PlanPage, 'page'>): PlanPage => ({
  page,
  kind,
  ...(tile === undefined ? {} : { tile }),
  ...(holds ? { holds } : {}),
  ...places[0],
  places,
})

/** What of a plan a correction changes, and what it needs to know for that. */
type Correctable = Pick<SetPlan, 'set' | 'correction' | 'printer' | 'expected'> & {
  readonly paper: { readonly width: number; readonly height: number }
  readonly pages: readonly { readonly places: readonly PlanPlace[] }[]
}

/** Points as a plan's pages are written to points as another correction writes them, about the page's centre. */
export const correctionChange = (
  { paper, correction }: Pick<Correctable, 'paper' | 'correction'>,
  to: Correction,
): Affine => {
  const [width, height] = [paper.width * pointsPerMm, paper.height * pointsPerMm]
  return affineThen(affineInvert(correctionMap(correction, width, height)), correctionMap(to, width, height))
}

/**
 * The plan of the same pages, written for another printer: the tiles stay where they are in the pattern. The code's third part
 * tells the pages from those of a set plotted for that printer, whose tiles lie otherwise.
 */
export const planRecorrected = <P extends Correctable>(
  plan: P,
  printer: {
    readonly name: string
    readonly correction: Correction
    readonly uncertainty: PrinterUncertainty
  },
  fingerprint: Fingerprint,
): Omit<P, 'seal'> & Pick<Plan, 'seal'> => {
  const { name, correction, uncertainty } = printer
  const change = correctionChange(plan, correction)
  const back = affineInvert(change)
  const moved = ({ pattern, toPattern, window }: PlanPlace): PlanPlace => {
    const [x0, y0, x1, y1] = window
    const box = writtenBox({ x0, y0, x1, y1 }, change)
    return {
      pattern,
      toPattern: affineThen(back, toPattern),
      window: [box.x0, box.y0, box.x1, box.y1],
    }
  }
  const before = codeParts(plan.set)
  const after = codePart([before.printer, name, correction], fingerprint)
  return planSealed(
    {
      ...plan,
      set: showCode({ ...before, printer: after }),
      printer: name,
      correction,
      expected: plan.expected.map((one) => ({
        ...one,
        ...(one.budget && expectedError(one.budget, uncertainty)),
      })),
      pages: plan.pages.map((page) => {
        const places = page.places.map(moved)
        return { ...page, ...places[0], places }
      }),
    },
    fingerprint,
  )
}

/** What is left white between the paper's edges and corners of windows once they are moved, mm; the least for each side. */
export const marginsLeft = (
  { paper }: Pick<Correctable, 'paper'>,
  windows: readonly PlanPlace['window'][],
  change: Affine,
): Margins => {
  const corners = windows.flatMap(([x0, y0, x1, y1]) =>
    [x0, x1].flatMap((x) => [y0, y1].map((y) => affineApply(change, { x, y }))),
  )
  const least = (from: (p: Point) => number): number => Math.min(...corners.map(from))
  return {
    left: least((p) => p.x / pointsPerMm),
    bottom: least((p) => p.y / pointsPerMm),
    right: least((p) => paper.width - p.x / pointsPerMm),
    top: least((p) => paper.height - p.y / pointsPerMm),
  }
}
