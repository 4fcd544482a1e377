import { createHash } from 'node:crypto'
import type { PaperName } from '../../src/design/design.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import type { Cover } from '../../src/page/cover/cover.ts'
import type { PageSet } from '../../src/page/set/draft.ts'
import { layOutSet } from '../../src/page/set/set.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../src/page/sheet/paper.ts'
import { type Correction, noCorrection } from '../../src/printer/correction.ts'
import { type PrinterUncertainty, printerUncertainty } from '../../src/printer/uncertainty.ts'
import { coveredText, solvedText } from './covered.ts'

export const fingerprint = (text: string): string => createHash('sha256').update(text).digest('hex')

const laid = new Map<string, PageSet | null>()

/** Each page is drawn once for all that look at it, as long as there is room for what was drawn. */
const drawnOnce = (set: PageSet): PageSet => ({
  ...set,
  pages: set.pages.map(({ draw, ...page }) => {
    const kept: { drawn?: WeakRef<Drawing> } = {}
    return {
      ...page,
      draw: () => {
        const drawn = kept.drawn?.deref() ?? draw()
        kept.drawn = new WeakRef(drawn)
        return drawn
      },
    }
  }),
})

/** A set by the way of the `plot` command, without a disk; null where a check says stop. Laid once for all tests of a worker. */
export const layOut = (...asked: Parameters<typeof layOutAnew>): PageSet | null => {
  const key = JSON.stringify(asked)
  if (!laid.has(key)) {
    const set = layOutAnew(...asked)
    laid.set(key, set && drawnOnce(set))
  }
  return laid.get(key)!
}

const layOutAnew = (
  text: string,
  paper: PaperName,
  cover: Cover,
  options: {
    readonly correction?: Correction
    readonly uncertainty?: PrinterUncertainty
    readonly strips?: boolean
  } = {},
): PageSet | null => {
  const { design, solved } = solvedText(text)
  if (solved.stopped) return null
  const sheet = {
    paper: paperOf(paper),
    margins: defaultMargins(paper),
    correction: options.correction ?? noCorrection,
  }
  const laying = { sheet, overlap: defaultOverlap }
  return layOutSet(
    design,
    solved,
    {
      ...laying,
      cover,
      strips: options.strips ?? false,
      text,
      printer: options.correction ? 'workbench' : null,
      uncertainty: options.uncertainty ?? printerUncertainty(null),
      fingerprint,
    },
    coveredText(text, laying),
  )
}
