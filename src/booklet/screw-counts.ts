/** A row of screws, as a layer of skin and the deck board have them. */
interface Row {
  readonly across: readonly number[]
  /** mm; null where no usual screw is short enough */
  readonly length: number | null
}

export interface ScrewCount {
  readonly length: number | null
  readonly count: number
}

/** How many screws of each length, the longest first; what no usual length fits comes last. `beside`: those in no row. */
export const screwCounts = (
  rows: readonly Row[],
  beside: readonly ScrewCount[] = [],
): readonly ScrewCount[] => {
  const counts = new Map<number | null, number>()
  const all = [...rows.map(({ across, length }) => ({ length, count: across.length })), ...beside]
  for (const { length, count } of all) counts.set(length, (counts.get(length) ?? 0) + count)
  return [...counts]
    .map(([length, count]) => ({ length, count }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => (b.length ?? 0) - (a.length ?? 0))
}

/** `42 screws of 1 5/8, 6 of 3/4` */
export const screwWords = (
  rows: readonly Row[],
  show: (mm: number) => string,
  beside: readonly ScrewCount[] = [],
): string => {
  const counts = screwCounts(rows, beside)
  if (counts.length === 0) return '0 screws'
  const of = ({ count, length }: ScrewCount, i: number): string =>
    `${count}${i === 0 ? ' screws' : ''} ${length === null ? 'that no usual length fits' : `of ${show(length)}`}`
  return counts.map(of).join(', ')
}
