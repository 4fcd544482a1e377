import {
  covers,
  editDesign,
  holdsKind,
  isRefusal,
  type LayingWords,
  type PlanPage,
  paperNames,
  readDesign,
  readLaying,
  type SetPlan,
} from '../../index.ts'

/** A set's design, and how its pages were laid, as far as the plan knows it. */
export interface LaidAs {
  readonly design: string
  readonly words: LayingWords
}

/** What is not as usual is said; the paper stands in the design, as it does here. */
export const laidAs = (plan: SetPlan & { readonly cover?: unknown }, text: string): LaidAs => {
  const reading = readDesign(text)
  const paper = paperNames.find((name) => name === plan.paper.name)
  if ('problems' in reading || paper === undefined) return { design: text, words: {} }
  const { units } = reading.design
  const usual = readLaying({}, null, { units, paper })
  if (isRefusal(usual)) return { design: text, words: {} }
  const { top, right, bottom, left } = plan.margins
  const own = usual.sheet.margins
  const asUsual = own.top === top && own.right === right && own.bottom === bottom && own.left === left
  const cover = covers.find((name) => name === plan.cover)
  const has = (kind: PlanPage['kind']): boolean => plan.pages.some((page) => holdsKind(page, kind))
  return {
    design: reading.design.paper === paper ? text : editDesign(text, 'paper', paper),
    words: {
      ...(cover !== undefined && { cover }),
      ...(has('strip') && { strips: true }),
      ...(has('parts') && { pack: true }),
      ...(!asUsual && { margin: [top, right, bottom, left].map((mm) => `${mm} mm`).join(', ') }),
      ...(plan.overlap !== usual.overlap && { overlap: `${plan.overlap} mm` }),
    },
  }
}
