import type { Drawing } from '../../drawing/drawing.ts'
import { group } from '../../drawing/drawing.ts'
import { type PageKind, type PlanPage, planVersion } from '../../drawing/set-plan.ts'
import type { Cover } from '../cover/cover.ts'
import { type Sheet, sheetWritten } from '../sheet/sheet.ts'
import { type Plan, planPage, planSealed } from './plan.ts'
import type { Fingerprint } from './set-code.ts'
import type { TileGroup } from './tile-groups.ts'

export interface SetPage {
  readonly kind: PageKind
  readonly label: string
  readonly bookmark: string
  /** in written page mm; drawn when it is written, so that no set holds all of its pages' marks at once */
  readonly draw: () => Drawing
}

/** All pages of one plot, and their plan. */
export interface PageSet {
  readonly code: string
  readonly pages: readonly SetPage[]
  readonly plan: Plan
  readonly groups: readonly TileGroup[]
}

/** A page before the correction is applied. */
export interface Draft extends Omit<SetPage, 'draw'>, Pick<PlanPage, 'tile' | 'holds' | 'places'> {
  /** in ideal page mm */
  readonly draw: () => Drawing
}

export interface SetFacts {
  readonly sheet: Sheet
  readonly overlap: number
  readonly cover: Cover
  /** the design file's own text, kept in the plan */
  readonly text: string
  readonly fingerprint: Fingerprint
  /** name of the profile whose correction the sheet has; null for none */
  readonly printer: string | null
}

/** Drafts in ideal page mm become written pages, and their plan. */
export const assemble = (
  code: string,
  drafts: readonly Draft[],
  { sheet, overlap, cover, text, printer, fingerprint }: SetFacts,
  groups: PageSet['groups'],
): PageSet => {
  const written = sheetWritten(sheet)
  return {
    code,
    groups,
    pages: drafts.map(({ kind, label, bookmark, draw }) => ({
      kind,
      label,
      bookmark,
      draw: () => [group(written, draw())],
    })),
    plan: planSealed<Omit<Plan, 'seal'>>(
      {
        version: planVersion,
        set: code,
        paper: sheet.paper,
        margins: sheet.margins,
        overlap,
        cover,
        printer,
        correction: sheet.correction,
        expected: groups.map(({ pattern, expected, budget }) => ({
          pattern: pattern.name,
          ...expected,
          budget,
        })),
        design: text,
        pages: drafts.map((draft, i): PlanPage => planPage(i + 1, draft)),
      },
      fingerprint,
    ),
  }
}
