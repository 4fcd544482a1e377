import type { Stretch } from '../frame/stretch.ts'

/** What is laid in sheets, told from its toe end and from the ramp's left outer face; mm. */
interface Laid<Row> {
  readonly pieces: readonly Stretch[]
  readonly widths: readonly Stretch[]
  /** lines of what lies under it */
  readonly marks: readonly number[]
  readonly rows: readonly Row[]
}

/** One of its sheets as it lies on the bench: told from its own lower and left edges. mm */
export interface OwnSheet<Row> {
  readonly up: Stretch
  readonly across: Stretch
  /** lines that cross it, by the index of what lies under it; a line in the gap beside it is none of them */
  readonly marks: readonly { readonly of: number; readonly at: number }[]
  readonly rows: readonly Row[]
}

/** Sheets in the order of their marks: up the ramp, and from the left within each piece. */
export const ownSheets = <Row extends { readonly at: number; readonly across: readonly number[] }>({
  pieces,
  widths,
  marks,
  rows,
}: Laid<Row>): readonly OwnSheet<Row>[] => {
  const on = ({ from, length }: Stretch, at: number): boolean => at >= from && at <= from + length
  return pieces.flatMap((up) =>
    widths.map((across) => ({
      up,
      across,
      marks: marks.flatMap((at, of) => (on(up, at) ? [{ of, at: at - up.from }] : [])),
      rows: rows
        .filter(({ at }) => on(up, at))
        .map((row) => ({
          ...row,
          at: row.at - up.from,
          across: row.across.filter((x) => on(across, x)).map((x) => x - across.from),
        }))
        .filter((row) => row.across.length > 0),
    })),
  )
}
