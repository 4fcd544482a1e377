import type { StripPiece } from './strip-pieces.ts'

/** What a piece says of itself, in more or fewer words: what its edges and rings mean stands in the legend of the page. */
export interface StripNotes {
  readonly lay: readonly string[]
  /** null where it carries marks */
  readonly blank: readonly [string, string] | null
  readonly aside: string | null
}

export const stripNotes = (piece: StripPiece): StripNotes => {
  const { strip, number } = piece
  return {
    lay:
      number === 1
        ? [`zero: ${strip.zero}`, 'zero at this end']
        : [
            `${number - 1}–${number}: cut here, lay this edge on the dashed line of piece ${number - 1}`,
            `${number - 1}–${number}: lay on the dashed line of piece ${number - 1}`,
            `${number - 1}–${number}: lay on piece ${number - 1}`,
          ],
    blank: isBlank(piece) ? ['no mark on this piece: keeps the length', 'no mark: keeps the length'] : null,
    aside: strip.aside,
  }
}

/** No mark lies between its joints. */
const isBlank = ({ strip, from, to, number, count }: StripPiece): boolean =>
  strip.rows.every(
    (row) => !row || row.marks.every(({ at }) => at < from || (number === count ? at > to : at >= to)),
  )
