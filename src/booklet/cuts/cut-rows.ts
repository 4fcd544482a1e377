import type { Units } from '../../design/design.ts'
import type { Panel } from '../../stock/panel/panels.ts'
import { markWords, sawStepWords } from './piece-words.ts'
import { type SideEdge, sideEdges } from './side-edges.ts'

/** One line of the order of cuts with its number as the drawing has it. */
export interface CutRow {
  readonly number: string
  readonly words: string
  /** of an edge of a curved piece: where its letter stands, and the way into the piece */
  readonly edge: Pick<SideEdge, 'at' | 'inward'> | null
}

/** The order of cuts line by line: a curved piece is sawn edge by edge, `1a`, `1b`. */
export const cutRows = (panel: Panel, units: Units): readonly CutRow[] =>
  panel.steps.flatMap((step, i): readonly CutRow[] => {
    const number = `${i + 1}`
    const piece =
      step.kind === 'out' && !step.square && panel.pieces.find(({ part }) => part.mark === step.mark)
    if (!piece) return [{ number, words: sawStepWords(step, panel, units), edge: null }]
    return sideEdges(piece, panel, units).map(({ letter, words, ...edge }) => ({
      number: `${number}${letter}`,
      words: `${markWords(piece)} ${words}`,
      edge,
    }))
  })
