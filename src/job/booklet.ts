import type { CoveredSide } from '../booklet/book/book.ts'
import { layBooklet } from '../booklet/book/booklet.ts'
import type { BookPage } from '../booklet/book/pages.ts'
import type { Design } from '../design/design.ts'
import { curvedOf } from '../design/kind-traits.ts'
import { laidCoverage } from '../page/cover/laid-coverage.ts'
import { cellPolygon } from '../page/cover/lattice.ts'
import { codedDesign, codePart, type Fingerprint } from '../page/set/set-code.ts'
import { paperWord } from '../page/sheet/paper.ts'
import { sheetWindow } from '../page/sheet/sheet.ts'
import { sidePatterns } from '../pattern/patterns.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import { type Covering, coverDesign } from './covering.ts'
import type { Laying } from './laying.ts'
import { asked, isRefusal, type Refusal } from './refusal.ts'
import { laidDesign, stockOf } from './supplied.ts'

export interface BookletOptions {
  /** names of the parts wanted; null for all */
  readonly only: readonly string[] | null
  readonly fingerprint: Fingerprint
}

export interface BookletJob {
  readonly solved: WholeDesign
  readonly pages: readonly BookPage[]
}

/** The pages for the bench: drawings, tables and steps of a design. */
export const bookletJob = (
  design: Design,
  laying: Pick<Laying, 'sheet' | 'overlap' | 'cover'>,
  { only, fingerprint }: BookletOptions,
): BookletJob | Refusal => {
  const laid = laidDesign(design)
  if (isRefusal(laid)) return laid
  const { solved, sheets } = laid
  const quarters = curvedOf(solved.ramps)
  const covering = quarters.length > 0 ? coverDesign(design, solved, laying) : null
  const pages = layBooklet(
    {
      design,
      solved,
      sheets,
      stock: stockOf(design, laid),
      patterns: sidePatterns(solved.ramps, design.units),
      tiles: covering ? covering.counts[covering.cover] : 0,
      paper: paperWord(laying.sheet.paper.name),
      covered: covering ? coveredSides(covering) : [],
    },
    { window: sheetWindow(laying.sheet), code: codePart(codedDesign(design), fingerprint), only },
  )
  return pages.length > 0
    ? { solved, pages }
    : asked([`--only ${only?.join(',')}: this design has nothing for it`])
}

/** The sides under their pages, as `plot` lays these. */
export const coveredSides = ({ covered, cover }: Covering): readonly CoveredSide[] =>
  covered.map((one) => {
    const { lattice, cells } = laidCoverage(one, cover)
    return { ramp: one.pattern.ramp, cells: cells.map((cell) => cellPolygon(lattice, cell)) }
  })

/** The pages as the PDF writer takes them. */
export const bookletInput = (
  { title }: Design,
  { pages }: BookletJob,
  { paper }: Laying['sheet'],
): PdfInput => ({
  title,
  subject: 'Booklet of a ramp: drawings, tables and steps for the bench',
  attachments: [],
  pages: pages.map(({ title: part, drawing }, i) => ({
    width: paper.width,
    height: paper.height,
    draw: () => drawing,
    label: `${i + 1}`,
    bookmark: i > 0 && pages[i - 1]!.title === part ? `${part}, page ${i + 1}` : part,
  })),
})
