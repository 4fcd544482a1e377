import type { Units } from '../../design/design.ts'
import { showLength } from '../../length.ts'
import { type SawnBoard, type SectionPlan, squared } from '../../stock/timber/boards.ts'
import type { TimberPart } from '../../stock/timber-parts.ts'

/** Timber as it is sawn: boards by section, and the parts that their marks name. */
export interface TimberFacts {
  readonly timber: readonly SectionPlan[]
  readonly parts: readonly TimberPart[]
}

/** A board with its number through the design, and each cut with its part and its place from the squared end. mm */
export interface NumberedBoard {
  readonly number: number
  readonly board: SawnBoard
  readonly cuts: readonly { readonly part: TimberPart; readonly from: number; readonly length: number }[]
}

export const numberedBoards = ({ timber, parts }: TimberFacts, kerf: number): readonly NumberedBoard[] => {
  const byMark = new Map(parts.map((part) => [part.mark, part]))
  return timber
    .flatMap(({ boards }) => boards)
    .map((board, i) => {
      let from = 0
      const cuts = board.cuts.map(({ mark, length }) => {
        const cut = { part: byMark.get(mark)!, from, length }
        from += length + kerf
        return cut
      })
      return { number: i + 1, board, cuts }
    })
}

/** `38 × 89, 2400 long` */
export const boardWords = ({ section, length }: SawnBoard, units: Units): string =>
  `${section.map((mm) => showLength(mm, units, { decimals: 1 })).join(' × ')}, ${showLength(length, units)} long`

/** `stud 3`, with its ramp where there are several, and what it is ripped to. */
export const partWords = ({ words, ramp, ripped }: TimberPart, several: boolean, units: Units): string =>
  `${several ? `${ramp}, ` : ''}${words}${
    ripped ? `, ripped to ${ripped.map((mm) => showLength(mm, units, { decimals: 1 })).join(' × ')}` : ''
  }`

/** How the boards are to be sawn. */
export const timberNote = (units: Units): string =>
  `Saw ${showLength(squared[units], units)} off one end to square it; the sums keep as much at the other. Saw the pieces in this order, each measured from the end just sawn, and write its mark on each; where several are of one length, check the first against this list, then set a stop block by it.`
