import type { PaperName } from '../design/design.ts'
import type { Cover } from '../page/cover/cover.ts'
import { defaultMargins, defaultOverlap, type Margins, paperOf } from '../page/sheet/paper.ts'
import type { Sheet } from '../page/sheet/sheet.ts'
import { type Profile, profileCorrection } from '../printer/profile.ts'
import { type PrinterUncertainty, printerUncertainty } from '../printer/uncertainty.ts'

/** How pages are laid. Past here nobody asks whether something was said. */
export interface Laying {
  readonly sheet: Sheet
  /** mm */
  readonly overlap: number
  /** null: the way that a careful builder would take */
  readonly cover: Cover | null
  /** add the story strips */
  readonly strips: boolean
  /** lay small parts together on pages that they share */
  readonly pack: boolean
  /** name of the profile whose correction the sheet has; null for none */
  readonly printer: string | null
  /** how well that printer is known */
  readonly uncertainty: PrinterUncertainty
}

/** As pages are laid where nothing else is said. */
export const usualLaying = (paper: PaperName, profile: Profile | null = null): Laying => ({
  sheet: {
    paper: paperOf(paper),
    margins: usualMargins(paper, profile),
    correction: profileCorrection(profile),
  },
  overlap: defaultOverlap,
  cover: null,
  strips: false,
  pack: false,
  printer: profile?.name ?? null,
  uncertainty: printerUncertainty(profile?.readings ?? null),
})

/** What the printer was measured to leave, and a millimetre more; else what most printers leave. */
const usualMargins = (paper: PaperName, profile: Profile | null): Margins => {
  const least = profile?.margins
  if (!least) return defaultMargins(paper)
  const room = (mm: number): number => Math.ceil(mm) + 1
  return {
    top: room(least.top),
    right: room(least.right),
    bottom: room(least.bottom),
    left: room(least.left),
  }
}
