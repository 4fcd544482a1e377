import type { PaperName } from '../../design/design.ts'
import { type Affine, affineApply, affineInvert, affineScale, affineThen } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { pointsPerMm } from '../../geometry/inch.ts'
import type { Point } from '../../geometry/point.ts'
import { type Correction, correctionMap } from '../../printer/correction.ts'
import type { Cover } from '../cover/cover.ts'
import type { Expected } from '../proof/budget.ts'
import type { Margins } from '../sheet/paper.ts'
import { type Sheet, sheetWindow, sheetWritten } from '../sheet/sheet.ts'
import { type Fingerprint, setCode } from './set-code.ts'

/** The plan of a set as scripts read it: docs/architecture.md. Page coordinates are PDF points, y up. */
export interface Plan {
  readonly version: 1
  readonly set: string
  readonly paper: { readonly name: PaperName; readonly width: number; readonly height: number }
  readonly margins: Margins
  /** how far pages lie over each other, mm */
  readonly overlap: number
  readonly cover: Cover
  /** name of the printer profile whose correction was used; null for none */
  readonly printer: string | null
  readonly correction: Correction
  /** how far the line may lie from its place on the wood, mm */
  readonly expected: readonly ({ readonly pattern: string } & Expected)[]
  readonly design: string
  readonly pages: readonly PlanPage[]
  /** in a file that holds some pages of the set only: their numbers in `pages`, in the file's order */
  readonly reprint?: readonly number[]
  /** fingerprint of all that stands above, as JSON: a plan that was edited by hand is known by it */
  readonly seal: string
}

export interface PlanPlace {
  readonly pattern: string
  /** page points to mm of the pattern */
  readonly toPattern: Affine
  /** [x0, y0, x1, y1] in page points */
  readonly window: readonly [number, number, number, number]
}

/** `parts`: a lip trial and strips on one page. */
export type PageKind = 'map' | 'square' | 'trial' | 'tile' | 'strip' | 'parts'

export type PlanPage = {
  readonly page: number
  readonly kind: PageKind
  readonly tile?: string
  readonly places: readonly PlanPlace[]
} & Partial<PlanPlace>

/** A plan with its seal, over whatever it had. */
export const planSealed = <P extends object>(
  plan: P,
  fingerprint: Fingerprint,
): Omit<P, 'seal'> & Pick<Plan, 'seal'> => {
  const { seal: _, ...rest } = plan as P & { readonly seal?: string }
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
export const planPage = (
  page: number,
  kind: PageKind,
  tile: string | undefined,
  places: readonly PlanPlace[],
): PlanPage => ({ page, kind, ...(tile === undefined ? {} : { tile }), ...places[0], places })

/** What of a plan a correction changes, and what it needs to know for that. */
type Correctable = Pick<Plan, 'set' | 'correction' | 'printer'> & {
  readonly paper: { readonly width: number; readonly height: number }
  readonly pages: readonly { readonly places: readonly PlanPlace[] }[]
}

/** Points as a plan's pages are written to points as another correction writes them, about the page's centre. */
export const correctionChange = ({ paper, correction }: Correctable, to: Correction): Affine => {
  const [width, height] = [paper.width * pointsPerMm, paper.height * pointsPerMm]
  return affineThen(affineInvert(correctionMap(correction, width, height)), correctionMap(to, width, height))
}

/**
 * The plan of the same pages, written for another printer: the tiles stay where they are in the pattern. The code's third part
 * tells the pages from those of a set plotted for that printer, whose tiles lie otherwise.
 */
export const planRecorrected = <P extends Correctable>(
  plan: P,
  printer: { readonly name: string; readonly correction: Correction },
  fingerprint: Fingerprint,
): Omit<P, 'seal'> & Pick<Plan, 'seal'> => {
  const { name, correction } = printer
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
  const [design, paper, before] = plan.set.split('-')
  const [, , after] = setCode({ design, paper, printer: [before, name, correction] }, fingerprint).split('-')
  return planSealed(
    {
      ...plan,
      set: [design, paper, after].join('-'),
      printer: name,
      correction,
      pages: plan.pages.map((page) => {
        const places = page.places.map(moved)
        return { ...page, ...places[0], places }
      }),
    },
    fingerprint,
  )
}

/** How far corners of a page's windows reach into the margins once they are moved, mm; the most for each side. */
export const marginsReached = (
  plan: Pick<Correctable, 'paper'> & Pick<Plan, 'margins'>,
  windows: readonly PlanPlace['window'][],
  change: Affine,
): Margins => {
  const { paper, margins } = plan
  const corners = windows.flatMap(([x0, y0, x1, y1]) =>
    [x0, x1].flatMap((x) => [y0, y1].map((y) => affineApply(change, { x, y }))),
  )
  const most = (beyond: (p: Point) => number): number => Math.max(0, ...corners.map(beyond))
  return {
    left: most((p) => margins.left - p.x / pointsPerMm),
    bottom: most((p) => margins.bottom - p.y / pointsPerMm),
    right: most((p) => p.x / pointsPerMm - paper.width + margins.right),
    top: most((p) => p.y / pointsPerMm - paper.height + margins.top),
  }
}
