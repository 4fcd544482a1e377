import type { Affine } from '../geometry/affine.ts'

/**
 * The plan of a set, as far as its pages are found and corrected by it: written by src/page/set/plan.ts, read by src/read/plan.ts,
 * told in docs/architecture.md. Page coordinates are PDF points, y up.
 */
export interface SetPlan {
  readonly version: typeof planVersion
  readonly set: string
  readonly paper: { readonly name: string; readonly width: number; readonly height: number }
  readonly margins: {
    readonly top: number
    readonly right: number
    readonly bottom: number
    readonly left: number
  }
  /** how far pages lie over each other, mm */
  readonly overlap: number
  /** name of the printer profile whose correction was used; null for none */
  readonly printer: string | null
  readonly correction: readonly [number, number, number, number]
  /**
   * how far the line of each pattern may lie from its place: what that is reckoned from, whatever the printer. Sets of before
   * pages proved which they are have no budget.
   */
  readonly expected: readonly { readonly pattern: string; readonly budget?: PlanBudget }[]
  readonly pages: readonly PlanPage[]
  /** in a file that holds some pages of the set only: their numbers in `pages`, in the file's order */
  readonly reprint?: readonly number[]
  /** fingerprint of all that stands above, as JSON: a plan that was edited by hand is known by it */
  readonly seal: string
}

/** mm; `bound` is null where no distance is checked */
export interface PlanBudget {
  /** from the toe to the lip along the rows of pages, and off them */
  readonly run: number
  readonly rise: number
  /** where the page's height runs along a row, not its width */
  readonly rows?: 'down'
  readonly joints: number
  readonly bound: number | null
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
  /** kinds of the parts on a page of several */
  readonly holds?: readonly PageKind[]
  readonly places: readonly PlanPlace[]
} & Partial<PlanPlace>

export const planVersion = 1

/** The name under which a set's PDF carries its plan. */
export const planName = 'plan.json'
