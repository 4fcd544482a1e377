import type { StripPiece } from './strip-pieces.ts'

/** Something said in one piece, in more or fewer words; behind a ring where it says what rings are. */
export interface Said {
  readonly words: readonly string[]
  readonly ring: boolean
}

/** What a piece says beside its title, the most needed first. */
export const stripNotes = (piece: StripPiece): readonly Said[] => {
  const { strip, number } = piece
  const plain = (...words: readonly string[]): Said => ({ words, ring: false })
  return [
    number === 1
      ? plain(`zero: ${strip.zero}.`)
      : plain(
          `cut here and lay this edge on the dashed line of piece ${number - 1}.`,
          `lay on the dashed line of piece ${number - 1}.`,
          `lay on piece ${number - 1}.`,
        ),
    ...(isBlank(piece)
      ? [plain('no mark on this piece: keeps the length.', 'no mark: keeps the length.')]
      : [
          ...strip.rows.flatMap((row) =>
            row ? [plain(row.edge === '' ? `${row.words}.` : `${row.edge} edge: ${row.words}.`)] : [],
          ),
          ...(strip.rings === null ? [] : [{ words: [`= ${strip.rings}.`], ring: true }]),
          ...(strip.onTicks === null ? [] : [{ words: [`on a tick: ${strip.onTicks}.`], ring: true }]),
          ...strip.notes.map((words) => plain(`${words}.`)),
        ]),
  ]
}

/** No mark lies between its joints. */
const isBlank = ({ strip, from, to, number, count }: StripPiece): boolean =>
  strip.rows.every(
    (row) => !row || row.marks.every(({ at }) => at < from || (number === count ? at > to : at >= to)),
  )
