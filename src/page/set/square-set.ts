import type { Units } from '../../design/design.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { showLength } from '../../length.ts'
import { squareSide } from '../../printer/reading.ts'
import { edgeCombs } from '../pages/comb.ts'
import { squarePage, squareSideIn } from '../pages/square-page.ts'
import { defaultMargins, type Margins } from '../sheet/paper.ts'
import { type Sheet, sheetWindow } from '../sheet/sheet.ts'
import { assemble, type Draft, type PageSet } from './draft.ts'
import { planPlace } from './plan.ts'
import { type Fingerprint, setCode } from './set-code.ts'

/** The test square as a page of a set; `title`: of its design. `combs`: also what tells the least margins, drawn over the paper's edges. */
export const squareDraft = (
  sheet: Sheet,
  set: string,
  units: Units,
  printer: string | null,
  title: string | null,
  combs = false,
): Draft => {
  const command =
    printer === null
      ? gaugeCommand(sheet, combs)
      : `traceply square --paper ${sheet.paper.name} --out uncorrected.pdf`
  const facts = { title, units, set, printer, command, combs }
  const { draw, corner } = squarePage(squareWindow(sheet, combs), facts)
  return {
    kind: 'square',
    label: 'Square',
    bookmark: 'Test square',
    draw: () => (combs ? [...draw(), ...edgeCombs(sheet.paper)] : draw()),
    places: [planPlace(sheet, 'square', affineTranslate(corner.x, corner.y))],
  }
}

/** Where a square and its words lie: combs run in from the edges as far as the usual margins keep clear of. */
const squareWindow = (sheet: Sheet, combs: boolean): Box => {
  const usual = defaultMargins(sheet.paper.name)
  const clear = (side: keyof Margins): number => Math.max(sheet.margins[side], usual[side])
  const margins = { top: clear('top'), right: clear('right'), bottom: clear('bottom'), left: clear('left') }
  return sheetWindow(combs ? { ...sheet, margins } : sheet)
}

/** A square smaller than the usual one must be said with its readings. */
const gaugeCommand = (sheet: Sheet, combs: boolean): string => {
  const side = squareSideIn(squareWindow(sheet, combs))
  const of = (mm: number): string =>
    side === squareSide ? '' : `/${showLength(mm, 'mm', { decimals: 1, unit: true }).replace(' ', '')}`
  const [edge, diagonal] = [`____mm${of(side)}`, `____mm${of(side * Math.SQRT2)}`]
  const margins = combs ? ' --margins "__mm, __mm, __mm, __mm"' : ''
  return `traceply gauge NAME --paper ${sheet.paper.name} --across ${edge} --down ${edge} --diagonals ${diagonal} ${diagonal}${margins}`
}

/** The test square alone, with combs at the paper's edges unless it is printed with a correction. */
export const layOutSquare = (
  units: Units,
  sheet: Sheet,
  printer: string | null,
  fingerprint: Fingerprint,
): PageSet => {
  const code = setCode(
    { design: 'square', paper: [sheet.paper, sheet.margins, units], printer: sheet.correction },
    fingerprint,
  )
  const draft = squareDraft(sheet, code, units, printer, null, printer === null)
  return assemble(code, [draft], { sheet, overlap: 0, cover: 'whole', printer, text: '', fingerprint }, [])
}
