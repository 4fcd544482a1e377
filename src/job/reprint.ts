import type { SetPlan } from '../drawing/set-plan.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import { correctionChange, marginsLeft, planRecorrected, planSealed } from '../page/set/plan.ts'
import type { Fingerprint } from '../page/set/set-code.ts'
import { type Margins, sidesShort } from '../page/sheet/paper.ts'
import { type Profile, profileCorrection } from '../printer/profile.ts'
import { printerUncertainty } from '../printer/uncertainty.ts'
import { recorrect } from '../read/recorrect.ts'
import type { SetPdf, SetPdfPage } from '../read/set-pdf.ts'
import type { PdfCopy } from '../write/pdf-copy.ts'
import { asked, type Refusal } from './refusal.ts'

/** What is written: the pages, their plan, and what to watch. */
export interface ReprintJob {
  readonly plan: SetPlan
  readonly pages: readonly (SetPdfPage & { readonly content?: Uint8Array })[]
  readonly warnings: readonly string[]
}

/**
 * Some pages of a set once more: as they were, or corrected for the printer of a profile. `contents`: what each of them draws,
 * inflated; `profiles`: the folder that the profile is from as it is typed, where one was named.
 */
export const reprintJob = (
  set: SetPlan,
  pages: readonly SetPdfPage[],
  contents: readonly Uint8Array[],
  profile: Profile | null,
  fingerprint: Fingerprint,
  profiles?: string,
): ReprintJob | Refusal => {
  const held = { ...set, reprint: pages.map(({ planned }) => planned.page) }
  const correction = profileCorrection(profile)
  const asIs = profile === null || (set.printer === profile.name && isSame(set.correction, correction))
  if (asIs) return { plan: planSealed(held, fingerprint), pages, warnings: [] }
  // what it says to type depends on its correction, and its combs show where the paper ends
  if (pages.some(({ planned }) => planned.kind === 'square')) {
    const others = pages.some(({ planned }) => planned.kind !== 'square')
    const from = profiles === undefined ? '' : ` --profiles ${profiles}`
    return asked([
      `reprint corrects no test square, as what it says to type would be wrong; ${others ? 'leave it out, and the other pages are written; ' : ''}print a new one: traceply square --paper ${set.paper.name} --printer ${profile.name}${from} --out square-${profile.name}.pdf`,
    ])
  }
  const change = correctionChange(held, correction)
  const plan = planRecorrected(
    held,
    { name: profile.name, correction, uncertainty: printerUncertainty(profile.readings) },
    fingerprint,
  )
  const moved = pages.map((page, i) => ({
    ...page,
    ...recorrect(contents[i]!, {
      change,
      set: { from: set.set, to: plan.set },
      printer: profile.name,
    }),
  }))
  const stale = moved.filter(({ told }) => !told).map(({ label }) => label)
  const window = windowOf(set)
  const windows = pages.flatMap(({ planned }) =>
    planned.places.length > 0 ? planned.places.map((place) => place.window) : [window],
  )
  return {
    plan,
    pages: moved,
    warnings: [
      ...(profile.paper === set.paper.name
        ? []
        : [
            `printer ${profile.name} was measured on ${profile.paper}, this is ${set.paper.name}; measure it again on this paper and tray`,
          ]),
      ...marginWarnings(marginsLeft(held, windows, change), set.margins, profile),
      ...(stale.length === 0
        ? []
        : [
            `${stale.join(', ')}: the words on the page still tell set ${set.set} or its printer; the new set is ${plan.set}`,
          ]),
      ...(pages.some(({ planned }) => planned.kind === 'map')
        ? ['the figures on the map of what to expect are those of the printer that the set was plotted for']
        : []),
    ],
  }
}

/** The pages of a job as the PDF writer takes them, out of the set that they come from. */
export const reprintInput = (set: SetPdf, { plan, pages }: ReprintJob): PdfCopy => ({
  source: set.context,
  title: set.title,
  subject: set.subject.replaceAll(set.plan.set, plan.set),
  pages,
  attachments: [{ ...set.attached, bytes: new TextEncoder().encode(JSON.stringify(plan)) }],
})

/** A plan's numbers end at ten decimals. */
const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, i) => Math.abs(value - b[i]!) < 1e-9)

type Window = SetPlan['pages'][number]['places'][number]['window']

/** The window of the pages that carry no pattern: that of the tiles, which is the same on every page. */
const windowOf = ({ pages, paper }: SetPlan): Window =>
  pages.find(({ kind }) => kind === 'tile' || kind === 'square')?.places[0]?.window ?? [
    0,
    0,
    paper.width * pointsPerMm,
    paper.height * pointsPerMm,
  ]

/** Where the printer prints is known, or only where pages kept off its edges until now. */
const marginWarnings = (
  left: Margins,
  before: Margins,
  { name, margins: least }: Profile,
): readonly string[] => {
  const sides = sidesShort(left, least ?? before)
  if (sides.length === 0) return []
  if (!least) {
    const list = sides.map((side) => `${(before[side] - left[side]).toFixed(1)} mm into the ${side} margin`)
    return [
      `corrected for ${name} the pages reach ${list.join(', ')}: look whether all of their edges are printed; if not, plot the whole set anew, corrected for ${name}`,
    ]
  }
  const list = sides.map(
    (side) => `${left[side].toFixed(1)} mm from the ${side} edge, where it prints from ${least[side]} mm`,
  )
  return [
    `corrected for ${name} the pages begin ${list.join(', ')}: it cuts lines off; plot the whole set anew, corrected for ${name}`,
  ]
}
