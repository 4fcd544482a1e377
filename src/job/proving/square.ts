import { units as allUnits } from '../../length/units.ts'
import type { PageSet } from '../../page/set/draft.ts'
import type { Fingerprint } from '../../page/set/set-code.ts'
import { layOutSquare } from '../../page/set/square-set.ts'
import { usualPaper } from '../../page/sheet/paper.ts'
import type { Profile } from '../../printer/profile.ts'
import { type LayingWords, type ReadLaying, readLaying } from '../laying-words.ts'
import { asked, isRefusal, type Refusal } from '../refusal.ts'

export interface SquareJob {
  readonly laying: ReadLaying
  readonly set: PageSet
}

/** The page that proves a printer, or with its profile the correction of one: on the paper that it was measured on. */
export const squareJob = (
  said: Pick<LayingWords, 'paper' | 'margin'> & { readonly units?: string },
  profile: Profile | null,
  fingerprint: Fingerprint,
): SquareJob | Refusal => {
  const paper = said.paper ?? profile?.paper
  const word = said.units ?? (paper === undefined || /^a\d$/i.test(paper) ? 'mm' : 'in')
  const units = allUnits.find((known) => known === word)
  if (units === undefined) return asked([`--units ${word}: say ${allUnits.join(' or ')}`])
  const laying = readLaying({ ...said, ...(paper !== undefined && { paper }) }, profile, {
    units,
    paper: usualPaper(units),
  })
  if (isRefusal(laying)) return laying
  return { laying, set: layOutSquare(units, laying.sheet, laying.printer, fingerprint) }
}
