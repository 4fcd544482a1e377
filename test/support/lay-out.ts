import { createHash } from 'node:crypto'
import type { PaperName } from '../../src/design/design.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import type { Cover } from '../../src/page/cover/cover.ts'
import type { PageSet } from '../../src/page/set/draft.ts'
import { layOutSet } from '../../src/page/set/set.ts'
import { defaultMargins, defaultOverlap, type Margins, paperOf } from '../../src/page/sheet/paper.ts'
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
export const layOut: typeof layOutAnew = (text, paper, cover, options = {}) => {
  const { strips, pack } = options
  const key = JSON.stringify([
    text,
    paper,
    cover,
    { ...options, strips: strips ?? false, pack: pack ?? false },
  ])
  if (!laid.has(key)) {
    const set = layOutAnew(text, paper, cover, options)
    laid.set(key, set && drawnOnce(set))
  }
  return laid.get(key)!
}

export interface LayOutOptions {
  readonly correction?: Correction | undefined
  readonly uncertainty?: PrinterUncertainty
  readonly strips?: boolean | undefined
  readonly pack?: boolean | undefined
  readonly margins?: Margins | undefined
  readonly overlap?: number | undefined
}

/** The same, of what nobody asks for again. */
export const layOutAnew = (
  text: string,
  paper: PaperName,
  cover: Cover,
  options: LayOutOptions = {},
): PageSet | null => {
  const { design, solved } = solvedText(text)
  if (solved.stopped) return null
  const sheet = {
    paper: paperOf(paper),
    margins: options.margins ?? defaultMargins(paper),
    correction: options.correction ?? noCorrection,
  }
  const laying = { sheet, overlap: options.overlap ?? defaultOverlap }
  return layOutSet(
    design,
    solved,
    {
      ...laying,
      cover,
      strips: options.strips ?? false,
      pack: options.pack ?? false,
      text,
      printer: options.correction ? 'workbench' : null,
      uncertainty: options.uncertainty ?? printerUncertainty(null),
      fingerprint,
    },
    coveredText(text, laying),
  )
}
