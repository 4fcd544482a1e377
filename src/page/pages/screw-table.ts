import type { DraftStyle } from '../../drafting/line-types.ts'
import { layTable, tableHeight, tableMarks } from '../../drafting/table.ts'
import type { Drawing } from '../../drawing/drawing.ts'
import { showLength, type Units } from '../../length.ts'
import type { MissingScrew } from '../proof/missing-screws.ts'

/** Between columns of the list, mm. */
const apart = 5

/** Screws to set out with a tape, in as many columns as stand side by side; hung from 0,0. */
export const screwTable = (
  screws: readonly MissingScrew[],
  units: Units,
  style: DraftStyle,
  width: number,
): { readonly draw: () => Drawing; readonly height: number } => {
  const show = (mm: number): string => showLength(mm, units)
  const named = layTable(
    {
      columns: [
        { head: 'screw of', kind: 'words' },
        { head: 'back', kind: 'figure' },
        { head: 'up', kind: 'figure' },
      ],
      rows: screws.map(({ of, at }) => [of, show(at.x), show(at.y)]),
      dense: true,
    },
    width,
    style,
  )
  const most = Math.max(1, Math.floor((width + apart) / (named.width + apart)))
  const each = Math.ceil(screws.length / most)
  // a timber is named once, and again at the head of a column
  const isNamed = (i: number): boolean => i % each === 0 || screws[i - 1]!.of !== screws[i]!.of
  const laid = {
    ...named,
    rows: named.rows.map((row, i) => (isNamed(i) ? row : { ...row, lines: [[], ...row.lines.slice(1)] })),
  }
  const columns = Array.from({ length: Math.ceil(screws.length / each) }, (_, k) => k * each)
  return {
    draw: () =>
      columns.flatMap((from, k) =>
        tableMarks(laid, { x: k * (laid.width + apart), y: 0 }, from, Math.min(each, screws.length - from)),
      ),
    height: tableHeight(laid, 0, each),
  }
}
